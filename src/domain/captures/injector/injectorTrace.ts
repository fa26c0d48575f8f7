import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { fitCharging, fittedAt, part } from '../coil/ramp.ts';
import { fitCurve, polynomial } from '../numbers/fit.ts';
import { figureOf } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { assignCylinders } from '../trace/assign.ts';
import type { AssignmentWish } from '../trace/assign.ts';
import { problemWithTrace, refuseTrace } from '../trace/checks.ts';
import { firstRise, hasLostSamples, lastOnRamp, noiseOfPoint, sureDeviations } from '../trace/pulse.ts';
import { extremesOf, pointsOf, restOf, samplingInterval, stretchesAbove } from '../trace/trace.ts';
import type { Rest, Stretch, Trace } from '../trace/trace.ts';
import type { Assignment, TraceRefusalCode } from '../trace/types.ts';
import { findNotch } from './notch.ts';

/** One pulse of an injector. Times in ms. */
export interface InjectorPulse {
  /** Seconds on the axis of the trace. */
  readonly start: number;
  readonly width: Figure;
  /** A, at switching off. Only from a current trace. */
  readonly peak: Figure | undefined;
  /** From switching on until the pintle meets its stop. Nothing when no notch stands out. Only from a current trace. */
  readonly opens: Figure | undefined;
  /** V, highest voltage after switching off. Only from a voltage trace. */
  readonly clamp: Figure | undefined;
  /** The top of the clamp is cut off by the range: it is at least this. */
  readonly clampAtLeast: boolean;
}

export interface InjectorTrace {
  readonly pulses: readonly InjectorPulse[];
  readonly assignment: Assignment;
  readonly rest: Rest;
}

const fewestSamples = 100;
const fewestOnPulse = 30;
const beginsAbove = 0.12;
/** Share of the pulse's top up to which the current has not yet been held back by the pintle, as a rule. */
const beforeMotion = 0.4;

const noPulse = 'No pulse of an injector stands out of the noise. Check probe, range and time per division, and that a whole pulse is in the record.';
const tooSlow = `Fewer than ${fewestOnPulse} readings stand on a pulse. Record again with a shorter time per division or more points.`;

/** Stretches of pulses, or why there are none. */
function findPulses(values: Float64Array, rest: Rest): Result<readonly Stretch[], Refusal<TraceRefusalCode>> {
  const height = extremesOf(values).highest - rest.level;
  if (height < 2 * sureDeviations * rest.noise) return failure(refuseTrace('no-event', noPulse));
  const on = rest.level + Math.max(beginsAbove * height, sureDeviations * rest.noise);
  const stretches = stretchesAbove(values, on, rest.level + (on - rest.level) / 2);
  if (stretches.length === 0) return failure(refuseTrace('no-event', noPulse));
  const long = stretches.filter(({ from, to }) => to - from >= fewestOnPulse);
  return long.length === 0 ? failure(refuseTrace('sampled-too-slowly', tooSlow)) : success(long);
}

/**
 * Reads a trace of injector current, A against seconds, of injectors that are simply switched (port injection): width of the pulse, top,
 * and the moment the pintle meets its stop. Refuses a trace without readings, without a pulse, or with fewer than 30 readings on a pulse.
 */
export function readInjectorCurrent(trace: Trace, wish?: AssignmentWish): Result<InjectorTrace, Refusal<TraceRefusalCode>> {
  const problem = problemWithTrace(trace, fewestSamples);
  if (problem) return failure(problem);
  const rest = restOf(trace.values);
  const found = findPulses(trace.values, rest);
  if (!found.ok) return found;
  const interval = samplingInterval(trace.times);
  const pulses = found.value.map((stretch) => readCurrentPulse(trace, stretch, rest, interval)).filter((pulse) => pulse !== undefined);
  if (pulses.length === 0) return failure(refuseTrace('no-event', noPulse));
  return success({ pulses, assignment: assignCylinders(pulses.map(({ start }) => start), wish), rest });
}

function readCurrentPulse(trace: Trace, stretch: Stretch, rest: Rest, interval: number): InjectorPulse | undefined {
  const [first, last] = [firstRise(trace, stretch.from, rest), lastOnRamp(trace, stretch, rest)];
  if (last - first < fewestOnPulse || hasLostSamples(trace, first, last)) return undefined;
  const origin = trace.times[first] ?? 0;
  const points = pointsOf(trace, { from: first, to: last + 1 }, origin, rest.level);
  const top = extremesOf(points.y).highest;
  const [begin, early] = [0.08, beforeMotion].map((share) => points.y.findIndex((value) => value > Math.max(share * top, sureDeviations * rest.noise)));
  const law = fitCharging(part(points, (begin ?? 0) + 1, Math.max(early ?? 0, (begin ?? 0) + 10)));
  if (law === undefined) return undefined;
  const start = law.parameters[2] ?? 0;
  const startDeviation = Math.sqrt(law.covariance[8] ?? 0);
  const { degreesOfFreedom } = law;
  const end = 1000 * ((trace.times[last] ?? 0) - origin + interval / 2);
  const notch = findNotch(points, noiseOfPoint(rest, last + 1 - first, points));
  // Near its final value the current is too level for the law of charging; the last tenth is nearly a straight line.
  const tail = fitCurve(polynomial, part(points, Math.floor(points.x.length * 0.85), points.x.length), [0, 0, 0]);
  const peak = tail.ok ? fittedAt(polynomial, tail.value, end) : undefined;
  return {
    start: origin + start / 1000,
    width: figureOf(end - start, { normal: startDeviation, halfWidth: 500 * interval, degreesOfFreedom }),
    peak: peak && figureOf(peak.value, { normal: Math.sqrt(peak.variance), degreesOfFreedom: tail.ok ? tail.value.degreesOfFreedom : 0 }),
    opens: notch && figureOf(notch.time.value - start, { normal: Math.hypot(notch.time.standardUncertainty, startDeviation), degreesOfFreedom }),
    clamp: undefined,
    clampAtLeast: false,
  };
}

/** The clamp comes within this of switching off, s. */
const clampWithin = 0.0005;

/**
 * Reads a trace of the voltage at the switched terminal of an injector, V against seconds: width of the pulse between the middles of
 * its edges, and the clamp after it. Refuses as `readInjectorCurrent` does.
 */
export function readInjectorVoltage(trace: Trace, wish?: AssignmentWish): Result<InjectorTrace, Refusal<TraceRefusalCode>> {
  const problem = problemWithTrace(trace, fewestSamples);
  if (problem) return failure(problem);
  const rest = restOf(trace.values);
  // The pulse goes down from the supply; turned over it goes up, and the clamp down.
  const turned: Trace = { times: trace.times, values: trace.values.map((value) => Math.max(0, rest.level - value)) };
  const found = findPulses(turned.values, { ...rest, level: 0 });
  if (!found.ok) return found;
  const [interval, ceiling] = [samplingInterval(trace.times), extremesOf(trace.values).highest];
  const pulses = found.value.map((stretch): InjectorPulse => {
    const half = rest.level / 2;
    const [on, off] = [crossingTime(trace, stretch.from, half, -1), crossingTime(trace, stretch.to, half, 1)];
    const until = Math.min(trace.values.length, stretch.to + Math.ceil(clampWithin / interval));
    const clamp = extremesOf(trace.values, { from: stretch.to, to: until }).highest;
    const clipped = clamp === ceiling && trace.values.subarray(stretch.to, until).filter((value) => value === ceiling).length >= 3;
    return {
      start: on,
      width: figureOf(1000 * (off - on), { normal: (1000 * interval) / Math.sqrt(6) }),
      peak: undefined,
      opens: undefined,
      clamp: Number.isFinite(clamp) ? figureOf(clamp, { normal: rest.noise }) : undefined,
      clampAtLeast: clipped,
    };
  });
  return success({ pulses, assignment: assignCylinders(pulses.map(({ start }) => start), wish), rest });
}

/** Time at which the trace passes a level near a place, in this direction: half-way between the two readings, for the edge is steep. */
function crossingTime({ times, values }: Trace, near: number, level: number, direction: 1 | -1): number {
  for (let place = Math.max(1, near - 3); place < Math.min(values.length, near + 4); place += 1) {
    const [before, now] = [values[place - 1] ?? Number.NaN, values[place] ?? Number.NaN];
    if (direction * (before - level) <= 0 && direction * (now - level) > 0) return ((times[place - 1] ?? 0) + (times[place] ?? 0)) / 2;
  }
  return times[near] ?? Number.NaN;
}
