import { describe, expect, test } from 'vitest';
import { convert } from '../../src/domain/units/convert.ts';
import { units } from '../../src/domain/units/table.data.ts';
import { unitById } from '../../src/domain/units/table.ts';

interface FactorCase {
  readonly unit: string;
  /** One of the unit in `of`. */
  readonly expected: number;
  readonly of: string;
  /** Relative. Exact factors are held to the last digit of a double; rounded ones to the digits printed. */
  readonly tolerance: number;
  readonly source: string;
}

const EXACT = 1e-15;
const SP811 = 'NIST SP 811, appendix B.8';

const factors: readonly FactorCase[] = [
  { unit: 'in', expected: 25.4, of: 'mm', tolerance: EXACT, source: SP811 },
  { unit: 'thou', expected: 0.0254, of: 'mm', tolerance: EXACT, source: `${SP811}, a thousandth of the inch` },
  { unit: 'ft', expected: 0.3048, of: 'm', tolerance: EXACT, source: SP811 },
  { unit: 'thou/1000 mi', expected: 1 / 63.36, of: 'mm/1000 km', tolerance: EXACT, source: 'a mile is 63 360 inches' },
  { unit: 'mi', expected: 1609.344, of: 'm', tolerance: EXACT, source: SP811 },
  { unit: 'lb', expected: 0.45359237, of: 'kg', tolerance: EXACT, source: SP811 },
  { unit: 'kgf', expected: 9.80665, of: 'N', tolerance: EXACT, source: SP811 },
  { unit: 'lbf', expected: 4.4482216152605, of: 'N', tolerance: EXACT, source: 'product of the exact pound and gravity' },
  { unit: 'lbf', expected: 4.448222, of: 'N', tolerance: 2e-7, source: `${SP811}, as printed` },
  { unit: 'psi', expected: 6.894757293168361, of: 'kPa', tolerance: 2e-15, source: 'lbf over the square inch' },
  { unit: 'psi', expected: 6.894757, of: 'kPa', tolerance: 1e-7, source: `${SP811}, as printed` },
  { unit: 'psi/min', expected: 6.894757293168361, of: 'kPa/min', tolerance: 2e-15, source: 'lbf over the square inch, each minute' },
  { unit: 'bar/min', expected: 100, of: 'kPa/min', tolerance: EXACT, source: SP811 },
  { unit: 'g/cm3', expected: 1000, of: 'kg/m3', tolerance: EXACT, source: SP811 },
  { unit: 'kg/l', expected: 1000, of: 'kg/m3', tolerance: EXACT, source: `${SP811}, a litre is a thousandth of a cubic metre` },
  { unit: 'bar', expected: 100, of: 'kPa', tolerance: EXACT, source: SP811 },
  { unit: 'mbar', expected: 1, of: 'hPa', tolerance: EXACT, source: SP811 },
  { unit: 'atm', expected: 101.325, of: 'kPa', tolerance: EXACT, source: SP811 },
  { unit: 'inHg', expected: 3.386389, of: 'kPa', tolerance: EXACT, source: `${SP811}, inch of mercury, conventional` },
  { unit: 'mmHg', expected: 133.322387415, of: 'Pa', tolerance: EXACT, source: `${SP811}, millimetre of mercury, conventional` },
  { unit: 'kgf/cm2', expected: 98.0665, of: 'kPa', tolerance: EXACT, source: SP811 },
  { unit: 'lbf ft', expected: 1.3558179483314004, of: 'N m', tolerance: EXACT, source: 'lbf times the foot' },
  { unit: 'lbf ft', expected: 1.355818, of: 'N m', tolerance: 1e-7, source: `${SP811}, as printed` },
  { unit: 'mph', expected: 1.609344, of: 'km/h', tolerance: EXACT, source: SP811 },
  { unit: 'hp', expected: 745.6998715822702, of: 'W', tolerance: EXACT, source: '550 ft lbf/s' },
  { unit: 'hp', expected: 745.6999, of: 'W', tolerance: 1e-7, source: `${SP811}, as printed` },
  { unit: 'metric-hp', expected: 735.49875, of: 'W', tolerance: EXACT, source: '75 kgf m/s' },
];

interface ConversionCase {
  readonly value: number;
  readonly from: string;
  readonly expected: number;
  readonly to: string;
}

/** Computed apart from this program from the factors above and printed to about nine digits; held to the last digit printed. */
const conversions: readonly ConversionCase[] = [
  { value: 150, from: 'psi', expected: 1034.21359, to: 'kPa' },
  { value: 1000, from: 'kPa', expected: 145.037738, to: 'psi' },
  { value: 12.5, from: 'bar', expected: 181.297172, to: 'psi' },
  { value: 180, from: 'psi', expected: 12.4105631, to: 'bar' },
  { value: 20, from: 'inHg', expected: 67.72778, to: 'kPa' },
  { value: 29.92, from: 'inHg', expected: 101.320759, to: 'kPa' },
  { value: 65, from: 'kPa', expected: 19.1944871, to: 'inHg' },
  { value: 18, from: 'inHg', expected: 609.55002, to: 'mbar' },
  { value: 20, from: 'lbf ft', expected: 27.116359, to: 'N m' },
  { value: 27, from: 'N m', expected: 19.914178, to: 'lbf ft' },
  { value: 120, from: 'lbf in', expected: 13.5581795, to: 'N m' },
  { value: 2.5, from: 'kgf m', expected: 24.516625, to: 'N m' },
  { value: 0.035, from: 'in', expected: 0.889, to: 'mm' },
  { value: 1.1, from: 'mm', expected: 0.0433070866, to: 'in' },
  { value: 195, from: 'F', expected: 90.5555556, to: 'C' },
  { value: -18, from: 'C', expected: -0.4, to: 'F' },
  { value: -40, from: 'C', expected: -40, to: 'F' },
  { value: 300, from: 'K', expected: 80.33, to: 'F' },
  { value: 12, from: 'kgf/cm2', expected: 1176.798, to: 'kPa' },
  { value: 1200, from: 'kPa', expected: 12.2365946, to: 'kgf/cm2' },
  { value: 170, from: 'psi', expected: 11.9521828, to: 'kgf/cm2' },
  { value: 1, from: 'atm', expected: 14.6959488, to: 'psi' },
  { value: 70, from: 'mph', expected: 112.65408, to: 'km/h' },
  { value: 100, from: 'km/h', expected: 62.1371192, to: 'mph' },
  { value: 150, from: 'hp', expected: 111.854981, to: 'kW' },
  { value: 100, from: 'kW', expected: 135.962162, to: 'metric-hp' },
  { value: 760, from: 'mmHg', expected: 101.325014, to: 'kPa' },
  { value: 150, from: 'metric-hp', expected: 147.948011, to: 'hp' },
];

/** SI prefixes and the definitions of minute and hour: SI Brochure, tables 7 and 8. */
const prefixes: readonly (readonly [from: string, to: string, expected: number])[] = [
  ['kohm', 'ohm', 1e3],
  ['Mohm', 'ohm', 1e6],
  ['ohm', 'mohm', 1e3],
  ['kohm/m', 'ohm/m', 1e3],
  ['mohm/m', 'ohm/km', 1],
  ['V', 'mV', 1e3],
  ['kV', 'V', 1e3],
  ['A', 'mA', 1e3],
  ['A', 'uA', 1e6],
  ['H', 'mH', 1e3],
  ['mH', 'uH', 1e3],
  ['nF', 'pF', 1e3],
  ['uF', 'nF', 1e3],
  ['farad', 'uF', 1e6],
  ['s', 'ms', 1e3],
  ['ms', 'us', 1e3],
  ['min', 's', 60],
  ['h', 'min', 60],
  ['kHz', 'Hz', 1e3],
  ['MPa', 'bar', 10],
  ['kPa', 'Pa', 1e3],
  ['cm', 'mm', 10],
  ['km', 'm', 1e3],
  ['cm2', 'mm2', 100],
  ['m2', 'cm2', 1e4],
  ['l', 'ml', 1e3],
  ['ml', 'cm3', 1],
  ['m3', 'l', 1e3],
  ['l/min', 'ml/min', 1e3],
  ['l/min', 'l/h', 60],
  ['kg', 'g', 1e3],
  ['g/s', 'kg/h', 3.6],
  ['J', 'mJ', 1e3],
  ['kJ', 'J', 1e3],
  ['kW', 'W', 1e3],
  ['1', '%', 100],
  ['1', 'ppm', 1e6],
  ['%', 'ppm', 1e4],
  ['per rev', 'per 1000 rev', 1e3],
];

function converted(value: number, from: string, to: string): number {
  const result = convert(value, from, to);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe('published unit factors', () => {
  test.each(factors)('1 $unit is $expected $of ($source)', ({ unit, expected, of, tolerance }) => {
    expect(Math.abs(converted(1, unit, of) / expected - 1)).toBeLessThanOrEqual(tolerance);
  });

  test.each(prefixes)('1 %s in %s is %d', (from, to, expected) => {
    expect(converted(1, from, to)).toBe(expected);
    expect(converted(expected, to, from)).toBe(1);
  });

  test('half a turn is pi radians', () => {
    expect(converted(180, 'deg', 'rad')).toBeCloseTo(Math.PI, 13);
  });
});

describe('conversions worked elsewhere', () => {
  test.each(conversions)('$value $from is $expected $to', ({ value, from, expected, to }) => {
    expect(Math.abs(converted(value, from, to) - expected)).toBeLessThanOrEqual(6e-9 * Math.max(Math.abs(expected), 0.1));
  });
});

test('the conventional inch of mercury agrees with its column of mercury to the digits printed', () => {
  // 13595.1 kg/m³ × 9.80665 m/s² × 0.0254 m, NIST SP 811 footnote on conventional mercury.
  expect(converted(1, 'inHg', 'Pa')).toBeCloseTo(13595.1 * 9.80665 * 0.0254, 2);
});

test('every unit is checked by a published factor, a prefix, or is the unit its dimension is counted in', () => {
  const checked = new Set([...factors.flatMap((row) => [row.unit, row.of]), ...prefixes.flatMap(([from, to]) => [from, to])]);
  const alone = ['rpm', 'count', 'deg', 'rad', 'C', 'F', 'K', 'Kdiff', 'Cdiff', 'Fdiff', 'lb/min', 'lbf in', 'kgf m', 'N m'];
  const unchecked = units.map((unit) => unit.id).filter((id) => !checked.has(id) && !alone.includes(id));
  expect(unchecked).toEqual([]);
  expect(alone.filter((id) => unitById(id) === undefined)).toEqual([]);
});

test('units outside that list', () => {
  // One pound a minute: 453.59237 g in 60 s. Differences of temperature: 1.8 °F to a kelvin.
  expect(converted(60, 'lb/min', 'g/s')).toBeCloseTo(453.59237, 9);
  expect(converted(1.8, 'Fdiff', 'Kdiff')).toBeCloseTo(1, 14);
  expect(converted(1, 'Cdiff', 'Kdiff')).toBe(1);
});
