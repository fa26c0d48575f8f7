import { describe, expect, it } from 'vitest';
import { readFigureTexts } from '../../src/domain/figures/figureTexts.ts';
import { ranges } from './figures.ts';

const texts = { range: 'coil-primary', unit: 'ohm', low: '0,4', high: '800 mohm', referenceTemperature: '', from: ' page 14 ', enteredBy: 'B' };
const range = ranges[0];

describe('a figure as typed', () => {
  it('is read in its unit, with a comma or a unit of its own', () => {
    expect(readFigureTexts(texts, range, '2026-03-04')).toEqual({
      ok: true,
      value: { range: 'coil-primary', low: 0.4, high: 0.8, unit: 'ohm', from: 'page 14', enteredBy: 'B', enteredOn: '2026-03-04' },
    });
  });

  it.each([
    ['no range', {}, undefined, 'range'],
    ['neither end', { low: '', high: ' ' }, range, 'low'],
    ['ends swapped', { low: '4' }, range, 'low'],
    ['millimetres', { high: '3 mm' }, range, 'high'],
    ['words', { low: 'about one' }, range, 'low'],
    ['a temperature of a furnace', { referenceTemperature: '500' }, range, 'referenceTemperature'],
    ['from nowhere', { from: ' ' }, range, 'from'],
    ['by nobody', { enteredBy: '' }, range, 'enteredBy'],
    ['too long a story', { from: 'x'.repeat(201) }, range, 'from'],
  ] as const)('%s: refused at its field', (_label, other, known, input) => {
    const read = readFigureTexts({ ...texts, ...other }, known, '2026-03-04');
    expect(read.ok ? 'taken' : read.error.input).toBe(input);
  });
});
