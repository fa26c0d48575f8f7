import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseInputText, parseList, parseQuantity } from '../../src/domain/units/parse.ts';
import type { ExpectedInput } from '../../src/domain/units/parse.ts';
import { units } from '../../src/domain/units/table.data.ts';
import type { InputTextCode } from '../../src/domain/units/types.ts';

const resistance: ExpectedInput = { input: 'reading', label: 'Reading', dimension: 'resistance', unit: 'ohm', acceptOpen: true };
const temperature: ExpectedInput = { input: 'temperature', label: 'Temperature', dimension: 'temperature', unit: 'C' };
const pressure: ExpectedInput = { input: 'readings', label: 'Readings', dimension: 'pressure', unit: 'psi' };
const percent: ExpectedInput = { input: 'trim', label: 'Trim', dimension: 'ratio', unit: '%' };

/** What the text means by SI prefixes, by IEC 60062 (letters for the decimal mark) and by the ways numbers are written. */
const read: readonly (readonly [text: string, expected: ExpectedInput, value: number, resolution: number, typedUnit: string])[] = [
  ['0.62 ohm', resistance, 0.62, 0.01, 'ohm'],
  ['0,62 Ω', resistance, 0.62, 0.01, 'ohm'],
  ['0.62', resistance, 0.62, 0.01, 'ohm'],
  ['620 mohm', resistance, 0.62, 0.001, 'mohm'],
  ['4k7', resistance, 4700, 100, 'ohm'],
  ['4K7', resistance, 4700, 100, 'ohm'],
  ['4k7 Ω', resistance, 4700, 100, 'ohm'],
  ['4k70', resistance, 4700, 10, 'ohm'],
  ['4R7', resistance, 4.7, 0.1, 'ohm'],
  ['0R62', resistance, 0.62, 0.01, 'ohm'],
  ['R47', resistance, 0.47, 0.01, 'ohm'],
  ['1M5', resistance, 1500000, 100000, 'ohm'],
  ['9.4 kohm', resistance, 9400, 100, 'kohm'],
  ['9.4k', resistance, 9400, 100, 'kohm'],
  ['9,40k', resistance, 9400, 10, 'kohm'],
  ['2.3 Mohm', resistance, 2300000, 100000, 'Mohm'],
  ['1e3', resistance, 1000, 1000, 'ohm'],
  ['1.5e-3 k', resistance, 1.5, 0.1, 'kohm'],
  ['1 234', resistance, 1234, 1, 'ohm'],
  ['1 234.5', resistance, 1234.5, 0.1, 'ohm'],
  ['1\u202f234\u00a0Ω', resistance, 1234, 1, 'ohm'],
  ["1'234", resistance, 1234, 1, 'ohm'],
  ['1’234,5', resistance, 1234.5, 0.1, 'ohm'],
  ['1 234,567', resistance, 1234.567, 0.001, 'ohm'],
  ['1.234', resistance, 1.234, 0.001, 'ohm'],
  ['0,625', resistance, 0.625, 0.001, 'ohm'],
  ['12,34', resistance, 12.34, 0.01, 'ohm'],
  ['1234,567', resistance, 1234.567, 0.001, 'ohm'],
  ['1,234.5', resistance, 1234.5, 0.1, 'ohm'],
  ['1.234,5', resistance, 1234.5, 0.1, 'ohm'],
  ['1,234,567', resistance, 1234567, 1, 'ohm'],
  ['1.234.567', resistance, 1234567, 1, 'ohm'],
  ['１２．５', resistance, 12.5, 0.1, 'ohm'],
  ['.5', resistance, 0.5, 0.1, 'ohm'],
  ['5.', resistance, 5, 1, 'ohm'],
  ['-0', resistance, 0, 1, 'ohm'],
  ['22 C', temperature, 22, 1, 'C'],
  ['22°C', temperature, 22, 1, 'C'],
  ['22℃', temperature, 22, 1, 'C'],
  ['72 F', temperature, 22.2222222222222, 0.555555555555556, 'F'],
  ['295.15 K', temperature, 22, 0.01, 'K'],
  ['-40 °F', temperature, -40, 0.555555555555556, 'F'],
  ['165 psi', pressure, 165, 1, 'psi'],
  // 11.4 × 100 / 6.894757293168361
  ['11.4 bar', pressure, 165.343021012439, 1.45037737730209, 'bar'],
  ['-3.1 %', percent, -3.1, 0.1, '%'],
  ['+4', percent, 4, 1, '%'],
  ['−3', percent, -3, 1, '%'],
  ['– 3.1%', percent, -3.1, 0.1, '%'],
];

describe('reads', () => {
  test.each(read)('"%s"', (text, expected, value, resolution, typedUnit) => {
    const result = parseInputText(text, expected);
    expect(result).toMatchObject({ ok: true, value: { kind: 'value', unit: expected.unit, typedUnit } });
    if (!result.ok || result.value.kind !== 'value') return;
    expect(Math.abs(result.value.value - value)).toBeLessThanOrEqual(1e-14 * Math.abs(value));
    expect(Math.abs(result.value.resolution - resolution)).toBeLessThanOrEqual(1e-14 * resolution);
    expect(Object.is(result.value.value, -0)).toBe(false);
  });

  test.each(['OL', 'ol', 'O.L', '.OL', 'OL.', 'o/l', '0L', '0.L', 'open', 'Open circuit', 'overload', '∞', 'OL MΩ'])(
    '"%s" as an open circuit',
    (text) => expect(parseInputText(text, resistance)).toEqual({ ok: true, value: { kind: 'open' } }),
  );

  test('a letter for the mark in capacitance and voltage too', () => {
    expect(parseInputText('4n7', { input: 'c', label: 'Capacitance', dimension: 'capacitance', unit: 'pF' })).toMatchObject({
      ok: true,
      value: { value: 4700, resolution: 100 },
    });
    expect(parseInputText('3V3', { input: 'v', label: 'Voltage', dimension: 'voltage', unit: 'mV' })).toMatchObject({
      ok: true,
      value: { value: 3300, resolution: 100 },
    });
  });

  test('0 L as no litres where no circuit can be open', () => {
    expect(parseInputText('0 L', { input: 'v', label: 'Volume', dimension: 'volume', unit: 'l' })).toMatchObject({ ok: true, value: { value: 0 } });
    expect(parseInputText('0L', { input: 'v', label: 'Volume', dimension: 'volume', unit: 'l' })).toMatchObject({ ok: true, value: { value: 0 } });
  });
});

const refused: readonly (readonly [text: string, expected: ExpectedInput, code: InputTextCode, says: readonly string[]])[] = [
  ['', resistance, 'missing', ['Reading', 'kΩ', 'OL']],
  [' \t', resistance, 'missing', ['Reading']],
  ['1,234', resistance, 'ambiguous', ['1.234', '1234']],
  ['-12,345 kohm', resistance, 'ambiguous', ['-12.345', '-12345']],
  ['abc', resistance, 'not-a-number', ['abc', 'Reading']],
  ['1,2,3', resistance, 'not-a-number', ['1,2,3']],
  ['1.2.3', resistance, 'not-a-number', ['1.2.3']],
  ['--5', resistance, 'not-a-number', ['--5']],
  ['NaN', resistance, 'not-a-number', ['NaN']],
  ['½', resistance, 'not-a-number', ['½']],
  ['1e400', resistance, 'not-a-number', ['too large']],
  ['1e-400', resistance, 'not-a-number', ['too small']],
  ['12 345 6', resistance, 'not-a-number', ['more than one number']],
  ['5 ohm 3 ohm', resistance, 'not-a-number', ['more than one number']],
  ['5;6', resistance, 'not-a-number', ['more than one number']],
  ['5 ohm V', resistance, 'unknown-unit', ['two units']],
  ['4k7 V', resistance, 'unknown-unit', ['two units']],
  ['5 zorg', resistance, 'unknown-unit', ['zorg', 'mΩ, Ω, kΩ or MΩ']],
  ['10³', resistance, 'unknown-unit', ['³']],
  ['0x10', resistance, 'unknown-unit', ['x10']],
  ['12 V', resistance, 'wrong-dimension', ['12 V', 'a voltage', 'a resistance', 'kΩ']],
  ['2.2 m', resistance, 'wrong-dimension', ['a length']],
  ['3V3', resistance, 'wrong-dimension', ['a voltage']],
  ['4k7', temperature, 'wrong-dimension', ['a resistance', 'a temperature']],
  ['22°', temperature, 'wrong-dimension', ['an angle']],
  ['OL', temperature, 'open-not-accepted', ['OL', 'Temperature']],
];

describe('refuses', () => {
  test.each(refused)('"%s"', (text, expected, code, says) => {
    const result = parseInputText(text, expected);
    expect(result).toMatchObject({ ok: false, error: { input: expected.input, code } });
    if (result.ok) return;
    expect(result.error.message.startsWith(expected.label)).toBe(true);
    for (const part of says) expect(result.error.message).toContain(part);
  });

  test('a very long text with a short message', () => {
    const result = parseInputText('9'.repeat(5) + 'x'.repeat(5000), resistance);
    expect(result.ok ? 0 : result.error.message.length).toBeGreaterThan(20);
    expect(result.ok ? Infinity : result.error.message.length).toBeLessThan(250);
  });
});

describe('lists', () => {
  test.each<readonly [string, readonly number[]]>([
    ['150 155 160 148', [150, 155, 160, 148]],
    ['150; 155;160', [150, 155, 160]],
    ['150, 155, 160', [150, 155, 160]],
    ['150 psi 155 psi', [150, 155]],
    ['150psi;155psi', [150, 155]],
    ['150 155 160 psi', [150, 155, 160]],
    ['150,5 155,25', [150.5, 155.25]],
    ['- 5 -6 7', [-5, -6, 7]],
    ['11.4 bar; 160 psi', [165.343021012439, 160]],
    ['12 12.5 kgf/cm2', [170.680119685434, 177.791791338994]],
    ['165', [165]],
  ])('"%s"', (text, expected) => {
    const result = parseList(text, pressure);
    expect(result.ok).toBe(true);
    if (!result.ok) return;
    expect(result.value).toHaveLength(expected.length);
    result.value.forEach((item, index) => expect(item.value).toBeCloseTo(expected[index] ?? NaN, 10));
  });

  test('a unit of two words after each', () => {
    const torque: ExpectedInput = { input: 't', label: 'Torque', dimension: 'torque', unit: 'N m' };
    const result = parseList('20 N m 25 N m', torque);
    expect(result.ok && result.value.map((item) => item.value)).toEqual([20, 25]);
  });

  test.each<readonly [string, InputTextCode]>([
    ['', 'missing'],
    [' ; ', 'missing'],
    ['150,155,160', 'ambiguous'],
    ['150,155', 'ambiguous'],
    ['150 psi 155 160', 'unknown-unit'],
    ['150 155 zorg', 'unknown-unit'],
    ['150 155 V', 'wrong-dimension'],
    ['150 OL 155', 'open-not-accepted'],
    ['150 ; abc', 'not-a-number'],
  ])('"%s" is refused as %s', (text, code) => expect(parseList(text, pressure)).toMatchObject({ ok: false, error: { code } }));
});

describe('a quantity of any dimension', () => {
  test.each<readonly [string, number, readonly string[]]>([
    ['165 psi', 165, ['psi']],
    ['20 lb ft', 20, ['lbf ft']],
    ['4k7', 4700, ['ohm']],
    ['0.95', 0.95, ['1']],
    ['5 K', 5, ['kohm', 'K', 'Kdiff']],
  ])('"%s"', (text, value, ids) => {
    const result = parseQuantity(text, { input: 'value', label: 'Value' });
    expect(result.ok && { value: result.value.value, ids: result.value.units.map((unit) => unit.id) }).toEqual({ value, ids });
  });

  test.each<readonly [string, InputTextCode]>([
    ['', 'missing'],
    ['x', 'not-a-number'],
    ['1,234 psi', 'ambiguous'],
    ['5 zorg', 'unknown-unit'],
  ])('"%s" is refused as %s', (text, code) => {
    expect(parseQuantity(text, { input: 'value', label: 'Value' })).toMatchObject({ ok: false, error: { input: 'value', code } });
  });
});

describe('whatever is typed', () => {
  const expectations = units.map((unit): ExpectedInput => ({ input: 'x', label: 'X', dimension: unit.dimension, unit: unit.id, acceptOpen: true }));
  const piece = fc.constantFrom(...'0123456789.,-+eEkKMRVµΩ∞% ;\'’−/'.split(''), ...units.map((unit) => unit.symbol), 'OL', '1e308', '999999');
  const text = fc.oneof(fc.string({ unit: 'binary' }), fc.array(piece, { maxLength: 12 }).map((parts) => parts.join('')));

  test('it is read as a finite number or refused with a message', () => {
    fc.assert(
      fc.property(text, fc.constantFrom(...expectations), (typed, expected) => {
        const results = [parseInputText(typed, expected), parseList(typed, expected), parseQuantity(typed, expected)];
        for (const result of results) {
          if (!result.ok) expect(result.error.message.length).toBeGreaterThan(10);
          const read = result.ok ? [result.value].flat() : [];
          for (const item of read) {
            if ('value' in item) expect([Number.isFinite(item.value), Number.isFinite(item.resolution), item.resolution > 0]).toEqual([true, true, true]);
          }
        }
      }),
      { numRuns: 3000 },
    );
  });

  test('comma and point read alike when three digits do not follow', () => {
    const decimals = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: 8 }).filter((digits) => digits.length !== 3);
    fc.assert(
      fc.property(fc.nat(99999), decimals, (whole, digits) => {
        const withPoint = parseInputText(`${whole}.${digits}`, resistance);
        expect(withPoint.ok).toBe(true);
        expect(parseInputText(`${whole},${digits}`, resistance)).toEqual(withPoint);
      }),
    );
  });

  test('the unit typed does not change the value', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999999 }), fc.integer({ min: 0, max: 3 }), (digits, places) => {
        const inMilliohms = parseInputText(`${digits}e${places} mohm`, resistance);
        const inOhms = parseInputText(`${digits}e${places - 3} ohm`, resistance);
        const inKilohms = parseInputText(`${digits}e${places - 6}k`, resistance);
        const values = [inMilliohms, inOhms, inKilohms].map((result) => (result.ok && result.value.kind === 'value' ? result.value.value : NaN));
        expect(values[0]).toBe(values[1]);
        expect(values[2]).toBe(values[1]);
      }),
    );
  });
});
