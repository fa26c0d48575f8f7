import { fitCurve, polynomial, varianceOf } from '../numbers/fit.ts';
import type { Curve, Fit, Points } from '../numbers/fit.ts';

/*
 * A coil on a steady voltage: I(t) = V/R · (1 − e^(−tR/L)) (OpenStax, University Physics Volume 2, section 14.4). With the slope at the
 * start s = V/L and the rate k = R/L it reads I = s·(1 − e^(−k·t))/k, which stays well-behaved where R is small and needs no voltage.
 * Times are milliseconds, so s is A/ms, k is 1/ms, and V/s comes out in millihenries.
 */

/** Below this k·t the closed form loses digits, and its series is exact. */
const smallExponent = 1e-3;

/** (1 − e^(−x))/x and its derivative. */
function chargeShape(x: number): readonly [value: number, derivative: number] {
  if (Math.abs(x) < smallExponent) return [1 - x / 2 + (x * x) / 6, -1 / 2 + x / 3 - (x * x) / 8];
  const value = -Math.expm1(-x) / x;
  return [value, (Math.exp(-x) - value) / x];
}

/** Current against time, ms, with parameters slope at the start (A/ms), rate (1/ms), time of the start (ms). */
export const chargingCurve: Curve = (time, parameters, gradient) => {
  const [slope = 0, rate = 0, start = 0] = parameters;
  const since = time - start;
  const [shape, derivative] = chargeShape(rate * since);
  gradient[0] = since * shape;
  gradient[1] = slope * since * since * derivative;
  gradient[2] = -slope * (shape + rate * since * derivative);
  return slope * since * shape;
};

/** Value of a fitted curve at x, and its variance from the fit. */
export function fittedAt(curve: Curve, fit: Fit, x: number): { readonly value: number; readonly variance: number } {
  const gradient = new Float64Array(fit.parameters.length);
  const value = curve(x, fit.parameters, gradient);
  return { value, variance: varianceOf(gradient, fit.covariance) };
}

export function part({ x, y }: Points, from: number, to: number): Points {
  return { x: x.subarray(from, to), y: y.subarray(from, to) };
}

/** The law of charging fitted to points of a ramp. Nothing where it cannot be. */
export function fitCharging(points: Points): Fit | undefined {
  const line = fitCurve(polynomial, points, [0, 0, 0]);
  if (!line.ok) return undefined;
  const [level = 0, slope = 0, bend = 0] = line.value.parameters;
  // The straight line through the origin of the bent one: a start from which the law is always found.
  const firstSlope = Math.max(slope, 1e-9);
  const start = -level / firstSlope;
  const slopeAtStart = Math.max(firstSlope + 2 * bend * start, firstSlope / 3);
  const rate = Math.max(0, Math.min((-2 * bend) / slopeAtStart, 5 / ((points.x.at(-1) ?? 1) - start)));
  const fit = fitCurve(chargingCurve, points, [slopeAtStart, rate, start]);
  return fit.ok ? fit.value : undefined;
}

/**
 * The law up to a knee and a straight line from its current on: the driver holds the current. Parameters: those of `chargingCurve`,
 * the time of the knee (ms), and the slope after it (A/ms).
 */
const heldCurve: Curve = (time, parameters, gradient) => {
  const [slope = 0, rate = 0, start = 0, knee = 0, later = 0] = parameters;
  gradient.fill(0);
  const current = chargingCurve(Math.min(time, knee), parameters, gradient);
  if (time <= knee) return current;
  gradient[3] = slope * Math.exp(-rate * (knee - start)) - later;
  gradient[4] = time - knee;
  return current + later * (time - knee);
};

/**
 * The law up to a knee and the law with less inductance after it: the core is full. Same parameters as `heldCurve`. Voltage and
 * resistance stay what they were, so the rate rises in step with the slope: k₂ = k·s₂/s₁, with s₁ the slope just before the knee.
 */
const fullCoreCurve: Curve = (time, parameters, gradient) => {
  const [slope = 0, rate = 0, start = 0, knee = 0, later = 0] = parameters;
  gradient.fill(0);
  const current = chargingCurve(Math.min(time, knee), parameters, gradient);
  if (time <= knee) return current;
  const [since, before] = [time - knee, slope * Math.exp(-rate * (knee - start))];
  const laterRate = (rate * later) / before;
  const [shape, derivative] = chargeShape(laterRate * since);
  const byRate = later * since * since * derivative;
  gradient[0] = (gradient[0] ?? 0) - (byRate * laterRate) / slope;
  gradient[1] = (gradient[1] ?? 0) + byRate * (later / before + laterRate * (knee - start));
  gradient[2] = (gradient[2] ?? 0) - byRate * laterRate * rate;
  gradient[3] = before - later * Math.exp(-laterRate * since) + byRate * laterRate * rate;
  gradient[4] = since * shape + (byRate * rate) / before;
  return current + later * since * shape;
};

/** Where the current leaves the law of charging: a place among the parameters of the fit tells when. */
export type KneeKind = 'limiting' | 'saturation';

export interface Ramp {
  readonly fit: Fit;
  /** What was fitted. Its first parameters are slope, rate and start, whether there is a knee or not. */
  readonly curve: Curve;
  /** `limiting`: the driver holds the current; `saturation`: the core is full and the current runs away. */
  readonly knee: KneeKind | undefined;
}

/** Time of the knee among the parameters of a ramp that has one. */
export const kneePlace = 3;

/** A single law is doubted when it misses by this much more than the noise. */
const doubtedAbove = 1.1;
/** … and two laws are taken when they lower the squares at least to this share. */
const clearlyBetter = 0.9;
/** Slope after the knee over the slope before it: up to the one the current is held, from the other it runs away. */
const heldUpTo = 0.25;
const runsAwayFrom = 1.25;
/** Points that the search for a knee looks at, and at least on either side of it. */
const searchPoints = 120;
const fewestBefore = 8;
const fewestAfter = 5;

/** The law of charging, and the knee where there is one. `noise` is the standard deviation of one point away from the ramp. */
export function readRamp(points: Points, noise: number): Ramp | undefined {
  const whole = fitCharging(points);
  if (whole === undefined) return undefined;
  const single: Ramp = { fit: whole, curve: chargingCurve, knee: undefined };
  if (whole.deviation < doubtedAbove * noise) return single;
  const kneed = fitKnee(points);
  return kneed === undefined || kneed.fit.squares > clearlyBetter * whole.squares ? single : kneed;
}

/** Every so many points one, for a search that need not be fine. */
function thinned({ x, y }: Points): Points {
  const stride = Math.max(1, Math.floor(x.length / searchPoints));
  const kept = (values: Float64Array) => values.filter((_, place) => place % stride === 0);
  return { x: kept(x), y: kept(y) };
}

interface Split {
  readonly kind: KneeKind;
  readonly squares: number;
  /** Parameters to start the fit of both laws from. */
  readonly start: readonly number[];
}

function splitAt(points: Points, at: number): Split | undefined {
  const law = fitCharging(part(points, 0, at));
  const after = fitCurve(polynomial, part(points, at, points.x.length), [0, 0, 0]);
  if (law === undefined || !after.ok || isNegative(law)) return undefined;
  const knee = points.x[at] ?? 0;
  const [, slope = 0, bend = 0] = after.value.parameters;
  const start = [...law.parameters, knee, slope + 2 * bend * knee];
  const kind = kindOfKnee(start, points);
  return kind && { kind, squares: law.squares + after.value.squares, start };
}

/** The knee, roughly: of a row of places the one that leaves the smallest squares, for either kind. */
function roughKnees(points: Points): readonly Split[] {
  const best = new Map<KneeKind, Split>();
  const stride = Math.max(1, Math.floor(points.x.length / 40));
  for (let at = fewestBefore; at <= points.x.length - fewestAfter; at += stride) {
    const split = splitAt(points, at);
    if (split && split.squares < (best.get(split.kind)?.squares ?? Infinity)) best.set(split.kind, split);
  }
  return [...best.values()];
}

/** No winding has less than no resistance: such a law has taken in a part of what follows the knee. */
function isNegative({ parameters, covariance }: Fit): boolean {
  return (parameters[1] ?? 0) < -2 * Math.sqrt(covariance[parameters.length + 1] ?? 0);
}

const curves: Readonly<Record<KneeKind, Curve>> = { limiting: heldCurve, saturation: fullCoreCurve };

/** Both laws fitted together, so that the uncertainty of the knee counts in everything else; of the two kinds the one that misses less. */
function fitKnee(points: Points): Ramp | undefined {
  const ramps = roughKnees(thinned(points)).flatMap(({ kind, start }) => {
    const fit = fitCurve(curves[kind], points, start);
    return fit.ok && kindOfKnee(fit.value.parameters, points) === kind ? [{ fit: fit.value, curve: curves[kind], knee: kind }] : [];
  });
  return ramps.sort((one, other) => one.fit.squares - other.fit.squares)[0];
}

function kindOfKnee([slope = 0, rate = 0, start = 0, knee = 0, later = 0]: Iterable<number>, { x }: Points): KneeKind | undefined {
  if (!(knee > (x[0] ?? 0) && knee < (x.at(-1) ?? 0))) return undefined;
  const before = slope * Math.exp(-rate * (knee - start));
  if (later < heldUpTo * before) return 'limiting';
  return later > runsAwayFrom * before ? 'saturation' : undefined;
}

/** Change per ms of a fitted ramp at a time, from a step so small that bends do not show. */
export function slopeAt({ curve, fit }: Ramp, time: number): number {
  const gradient = new Float64Array(fit.parameters.length);
  const step = 1e-4;
  return (curve(time, fit.parameters, gradient) - curve(time - step, fit.parameters, gradient)) / step;
}
