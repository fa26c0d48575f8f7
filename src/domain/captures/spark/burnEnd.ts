import { fitCurve, varianceOf } from '../numbers/fit.ts';
import type { Curve, Fit, Points } from '../numbers/fit.ts';
import { figureOf, widen } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';

/*
 * While the spark burns its voltage is nearly a straight line. When it goes out, what energy is left swings between coil and winding
 * capacitance: a damped oscillation e^(−αt)·(C·cos ωt + S·sin ωt) about rest (any textbook of mechanics or circuits: the free response
 * of a second-order system; recalled). Line and swing meet without a step, which tells when the spark went out better than the eye can.
 */

/** Value at the start of the line, its slope, time of the end, damping, angular frequency, sine part. Times in ms, rest at 0. */
export const burnCurve: Curve = (time, parameters, gradient) => {
  const [level = 0, slope = 0, end = 0, damping = 0, frequency = 0, sine = 0] = parameters;
  gradient.fill(0);
  if (time <= end) {
    gradient[0] = 1;
    gradient[1] = time;
    return level + slope * time;
  }
  const since = time - end;
  const [decay, cosine, sinus] = [Math.exp(-damping * since), Math.cos(frequency * since), Math.sin(frequency * since)];
  const last = level + slope * end;
  const value = decay * (last * cosine + sine * sinus);
  const turned = decay * (-last * sinus + sine * cosine);
  gradient[0] = decay * cosine;
  gradient[1] = end * decay * cosine;
  gradient[2] = slope * decay * cosine + damping * value - frequency * turned;
  gradient[3] = -since * value;
  gradient[4] = since * turned;
  gradient[5] = decay * sinus;
  return value;
};

export interface Burn {
  /** ms from the firing to the moment the spark goes out. */
  readonly time: Figure;
  /** Half-way along the burn line, unit of the trace. */
  readonly voltage: Figure;
  /** Unit of the trace per ms; positive when the voltage grows as the spark burns on. */
  readonly slope: Figure;
  /** What swings out afterwards; nothing where no swing was found. */
  readonly swing: { readonly frequency: Figure; readonly swingsToATenth: Figure } | undefined;
}

/** Parameters from which the fit starts, by what the eye sees: half-way crossing, first trough after it, level of the line. */
export interface BurnSight {
  readonly level: number;
  readonly halfWay: number;
  readonly trough: number;
}

/** From the crossing of half the height to the trough a cosine passes a third of its period; from its top to the crossing a sixth. */
function startFrom({ level, halfWay, trough }: BurnSight): readonly number[] {
  const period = 3 * Math.max(trough - halfWay, 1e-3);
  return [level, 0, halfWay - period / 6, 0.5 / period, (2 * Math.PI) / period, 0];
}

function bestFrom(points: Points, starts: readonly (readonly number[])[]): Fit | undefined {
  const fits = starts.map((from) => fitCurve(burnCurve, points, from)).flatMap((fit) => (fit.ok ? [fit.value] : []));
  return fits.sort((one, other) => one.squares - other.squares)[0];
}

/** A swing that first rises over the line meets it twice: the same swing, joined where it meets the line the other time. */
function mirrored({ parameters }: Fit): readonly number[] {
  const [level = 0, slope = 0, end = 0, , frequency = 0, sine = 0] = parameters;
  const shift = (2 * Math.atan2(sine, level + slope * end)) / frequency;
  return [...parameters].with(2, end + shift).with(5, -sine);
}

/** What is unsure before the fit begins. */
export interface BurnDoubts {
  /** Half a sampling interval, ms: the firing, from which times are counted, lies between two readings. */
  readonly firingHalfStep: number;
  /** Standard uncertainty of the level of rest, from which voltages are counted. */
  readonly restDeviation: number;
}

/** Burn line and swing from points that begin on the burn line and end among the swings; times from the firing on. */
export function fitBurn(points: Points, sight: BurnSight, { firingHalfStep, restDeviation }: BurnDoubts): Burn | undefined {
  const start = startFrom(sight);
  const first = bestFrom(points, [start, start.with(5, 0.5 * sight.level), start.with(5, -0.5 * sight.level), start.with(4, 1.3 * (start[4] ?? 0))]);
  if (first === undefined) return undefined;
  const other = bestFrom(points, [mirrored(first)]);
  const fit = other !== undefined && other.squares < first.squares ? other : first;
  return burnFrom(fit, [first, ...(other ? [other] : [])], points, { firingHalfStep, restDeviation });
}

function burnFrom(fit: Fit, fits: readonly Fit[], { x }: Points, { firingHalfStep, restDeviation }: BurnDoubts): Burn | undefined {
  const [level = 0, slope = 0, end = 0] = fit.parameters;
  if (!(end > (x[0] ?? 0) && end < (x.at(-1) ?? 0))) return undefined;
  return {
    time: endOf(fits, fit, firingHalfStep),
    voltage: widen(figureFrom(fit, level + (slope * end) / 2, [1, end / 2, slope / 2]), restDeviation),
    slope: figureFrom(fit, slope, [0, 1]),
    swing: swingFrom(fit),
  };
}

/** A figure that follows from the parameters, by its change with each of them. */
function figureFrom({ covariance, degreesOfFreedom }: Fit, value: number, gradient: readonly number[]): Figure {
  return figureOf(value, { normal: Math.sqrt(varianceOf(padded(gradient), covariance)), degreesOfFreedom });
}

function swingFrom(fit: Fit): Burn['swing'] {
  const [, , , damping = 0, frequency = 0] = fit.parameters;
  if (!(frequency > 0 && damping > 0)) return undefined;
  const tenth = (frequency / damping) * (Math.LN10 / (2 * Math.PI));
  return {
    frequency: figureFrom(fit, frequency / (2 * Math.PI), [0, 0, 0, 0, 1 / (2 * Math.PI)]),
    swingsToATenth: figureFrom(fit, tenth, [0, 0, 0, -tenth / damping, tenth / frequency]),
  };
}

/**
 * The join is smooth where little current is left, and the first-order law of propagation then falls short. Found by trial on drawn
 * traces: with this factor the 95 % interval holds the true end as often as it says.
 */
const smoothJoin = 1.2;
const endPlace = 2;

/**
 * The end by both places at which the swing can be joined, each weighed by its likelihood e^(−χ²/2): where noise hides which of the two
 * it is, the doubt between them counts.
 */
function endOf(fits: readonly Fit[], best: Fit, halfWidth: number): Figure {
  const variance = best.squares / best.degreesOfFreedom;
  const weights = fits.map((fit) => Math.exp((best.squares - fit.squares) / (2 * variance)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (pick: (fit: Fit) => number) => fits.reduce((sum, fit, place) => sum + (pick(fit) * (weights[place] ?? 0)) / total, 0);
  const end = (fit: Fit) => fit.parameters[endPlace] ?? 0;
  const value = mean(end);
  const normal = smoothJoin * Math.sqrt(mean((fit) => (fit.covariance[endPlace * 6 + endPlace] ?? 0) + (end(fit) - value) ** 2));
  return figureOf(value, { normal, halfWidth, degreesOfFreedom: best.degreesOfFreedom });
}

function padded(gradient: readonly number[]): readonly number[] {
  return [...gradient, ...new Array<number>(6 - gradient.length).fill(0)];
}

