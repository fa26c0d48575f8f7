import { normalCumulative, normalQuantile } from '../../measurement/normal.ts';

/** Two-sided 95 %: the quantile to ask for. */
export const TWO_SIDED_95 = 0.975;

/** Coefficients of z, z³, z⁵ … in the terms of Abramowitz & Stegun 26.7.5, by rising power of 1/ν. */
const terms: readonly { readonly divisor: number; readonly odd: readonly number[] }[] = [
  { divisor: 4, odd: [1, 1] },
  { divisor: 96, odd: [3, 16, 5] },
  { divisor: 384, odd: [-15, 17, 19, 3] },
  { divisor: 92160, odd: [-945, -1920, 1482, 776, 79] },
];

/**
 * Student's t that is not passed with chance `p`, 0 < p < 1. Exact for 1 and 2 degrees of freedom, from 3 on within 0.2 % at 0.975
 * (Abramowitz & Stegun 26.7.5, recalled). Infinite degrees give the normal quantile; fewer than 1 gives infinity for p above 0.5.
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  if (p < 0.5) return -studentQuantile(1 - p, degreesOfFreedom);
  if (degreesOfFreedom < 1) return Infinity;
  if (degreesOfFreedom === 1) return Math.tan(Math.PI * (p - 0.5));
  if (degreesOfFreedom === 2) return (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
  const z = normalQuantile(p);
  if (!Number.isFinite(degreesOfFreedom)) return z;
  return terms.reduce((sum, { divisor, odd }, power) => {
    const polynomial = odd.reduceRight((inner, coefficient) => inner * z * z + coefficient, 0) * z;
    return sum + polynomial / divisor / degreesOfFreedom ** (power + 1);
  }, z);
}

/** Chance that Student's t stays at or below `t`: Wallace's normal approximation (1959, recalled), within 0.002 from 3 degrees on. */
export function studentCumulative(t: number, degreesOfFreedom: number): number {
  if (!Number.isFinite(degreesOfFreedom)) return normalCumulative(t);
  if (degreesOfFreedom < 1) return 0.5;
  if (degreesOfFreedom <= 2) return smallCumulative(t, degreesOfFreedom);
  const size = Math.sqrt(degreesOfFreedom * Math.log1p((t * t) / degreesOfFreedom));
  return normalCumulative((Math.sign(t) * size * (8 * degreesOfFreedom + 1)) / (8 * degreesOfFreedom + 3));
}

/** The closed forms for one and two degrees of freedom; between them the one for the smaller. */
function smallCumulative(t: number, degreesOfFreedom: number): number {
  return degreesOfFreedom < 2 ? 0.5 + Math.atan(t) / Math.PI : 0.5 + t / (2 * Math.sqrt(2 + t * t));
}
