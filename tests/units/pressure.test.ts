import { describe, expect, it } from 'vitest';
import { parseInputText, parseList } from '../../src/domain/units/parse.ts';
import { splitPressureKind } from '../../src/domain/units/pressure.ts';

const rail = { input: 'rail', label: 'Rail pressure', dimension: 'pressure', unit: 'kPa', pressure: 'gauge' } as const;
const manifold = { ...rail, input: 'manifold', label: 'Manifold pressure', pressure: 'absolute' } as const;

describe('the kind of a pressure is kept apart from its unit', () => {
  it.each([
    ['2.4 bar g', '2.4 bar', 'gauge'],
    ['58 psig', '58 psi', 'gauge'],
    ['35 kPa abs', '35 kPa', 'absolute'],
    ['35 kPa (absolute)', '35 kPa', 'absolute'],
    ['0.35 bar(a)', '0.35 bar', 'absolute'],
    ['300 kPa gauge', '300 kPa', 'gauge'],
    ['300 kPa', '300 kPa', undefined],
    ['300', '300', undefined],
  ])('%s', (typed, text, kind) => expect(splitPressureKind(typed)).toEqual(kind === undefined ? { text } : { text, kind }));

  // 1 bar is 100 kPa and 1 psi 6.894757 kPa by NIST SP 811; the word for the kind changes no figure.
  it.each([
    [rail, '3 bar g', 300],
    [rail, '3 bar', 300],
    [manifold, '35 kPa abs', 35],
    [manifold, '35', 35],
    [rail, '10 psig', 68.94757],
  ])('%o takes %s', (expected, typed, value) => {
    const parsed = parseInputText(typed, expected);
    expect(parsed.ok && parsed.value.kind === 'value' ? parsed.value.value : parsed).toBeCloseTo(value, 4);
  });

  it.each([
    [rail, '400 kPa abs', /absolute pressure; gauge pressure is wanted/],
    [manifold, '0.3 bar g', /gauge pressure; absolute pressure is wanted/],
  ])('%o refuses %s and says how to get there', (expected, typed, message) => {
    const parsed = parseInputText(typed, expected);
    expect(parsed).toMatchObject({ ok: false, error: { code: 'wrong-pressure', message: expect.stringMatching(message) as string } });
  });

  it('holds for a list', () => {
    expect(parseList('150 155 160 psi g', { ...rail, unit: 'psi' })).toMatchObject({ ok: true });
    expect(parseList('150 155 160 psi abs', { ...rail, unit: 'psi' })).toMatchObject({ ok: false, error: { code: 'wrong-pressure' } });
  });
});
