import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { figureOf } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { fitCurve, polynomial, varianceOf } from '../numbers/fit.ts';
import { median, quantileOfSorted, sorted } from '../numbers/sample.ts';
import { assignCylinders } from '../trace/assign.ts';
import type { AssignmentWish } from '../trace/assign.ts';
import { problemWithTrace, refuseTrace } from '../trace/checks.ts';
import { extremesOf, placeOfTime, pointsOf, restOf, samplingInterval, stretchesAbove } from '../trace/trace.ts';
import type { Rest, Stretch, Trace } from '../trace/trace.ts';
import type { Assignment, TraceRefusalCode } from '../trace/types.ts';
import { fitBurn } from './burnEnd.ts';
import type { Burn } from './burnEnd.ts';

/** One firing. Voltages are in the unit of the trace, without sign and counted from rest; times in ms. */
export interface SparkEvent {
  /** When the gap broke down, seconds on the axis of the trace. */
  readonly at: number;
  readonly firing: Figure;
  /** The top lies beyond the range of the scope, or was passed between two samples: the firing line is at least `firing`. */
  readonly firingAtLeast: boolean;
  /** Nothing where no burn line follows: no spark, or one too short to see. */
  readonly burn: Burn | undefined;
}

export interface SparkTrace {
  readonly events: readonly SparkEvent[];
  readonly assignment: Assignment;
  /** −1 where the firing lines point down on the trace. */
  readonly polarity: 1 | -1;
  readonly rest: Rest;
}

const fewestSamples = 100;
const sureDeviations = 6;
/** An event begins above this share of the highest excursion; burn lines are lower than firing lines by about this. Common practice. */
const beginsAbove = 0.04;
/** Peaks of less than this share of the usual high ones are swings, not firings. */
const firingShare = 0.2;
/** Parts of one firing lie closer together than this, s. */
const sameEvent = 0.0006;
/** The top of the firing line comes at most this long after the rise begins, s. */
const riseTime = 0.00015;
/** After the breakdown the voltage settles on the burn line within this, ms. */
const settles = 0.06;
/** A burn line shorter than this is none, ms. */
const shortestBurn = 0.12;
/** The swings are looked at for so long after the spark, ms. */
const swingsFor = 0.5;

/**
 * Reads a trace of primary or secondary ignition voltage against seconds. Either way up is taken; the larger excursion from rest is
 * the firing. Refuses a trace without readings, without a firing, with times that do not rise, and one sampled more slowly than
 * every 25 µs, which cannot show a firing line.
 */
export function readSparkVoltage(trace: Trace, wish?: AssignmentWish): Result<SparkTrace, Refusal<TraceRefusalCode>> {
  const problem = problemWithTrace(trace, fewestSamples);
  if (problem) return failure(problem);
  const interval = samplingInterval(trace.times);
  if (interval > slowestInterval) return failure(refuseTrace('sampled-too-slowly', tooSlow(interval)));
  const rest = restOf(trace.values);
  const { lowest, highest } = extremesOf(trace.values);
  const polarity = highest - rest.level >= rest.level - lowest ? 1 : -1;
  const upright: Trace = { times: trace.times, values: trace.values.map((value) => polarity * (value - rest.level)) };
  const firings = findFirings(upright, rest, interval);
  if (firings.length === 0) return failure(refuseTrace('no-event', noFiring));
  const ceiling = extremesOf(upright.values).highest;
  const events = firings.map(({ from }, place) => {
    const next = firings[place + 1]?.from ?? upright.values.length;
    return readFiring({ trace: upright, rest, interval, ceiling }, from, next);
  });
  return success({ events, assignment: assignCylinders(events.map(({ at }) => at), wish), polarity, rest });
}

const slowestInterval = 25e-6;
const noFiring = 'No firing stands out of the noise. Check that the probe sits on the lead or coil and that its range and the time per division show a whole firing.';

function tooSlow(interval: number): string {
  return `The trace has one reading every ${Number((interval * 1e6).toPrecision(3))} µs; a firing line lasts about 30 µs, so at least one every 25 µs is needed. Record again with a shorter time per division or more points.`;
}

/** Stretches above rest that begin with a firing line: those that belong together joined, swings left out. */
function findFirings(trace: Trace, rest: Rest, interval: number): readonly Stretch[] {
  const on = Math.max(beginsAbove * extremesOf(trace.values).highest, sureDeviations * rest.noise);
  const joined: { from: number; to: number; top: number }[] = [];
  for (const { from, to } of stretchesAbove(trace.values, on, on / 2)) {
    const last = joined.at(-1);
    const top = extremesOf(trace.values, { from, to: Math.min(to, from + Math.ceil(riseTime / interval)) }).highest;
    const belongs = last !== undefined && (trace.times[from] ?? 0) - (trace.times[last.to] ?? 0) < sameEvent && top < last.top;
    if (belongs) last.to = to;
    else joined.push({ from, to, top });
  }
  const usual = quantileOfSorted(sorted(joined.map(({ top }) => top)), 0.75);
  return joined.filter(({ top }) => top > firingShare * usual);
}

interface Scene {
  readonly trace: Trace;
  readonly rest: Rest;
  readonly interval: number;
  readonly ceiling: number;
}

function readFiring(scene: Scene, from: number, next: number): SparkEvent {
  const { trace, interval, ceiling } = scene;
  const until = Math.min(next, from + Math.ceil(riseTime / interval));
  const top = extremesOf(trace.values, { from, to: until }).highest;
  const last = trace.values.indexOf(top, from);
  const clipped = top >= ceiling && countAt(trace.values, ceiling, from, until) >= 3;
  const firing = clipped ? undefined : topOfRise(scene, from, last);
  const at = (trace.times[last] ?? 0) + interval / 2;
  return {
    at,
    firing: firing ?? figureOf(top, { normal: scene.rest.noise }),
    firingAtLeast: firing === undefined,
    burn: readBurn(scene, at, last, next),
  };
}

function countAt(values: Float64Array, level: number, from: number, to: number): number {
  return values.subarray(from, to).reduce((count, value) => count + (value === level ? 1 : 0), 0);
}

/** The rise is fitted from this share of the top on: lower down it begins softly. */
const riseFrom = 0.35;
const fewestOnRise = 5;

/**
 * The gap breaks down somewhere between the highest sample and the next: the rise, continued by half a step, with the rise over that
 * step as the width it is unsure by. Nothing when too few samples stand on the rise.
 */
function topOfRise({ trace, interval }: Scene, from: number, last: number): Figure | undefined {
  let first = last;
  const least = riseFrom * (trace.values[last] ?? 0);
  while (first > 0 && last - first < 40 && (trace.values[first - 1] ?? 0) > least) first -= 1;
  if (last - first + 1 < fewestOnRise || first > last || from > last) return undefined;
  const points = pointsOf(trace, { from: first, to: last + 1 }, trace.times[last] ?? 0);
  const fit = fitCurve(polynomial, points, [0, 0, 0]);
  if (!fit.ok) return undefined;
  const half = 500 * interval;
  const gradient = new Float64Array(3);
  const value = polynomial(half, fit.value.parameters, gradient);
  const slope = (fit.value.parameters[1] ?? 0) + 2 * half * (fit.value.parameters[2] ?? 0);
  return figureOf(value, { normal: Math.sqrt(varianceOf(gradient, fit.value.covariance)), halfWidth: Math.abs(slope) * half, degreesOfFreedom: fit.value.degreesOfFreedom });
}

/** First place from `from` on whose values, and the next, lie under half of the line so far; the line follows the values slowly. */
function halfWayDown({ trace, interval }: Scene, from: number, to: number): { readonly place: number; readonly level: number } | undefined {
  const settled = trace.values.subarray(from, Math.min(to, from + Math.max(5, Math.ceil(0.00005 / interval))));
  let level = median(settled);
  const first = level;
  const share = Math.min(0.5, interval / 0.00015);
  for (let place = from; place < to; place += 1) {
    const value = trace.values[place] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (value < level / 2 && !((trace.values[place + 1] ?? 0) >= level / 2)) return { place, level: first };
    if (value > level / 2) level += share * (value - level);
  }
  return undefined;
}

function readBurn(scene: Scene, at: number, firing: number, next: number): Burn | undefined {
  const { trace, interval, rest } = scene;
  const settled = placeOfTime(trace.times, at + settles / 1000);
  const down = halfWayDown(scene, settled, next);
  const ms = (place: number) => 1000 * ((trace.times[place] ?? 0) - at);
  if (down === undefined || ms(down.place) < shortestBurn || down.level < sureDeviations * rest.noise || settled <= firing) return undefined;
  const end = Math.min(next, placeOfTime(trace.times, (trace.times[down.place] ?? 0) + swingsFor / 1000));
  const trough = lowestPlace(trace.values, down.place, Math.min(end, down.place + Math.ceil(0.0002 / interval)));
  const points = pointsOf(trace, { from: settled, to: end }, at);
  return fitBurn(points, { level: down.level, halfWay: ms(down.place), trough: ms(trough) }, { firingHalfStep: 500 * interval, restDeviation: rest.deviation });
}

function lowestPlace(values: Float64Array, from: number, to: number): number {
  let lowest = from;
  for (let place = from; place < to; place += 1) if ((values[place] ?? 0) < (values[lowest] ?? 0)) lowest = place;
  return lowest;
}
