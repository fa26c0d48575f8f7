import { failure, success } from '../../result.ts';
import type { Result } from '../../result.ts';

/** A curve with parameters: its value at x; writes the slope against each parameter into `gradient`. */
export type Curve = (x: number, parameters: Float64Array, gradient: Float64Array) => number;

export interface Fit {
  readonly parameters: Float64Array;
  /** Covariance of the parameters, row by row. */
  readonly covariance: Float64Array;
  /** Root mean square of the residuals over the degrees of freedom. */
  readonly deviation: number;
  readonly degreesOfFreedom: number;
  /** Sum of squared residuals. */
  readonly squares: number;
}

export type FitFailure = 'too-few-points' | 'no-solution';

export interface Points {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

const mostSteps = 60;
const goodEnough = 1e-9;

/** Sums of one pass: J′J (row by row), J′r and r′r. */
interface Normal {
  readonly matrix: Float64Array;
  readonly vector: Float64Array;
  squares: number;
}

function accumulate(curve: Curve, { x, y }: Points, parameters: Float64Array): Normal {
  const count = parameters.length;
  const normal: Normal = { matrix: new Float64Array(count * count), vector: new Float64Array(count), squares: 0 };
  const gradient = new Float64Array(count);
  for (let point = 0; point < x.length; point += 1) {
    const residual = (y[point] ?? 0) - curve(x[point] ?? 0, parameters, gradient);
    normal.squares += residual * residual;
    for (let row = 0; row < count; row += 1) {
      const slope = gradient[row] ?? 0;
      normal.vector[row] = (normal.vector[row] ?? 0) + slope * residual;
      for (let column = 0; column <= row; column += 1) {
        const place = row * count + column;
        normal.matrix[place] = (normal.matrix[place] ?? 0) + slope * (gradient[column] ?? 0);
      }
    }
  }
  for (let row = 0; row < count; row += 1) {
    for (let column = row + 1; column < count; column += 1) normal.matrix[row * count + column] = normal.matrix[column * count + row] ?? 0;
  }
  return normal;
}

/**
 * Inverse of a symmetric positive definite matrix kept row by row, by Gauss-Jordan without exchange of rows after scaling the
 * diagonal to 1. Nothing when the matrix is singular to working precision.
 */
export function invert(matrix: Float64Array, count: number): Float64Array | undefined {
  const scale = Float64Array.from({ length: count }, (_, row) => Math.sqrt(matrix[row * count + row] ?? 0));
  if (scale.some((entry) => !(entry > 0) || !Number.isFinite(entry))) return undefined;
  const work = matrix.map((entry, place) => entry / (scale[Math.floor(place / count)] ?? 1) / (scale[place % count] ?? 1));
  for (let pivot = 0; pivot < count; pivot += 1) {
    if (!eliminate(work, count, pivot)) return undefined;
  }
  return work.map((entry, place) => entry / (scale[Math.floor(place / count)] ?? 1) / (scale[place % count] ?? 1));
}

/** One step of the inversion in place. */
function eliminate(work: Float64Array, count: number, pivot: number): boolean {
  const head = work[pivot * count + pivot] ?? 0;
  if (!(head > 1e-14)) return false;
  for (let row = 0; row < count; row += 1) {
    if (row === pivot) continue;
    const factor = (work[row * count + pivot] ?? 0) / head;
    for (let column = 0; column < count; column += 1) {
      const place = row * count + column;
      work[place] = column === pivot ? -factor : (work[place] ?? 0) - factor * (work[pivot * count + column] ?? 0);
    }
  }
  for (let column = 0; column < count; column += 1) {
    const place = pivot * count + column;
    work[place] = column === pivot ? 1 / head : (work[place] ?? 0) / head;
  }
  return true;
}

function damped(matrix: Float64Array, count: number, damping: number): Float64Array {
  return matrix.map((entry, place) => (place % (count + 1) === 0 ? entry * (1 + damping) : entry));
}

function step(normal: Normal, parameters: Float64Array, damping: number): Float64Array | undefined {
  const count = parameters.length;
  const inverse = invert(damped(normal.matrix, count, damping), count);
  return inverse && parameters.map((value, row) => value + normal.vector.reduce((sum, entry, column) => sum + (inverse[row * count + column] ?? 0) * entry, 0));
}

/**
 * Least squares by the Levenberg-Marquardt method: the normal equations with their diagonal raised until a step makes the residuals
 * smaller. The covariance comes from the residuals; where neighbouring residuals go together (noise passed through a slow clamp),
 * it is widened by (1 + ρ)/(1 − ρ) with ρ the correlation of neighbours.
 */
export function fitCurve(curve: Curve, points: Points, start: readonly number[]): Result<Fit, FitFailure> {
  const count = start.length;
  if (points.x.length <= count + 1) return failure('too-few-points');
  let parameters = Float64Array.from(start);
  let normal = accumulate(curve, points, parameters);
  let damping = 1e-3;
  for (let round = 0; round < mostSteps && damping < 1e9; round += 1) {
    const next = step(normal, parameters, damping);
    const trial = next && accumulate(curve, points, next);
    if (next === undefined || trial === undefined || !(trial.squares <= normal.squares)) {
      damping *= 8;
      continue;
    }
    const gain = normal.squares - trial.squares;
    parameters = Float64Array.from(next);
    normal = trial;
    damping = Math.max(damping / 6, 1e-12);
    if (gain <= goodEnough * normal.squares) break;
  }
  return finish(curve, points, parameters, normal);
}

function finish(curve: Curve, points: Points, parameters: Float64Array, normal: Normal): Result<Fit, FitFailure> {
  const inverse = invert(normal.matrix, parameters.length);
  if (inverse === undefined || !Number.isFinite(normal.squares)) return failure('no-solution');
  const degreesOfFreedom = points.x.length - parameters.length;
  const variance = (normal.squares / degreesOfFreedom) * togetherness(curve, points, parameters);
  return success({
    parameters,
    covariance: inverse.map((entry) => entry * variance),
    deviation: Math.sqrt(normal.squares / degreesOfFreedom),
    degreesOfFreedom,
    squares: normal.squares,
  });
}

/** (1 + ρ)/(1 − ρ), or 1 where ρ may be chance. */
function togetherness(curve: Curve, { x, y }: Points, parameters: Float64Array): number {
  const gradient = new Float64Array(parameters.length);
  let [before, product, squares] = [0, 0, 0];
  for (let point = 0; point < x.length; point += 1) {
    const residual = (y[point] ?? 0) - curve(x[point] ?? 0, parameters, gradient);
    product += before * residual;
    squares += residual * residual;
    before = residual;
  }
  const correlation = squares > 0 ? Math.min(product / squares, 0.95) : 0;
  return correlation > 2.5 / Math.sqrt(x.length) ? (1 + correlation) / (1 - correlation) : 1;
}

/** Variance of g·p for parameters p of this covariance: the first-order law of propagation (JCGM 100, 5.2). */
export function varianceOf(gradient: ArrayLike<number>, covariance: Float64Array): number {
  const count = gradient.length;
  let sum = 0;
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < count; column += 1) sum += (gradient[row] ?? 0) * (gradient[column] ?? 0) * (covariance[row * count + column] ?? 0);
  }
  return Math.max(0, sum);
}

/** y = p₀ + p₁·x + p₂·x² …, as many terms as parameters. */
export const polynomial: Curve = (x, parameters, gradient) => {
  let [power, value] = [1, 0];
  for (let order = 0; order < parameters.length; order += 1) {
    gradient[order] = power;
    value += (parameters[order] ?? 0) * power;
    power *= x;
  }
  return value;
};
