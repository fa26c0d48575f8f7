/** Below this the series converges quickly and loses nothing; above it the continued fraction does. */
const SERIES_LIMIT = 2;
/** Beyond this erfc is smaller than any number that can be held. */
const NOTHING_LEFT = 27;
const TERMS = 200;

/**
 * Complementary error function, for x at or above 0: relative error below 1e-13.
 * Series: Abramowitz & Stegun 7.1.6. Continued fraction: 7.1.14, worked from its far end.
 */
function complementaryError(x: number): number {
  if (x > NOTHING_LEFT) return 0;
  return x < SERIES_LIMIT ? 1 - errorSeries(x) : errorFraction(x);
}

/** erf x = 2/√π · e^(−x²) · Σ 2ⁿ x^(2n+1) / (1·3·…·(2n+1)); every term is positive, so no digits cancel. */
function errorSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < TERMS && term > sum * 1e-17; n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/** erfc x = e^(−x²)/√π · 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …)))). */
function errorFraction(x: number): number {
  let tail = x;
  for (let n = TERMS; n > 0; n -= 1) tail = x + n / 2 / tail;
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / tail;
}

/**
 * Chance that a standard normal variable is at or below `z`: Φ(z). Any z, infinite ones too; relative error below 1e-12
 * for z from −8 up, in the lower tail as well.
 */
export function normalCumulative(z: number): number {
  const tail = complementaryError(Math.abs(z) / Math.SQRT2) / 2;
  return z < 0 ? tail : 1 - tail;
}

/**
 * The z that a standard normal variable stays at or below with chance `p`: the inverse of Φ.
 * −∞ for p at or below 0, +∞ at or above 1. A first guess (Abramowitz & Stegun 26.2.23) is refined by Halley's method.
 */
export function normalQuantile(p: number): number {
  if (p <= 0) return -Infinity;
  if (p >= 1) return Infinity;
  if (p > 0.5) return -normalQuantile(1 - p);
  let z = firstGuess(p);
  for (let step = 0; step < 3; step += 1) {
    const excess = (normalCumulative(z) - p) * Math.sqrt(2 * Math.PI) * Math.exp((z * z) / 2);
    z -= excess / (1 + (z * excess) / 2);
  }
  return z;
}

/** Within 4.5e-4 of the quantile for p from 0 to 0.5. */
function firstGuess(p: number): number {
  const t = Math.sqrt(-2 * Math.log(p));
  const numerator = 2.515517 + t * (0.802853 + t * 0.010328);
  const denominator = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return numerator / denominator - t;
}
