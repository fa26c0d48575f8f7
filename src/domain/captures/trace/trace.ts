import type { Points } from '../numbers/fit.ts';
import { median, robustDeviation } from '../numbers/sample.ts';

/** One channel of a scope. Times rise, in seconds; a sample that was lost is NaN. */
export interface Trace {
  readonly times: Float64Array;
  readonly values: Float64Array;
}

/** From a first sample to the one after the last. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The level a channel rests at, and its noise. */
export interface Rest {
  readonly level: number;
  /** Standard uncertainty of the level itself. */
  readonly deviation: number;
  /** Standard deviation of one sample. */
  readonly noise: number;
}

const bins = 1024;

export interface Extremes {
  readonly lowest: number;
  readonly highest: number;
  /** Samples that are numbers. */
  readonly count: number;
}

export function extremesOf(values: Float64Array, { from, to }: Stretch = { from: 0, to: values.length }): Extremes {
  let [lowest, highest, count] = [Infinity, -Infinity, 0];
  for (let place = from; place < to; place += 1) {
    const value = values[place] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
    count += 1;
  }
  return { lowest, highest, count };
}

/** Counts of samples in equal bins between the extremes: one pass, the same memory for any length. */
function histogram(values: Float64Array, { lowest, highest }: Extremes): Uint32Array {
  const counts = new Uint32Array(bins);
  const perUnit = bins / (highest - lowest);
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const bin = Math.min(bins - 1, Math.floor((value - lowest) * perUnit));
    counts[bin] = (counts[bin] ?? 0) + 1;
  }
  return counts;
}

/** Value below which this share of the samples lies, to one part in 1024 of the full height. One pass and no sorting. */
export function roughQuantile(values: Float64Array, share: number): number {
  const extremes = extremesOf(values);
  if (!(extremes.highest > extremes.lowest)) return extremes.lowest;
  const counts = histogram(values, extremes);
  let left = share * extremes.count;
  const bin = counts.findIndex((count) => (left -= count) <= 0);
  return extremes.lowest + ((Math.max(bin, 0) + 0.5) * (extremes.highest - extremes.lowest)) / bins;
}

/** Most samples that are sorted at once to find the noise. */
const mostSorted = 6000;
/** And that are averaged to find the level: more make it no surer than the noise of one reading asks for. */
const mostAveraged = 200_000;

/** The level most samples lie at: the fullest stretch of the histogram, then the mean of what lies near it. */
export function restOf(values: Float64Array): Rest {
  const extremes = extremesOf(values);
  const height = extremes.highest - extremes.lowest;
  if (!(height > 0)) return { level: extremes.lowest, deviation: 0, noise: 0 };
  const counts = histogram(values, extremes);
  const centre = extremes.lowest + ((fullestPlace(counts) + 0.5) * height) / bins;
  let noise = noiseNear(values, centre, height / 20);
  // Where noise is most of what there is, a narrow look at it cuts it short: wider looks until nothing changes.
  for (let round = 0; round < 8 && 4 * noise > height / 20; round += 1) noise = noiseNear(values, centre, Math.max(height / 20, 5 * noise));
  const { level, count } = meanNear(values, centre, Math.max(3 * noise, height / bins));
  return { level, deviation: noise / Math.sqrt(Math.max(1, count)), noise };
}

/** A level is looked for over so many bins to either side, 2 % of the height in all: a ceiling fills a single one, noise spreads rest over many. */
const reachInBins = 10;

/** Middle of the fullest stretch of bins: of the stretch, the bin about which its samples balance. */
function fullestPlace(counts: Uint32Array): number {
  const sums = new Float64Array(counts.length + 1);
  counts.forEach((count, bin) => (sums[bin + 1] = (sums[bin] ?? 0) + count));
  const near = (bin: number) => (sums[Math.min(counts.length, bin + reachInBins + 1)] ?? 0) - (sums[Math.max(0, bin - reachInBins)] ?? 0);
  const fullest = counts.reduce((best, _, bin) => (near(bin) > near(best) ? bin : best), 0);
  let [weighed, count] = [0, 0];
  for (let bin = Math.max(0, fullest - reachInBins); bin <= Math.min(counts.length - 1, fullest + reachInBins); bin += 1) {
    weighed += bin * (counts[bin] ?? 0);
    count += counts[bin] ?? 0;
  }
  return count > 0 ? weighed / count : fullest;
}

function meanNear(values: Float64Array, centre: number, reach: number): { readonly level: number; readonly count: number } {
  const stride = Math.max(1, Math.floor(values.length / mostAveraged));
  let [level, used] = [centre, 0];
  for (let round = 0; round < 3; round += 1) {
    let [sum, count] = [0, 0];
    for (let place = 0; place < values.length; place += stride) {
      const value = values[place] ?? Number.NaN;
      if (!(Math.abs(value - level) <= reach)) continue;
      sum += value;
      count += 1;
    }
    if (count > 0) level = sum / count;
    used = count;
  }
  return { level, count: used };
}

/** Noise of one sample from differences of neighbours that both lie near the level: what is slow drops out. */
function noiseNear(values: Float64Array, centre: number, reach: number): number {
  const stride = Math.max(1, Math.floor(values.length / mostSorted));
  const differences: number[] = [];
  for (let place = 1; place < values.length; place += stride) {
    const [before, now] = [values[place - 1] ?? Number.NaN, values[place] ?? Number.NaN];
    if (Math.abs(before - centre) < reach && Math.abs(now - centre) < reach) differences.push(now - before);
  }
  return differences.length === 0 ? 0 : trimmedDeviation(differences) / Math.SQRT2;
}

/**
 * Root mean square of differences without the odd ones. The median alone would not do: the steps of a converter make it jump from one
 * step to the next.
 */
function trimmedDeviation(differences: readonly number[]): number {
  const rough = robustDeviation(differences, 0);
  let [squares, count] = [0, 0];
  for (const difference of differences) {
    if (rough > 0 && Math.abs(difference) > 4 * rough) continue;
    squares += difference * difference;
    count += 1;
  }
  return Math.sqrt(squares / Math.max(1, count));
}

/** The usual time between two samples, seconds. */
export function samplingInterval(times: Float64Array): number {
  const stride = Math.max(1, Math.floor(times.length / mostSorted));
  const steps: number[] = [];
  for (let place = 1; place < times.length; place += stride) steps.push((times[place] ?? 0) - (times[place - 1] ?? 0));
  return median(steps);
}

/**
 * Stretches in which the value stays up: they begin where it rises through `on` and end where it falls through `off` (below `on`, so
 * that noise does not cut them up). A lost sample neither begins nor ends one. What is cut off by either end of the trace is left out.
 */
export function stretchesAbove(values: Float64Array, on: number, off: number): Stretch[] {
  const found: Stretch[] = [];
  let from = -1;
  let armed = false;
  for (let place = 0; place < values.length; place += 1) {
    const value = values[place] ?? Number.NaN;
    if (from < 0) {
      if (armed && value > on) from = place;
      if (value < off) armed = true;
    } else if (value < off) {
      found.push({ from, to: place });
      from = -1;
    }
  }
  return found;
}

/** Most points a curve is fitted to; more samples are averaged in even blocks, which keeps what they tell and costs less. */
const mostPoints = 800;

/** Samples of a stretch as points: x in milliseconds after `origin` (seconds), y above `level`. Lost samples are left out. */
export function pointsOf(trace: Trace, { from, to }: Stretch, origin: number, level = 0): Points {
  const block = Math.max(1, Math.ceil((to - from) / mostPoints));
  const [x, y]: [number[], number[]] = [[], []];
  for (let first = from; first + block <= to; first += block) {
    let [timeSum, valueSum, count] = [0, 0, 0];
    for (let place = first; place < first + block; place += 1) {
      const value = trace.values[place] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      timeSum += (trace.times[place] ?? 0) - origin;
      valueSum += value - level;
      count += 1;
    }
    // A block with lost samples would weigh as much as a whole one.
    if (count < block) continue;
    x.push((1000 * timeSum) / count);
    y.push(valueSum / count);
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y) };
}

/** First place at or after `from` whose time is at least `time`; times rise. */
export function placeOfTime(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] ?? Infinity) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
