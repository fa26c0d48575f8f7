import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBook } from '../../src/checks/readBook.ts';
import type { Entry } from '../../src/schemas/index.ts';
import { publishedLimits } from './ranges.data.ts';

const { ranges, sources } = readBook(join(import.meta.dirname, '../..')).book;

function rangeOf(id: string): Entry<'ranges'> {
  const range = ranges.get(id);
  if (range === undefined) throw new Error(`no range ${id}`);
  return range;
}

function sourceOf(range: Entry<'ranges'>): Entry<'sources'> {
  const source = sources.get(range.source.id);
  if (source === undefined) throw new Error(`no source ${range.source.id}`);
  return source;
}

function idsFrom(kinds: readonly Entry<'sources'>['kind'][]): string[] {
  return [...ranges].filter(([, range]) => kinds.includes(sourceOf(range).kind)).map(([id]) => id).sort();
}

describe('ranges that rest on a published text', () => {
  it('are held to a row each, and no row is left over', () => {
    expect(Object.keys(publishedLimits).sort()).toEqual(idsFrom(['standard', 'regulation', 'textbook', 'guidance', 'open-data']));
  });

  it.each(Object.entries(publishedLimits))('%s', (id, { low, high, unit, source }) => {
    const range = rangeOf(id);
    expect({ low: range.low, high: range.high, unit: range.unit, source: range.source.id }).toEqual({ low, high, unit, source });
  });

  it.each(Object.entries(publishedLimits))('%s says that it is recalled if and only if it is', (id, { flag }) => {
    const range = rangeOf(id);
    const recalled = sourceOf(range).seen === 'recalled' || /\brecalled\b/.test(range.source.place ?? '');
    expect(recalled).toBe(flag === 'M');
  });

  // 1 in = 25.4 mm, °C = (°F − 32)/1.8, a difference of 1 °F = 1/1.8 K: exact (NIST SP 811). To the last digit of the book.
  it.each<readonly [label: string, inBook: number | undefined, converted: number, tolerance: number]>([
    ['0.028 in', rangeOf('plug-gap-army-inch').low, 0.028 * 25.4, 0.0005],
    ['0.030 in', rangeOf('plug-gap-army-inch').high, 0.03 * 25.4, 0.0005],
    ['1600 °F', rangeOf('catalyst-lean-hot').high, (1600 - 32) / 1.8, 0.5],
    ['160 °F', rangeOf('warm-up-temperature').low, (160 - 32) / 1.8, 0.05],
    ['a rise of 40 °F', rangeOf('warm-up-rise').low, 40 / 1.8, 0.05],
    ['343 K', rangeOf('warm-up-temperature-un').low, 343 - 273.15, 0.5],
    ['0.02 % of hydrocarbons', rangeOf('hc-fast-idle').high, 0.02 * 10_000, 1e-9],
    ['0.12 % of hydrocarbons', rangeOf('hc-no-catalyst').high, 0.12 * 10_000, 1e-9],
  ])('%s is converted rightly', (_label, inBook, converted, tolerance) => {
    expect(Math.abs((inBook ?? NaN) - converted)).toBeLessThanOrEqual(tolerance);
  });
});

/** Limits worked out here from the numbers beside them; the tolerance is half of the last digit that the book gives. */
interface Worked {
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
  readonly tolerance: number;
}

/** Standard atmosphere below 11 km, map height Z in m, share of the pressure at sea level (U.S. Standard Atmosphere 1976). */
function pressureShare(mapHeight: number): number {
  const geopotential = (6_356_766 * mapHeight) / (6_356_766 + mapHeight);
  return ((288.15 - 0.0065 * geopotential) / 288.15) ** 5.25588;
}

// Shop readings of 9 to 14 bar are practice; gauge pressure goes with the pressure outside.
const compressionAtHeight = [1000, 1500, 2000, 3000].map((height): [string, Worked] => [
  `compression-typical-${height}-m`,
  { low: 9 * pressureShare(height), high: 14 * pressureShare(height), unit: 'bar', tolerance: 0.05 },
]);
// p₁ (CRⁿ − 1) with p₁ = 1.01325 bar and n = 1.30, an upper guide.
const compressionGuides = [8, 9, 10, 11, 12, 13].map((ratio): [string, Worked] => [
  `compression-upper-guide-${ratio}`,
  { high: 1.01325 * (ratio ** 1.3 - 1), unit: 'bar', tolerance: 0.05 },
]);
// 17 to 22 inHg is practice; 1 inHg less for each 1000 ft is read in US Army OD1001, lesson 3.
const vacuumAtHeight = [1, 2, 3, 4, 5, 7, 10].map((thousands): [string, Worked] => [
  `manifold-vacuum-${thousands}000-ft`,
  { low: 17 - thousands, high: 22 - thousands, unit: 'inHg', tolerance: 0 },
]);
// Four-stroke: revolutions × cylinders / 2 firings. The last whole count below 5 % of 200 and 1 % of 1000 revolutions.
const cylinderWords = { two: 2, three: 3, four: 4, five: 5, six: 6, eight: 8, ten: 10, twelve: 12 };
const misfireCounts = Object.entries(cylinderWords).flatMap(([word, cylinders]): [string, Worked][] => [
  [`misfire-count-200-${word}`, { high: (200 * cylinders) / 2 / 20 - 1, unit: 'count', tolerance: 0 }],
  [`misfire-count-1000-${word}`, { high: (1000 * cylinders) / 2 / 100 - 1, unit: 'count', tolerance: 0 }],
]);

/** Open air at 293 K and 1.013 bar asks for the same voltage as the gap does at a pressure (bar) and temperature (K): x is equal. mm. */
function sameSparkInOpenAir(gap: number, pressure: number, temperature: number): number {
  return gap * (pressure / 1.013) * (293 / temperature);
}

const workedLimits = new Map<string, Worked>([
  ...compressionAtHeight,
  ...compressionGuides,
  ...vacuumAtHeight,
  ...misfireCounts,
  // The 75 % rule with all others even: a cylinder at 75 is 25 under the mean of the others.
  ['compression-below-mean', { high: ((100 - 75) / 100) * 100, unit: '%', tolerance: 0 }],
  // 1 inHg = 3.386389 kPa (NIST SP 811), 101.325 kPa at sea level.
  ['manifold-pressure-idle', { low: 101.325 - 22 * 3.386389, high: 101.325 - 17 * 3.386389, unit: 'kPa', tolerance: 0.05 }],
  // E10 is named after its share of ethanol by volume.
  ['fuel-ethanol-10', { high: 10, unit: '%', tolerance: 0 }],
  // Pulled up to 5 V, which is practice: a tenth from either end.
  ['hall-output-low', { high: 5 / 10, unit: 'V', tolerance: 0 }],
  ['hall-output-high', { low: 5 - 5 / 10, unit: 'V', tolerance: 0 }],
  ['trigger-level-high', { low: 5 / 2, unit: 'V', tolerance: 0 }],
  // The top of the idle band of 17 to 22 inHg, practice; an overshoot to about 25 is read in US Army OD1001, lesson 3, and lies above it.
  ['vacuum-snap', { low: 22, unit: 'inHg', tolerance: 0 }],
  // Shorted turns leave no swing, so one is the least that speaks for the coil.
  ['oscillations-left', { low: 0 + 1, unit: 'count', tolerance: 0 }],
  // A quarter of nickel's 0.02 mm in 1000 km, practice.
  ['plug-gap-growth-fine-wire', { high: 0.02 / 4, unit: 'mm/1000 km', tolerance: 1e-12 }],
  // To the whole mm outwards; 1.1 mm at 10 bar and 600 K is 5.3 mm, at 15 bar and 650 K 7.3 mm.
  ['spark-tester-gap', { low: Math.floor(sameSparkInOpenAir(1.1, 10, 600)), high: Math.ceil(sameSparkInOpenAir(1.1, 15, 650)), unit: 'mm', tolerance: 0 }],
]);

describe('ranges that were worked out', () => {
  it('are worked out again each, and none is left over', () => {
    expect([...workedLimits.keys()].sort()).toEqual(idsFrom(['computed']));
  });

  it.each([...workedLimits])('%s', (id, { low, high, unit, tolerance }) => {
    const range = rangeOf(id);
    expect(range.unit).toBe(unit);
    expect([range.low === undefined, range.high === undefined]).toEqual([low === undefined, high === undefined]);
    expect(Math.abs((range.low ?? 0) - (low ?? 0))).toBeLessThanOrEqual(tolerance + 1e-12);
    expect(Math.abs((range.high ?? 0) - (high ?? 0))).toBeLessThanOrEqual(tolerance + 1e-12);
  });
});
