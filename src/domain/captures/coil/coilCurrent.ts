import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { varianceOf } from '../numbers/fit.ts';
import type { Points } from '../numbers/fit.ts';
import { figureOf } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { assignCylinders } from '../trace/assign.ts';
import type { AssignmentWish } from '../trace/assign.ts';
import { problemWithTrace, refuseTrace } from '../trace/checks.ts';
import { firstRise, hasLostSamples, lastOnRamp, noiseOfPoint, sureDeviations } from '../trace/pulse.ts';
import { extremesOf, pointsOf, restOf, samplingInterval, stretchesAbove } from '../trace/trace.ts';
import type { Rest, Stretch, Trace } from '../trace/trace.ts';
import type { Assignment, TraceRefusalCode } from '../trace/types.ts';
import { fittedAt, kneePlace, part, readRamp, slopeAt } from './ramp.ts';
import type { KneeKind, Ramp } from './ramp.ts';

/** One charge of one coil. Times in ms, currents in A. */
export interface CoilEvent {
  /** When charging began, seconds on the axis of the trace. */
  readonly start: number;
  /** From switching on to switching off. */
  readonly dwell: Figure;
  /** Current at switching off, off the fitted curve and not the highest sample, which noise raises. */
  readonly peak: Figure;
  /** The top is cut off by the range of clamp or scope: `peak` is the least it can be, and no knee is told. */
  readonly peakAtLeast: boolean;
  /** Slope at the start, A/ms: voltage over inductance. */
  readonly slope: Figure;
  /** R/L, 1/ms. */
  readonly rate: Figure;
  /** 1/slope, ms/A, and rate/slope, 1/A: times the voltage they give millihenries and ohms. */
  readonly perVolt: { readonly inductance: Figure; readonly resistance: Figure };
  /** Current that is there at once, before the coil can have charged; near zero on a sound coil. */
  readonly jump: Figure;
  readonly knee: { readonly kind: KneeKind; readonly afterStart: Figure; readonly current: Figure } | undefined;
}

export interface CoilTrace {
  readonly events: readonly CoilEvent[];
  readonly assignment: Assignment;
  /** What the clamp shows with no current, and the noise of one sample, A. */
  readonly rest: Rest;
  /** Charges that were seen but could not be read: a lost stretch, or too few samples. */
  readonly unread: number;
}

/** A charge begins above this share of the highest current, and ends under half of it. */
const beginsAbove = 0.1;
/** A charge reaches at least this share of the highest current; what stays lower is noise or was broken off at once. */
const clearShare = 0.25;
/** The law is fitted from this share of the charge's own top on: what lies below is also reached by a jump of shorted turns. */
const fittedFromShare = 0.08;
const fewestSamplesOfRamp = 12;
const fewestSamples = 50;

/**
 * Reads a trace of coil current, A against seconds, of one coil or of the feed of several that charge one after the other.
 * The law of charging is fitted to every ramp. Refuses a trace without readings, without a charge, with times that do not rise, and
 * one sampled too slowly: fewer than 12 readings on a ramp.
 */
export function readCoilCurrent(trace: Trace, wish?: AssignmentWish): Result<CoilTrace, Refusal<TraceRefusalCode>> {
  const problem = problemWithTrace(trace, fewestSamples);
  if (problem) return failure(problem);
  const rest = restOf(trace.values);
  const ceiling = extremesOf(trace.values).highest;
  const height = ceiling - rest.level;
  if (height < 2 * sureDeviations * rest.noise) return failure(refuseTrace('no-event', noCharge));
  const on = rest.level + Math.max(beginsAbove * height, sureDeviations * rest.noise);
  const stretches = stretchesAbove(trace.values, on, rest.level + (on - rest.level) / 2);
  if (stretches.length === 0) return failure(refuseTrace('no-event', noCharge));
  const interval = samplingInterval(trace.times);
  // Noise at the foot of a ramp may look like a short one; its top gives it away.
  const clear = stretches.filter((stretch) => extremesOf(trace.values, stretch).highest > rest.level + clearShare * height);
  const longEnough = clear.filter(({ from, to }) => to - from >= fewestSamplesOfRamp);
  if (longEnough.length === 0) return failure(refuseTrace('sampled-too-slowly', tooSlow(clear, interval)));
  const events = longEnough.map((stretch) => readCharge(trace, stretch, { rest, interval, ceiling })).filter((event) => event !== undefined);
  if (events.length === 0) return failure(refuseTrace('no-event', noCharge));
  const assignment = assignCylinders(events.map((event) => event.start + event.dwell.value / 1000), wish);
  return success({ events, assignment, rest, unread: longEnough.length - events.length });
}

const noCharge = 'No charging of a coil stands out of the noise. Check the clamp, its zero and its range, and that a whole charge, from nothing to switching off, is in the record.';

function tooSlow(stretches: readonly Stretch[], interval: number): string {
  const longest = Math.max(...stretches.map(({ from, to }) => to - from));
  return `Only ${longest} readings stand on a ramp, one every ${Number((interval * 1e6).toPrecision(3))} µs; at least ${fewestSamplesOfRamp} are needed. Record again with a shorter time per division or more points.`;
}

/** What holds for the whole trace. */
interface Scene {
  readonly rest: Rest;
  readonly interval: number;
  readonly ceiling: number;
}

function readCharge(trace: Trace, stretch: Stretch, { rest, interval, ceiling }: Scene): CoilEvent | undefined {
  const last = lastOnRamp(trace, stretch, rest);
  const first = firstRise(trace, stretch.from, rest);
  const origin = trace.times[first] ?? 0;
  if (hasLostSamples(trace, stretch.from, last + 2)) return undefined;
  const points = pointsOf(trace, { from: first, to: last + 1 }, origin, rest.level);
  const top = points.y.at(-1) ?? 0;
  const begin = points.y.findIndex((current) => current > Math.max(fittedFromShare * top, sureDeviations * rest.noise));
  const shown = isCutOff(trace.values, { from: first, to: last + 1 }, rest, ceiling) ? ceiling - rest.level : undefined;
  // The first point above the threshold is there partly because its noise is high; the ones after it are not.
  const fitted = part(points, begin + 1, shown === undefined ? points.x.length : belowCeiling(points, shown - ceilingMargin * rest.noise));
  const ramp = readRamp(fitted, noiseOfPoint(rest, last + 1 - first, points));
  const end = 1000 * ((trace.times[last] ?? 0) - origin + interval / 2);
  return ramp && eventFrom(ramp, { origin, end, halfStep: 500 * interval, jumpAt: 1000 * interval, shown, noise: rest.noise });
}

/** Noise near the ceiling is cut off on one side; so many standard deviations below it is not. */
const ceilingMargin = 5;

/** The place from which on points come near a level. */
function belowCeiling({ y }: Points, level: number): number {
  const first = y.findIndex((current) => current > level);
  return first < 0 ? y.length : first;
}

/** Fewest readings at the very highest value of the trace that show a range was left, and their share of those near it. */
const fewestAtCeiling = 5;
const shareAtCeiling = 0.5;

/** A current that is held still shows noise; one that leaves the range stands at the same highest value again and again. */
function isCutOff(values: Float64Array, stretch: Stretch, rest: Rest, ceiling: number): boolean {
  const near = ceiling - Math.max(2 * rest.noise, 0.01 * (ceiling - rest.level));
  let [atCeiling, nearIt] = [0, 0];
  for (let place = stretch.from; place < stretch.to; place += 1) {
    const value = values[place] ?? Number.NaN;
    if (value === ceiling) atCeiling += 1;
    if (value >= near) nearIt += 1;
  }
  return atCeiling >= fewestAtCeiling && atCeiling > shareAtCeiling * nearIt;
}

interface Moments {
  readonly origin: number;
  readonly end: number;
  readonly halfStep: number;
  readonly jumpAt: number;
  /** Highest current that can be shown, where the top is cut off. */
  readonly shown: number | undefined;
  readonly noise: number;
}

function eventFrom(ramp: Ramp, { origin, end, halfStep, jumpAt, shown, noise }: Moments): CoilEvent | undefined {
  const { fit } = ramp;
  const [slope = 0, rate = 0, start = 0] = fit.parameters;
  if (!(slope > 0) || !(end > start)) return undefined;
  const { degreesOfFreedom } = fit;
  /** A figure that follows from slope, rate and start, by its change with each of them. */
  const figure = (value: number, gradient: readonly number[]) =>
    figureOf(value, { normal: Math.sqrt(varianceOf([...gradient, ...zeros(fit.parameters.length - gradient.length)], fit.covariance)), degreesOfFreedom });
  const peak = fittedAt(ramp.curve, fit, end);
  const jump = fittedAt(ramp.curve, fit, jumpAt / 2);
  return {
    start: origin + start / 1000,
    dwell: figureOf(end - start, { normal: figure(start, [0, 0, 1]).standardUncertainty, halfWidth: halfStep, degreesOfFreedom }),
    peak: shown === undefined ? figureOf(peak.value, { normal: Math.sqrt(peak.variance), halfWidth: Math.abs(slopeAt(ramp, end)) * halfStep, degreesOfFreedom }) : figureOf(shown, { normal: noise }),
    peakAtLeast: shown !== undefined,
    slope: figure(slope, [1]),
    rate: figure(rate, [0, 1]),
    perVolt: { inductance: figure(1 / slope, [-1 / slope ** 2]), resistance: figure(rate / slope, [-rate / slope ** 2, 1 / slope]) },
    jump: figureOf(Math.max(0, jump.value), { normal: Math.sqrt(jump.variance), halfWidth: slope * halfStep }),
    knee: shown !== undefined || ramp.knee === undefined ? undefined : kneeFrom(ramp, ramp.knee, figure),
  };
}

function kneeFrom({ curve, fit }: Ramp, kind: KneeKind, figure: (value: number, gradient: readonly number[]) => Figure): CoilEvent['knee'] {
  const [, , start = 0, knee = 0] = fit.parameters;
  // On the side of the law the current at the knee does not yet hang on when the knee comes; its own time adds to it.
  const gradient = new Float64Array(fit.parameters.length);
  const current = curve(knee, fit.parameters, gradient);
  gradient[kneePlace] = -(gradient[2] ?? 0);
  return { kind, afterStart: figure(knee - start, [0, 0, -1, 1]), current: figure(current, [...gradient]) };
}

function zeros(count: number): readonly number[] {
  return new Array<number>(count).fill(0);
}
