import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { fitCurve, polynomial } from '../numbers/fit.ts';
import { scaleFigure } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { meanFigure } from '../numbers/sample.ts';
import { assignCylinders } from '../trace/assign.ts';
import type { AssignmentWish } from '../trace/assign.ts';
import { problemWithTrace, refuseTrace } from '../trace/checks.ts';
import { placeOfTime, pointsOf, roughQuantile, samplingInterval } from '../trace/trace.ts';
import type { Trace } from '../trace/trace.ts';
import type { Assignment, TraceRefusalCode } from '../trace/types.ts';

/** One hump of the starter's current: a cylinder on its way over compression. */
export interface Hump {
  /** Top, seconds on the axis of the trace. */
  readonly at: number;
  /** A at the top, and above the mean of the valleys beside it. */
  readonly top: number;
  readonly height: number;
}

export interface StarterTrace {
  readonly humps: readonly Hump[];
  readonly assignment: Assignment;
  /** Turns of the crank per minute, where the number of cylinders is known. */
  readonly speed: Figure | undefined;
}

const fewestSamples = 200;
const fewestHumps = 6;
/** Samples on one hump below which its top cannot be told. */
const fewestOnHump = 15;
/** Humps turn up this far apart, s: between 16 cylinders at 400 rpm and one at 80. */
const shortestPeriod = 0.015;
const longestPeriod = 1.6;

/**
 * Reads the starter's current, A against seconds, of an engine cranked without firing. The first rush of current, in which the starter
 * breaks loose, and everything after the starter lets go are left out. Refuses a trace without readings, without at least six humps in
 * a row, with times that do not rise, and one with fewer than 15 readings on a hump.
 */
export function readStarterCurrent(trace: Trace, wish?: AssignmentWish): Result<StarterTrace, Refusal<TraceRefusalCode>> {
  const problem = problemWithTrace(trace, fewestSamples);
  if (problem) return failure(problem);
  const even = onEvenTimes(trace);
  const cranking = crankingPart(even.values);
  const period = humpPeriod(even, cranking);
  if (period === undefined) return failure(refuseTrace('no-event', noHumps));
  if (period / samplingInterval(trace.times) < fewestOnHump) return failure(refuseTrace('sampled-too-slowly', tooSlow));
  const humps = findHumps(trace, even, cranking, period);
  if (humps.length < fewestHumps) return failure(refuseTrace('no-event', noHumps));
  const assignment = assignCylinders(humps.map(({ at }) => at), wish);
  return success({ humps, assignment, speed: wish && speedOf(humps, wish.firingOrder.length) });
}

const noHumps = 'No row of at least six humps stands out. Check the clamp and its range, crank for at least five seconds with fuel and ignition off, and record all of it.';
const tooSlow = `Fewer than ${fewestOnHump} readings stand on a hump. Record again with more points.`;

/** The current smoothed over a few milliseconds, on times a fixed step apart. */
interface EvenTrace {
  readonly start: number;
  readonly step: number;
  readonly values: Float64Array;
}

/** Step of the even times, s: fine enough for any engine that is cranked. */
const evenStep = 0.001;

/** Means over steps of the time axis; a step without readings takes the value before it. Memory is bounded by the length in time. */
function onEvenTimes({ times, values }: Trace): EvenTrace {
  const start = times[0] ?? 0;
  const length = (times.at(-1) ?? 0) - start;
  const step = Math.max(evenStep, length / 500_000);
  const count = Math.floor(length / step) + 1;
  const [sums, counts] = [new Float64Array(count), new Uint32Array(count)];
  for (let place = 0; place < times.length; place += 1) {
    const value = values[place] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const slot = Math.floor(((times[place] ?? 0) - start) / step);
    sums[slot] = (sums[slot] ?? 0) + value;
    counts[slot] = (counts[slot] ?? 0) + 1;
  }
  let before = 0;
  const means = sums.map((sum, slot) => (before = counts[slot] ? sum / (counts[slot] ?? 1) : before));
  return { start, step, values: means };
}

/** Share of the usual cranking current that shows the starter is pulling. */
const pullingShare = 0.3;
/** The rush at the start is over after this, s. */
const rush = 0.25;

/** From shortly after the starter takes hold until it lets go, in steps of the even times. */
function crankingPart(values: Float64Array): { readonly from: number; readonly to: number } {
  const pulling = pullingShare * roughQuantile(values.filter((value) => value > 0), 0.6);
  const first = values.findIndex((value) => value > pulling);
  const last = values.findLastIndex((value) => value > pulling);
  return { from: Math.max(0, first) + Math.round(rush / evenStep), to: last + 1 };
}

/** Sum of products of the current with itself a lag later, its slow drift taken off, over the sum of squares. */
function likeness(values: Float64Array, lag: number): number {
  let [product, squares] = [0, 0];
  for (let place = 0; place + lag < values.length; place += 1) {
    product += (values[place] ?? 0) * (values[place + lag] ?? 0);
    squares += (values[place] ?? 0) ** 2;
  }
  return squares > 0 ? product / squares : 0;
}

/** The mean over a window taken off, so that only what goes up and down within it is left. */
function withoutDrift(values: Float64Array, window: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  values.forEach((value, place) => (sums[place + 1] = (sums[place] ?? 0) + value));
  return values.map((value, place) => {
    const [from, to] = [Math.max(0, place - window), Math.min(values.length, place + window + 1)];
    return value - ((sums[to] ?? 0) - (sums[from] ?? 0)) / (to - from);
  });
}

/** A row of humps is certain when the current is like itself one hump later at least this much. */
const certainLikeness = 0.25;
/** The first lag that is nearly as alike as the best one is the distance of the humps; later ones are multiples of it. */
const nearlyBest = 0.45;

/** Seconds from hump to hump: the first lag at which the current is most like itself. */
function humpPeriod({ step, values }: EvenTrace, { from, to }: { readonly from: number; readonly to: number }): number | undefined {
  // Forty-odd humps tell the period as well as four hundred.
  const part = values.subarray(from, Math.min(to, from + Math.round(8 / step)));
  const level = withoutDrift(part, Math.round(0.8 / step));
  const longest = Math.min(Math.round(longestPeriod / step), Math.floor(part.length / 3));
  const lags = Array.from({ length: Math.max(0, longest) }, (_, lag) => likeness(level, lag));
  const shortest = Math.max(2, Math.round(shortestPeriod / step));
  const isTop = (lag: number) => (lags[lag] ?? 0) >= (lags[lag - 1] ?? 0) && (lags[lag] ?? 0) >= (lags[lag + 1] ?? 0);
  const tops = lags.flatMap((value, lag) => (lag >= shortest && lag < longest - 1 && isTop(lag) && value > certainLikeness ? [lag] : []));
  const best = Math.max(...tops.map((lag) => lags[lag] ?? 0));
  const first = tops.find((lag) => (lags[lag] ?? 0) > nearlyBest * best);
  return first === undefined ? undefined : first * step;
}

/** A parabola is laid through this share of the period on either side of a top or valley. */
const reach = 0.17;

/** Tops: in steps of about one period from the last, the highest place near where the next one is due. */
function findHumps(trace: Trace, even: EvenTrace, cranking: { readonly from: number; readonly to: number }, period: number): readonly Hump[] {
  const tops = walk(even, cranking, period);
  const extremes = tops.map((place) => extremeNear(trace, even.start + place * even.step, period));
  const valleys = tops.slice(1).map((place, index) => {
    const [before, next] = [tops[index] ?? 0, place];
    const lowest = placeOfExtreme(even.values, before, next, -1);
    return extremeNear(trace, even.start + lowest * even.step, period);
  });
  return extremes.slice(1, -1).flatMap((top, index) => {
    const [left, right] = [valleys[index], valleys[index + 1]];
    if (top === undefined || left === undefined || right === undefined) return [];
    return [{ at: top.at, top: top.value, height: top.value - (left.value + right.value) / 2 }];
  });
}

function placeOfExtreme(values: Float64Array, from: number, to: number, sign: 1 | -1): number {
  let best = Math.max(0, Math.floor(from));
  for (let place = best; place < Math.min(to, values.length); place += 1) {
    if (sign * (values[place] ?? 0) > sign * (values[best] ?? 0)) best = place;
  }
  return best;
}

/** Places of the tops on the even times. The speed may drift: each step is the one before, corrected by what was found. */
function walk({ step, values }: EvenTrace, { from, to }: { readonly from: number; readonly to: number }, period: number): readonly number[] {
  const smooth = smoothed(values, Math.max(1, Math.round((0.06 * period) / step)));
  const stride = period / step;
  const tops = [placeOfExtreme(smooth, from, Math.min(to, from + stride), 1)];
  let pace = stride;
  for (;;) {
    const last = tops.at(-1) ?? 0;
    const due = last + pace;
    if (due + 0.35 * pace >= to) return tops;
    const next = placeOfExtreme(smooth, due - 0.35 * pace, due + 0.35 * pace, 1);
    pace = 0.8 * pace + 0.2 * Math.min(Math.max(next - last, 0.8 * pace), 1.2 * pace);
    tops.push(next);
  }
}

function smoothed(values: Float64Array, half: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  values.forEach((value, place) => (sums[place + 1] = (sums[place] ?? 0) + value));
  return values.map((_, place) => {
    const [from, to] = [Math.max(0, place - half), Math.min(values.length, place + half + 1)];
    return ((sums[to] ?? 0) - (sums[from] ?? 0)) / (to - from);
  });
}

/** Top or valley from a parabola laid over the readings round it: noise is averaged, and the place is a time. */
function extremeNear(trace: Trace, time: number, period: number): { readonly at: number; readonly value: number } | undefined {
  const [from, to] = [placeOfTime(trace.times, time - reach * period), placeOfTime(trace.times, time + reach * period)];
  const points = pointsOf(trace, { from, to }, time);
  const fit = fitCurve(polynomial, points, [0, 0, 0]);
  if (!fit.ok) return undefined;
  const [level = 0, slope = 0, bend = 0] = fit.value.parameters;
  const far = 1000 * reach * period;
  const at = bend === 0 ? 0 : Math.max(-far, Math.min(far, -slope / (2 * bend)));
  return { at: time + at / 1000, value: level + slope * at + bend * at * at };
}

/** A cylinder comes over compression every two turns: turns per minute = 120 / (cylinders × period). Its doubt is the scatter of the periods. */
function speedOf(humps: readonly Hump[], cylinders: number): Figure {
  const period = meanFigure(humps.slice(1).map(({ at }, place) => at - (humps[place]?.at ?? 0)));
  const speed = 120 / (cylinders * period.value);
  return { ...scaleFigure(period, speed / period.value), value: speed };
}
