import { areNeighbours } from '../cylinders.ts';

/** The lowest cylinder is to have at least this share of the highest: US Army TM 5-4210-230-14&P-1, engine addendum 2. */
export const lowestShare = 75;
/** So far below the mean a cylinder is to be looked into: US Army TM 1-1500-204-23-1, written for aircraft engines. */
export const belowMeanLimit = 20;
/** The stricter workshop habit for the spread between cylinders, percent of the highest. Common practice. */
export const evenWithin = 15;
/** Lower end of the usual band of petrol engines at sea level, bar. Common practice; the engine maker's figure comes first. */
export const usualLowest = 9;
/** A rise with oil from which on the rings are suspected, and the weak zone before it, percent. Common practice. */
export const wetRiseWeak = 10;
export const wetRiseClear = 15;

export type CompressionPattern =
  | 'even'
  | 'uneven'
  | 'one-low'
  | 'two-neighbours-low'
  | 'two-apart-low'
  | 'several-low'
  | 'all-low'
  | 'one-high'
  | 'one-reading';

export interface Comparison {
  readonly lowest: number;
  readonly highest: number;
  readonly mean: number;
  /** Percent. */
  readonly lowestOverHighest: number;
  readonly lowestBelowMean: number;
  /** First cylinder with the lowest reading, numbered from 1. */
  readonly lowestCylinder: number;
}

/** How readings of the same unit compare. At least one, and the highest above zero. */
export function compare(readings: readonly number[]): Comparison {
  const [lowest, highest] = [Math.min(...readings), Math.max(...readings)];
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / readings.length;
  return {
    lowest,
    highest,
    mean,
    lowestOverHighest: (100 * lowest) / highest,
    lowestBelowMean: (100 * (mean - lowest)) / mean,
    lowestCylinder: readings.indexOf(lowest) + 1,
  };
}

/** Readings typed in another unit come with noise in their last digits; a figure on a limit must not fall over it for that. */
function isAtLeast(value: number, limit: number): boolean {
  return value >= limit * (1 - 1e-12);
}

/** Is the lowest at least three quarters of the highest? Exactly 75 % passes. */
export function passesShare({ lowest, highest }: Comparison): boolean {
  return isAtLeast(100 * lowest, lowestShare * highest);
}

function isEven(readings: readonly number[]): boolean {
  const { lowest, highest } = compare(readings);
  return isAtLeast(evenWithin * highest, 100 * (highest - lowest));
}

/** One reading so far above fellows that are even among themselves and in the usual band that it is the odd one. */
function findHigh(readings: readonly number[], low: number): number | undefined {
  if (readings.length < 3) return undefined;
  const { lowest, highest } = compare(readings);
  const fellows = readings.filter((reading) => reading !== highest);
  if (fellows.length !== readings.length - 1 || lowest < low || !isEven(fellows)) return undefined;
  return isAtLeast(100 * Math.max(...fellows), lowestShare * highest) ? undefined : readings.indexOf(highest) + 1;
}

/** Cylinders below three quarters of the highest, or a fifth below the mean. */
function findLow(readings: readonly number[]): readonly number[] {
  const { highest, mean } = compare(readings);
  const isLow = (reading: number) => !isAtLeast(100 * reading, lowestShare * highest) || (reading < highest && isAtLeast(100 * (mean - reading), belowMeanLimit * mean));
  return readings.flatMap((reading, index) => (isLow(reading) ? [index + 1] : []));
}

export interface Finding {
  readonly pattern: CompressionPattern;
  /** The cylinders that stand out, numbered from 1, and the word for it. */
  readonly odd: readonly number[];
  readonly word: 'low' | 'high' | 'lowest';
}

function lowPattern(odd: readonly number[], banks: readonly (readonly number[])[]): CompressionPattern {
  const [first = 0, second] = odd;
  if (second === undefined) return 'one-low';
  if (odd.length > 2) return 'several-low';
  return areNeighbours(first, second, banks) ? 'two-neighbours-low' : 'two-apart-low';
}

/** The pattern that readings make. `low` is what every cylinder should reach, in the unit of the readings and at the same height. */
export function findPattern(readings: readonly number[], low: number, banks: readonly (readonly number[])[]): Finding {
  const { highest, lowestCylinder } = compare(readings);
  const nobody = { odd: [], word: 'low' } as const;
  const high = findHigh(readings, low);
  if (high !== undefined) return { pattern: 'one-high', odd: [high], word: 'high' };
  const odd = findLow(readings);
  if (odd.length > 0) return { pattern: lowPattern(odd, banks), odd, word: 'low' };
  if (highest < low) return { pattern: 'all-low', ...nobody };
  if (readings.length === 1) return { pattern: 'one-reading', ...nobody };
  if (!isEven(readings)) return { pattern: 'uneven', odd: [lowestCylinder], word: 'lowest' };
  return { pattern: 'even', ...nobody };
}

/** Pressure that cranking reaches at most, gauge, in the unit of `outside`, from a cylinder filled to the outside pressure. */
export function expectedGauge(outside: number, ratio: number, index: number): number {
  return outside * (ratio ** index - 1);
}

/** Rise with oil, percent of the dry reading, which is above zero. */
export function wetRise(dry: number, wet: number): number {
  return (100 * (wet - dry)) / dry;
}
