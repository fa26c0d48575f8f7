import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { median } from '../numbers/sample.ts';
import { problemWithTrace, refuseTrace } from '../trace/checks.ts';
import { roughQuantile } from '../trace/trace.ts';
import type { Trace } from '../trace/trace.ts';
import type { TraceRefusalCode } from '../trace/types.ts';

const fewestSamples = 200;
/** The signal must pass the middle by this share of its height either way before it counts as having passed. */
const hysteresis = 0.2;

/**
 * When the teeth pass, seconds: the moments the signal of a crank sensor rises through the middle of its height, between two readings
 * on a straight line. Fits square signals (Hall) and rounded ones (variable reluctance) alike, for all teeth are taken the same way.
 */
export function toothTimes(trace: Trace): Result<Float64Array, Refusal<TraceRefusalCode>> {
  const problem = problemWithTrace(trace, fewestSamples);
  if (problem) return failure(problem);
  const [low, high] = [roughQuantile(trace.values, 0.05), roughQuantile(trace.values, 0.95)];
  const [middle, reach] = [(low + high) / 2, hysteresis * (high - low)];
  const found: number[] = [];
  let [armed, crossing] = [false, Number.NaN];
  for (let place = 1; place < trace.values.length; place += 1) {
    const [before, now] = [trace.values[place - 1] ?? 0, trace.values[place] ?? 0];
    if (now < middle - reach) armed = true;
    if (armed && before <= middle && now > middle) crossing = crossingTime(trace, place, middle);
    if (armed && now > middle + reach && !Number.isNaN(crossing)) {
      found.push(crossing);
      [armed, crossing] = [false, Number.NaN];
    }
  }
  return success(Float64Array.from(found));
}

function crossingTime({ times, values }: Trace, place: number, level: number): number {
  const [timeBefore, timeNow] = [times[place - 1] ?? 0, times[place] ?? 0];
  const [before, now] = [values[place - 1] ?? 0, values[place] ?? 0];
  return timeBefore + ((timeNow - timeBefore) * (level - before)) / (now - before);
}

export interface Wheel {
  /** Places of teeth on the whole wheel, the missing ones counted. */
  readonly places: number;
  readonly missing: number;
  /** For each tooth its angle since the first gap, degrees; NaN within a turn whose teeth do not add up. Rises. */
  readonly angles: Float64Array;
  /** Turns in which a tooth too few or too many was seen. */
  readonly brokenTurns: number;
}

/** A space this many times as long as those beside it holds a missing tooth. */
const gapFrom = 1.6;
/** Of all turns so many must have the same number of teeth. */
const agreeing = 0.7;
const fewestTurns = 3;

/** Places of the first tooth after each gap, and how many teeth each gap lacks. */
function findGaps(times: Float64Array): readonly { readonly after: number; readonly lacks: number }[] {
  const spaces = times.subarray(1).map((time, place) => time - (times[place] ?? 0));
  const gaps: { after: number; lacks: number }[] = [];
  for (let place = 2; place < spaces.length - 2; place += 1) {
    const beside = median([spaces[place - 2] ?? 0, spaces[place - 1] ?? 0, spaces[place + 1] ?? 0, spaces[place + 2] ?? 0]);
    const ratio = (spaces[place] ?? 0) / beside;
    if (ratio > gapFrom) gaps.push({ after: place + 1, lacks: Math.round(ratio) - 1 });
  }
  return gaps;
}

/** The commonest of some whole numbers. */
function commonest(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((one, other) => other[1] - one[1])[0]?.[0] ?? 0;
}

/** The wheel from its tooth times: how many teeth, how many missing, and where each tooth stands. Refuses a wheel without a gap that comes back every turn. */
export function findWheel(times: Float64Array): Result<Wheel, Refusal<TraceRefusalCode>> {
  const gaps = findGaps(times);
  const teeth = gaps.slice(1).map(({ after }, place) => after - (gaps[place]?.after ?? 0));
  const usual = commonest(teeth);
  const missing = commonest(gaps.map(({ lacks }) => lacks));
  const right = teeth.filter((count) => count === usual).length;
  if (teeth.length < fewestTurns || right < agreeing * teeth.length || usual < 4 || missing < 1) {
    return failure(refuseTrace('no-missing-tooth', noGap(times.length, gaps.length)));
  }
  const places = usual + missing;
  const angles = new Float64Array(times.length).fill(Number.NaN);
  teeth.forEach((count, turn) => {
    if (count !== usual) return;
    const first = gaps[turn]?.after ?? 0;
    for (let tooth = 0; tooth < usual; tooth += 1) angles[first + tooth] = 360 * turn + (360 * tooth) / places;
  });
  return success({ places, missing, angles, brokenTurns: teeth.length - right });
}

function noGap(teeth: number, gaps: number): string {
  return `Among ${teeth} teeth a longer space was found ${gaps} times, but none that comes back every turn. Record at least four turns at a steady speed; a wheel without a missing tooth cannot be read here.`;
}
