import fc from 'fast-check';
import Qty from 'js-quantities';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { convert } from '../../src/domain/units/convert.ts';
import { units } from '../../src/domain/units/table.data.ts';
import { findUnit, findUnits, unitById, unitsOf } from '../../src/domain/units/table.ts';
import type { Dimension } from '../../src/domain/units/types.ts';

/** Names of our units in two independent libraries. A blank means that the library lacks the unit or defines it otherwise. */
const names: readonly (readonly [id: string, mathjs: string, quantities: string])[] = [
  ['mohm', 'mohm', 'mohm'],
  ['ohm', 'ohm', 'ohm'],
  ['kohm', 'kohm', 'kohm'],
  ['Mohm', 'Mohm', 'Mohm'],
  ['mV', 'mV', 'mV'],
  ['V', 'V', 'V'],
  ['kV', 'kV', 'kV'],
  ['mA', 'mA', 'mA'],
  ['A', 'A', 'A'],
  ['uH', 'uH', 'uH'],
  ['mH', 'mH', 'mH'],
  ['pF', 'pF', 'pF'],
  ['uF', 'uF', 'uF'],
  ['us', 'us', 'us'],
  ['ms', 'ms', 'ms'],
  ['s', 's', 's'],
  ['min', 'minute', 'min'],
  ['h', 'hour', 'h'],
  ['deg', 'deg', 'deg'],
  ['rad', 'rad', 'rad'],
  ['km/h', 'km/h', 'kph'],
  ['mph', 'mi/h', 'mph'],
  ['Hz', 'Hz', 'Hz'],
  ['Pa', 'Pa', 'Pa'],
  ['hPa', 'hPa', ''],
  ['kPa', 'kPa', 'kPa'],
  ['mbar', 'mbar', 'mbar'],
  ['bar', 'bar', 'bar'],
  ['MPa', 'MPa', 'MPa'],
  ['psi', 'psi', 'psi'],
  ['atm', 'atm', 'atm'],
  ['mm', 'mm', 'mm'],
  ['cm', 'cm', 'cm'],
  ['m', 'm', 'm'],
  ['km', 'km', 'km'],
  ['in', 'in', 'in'],
  ['ft', 'ft', 'ft'],
  ['mi', 'mi', 'mi'],
  ['mm2', 'mm^2', 'mm2'],
  ['cm2', 'cm^2', 'cm2'],
  ['ml', 'ml', 'ml'],
  ['l', 'l', 'l'],
  ['cm3', 'cm^3', 'cm3'],
  ['ml/min', 'ml/minute', 'ml/min'],
  ['l/h', 'l/hour', 'l/h'],
  ['g', 'g', 'g'],
  ['kg', 'kg', 'kg'],
  ['lb', 'lbm', 'lbs'],
  ['g/s', 'g/s', 'g/s'],
  ['kg/h', 'kg/hour', 'kg/h'],
  ['lb/min', 'lbm/minute', 'lbs/min'],
  ['N', 'N', 'N'],
  ['lbf', 'lbf', 'lbf'],
  ['N m', 'N m', 'N*m'],
  ['lbf ft', 'lbf ft', 'lbf*ft'],
  ['lbf in', 'lbf in', 'lbf*in'],
  ['mJ', 'mJ', 'mJ'],
  ['J', 'J', 'J'],
  ['W', 'W', 'W'],
  ['kW', 'kW', 'kW'],
  ['hp', '', 'hp'],
  ['C', 'degC', 'tempC'],
  ['F', 'degF', 'tempF'],
  ['K', 'K', 'tempK'],
];

const VALUE = 12.34;
const pairs = names.flatMap((one) =>
  names.filter((other) => unitById(one[0])?.dimension === unitById(other[0])?.dimension).map((other) => [one, other] as const),
);

function converted(value: number, from: string, to: string): number {
  const result = convert(value, from, to);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe('against independent libraries', () => {
  const inMathjs = pairs.filter(([from, to]) => from[1] !== '' && to[1] !== '');
  test.each(inMathjs.map(([from, to]) => [from[0], to[0], from[1], to[1]]))('%s to %s as mathjs', (from, to, theirFrom, theirTo) => {
    const expected = mathUnit(VALUE, theirFrom).toNumber(theirTo);
    // mathjs keeps some imperial factors to ten digits only.
    expect(Math.abs(converted(VALUE, from, to) - expected)).toBeLessThan(1e-9 * Math.abs(expected));
  });

  const inQuantities = pairs.filter(([from, to]) => from[2] !== '' && to[2] !== '');
  test.each(inQuantities.map(([from, to]) => [from[0], to[0], from[2], to[2]]))('%s to %s as js-quantities', (from, to, theirFrom, theirTo) => {
    const expected = Qty(VALUE, theirFrom).to(theirTo).scalar;
    expect(Math.abs(converted(VALUE, from, to) - expected)).toBeLessThan(1e-6 * Math.abs(expected));
  });
});

describe('convert', () => {
  test('leaves a value alone in its own unit', () => expect(converted(1 / 3, 'psi', 'psi')).toBe(1 / 3));

  test('shows no noise of the arithmetic', () => {
    expect(converted(2.3, 'Mohm', 'ohm')).toBe(2300000);
    expect(converted(-18, 'C', 'F')).toBe(-0.4);
    expect(converted(32, 'F', 'C')).toBe(0);
  });

  test.each([
    ['ohm', 'zorg', 'to', 'unknown-unit'],
    ['zorg', 'ohm', 'from', 'unknown-unit'],
    ['ohm', 'V', 'to', 'wrong-dimension'],
    ['C', 'Cdiff', 'to', 'wrong-dimension'],
  ])('refuses %s to %s', (from, to, input, code) => {
    expect(convert(1, from, to)).toMatchObject({ ok: false, error: { input, code } });
  });

  test.each([NaN, Infinity, -Infinity])('refuses %d', (value) => {
    expect(convert(value, 'ohm', 'kohm')).toMatchObject({ ok: false, error: { code: 'not-finite' } });
  });

  test('refuses a value too large to hold in the other unit', () => {
    expect(convert(1e305, 'Mohm', 'mohm')).toMatchObject({ ok: false, error: { code: 'not-finite' } });
  });

  const anyPair = fc
    .constantFrom(...units)
    .chain((from) => fc.tuple(fc.constant(from), fc.constantFrom(...unitsOf(from.dimension))));

  test('comes back to where it started', () => {
    fc.assert(
      fc.property(anyPair, fc.double({ min: -1e6, max: 1e6, noNaN: true }), ([from, to], value) => {
        const back = converted(converted(value, from.id, to.id), to.id, from.id);
        // An offset swallows the last digits of a small value.
        const size = Math.max(Math.abs(value), from.offset === 0 && to.offset === 0 ? 1e-290 : 1000);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(4e-15 * size);
      }),
    );
  });

  test('keeps order', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(anyPair, number, number, ([from, to], one, other) => {
        fc.pre(one < other);
        expect(converted(one, from.id, to.id)).toBeLessThanOrEqual(converted(other, from.id, to.id));
      }),
    );
  });
});

describe('the unit table', () => {
  test('has an id once', () => expect(new Set(units.map((unit) => unit.id)).size).toBe(units.length));

  test('has only factors above 0 and finite offsets', () => {
    expect(units.filter((unit) => !(unit.factor > 0) || !Number.isFinite(unit.offset))).toEqual([]);
  });

  const spellings = units.flatMap((unit) => [unit.id, unit.symbol, unit.name, ...unit.aliases].map((text) => ({ text, unit })));
  test.each(spellings.filter(({ text }) => text !== ''))('"$text" is found as $unit.id', ({ text, unit }) => {
    expect(findUnit(text, unit.dimension)?.id).toBe(unit.id);
  });

  test.each<readonly [string, Dimension, string]>([
    ['Ω', 'resistance', 'ohm'],
    ['\u2126', 'resistance', 'ohm'],
    ['kΩ', 'resistance', 'kohm'],
    ['KΩ', 'resistance', 'kohm'],
    ['㏀', 'resistance', 'kohm'],
    ['OHMS', 'resistance', 'ohm'],
    ['mΩ', 'resistance', 'mohm'],
    ['MΩ', 'resistance', 'Mohm'],
    ['MOhm', 'resistance', 'Mohm'],
    ['mOhm', 'resistance', 'mohm'],
    ['µA', 'current', 'uA'],
    ['μA', 'current', 'uA'],
    ['µs', 'time', 'us'],
    ['℃', 'temperature', 'C'],
    ['deg C', 'temperature', 'C'],
    ['°c', 'temperature', 'C'],
    ['º F', 'temperature', 'F'],
    ['K', 'temperature', 'K'],
    ['K', 'temperature-difference', 'Kdiff'],
    ['KPA', 'pressure', 'kPa'],
    ['lb/in²', 'pressure', 'psi'],
    ['in. Hg', 'pressure', 'inHg'],
    ['Nm', 'torque', 'N m'],
    ['N·m', 'torque', 'N m'],
    ['ft-lb', 'torque', 'lbf ft'],
    ['mm²', 'area', 'mm2'],
    ['cc', 'volume', 'cm3'],
    ['rev/min', 'rotation', 'rpm'],
    ['"', 'length', 'in'],
    ['/1000 rev', 'misfire-rate', 'per 1000 rev'],
  ])('%s as %s is %s', (text, dimension, id) => expect(findUnit(text, dimension)?.id).toBe(id));

  test('never guesses between milli and mega', () => expect(findUnit('m', 'resistance')).toBeUndefined());
  test('finds nothing in nothing', () => expect(findUnit(' ', 'ratio')).toBeUndefined());
  test('finds every dimension a text may stand for', () => {
    expect(findUnits('K').map((unit) => unit.id)).toEqual(['kohm', 'K', 'Kdiff']);
    expect(findUnits('zorg')).toEqual([]);
  });
});
