import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestFiguresFile, readFigures, writeFigures } from '../../src/domain/figures/figuresFile.ts';
import type { ShopEngine } from '../../src/domain/figures/types.ts';
import { fileOfVan, ranges, van } from './figures.ts';

const changed = (from: string, to: string): string => {
  if (!fileOfVan.includes(from)) throw new Error(`The file has no ${from}.`);
  return fileOfVan.replace(from, to);
};

describe('a file of figures', () => {
  it('is read whole', () => {
    expect(readFigures(fileOfVan, ranges)).toEqual({ ok: true, value: [van] });
    expect(readFigures(`\uFEFF${fileOfVan}`, ranges).ok).toBe(true);
    expect(readFigures(fileOfVan.replaceAll('\n', '\r\n'), ranges)).toEqual({ ok: true, value: [van] });
  });

  // Lines counted by hand in the file of figures.ts.
  it.each([
    ['cut short', fileOfVan.slice(0, fileOfVan.indexOf('0.4')), 'not-json', 12, 'engines[0].figures[0].low', /end of the text.*cannot be read as JSON/],
    ['empty', '', 'not-json', 1, 'the file', /end of the text/],
    ['a page instead of the file', '<!doctype html>\n<p>', 'not-json', 1, 'the file', /<!doctype/],
    ['a missing comma', changed('"low": 0.4,', '"low": 0.4'), 'not-json', 13, 'engines[0].figures[0]', /a comma or \}/],
    ['a comma too many', changed('"2026-03-04"', '"2026-03-04",'), 'not-json', 19, 'engines[0].figures[0]', /comma too many/],
    ['a decimal comma', changed('"low": 0.4', '"low": 0,4'), 'not-json', 12, 'engines[0].figures[0]', /double quotes/],
    ['a comment', changed('"version"', '// ours\n  "version"'), 'not-json', 3, 'the file', /double quotes/],
    ['__proto__', changed('"title": "Small van"', '"__proto__": {"low": 1}'), 'not-json', 7, 'engines[0].__proto__', /not allowed/],
    ['__proto__ behind an escape', changed('"title": "Small van"', '"\\u005f_proto__": {"low": 1}'), 'not-json', 7, 'engines[0].__proto__', /not allowed/],
    ['constructor', changed('"title": "Small van"', '"constructor": {}'), 'wrong-field', 7, 'engines[0].constructor', /not known here/],
    ['a key twice', changed('"high": 0.8', '"low": 0.8'), 'not-json', 13, 'engines[0].figures[0].low', /stands twice/],
    ['nested too deep', changed('"version": 1', `"version": ${'['.repeat(40)}`), 'not-json', 3, /^version\[0\]/, /too deep/],
    ['a list', '[]', 'not-figures', 1, 'type', /no file of figures/],
    ['another file of the book', changed('book/figures', 'book/meters'), 'not-figures', 2, 'type', /no file of figures/],
    ['a newer version', changed('"version": 1', '"version": 2'), 'newer-version', 3, 'version', /newer book/],
    ['no version', changed('"version": 1', '"version": "1"'), 'unknown-version', 3, 'version', /must be 1/],
    ['an unknown key at the top', changed('"version": 1,', '"version": 1,\n  "shop": "ours",'), 'wrong-field', 4, 'shop', /not known here/],
    ['an unknown key in a figure', changed('"low": 0.4', '"lowest": 0.4'), 'wrong-field', 12, 'engines[0].figures[0].lowest', /not known here/],
    ['a missing field', changed('      "title": "Small van",\n', ''), 'wrong-field', 5, 'engines[0].title', /is missing/],
    ['a number as text', changed('"low": 0.4', '"low": "0.4"'), 'wrong-field', 12, 'engines[0].figures[0].low', /must be a number/],
    ['no finite number', changed('"low": 0.4', '"low": -1e999'), 'wrong-field', 12, 'engines[0].figures[0].low', /must be a number/],
    ['ends swapped', changed('"low": 0.4', '"low": 4'), 'wrong-field', 12, 'engines[0].figures[0].low', /above high/],
    ['no limit at all', changed('"high": 0.9,\n          ', ''), 'wrong-field', 20, 'engines[0].figures[1].low', /at least one/],
    ['a range this book has not', changed('"plug-gap"', '"plug-torque"'), 'wrong-field', 21, 'engines[0].figures[1].range', /plug-torque/],
    ['a unit of another kind', changed('"unit": "mm"', '"unit": "ohm"'), 'wrong-field', 23, 'engines[0].figures[1].unit', /resistance.*mm/],
    ['a unit nobody knows', changed('"unit": "ohm"', '"unit": "ohmz"'), 'wrong-field', 14, 'engines[0].figures[0].unit', /no unit of this book/],
    ['a day that does not exist', changed('2026-03-05', '2026-02-30'), 'wrong-field', 26, 'engines[0].figures[1].enteredOn', /2026-02-30/],
    ['nobody entered it', changed('"enteredBy": "B"', '"enteredBy": " "'), 'wrong-field', 25, 'engines[0].figures[1].enteredBy', /not empty/],
    ['text over several lines', changed('Invented data, page 2', 'Invented\\ndata'), 'wrong-field', 24, 'engines[0].figures[1].from', /one line/],
    ['an id with a capital', changed('"small-van"', '"Small-van"'), 'wrong-field', 6, 'engines[0].id', /lower case/],
    ['an absurd temperature', changed('"referenceTemperature": 20', '"referenceTemperature": 293.15'), 'wrong-field', 15, 'engines[0].figures[0].referenceTemperature', /between -40 and 150/],
    ['an engine twice', JSON.stringify({ type: 'ignition-bench-book/figures', version: 1, engines: [van, van] }), 'wrong-field', 1, 'engines[1].id', /stands twice/],
    ['too large', ' '.repeat(largestFiguresFile + 1), 'too-large', 1, 'file', /1 MB/],
  ] as const)('%s: refused with its line and field', (_label, text, code, line, field, message) => {
    const read = readFigures(text, ranges);
    if (read.ok) throw new Error('It was taken.');
    expect({ code: read.error.code, line: read.error.line }).toEqual({ code, line });
    if (typeof field === 'string') expect(read.error.input).toBe(field);
    else expect(read.error.input).toMatch(field);
    expect(read.error.message).toMatch(message);
    if (code !== 'too-large') expect(read.error.message.startsWith(`Line ${line}, `)).toBe(true);
  });

  it('for ranges of another edition stays readable where that is asked for', () => {
    const other = changed('"plug-gap"', '"plug-torque"');
    expect(readFigures(other).ok).toBe(true);
  });
});

const word = fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,2}$/);
const line = fc.stringMatching(/^[A-Za-z"\\é,.]{1,20}( [0-9A-Za-z]{1,10})?$/);
const limits = fc
  .tuple(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom('low', 'high', 'both'))
  // A file has no way to write the minus before nought.
  .map(([one, other, which]) => ({ ...(which === 'high' ? {} : { low: Math.min(one, other) + 0 }), ...(which === 'low' ? {} : { high: Math.max(one, other) + 0 }) }));
const day = fc.date({ min: new Date('1990-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10));
const figure = fc
  .record({ place: fc.constantFrom(['coil-primary', 'ohm'], ['coil-primary', 'kohm'], ['plug-gap', 'mm'] as const), limits, at: fc.option(fc.integer({ min: -40, max: 150 }), { nil: undefined }), from: line, enteredBy: line, enteredOn: day })
  .map(({ place: [range = '', unit = ''], limits: ends, at, ...rest }) => ({ range, unit, ...ends, ...(at === undefined ? {} : { referenceTemperature: at }), ...rest }));
const engines: fc.Arbitrary<ShopEngine[]> = fc.uniqueArray(
  fc.record({ id: word, title: line, figures: fc.array(figure, { maxLength: 5 }) }),
  { selector: ({ id }) => id, maxLength: 5 },
);

describe('whatever is written', () => {
  it('is read back the same', () => {
    fc.assert(fc.property(engines, (all) => {
      expect(readFigures(writeFigures(all), ranges)).toEqual({ ok: true, value: all });
    }));
  });

  it('with any part of it replaced by anything is read or refused with a line, and never throws', () => {
    const paths = ['engines', 'engines.0', 'engines.0.figures', 'engines.0.figures.0', 'engines.0.figures.0.low', 'engines.0.figures.0.unit', 'engines.0.id', 'version', 'type'];
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) => {
        const file = JSON.parse(fileOfVan) as Record<string, unknown>;
        const steps = path.split('.');
        const last = steps.pop() ?? '';
        const inner = steps.reduce((at, step) => at[step] as Record<string, unknown>, file);
        inner[last] = value;
        const read = readFigures(JSON.stringify(file, undefined, 1), ranges);
        if (!read.ok) expect(read.error.line).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it('any JSON and any text: never throws', () => {
    fc.assert(fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
      expect(typeof readFigures(text, ranges).ok).toBe('boolean');
    }));
  });
});
