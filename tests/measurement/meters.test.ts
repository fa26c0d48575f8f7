/** A meter of the shop: which range holds a reading, what is refused, and files that come from anywhere (hostile keys after RFC 8259 §4). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meterFor, metersFor, mostMeters, problemWithMeter, rangeFor, rangeWords } from '../../src/domain/measurement/meters.ts';
import type { MeterRange, UserMeter } from '../../src/domain/measurement/meters.ts';
import { meterQuantities } from '../../src/domain/measurement/meters.data.ts';
import { exportMeters, importMeters, largestMetersFile, mergeMeters, metersVersion } from '../../src/domain/measurement/metersFile.ts';
import { figureText, readMeterTexts, textsOfMeter } from '../../src/domain/measurement/meterTexts.ts';
import { parseInputText } from '../../src/domain/units/parse.ts';
import { unitById, unitsOf } from '../../src/domain/units/table.ts';

/** Figures in the manner of a handheld meter's data sheet, invented. */
const bench: UserMeter = {
  id: 'bench',
  name: 'Bench meter',
  ranges: [
    { quantity: 'resistance', unit: 'kohm', upTo: 20, percent: 0.8, counts: 3, resolution: 0.01 },
    { quantity: 'resistance', unit: 'ohm', upTo: 200, percent: 1, counts: 5, resolution: 0.1 },
    { quantity: 'resistance', unit: 'Mohm', upTo: 20, percent: 1.5, counts: 5, resolution: 0.01 },
    { quantity: 'voltage', unit: 'V', percent: 0.5, counts: 2 },
  ],
};
const gauge: UserMeter = { id: 'gauge', name: 'Gauge', ranges: [{ quantity: 'pressure', unit: 'psi', upTo: 300, percent: 0, counts: 1, resolution: 6 }] };

describe('the range a reading is taken in', () => {
  const cases: readonly { label: string; value: number | 'open'; unit: string; upTo: number; resolution: number }[] = [
    { label: '0.6 Ω in the lowest', value: 0.6, unit: 'ohm', upTo: 200, resolution: 0.1 },
    { label: '200 Ω just fits', value: 200, unit: 'ohm', upTo: 200, resolution: 0.1 },
    { label: '200.1 Ω in the next, 0.01 kΩ is 10 Ω', value: 200.1, unit: 'ohm', upTo: 20, resolution: 10 },
    { label: '9.4 kΩ, given in kΩ', value: 9.4, unit: 'kohm', upTo: 20, resolution: 0.01 },
    { label: '21 kΩ in the highest, 0.01 MΩ is 10 kΩ', value: 21, unit: 'kohm', upTo: 20, resolution: 10 },
    { label: 'an open circuit in the highest', value: 'open', unit: 'ohm', upTo: 20, resolution: 10_000 },
    { label: 'below nothing by size', value: -150, unit: 'ohm', upTo: 200, resolution: 0.1 },
  ];
  it.each(cases)('$label', ({ value, unit, upTo, resolution }) => {
    const range = rangeFor(bench, 'resistance', { value, unit });
    const meter = meterFor(bench, 'resistance', { value, unit });
    expect(range.ok && range.value.upTo).toBe(upTo);
    expect(meter.ok && meter.value.resolution).toBeCloseTo(resolution, 12);
    expect(meter.ok && meter.value.name).toBe('Bench meter');
  });

  it('without a full scale holds any reading; without a size of one count the digits typed decide', () => {
    expect(meterFor(bench, 'voltage', { value: 40, unit: 'kV' })).toEqual({ ok: true, value: { name: 'Bench meter', percent: 0.5, counts: 2 } });
  });

  it('a gauge stated in per cent of full scale: 2 % of 300 psi is 6 psi, or 41.4 kPa (NIST SP 811: 6.894757 kPa each)', () => {
    const meter = meterFor(gauge, 'pressure', { value: 1200, unit: 'kPa' });
    expect(meter.ok && meter.value.resolution).toBeCloseTo(6 * 6.894757, 4);
  });

  it('a reading past the highest range is refused with what was found', () => {
    const refused = rangeFor(bench, 'resistance', { value: 21, unit: 'Mohm' });
    expect(refused).toMatchObject({ ok: false, error: { input: 'meter', code: 'over-range' } });
    expect(refused.ok ? '' : refused.error.message).toMatch(/Bench meter reads up to 20 MΩ, and 21\sMΩ is past that/u);
  });

  it('a quantity the meter does not measure is refused', () => {
    expect(rangeFor(gauge, 'voltage', { value: 1, unit: 'V' })).toMatchObject({ ok: false, error: { code: 'no-such-range' } });
    expect(metersFor([bench, gauge], 'pressure').map(({ id }) => id)).toEqual(['gauge']);
  });

  it('the range found holds the reading, and no lower one does', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2e7, noNaN: true }), (ohms) => {
        const found = rangeFor(bench, 'resistance', { value: ohms, unit: 'ohm' });
        const scale = found.ok ? (found.value.upTo ?? 0) * { ohm: 1, kohm: 1e3, Mohm: 1e6 }[found.value.unit as 'ohm'] : NaN;
        const lower = [200, 20e3, 20e6].filter((one) => one < scale);
        expect(ohms <= scale && lower.every((one) => ohms > one)).toBe(true);
      }),
    );
  });

  it('is said in words', () => {
    expect(bench.ranges.map((range) => rangeWords(range))[1]).toBe('up to 200 Ω: ±1 % ±5 counts of 0.1 Ω');
    expect(rangeWords({ quantity: 'voltage', unit: 'V', percent: 0.5, counts: 1 }, { decimalMark: ',' })).toBe('any reading: ±0,5 % ±1 count');
  });
});

const row = { quantity: 'resistance', upTo: '', percent: '0.8', counts: '3', resolution: '' };

describe('a meter as typed', () => {
  it('keeps the units typed', () => {
    const read = readMeterTexts({ name: ' Bench ', ranges: [{ ...row, upTo: '2k', resolution: '1 ohm' }, { ...row, quantity: 'pressure', resolution: '0,5 psi' }, { ...row, quantity: 'temperature', upTo: '400 F', resolution: '1 C' }] });
    expect(read).toEqual({
      ok: true,
      value: {
        name: 'Bench',
        ranges: [
          { quantity: 'resistance', unit: 'kohm', upTo: 2, percent: 0.8, counts: 3, resolution: 0.001 },
          { quantity: 'pressure', unit: 'psi', percent: 0.8, counts: 3, resolution: 0.5 },
          { quantity: 'temperature', unit: 'F', upTo: 400, percent: 0.8, counts: 3, resolution: 1.8 },
        ],
      },
    });
  });

  const refusals: readonly { label: string; texts: Parameters<typeof readMeterTexts>[0]; input: string; code: string }[] = [
    { label: 'no name', texts: { name: ' ', ranges: [row] }, input: 'name', code: 'missing' },
    { label: 'a name too long', texts: { name: 'x'.repeat(81), ranges: [row] }, input: 'name', code: 'too-long' },
    { label: 'no range', texts: { name: 'm', ranges: [] }, input: 'ranges', code: 'no-range' },
    { label: 'too many ranges', texts: { name: 'm', ranges: Array.from({ length: 41 }, (_, index) => ({ ...row, upTo: `${index + 1}` })) }, input: 'ranges', code: 'too-many' },
    { label: 'no per cent', texts: { name: 'm', ranges: [row, { ...row, percent: '' }] }, input: 'ranges.1.percent', code: 'missing' },
    { label: 'no counts', texts: { name: 'm', ranges: [{ ...row, counts: '' }] }, input: 'ranges.0.counts', code: 'missing' },
    { label: 'a word for per cent', texts: { name: 'm', ranges: [{ ...row, percent: 'good' }] }, input: 'ranges.0.percent', code: 'not-a-number' },
    { label: 'more than all of the reading', texts: { name: 'm', ranges: [{ ...row, percent: '101' }] }, input: 'ranges.0.percent', code: 'out-of-range' },
    { label: 'counts below none', texts: { name: 'm', ranges: [{ ...row, counts: '-1' }] }, input: 'ranges.0.counts', code: 'out-of-range' },
    { label: 'volts on an ohm range', texts: { name: 'm', ranges: [{ ...row, upTo: '20 V' }] }, input: 'ranges.0.upTo', code: 'wrong-dimension' },
    { label: 'a full scale of nothing', texts: { name: 'm', ranges: [{ ...row, upTo: '0' }] }, input: 'ranges.0.upTo', code: 'out-of-range' },
    { label: 'a full scale read two ways', texts: { name: 'm', ranges: [{ ...row, upTo: '1,234' }] }, input: 'ranges.0.upTo', code: 'ambiguous' },
    { label: 'a count of nothing', texts: { name: 'm', ranges: [{ ...row, resolution: '0' }] }, input: 'ranges.0.resolution', code: 'out-of-range' },
    { label: 'a count above the scale', texts: { name: 'm', ranges: [{ ...row, upTo: '200', resolution: '1k' }] }, input: 'ranges.0.resolution', code: 'count-above-scale' },
    { label: 'an unknown quantity', texts: { name: 'm', ranges: [{ ...row, quantity: 'luck' }] }, input: 'ranges.0.quantity', code: 'missing' },
    { label: 'one range twice in two units', texts: { name: 'm', ranges: [{ ...row, upTo: '2000' }, { ...row, upTo: '2k' }] }, input: 'ranges.1.upTo', code: 'same-range-twice' },
    { label: 'two ranges without end', texts: { name: 'm', ranges: [row, row] }, input: 'ranges.1.upTo', code: 'same-range-twice' },
  ];
  it.each(refusals)('$label is refused at its field', ({ texts, input, code }) => {
    expect(readMeterTexts(texts)).toMatchObject({ ok: false, error: { input, code } });
  });

  it('is never written so that it could be read two ways', () => {
    expect(figureText(1.234, { decimalMark: ',' })).toBe('1,2340');
    const back = parseInputText(figureText(1.234, { decimalMark: ',' }), { input: 'x', label: 'x', dimension: 'count', unit: 'count' });
    expect(back).toMatchObject({ ok: true, value: { value: 1.234 } });
  });
});

const figure = fc.integer({ min: 1, max: 99_999 }).map((digits) => digits / 1000);
const anyRange: fc.Arbitrary<MeterRange> = fc
  .constantFrom(...meterQuantities)
  .chain(({ dimension }) =>
    fc.record(
      {
        quantity: fc.constant(dimension),
        // A pressure kind is not part of a unit; every unit of the quantity will do.
        unit: fc.constantFrom(...unitsOf(dimension).filter(({ symbol }) => symbol !== '').map(({ id }) => id)),
        upTo: fc.integer({ min: 100_000, max: 999_999 }).map((digits) => digits / 1000),
        percent: fc.integer({ min: 0, max: 100_000 }).map((digits) => digits / 1000),
        counts: fc.integer({ min: 0, max: 500 }),
        resolution: figure,
      },
      { requiredKeys: ['quantity', 'unit', 'percent', 'counts'] },
    ),
  );
const anyMeter: fc.Arbitrary<UserMeter> = fc
  .record({ id: fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9-]{0,20}$/), name: fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }), ranges: fc.array(anyRange, { minLength: 1, maxLength: 6 }) })
  .filter((meter) => problemWithMeter(meter) === undefined);
const anyMeters = fc.uniqueArray(anyMeter, { selector: ({ id }) => id, maxLength: 6 });

describe('files of meters', () => {
  it('give back the same meters, whatever is in them', () => {
    fc.assert(fc.property(anyMeters, (meters) => void expect(importMeters(exportMeters(meters))).toEqual({ ok: true, value: meters })));
  });

  it('every meter reads back from the texts of its form, with either decimal mark', () => {
    fc.assert(
      fc.property(anyMeter, fc.constantFrom('.' as const, ',' as const), (meter, decimalMark) => {
        const back = readMeterTexts(textsOfMeter(meter, { decimalMark }));
        if (!back.ok) throw new Error(`${back.error.input}: ${back.error.message}`);
        const { ranges } = back.value;
        expect(back.value.name).toBe(meter.name.trim());
        meter.ranges.forEach((range, index) => {
          const { unit, ...read } = ranges[index] ?? { unit: '' };
          const { unit: was, ...wanted } = range;
          expect(read).toEqual(wanted);
          // Nothing in the range shows its unit: the usual one of the quantity is as good.
          if (range.upTo !== undefined || range.resolution !== undefined) expect(unitById(unit)?.symbol).toBe(unitById(was)?.symbol);
        });
      }),
    );
  });

  it('never throw, whatever the text', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (text) => void expect(importMeters(text).ok).toBe(false)));
  });

  it('a mark at the start of the file does no harm', () => {
    expect(importMeters(`\uFEFF${exportMeters([bench])}`).ok).toBe(true);
  });

  type Raw = Record<string, unknown>;
  const changed = (change: (file: Raw, meters: Raw[]) => void): string => {
    const file = JSON.parse(exportMeters([bench, gauge])) as Raw;
    change(file, file['meters'] as Raw[]);
    return JSON.stringify(file);
  };
  const inRange = (meters: Raw[], values: Raw) => Object.assign((meters[0]?.['ranges'] as Raw[])[0] ?? {}, values);
  const refusals: readonly { label: string; text: string; code: string; input?: string }[] = [
    { label: 'empty', text: '', code: 'not-json' },
    { label: 'cut short', text: exportMeters([bench]).slice(0, 200), code: 'not-json' },
    { label: 'nested beyond reason', text: '['.repeat(100_000), code: 'not-json' },
    { label: 'null', text: 'null', code: 'not-meters' },
    { label: 'a job', text: '{"type":"ignition-bench-book/job","version":1}', code: 'not-meters' },
    { label: 'too large', text: ' '.repeat(largestMetersFile + 1), code: 'too-large' },
    { label: 'a newer version', text: changed((file) => (file['version'] = metersVersion + 1)), code: 'newer-version' },
    { label: 'version zero', text: changed((file) => (file['version'] = 0)), code: 'unknown-version' },
    { label: 'version as text', text: changed((file) => (file['version'] = '1')), code: 'unknown-version' },
    { label: '__proto__ in a meter', text: exportMeters([bench]).replace('"name":', '"__proto__": {"polluted": true}, "name":'), code: 'forbidden-key' },
    { label: 'constructor in a range', text: exportMeters([bench]).replace('"percent":', '"constructor": {}, "percent":'), code: 'forbidden-key' },
    { label: 'nested too deep', text: exportMeters([bench]).replace('"Bench meter"', `${'['.repeat(30)}${']'.repeat(30)}`), code: 'too-deep' },
    { label: 'an unknown key', text: changed((file) => (file['extra'] = 1)), code: 'wrong-field' },
    { label: 'meters not a list', text: changed((file) => (file['meters'] = {})), code: 'wrong-field' },
    { label: 'too many meters', text: changed((file) => (file['meters'] = Array.from({ length: mostMeters + 1 }, (_, index) => ({ ...gauge, id: `g${index}` })))), code: 'wrong-field' },
    { label: 'an id with a path in it', text: changed((_file, meters) => Object.assign(meters[0] ?? {}, { id: '../x' })), code: 'wrong-field' },
    { label: 'the same id twice', text: changed((_file, meters) => Object.assign(meters[1] ?? {}, { id: 'bench' })), code: 'wrong-field', input: 'meters[1].id' },
    { label: 'a unit of another quantity', text: changed((_file, meters) => inRange(meters, { unit: 'V' })), code: 'wrong-field', input: 'meters[0].ranges.0.unit' },
    { label: 'a unit from the language itself', text: changed((_file, meters) => inRange(meters, { unit: 'toString' })), code: 'wrong-field' },
    { label: 'a quantity that is none', text: changed((_file, meters) => inRange(meters, { quantity: 'luck' })), code: 'wrong-field' },
    { label: 'a full scale below nothing', text: changed((_file, meters) => inRange(meters, { upTo: -5 })), code: 'wrong-field', input: 'meters[0].ranges.0.upTo' },
    { label: 'a figure as text', text: changed((_file, meters) => inRange(meters, { percent: '0.8' })), code: 'wrong-field' },
    { label: 'a figure beyond all numbers', text: exportMeters([bench]).replace('"percent": 0.8', '"percent": 1e999'), code: 'wrong-field' },
    { label: 'no name', text: changed((_file, meters) => Object.assign(meters[0] ?? {}, { name: ' ' })), code: 'wrong-field', input: 'meters[0].name' },
  ];
  it.each(refusals)('$label', ({ text, code, input }) => {
    expect(importMeters(text)).toMatchObject({ ok: false, error: { code, ...(input === undefined ? {} : { input }) } });
    expect(({} as Raw)['polluted']).toBeUndefined();
  });
});

describe('two lists of meters in one', () => {
  it('by id: new ones are added, changed ones replaced and named, none dropped', () => {
    const renamed = { ...bench, name: 'Bench meter, recalibrated' };
    expect(mergeMeters([bench], [renamed, gauge])).toEqual({ meters: [renamed, gauge], added: ['Gauge'], replaced: ['Bench meter, recalibrated'] });
    expect(mergeMeters([gauge, bench], [{ ...bench, ranges: bench.ranges.map((range) => ({ ...range })) }])).toEqual({ meters: [gauge, bench], added: [], replaced: [] });
  });

  it('holds every meter of both, once, and taking the same file in again changes nothing', () => {
    fc.assert(
      fc.property(anyMeters, anyMeters, (here, incoming) => {
        const { meters } = mergeMeters(here, incoming);
        expect(new Set(meters.map(({ id }) => id))).toEqual(new Set([...here, ...incoming].map(({ id }) => id)));
        expect(meters).toHaveLength(new Set(meters.map(({ id }) => id)).size);
        expect(mergeMeters(meters, incoming)).toEqual({ meters, added: [], replaced: [] });
      }),
    );
  });
});
