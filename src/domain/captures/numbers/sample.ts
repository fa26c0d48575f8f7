import { figureOf } from './figure.ts';
import type { Figure } from './figure.ts';

/** Turns a median absolute deviation into the standard deviation of normal noise: 1/Φ⁻¹(0.75). */
const DEVIATION_OF_NORMAL = 1.4826;

/** The numbers alone, in rising order. */
export function sorted(values: Iterable<number>): Float64Array {
  return Float64Array.from([...values].filter((value) => !Number.isNaN(value))).sort();
}

/** Value below which the share `share` (0 to 1) of sorted values lies, on straight lines between them. NaN for none. */
export function quantileOfSorted(values: Float64Array, share: number): number {
  const place = share * (values.length - 1);
  const below = values[Math.floor(place)] ?? Number.NaN;
  const above = values[Math.ceil(place)] ?? below;
  return below + (above - below) * (place - Math.floor(place));
}

export function median(values: Iterable<number>): number {
  return quantileOfSorted(sorted(values), 0.5);
}

/** Standard deviation as it would be without the odd ones: 1.4826 times the median distance from the median. */
export function robustDeviation(values: Iterable<number>, centre = median(values)): number {
  return DEVIATION_OF_NORMAL * median([...values].map((value) => Math.abs(value - centre)));
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Sample standard deviation (n − 1). Zero for fewer than two. */
export function deviationOf(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** Mean of repeated figures with the uncertainty their scatter shows: s/√n, Student's factor for n − 1 degrees (JCGM 100, 4.2 and G.3). */
export function meanFigure(values: readonly number[]): Figure {
  const normal = values.length < 2 ? Infinity : deviationOf(values) / Math.sqrt(values.length);
  return figureOf(meanOf(values), { normal, degreesOfFreedom: values.length - 1 });
}

/**
 * Mean of independent figures of the same thing. Their own uncertainties are combined; where they scatter more than those allow,
 * the scatter counts (Birge ratio).
 */
export function combine(figures: readonly Figure[]): Figure {
  const count = figures.length;
  const value = meanOf(figures.map((figure) => figure.value));
  if (count === 1 && figures[0] !== undefined) return figures[0];
  const own = Math.sqrt(figures.reduce((sum, figure) => sum + figure.standardUncertainty ** 2, 0)) / count;
  const scatter = deviationOf(figures.map((figure) => figure.value)) / Math.sqrt(count);
  // A small excess of scatter is chance: for n values the scatter itself is only known to about 1/√(2(n − 1)).
  const clearlyMore = scatter > own * (1 + 0.7 / Math.sqrt(2 * (count - 1)));
  return clearlyMore ? figureOf(value, { normal: scatter, degreesOfFreedom: count - 1 }) : figureOf(value, { normal: own });
}

/** Places of values that lie further from the median than `limit` robust deviations, and further than `least`. */
export function oddOnes(values: readonly number[], least: number, limit = 5): readonly number[] {
  const centre = median(values);
  const far = Math.max(limit * robustDeviation(values, centre), least);
  return values.flatMap((value, place) => (Math.abs(value - centre) > far ? [place] : []));
}
