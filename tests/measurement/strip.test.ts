import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge } from '../../src/domain/measurement/judge.ts';
import { stripModel } from '../../src/domain/measurement/strip.ts';
import type { StripModel } from '../../src/domain/measurement/strip.ts';
import type { Limits, Reading } from '../../src/domain/measurement/types.ts';

const winding: Limits = { low: 0.4, high: 1.2, unit: 'ohm', variation: 'none' };

function stripWith(value: number | 'open', limits: Limits = winding): StripModel {
  const meter = { name: 'm', percent: 0.8, counts: 3 };
  const reading: Reading = { value, resolution: 0.01, leads: 0, temperature: 20, temperatureTolerance: 3, meter };
  const result = judge(reading, limits);
  if (!result.ok) throw new Error(result.error.message);
  return stripModel(limits, result.value);
}

test('limits stand with half a range of room on each side', () => {
  const strip = stripModel(winding);
  expect(strip.from).toBe(0);
  expect(strip.low).toBeCloseTo(0.25, 12);
  expect(strip.high).toBeCloseTo(0.75, 12);
  expect(strip.to).toBeCloseTo(1.6, 12);
  expect(strip.value).toBeUndefined();
  expect(strip.ticks.map((tick) => tick.label)).toEqual(['0.0', '0.5', '1.0', '1.5']);
});

test('the scale stays put when a reading comes', () => {
  const { from, to, ticks } = stripModel(winding);
  expect(stripWith(0.8)).toMatchObject({ from, to, ticks });
});

test('the reading stands in the middle with its spread about it', () => {
  const strip = stripWith(0.8);
  expect(strip.value).toBeCloseTo(0.5, 12);
  expect((strip.spread?.from ?? 0) + (strip.spread?.to ?? 0)).toBeCloseTo(1, 12);
  expect(strip.beyond).toBeUndefined();
});

test('a reading off the scale is held at its end', () => {
  expect(stripWith(50)).toMatchObject({ value: 1, beyond: 'right' });
  expect(stripWith(50).spread).toBeUndefined();
  expect(stripWith(1, { low: 10, high: 12, unit: 'ohm', variation: 'none' })).toMatchObject({ value: 0, beyond: 'left' });
  expect(stripWith('open')).toMatchObject({ value: 1, beyond: 'right' });
});

test('an open end has no mark, and a scale the size of the limit', () => {
  const least = stripModel({ low: 10, unit: 'V', variation: 'none' });
  expect(least.high).toBeUndefined();
  expect(least).toMatchObject({ from: 5, to: 15, low: 0.5 });
  const most = stripModel({ high: 0.2, unit: 'V', variation: 'none' });
  expect(most.low).toBeUndefined();
  expect(most.from).toBe(0);
  expect(most.high).toBeCloseTo(2 / 3, 12);
});

test('limits about nought keep both sides', () => {
  const strip = stripModel({ low: -10, high: 10, unit: '%', variation: 'none' });
  expect(strip).toMatchObject({ from: -20, to: 20 });
  expect(strip.ticks.map((tick) => tick.label)).toEqual(['−20', '−10', '0', '10', '20']);
});

test('labels take the decimal mark', () => expect(stripModel(winding, undefined, { decimalMark: ',' }).ticks[1]?.label).toBe('0,5'));

describe('any limits', () => {
  const end = fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true }).filter((value) => value === 0 || Math.abs(value) > 1e-6), { nil: undefined });
  test('give positions from 0 to 1 and a handful of ticks', () => {
    fc.assert(
      fc.property(end, end, (low, high) => {
        fc.pre(low === undefined || high === undefined || high === low || high - low > 1e-6 * Math.max(Math.abs(low), Math.abs(high)));
        const strip = stripModel({ ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), unit: 'V', variation: 'none' });
        const positions = [strip.low, strip.high, ...strip.ticks.map((tick) => tick.at)].filter((at) => at !== undefined);
        for (const at of positions) {
          expect(at).toBeGreaterThanOrEqual(-1e-6);
          expect(at).toBeLessThanOrEqual(1 + 1e-6);
        }
        expect(strip.to).toBeGreaterThan(strip.from);
        expect(strip.ticks.length).toBeGreaterThanOrEqual(2);
        expect(strip.ticks.length).toBeLessThanOrEqual(7);
        expect(new Set(strip.ticks.map((tick) => tick.label)).size).toBe(strip.ticks.length);
      }),
      { numRuns: 1000 },
    );
  });
});
