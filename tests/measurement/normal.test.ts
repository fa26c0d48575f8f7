import fc from 'fast-check';
import { erf } from 'mathjs';
import { cumulativeStdNormalProbability, probit } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { normalCumulative, normalQuantile } from '../../src/domain/measurement/normal.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('against independent libraries', () => {
  test('as the error function of mathjs', () => {
    fc.assert(
      fc.property(between(-6, 6), (z) => {
        expect(Math.abs(normalCumulative(z) - (1 + erf(z / Math.SQRT2)) / 2)).toBeLessThan(1e-14);
      }),
      { numRuns: 1000 },
    );
  });

  // simple-statistics reads Φ from a table of four decimals, and its inverse from a short rational form.
  test('as simple-statistics, to its four decimals', () => {
    for (let z = -3; z <= 3; z += 0.25) expect(Math.abs(normalCumulative(z) - cumulativeStdNormalProbability(z))).toBeLessThan(1e-4);
    for (let p = 0.01; p < 1; p += 0.01) expect(Math.abs(normalQuantile(p) - probit(p))).toBeLessThan(5e-3);
  });
});

describe('normalCumulative', () => {
  // Tails to 15 digits: Abramowitz & Stegun, tables 26.1 and 26.2 (recalled), which print 1.349898e-3, 2.866516e-7, 7.619853e-24.
  test.each([
    [-1, 0.158655253931457],
    [-2, 0.0227501319481792],
    [-3, 1.34989803163009e-3],
    [-4, 3.16712418331199e-5],
    [-5, 2.86651571879194e-7],
    [-6, 9.86587645037698e-10],
    [-10, 7.61985302416053e-24],
  ])('the tail at %d is %d', (z, expected) => expect(Math.abs(normalCumulative(z) / expected - 1)).toBeLessThan(1e-13));

  test('is 0 and 1 at the ends and a half in the middle', () => {
    expect([-Infinity, -50, 0, 50, Infinity].map(normalCumulative)).toEqual([0, 0, 0.5, 1, 1]);
  });

  test('joins its two methods without a step', () => {
    const join = 2 * Math.SQRT2;
    for (const side of [-join, join]) {
      const step = normalCumulative(side + 1e-9) - normalCumulative(side - 1e-9);
      expect(Math.abs(step / (2e-9 * Math.exp(-4) / Math.sqrt(2 * Math.PI)) - 1)).toBeLessThan(1e-4);
    }
  });

  test('rises, and mirrors about nought', () => {
    fc.assert(
      fc.property(between(-9, 9), between(1e-6, 1), (z, step) => {
        expect(normalCumulative(z + step)).toBeGreaterThanOrEqual(normalCumulative(z));
        expect(normalCumulative(z) + normalCumulative(-z)).toBeCloseTo(1, 14);
      }),
    );
  });
});

describe('normalQuantile', () => {
  test('undoes normalCumulative', () => {
    fc.assert(
      fc.property(between(-8, 5), (z) => {
        expect(Math.abs(normalQuantile(normalCumulative(z)) - z)).toBeLessThan(1e-9);
      }),
    );
  });

  test('is undone by normalCumulative, far into the tail', () => {
    fc.assert(
      fc.property(between(-250, -0.01), (power) => {
        expect(Math.abs(normalCumulative(normalQuantile(10 ** power)) / 10 ** power - 1)).toBeLessThan(1e-10);
      }),
    );
  });

  test('has no end at 0 and 1', () => {
    expect([-1, 0, 1, 2].map(normalQuantile)).toEqual([-Infinity, -Infinity, Infinity, Infinity]);
  });
});
