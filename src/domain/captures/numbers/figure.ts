import { normalCumulative } from '../../measurement/normal.ts';
import { studentQuantile, TWO_SIDED_95 } from './student.ts';

/** A figure drawn from a trace or a table, in the unit its field names. */
export interface Figure {
  readonly value: number;
  /** Standard uncertainty (JCGM 100), same unit as `value`. */
  readonly standardUncertainty: number;
  /** Half the width of the interval that holds the true value 95 times in 100, same unit. */
  readonly halfWidth95: number;
}

export interface Spread {
  /** Standard uncertainty of the part that is spread like noise. */
  readonly normal: number;
  /** Half width of a part that is evenly spread: what lies between two samples. */
  readonly halfWidth?: number;
  /** How many independent residuals the noise was worked out from. Infinite when left out. */
  readonly degreesOfFreedom?: number;
}

export function figureOf(value: number, { normal, halfWidth = 0, degreesOfFreedom = Infinity }: Spread): Figure {
  return {
    value,
    standardUncertainty: Math.hypot(normal, halfWidth / Math.sqrt(3)),
    halfWidth95: halfWidthFor95(normal, halfWidth, degreesOfFreedom),
  };
}

/** An exact figure times a factor. */
export function scaleFigure(figure: Figure, factor: number): Figure {
  const size = Math.abs(factor);
  return {
    value: figure.value * factor,
    standardUncertainty: figure.standardUncertainty * size,
    halfWidth95: figure.halfWidth95 * size,
  };
}

/** Adds an independent part, as a standard uncertainty in the figure's unit. */
export function widen(figure: Figure, standardUncertainty: number): Figure {
  if (standardUncertainty === 0) return figure;
  return {
    value: figure.value,
    standardUncertainty: Math.hypot(figure.standardUncertainty, standardUncertainty),
    halfWidth95: Math.hypot(figure.halfWidth95, studentQuantile(TWO_SIDED_95, Infinity) * standardUncertainty),
  };
}

/** ∫Φ from −∞ to z. */
function integratedNormal(z: number): number {
  return z * normalCumulative(z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Where one part is this many times the other, the smaller no longer shows in the shape. */
const dominates = 8;

/**
 * Half width that holds 95 % of the sum of a normal part of standard deviation `normal` and an even part of ± `halfWidth`.
 * P(|N + U| ≤ k) = (u/h)·(G((k+h)/u) − G((k−h)/u)) − 1, with G the integral of Φ; solved for k by Newton's method.
 */
function halfWidthFor95(normal: number, halfWidth: number, degreesOfFreedom: number): number {
  const student = studentQuantile(TWO_SIDED_95, degreesOfFreedom);
  if (halfWidth * dominates <= normal) return student * Math.hypot(normal, halfWidth / Math.sqrt(3));
  const spread = (normal * student) / studentQuantile(TWO_SIDED_95, Infinity);
  if (spread * dominates * dominates <= halfWidth) return 0.95 * halfWidth + spread;
  let k = Math.min(0.95 * halfWidth + 1.7 * spread, 1.96 * Math.hypot(spread, halfWidth / Math.sqrt(3)));
  for (let step = 0; step < 6; step += 1) {
    const [above, below] = [(k + halfWidth) / spread, (k - halfWidth) / spread];
    const excess = (spread / halfWidth) * (integratedNormal(above) - integratedNormal(below)) - 1 - 0.95;
    k -= (excess * halfWidth) / (normalCumulative(above) - normalCumulative(below));
  }
  return k;
}
