import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatNumber, formatValue } from '../../src/domain/units/format.ts';
import type { FormatOptions } from '../../src/domain/units/format.ts';
import { parseInputText } from '../../src/domain/units/parse.ts';
import { units } from '../../src/domain/units/table.data.ts';

const GAP = '\u202f';
const SPACE = '\u00a0';

describe('numbers', () => {
  test.each<readonly [number, FormatOptions, string]>([
    [0.62, {}, '0.62'],
    [1 / 3, {}, '0.333333333333'],
    [0.1 + 0.2, {}, '0.3'],
    [1234, {}, '1234'],
    [12345, {}, `12${GAP}345`],
    [1234567.5, {}, `1${GAP}234${GAP}567.5`],
    [1234567.5, { decimalMark: ',' }, `1${GAP}234${GAP}567,5`],
    [-3.1, {}, '−3.1'],
    [0.95, { decimals: 3 }, '0.950'],
    [-0.04, { decimals: 1 }, '0.0'],
    [-0, {}, '0'],
    [1e-7, {}, '0.0000001'],
    [1e21, {}, `1${`${GAP}000`.repeat(7)}`],
    [1e22, { decimals: 2 }, `10${`${GAP}000`.repeat(7)}`],
    [9.4, { significant: 3 }, '9.40'],
    [9996, { significant: 3 }, `10${GAP}000`],
    [0, { significant: 3 }, '0'],
    [0, {}, '0'],
    [Infinity, {}, '∞'],
  ])('%d with %o is %s', (value, options, text) => expect(formatNumber(value, options)).toBe(text));

  // JCGM 100, 7.2.6: an uncertainty to at most two significant digits, the value to the same place.
  test.each<readonly [number, number, string, string]>([
    [0.52684, 0.041294, '0.527', '0.041'],
    [100.02147, 0.00035, '100.02147', '0.00035'],
    [10503, 135, `10${GAP}500`, '140'],
    [0.5268, 0.0996, '0.53', '0.10'],
    [0.5268, 0.0994, '0.527', '0.099'],
    [12.62, 0.0831, '12.620', '0.083'],
  ])('%d ± %d is %s ± %s', (value, uncertainty, text, uncertaintyText) => {
    expect(formatNumber(value, { uncertainty })).toBe(text);
    expect(formatNumber(uncertainty, { uncertainty })).toBe(uncertaintyText);
  });

  test('an uncertainty of nothing decides nothing', () => expect(formatNumber(0.25, { uncertainty: 0 })).toBe('0.25'));
});

describe('values', () => {
  test.each<readonly [number, string, string]>([
    [0.8, 'mm', `0.80${SPACE}mm`],
    [0.0004, 'mm', `0.0004${SPACE}mm`],
    [165.34, 'psi', `165${SPACE}psi`],
    [11.4, 'bar', `11.4${SPACE}bar`],
    [22.2222, 'C', `22${SPACE}°C`],
    [-3.14, '%', `−3.1${SPACE}%`],
    [0.5268, 'ohm', `0.527${SPACE}Ω`],
    [9400, 'ohm', `9400${SPACE}Ω`],
    [90, 'deg', '90.0°'],
    [14.7, '1', '14.7'],
    [0.5, 'kPa/min', `0.5${SPACE}kPa/min`],
  ])('%d %s', (value, unit, text) => {
    expect(formatValue(value, unit, unit === 'kPa/min' ? { decimals: 1 } : {})).toBe(text);
  });
});

const anyUnit = fc.constantFrom(...units);
const anyNumber = fc.double({ min: -1e9, max: 1e9, noNaN: true });

test('what is written is read back as the same value', () => {
  fc.assert(
    fc.property(anyUnit, anyNumber, fc.integer({ min: 0, max: 6 }), (unit, number, decimals) => {
      const value = Number(number.toFixed(decimals));
      const text = formatValue(value, unit.id, { decimals });
      const read = parseInputText(text, { input: 'x', label: 'X', dimension: unit.dimension, unit: unit.id });
      expect(read).toMatchObject({ ok: true, value: { kind: 'value', value: value === 0 ? 0 : value, typedUnit: unit.id } });
    }),
    { numRuns: 1000 },
  );
});

test('with a decimal comma too, save the one form that is refused as ambiguous', () => {
  fc.assert(
    fc.property(anyNumber, fc.integer({ min: 0, max: 6 }), (number, decimals) => {
      const value = Number(number.toFixed(decimals));
      const text = formatNumber(value, { decimals, decimalMark: ',' });
      const read = parseInputText(text, { input: 'x', label: 'X', dimension: 'resistance', unit: 'ohm' });
      if (/^−?[1-9]\d{0,2},\d{3}$/u.test(text)) expect(read).toMatchObject({ ok: false, error: { code: 'ambiguous' } });
      else expect(read).toMatchObject({ ok: true, value: { value: value === 0 ? 0 : value } });
    }),
    { numRuns: 1000 },
  );
});

test('no number is written in powers of ten or as less than nothing', () => {
  const options = fc.record(
    { decimals: fc.integer({ min: 0, max: 8 }), uncertainty: fc.double({ min: 0, noNaN: true }), significant: fc.integer({ min: 1, max: 15 }) },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), options, (value, chosen) => {
      const text = formatNumber(value, chosen);
      expect(text).toMatch(/^−?\d{1,4}(\d|\u202f\d{3})*(\.\d+)?$/u);
      expect(text).not.toMatch(/^−[0.\u202f]*$/u);
    }),
    { numRuns: 1000 },
  );
});
