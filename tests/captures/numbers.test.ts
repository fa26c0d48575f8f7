import { inv, lusolve, matrix, multiply, transpose } from 'mathjs';
import { linearRegression, mean, medianAbsoluteDeviation, quantile, standardDeviation, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { figureOf } from '../../src/domain/captures/numbers/figure.ts';
import { fitCurve, invert, polynomial } from '../../src/domain/captures/numbers/fit.ts';
import type { Curve } from '../../src/domain/captures/numbers/fit.ts';
import { rankCylinders } from '../../src/domain/captures/numbers/ranking.ts';
import { deviationOf, meanFigure, median, oddOnes, quantileOfSorted, robustDeviation, sorted } from '../../src/domain/captures/numbers/sample.ts';
import { studentCumulative, studentQuantile } from '../../src/domain/captures/numbers/student.ts';
import { burnCurve } from '../../src/domain/captures/spark/burnEnd.ts';
import { chargingCurve } from '../../src/domain/captures/coil/ramp.ts';
import { drawFrom } from './model/random.ts';

/** Student's t for 95 % both sides, as printed in JCGM 100, table G.2 (from memory of the text; any table of t agrees). */
const printedT: readonly (readonly [degrees: number, t: number])[] = [
  [1, 12.71], [2, 4.3], [3, 3.18], [4, 2.78], [5, 2.57], [6, 2.45], [8, 2.31], [10, 2.23], [15, 2.13], [20, 2.09], [30, 2.04], [50, 2.01], [Infinity, 1.96],
];

describe("Student's t", () => {
  it.each(printedT)('%d degrees of freedom: %d', (degrees, t) => {
    expect(studentQuantile(0.975, degrees)).toBeCloseTo(t, 1);
    expect(Math.abs(studentQuantile(0.975, degrees) - t)).toBeLessThan(0.0062);
    expect(studentQuantile(0.025, degrees)).toBeCloseTo(-studentQuantile(0.975, degrees), 9);
    expect(studentCumulative(t, degrees)).toBeCloseTo(0.975, 2);
  });
});

describe('figures', () => {
  it.each([
    { normal: 1, halfWidth: 0 },
    { normal: 1, halfWidth: 0.3 },
    { normal: 1, halfWidth: 1 },
    { normal: 0.5, halfWidth: 2 },
    { normal: 0.1, halfWidth: 1 },
    { normal: 0.001, halfWidth: 1 },
    { normal: 0, halfWidth: 1 },
  ])('noise $normal and an even part of ± $halfWidth: the interval holds 95 of 100 drawn sums', (spread) => {
    const draw = drawFrom(11);
    const { halfWidth95, standardUncertainty } = figureOf(0, spread);
    const draws = Array.from({ length: 100_000 }, () => spread.normal * draw.normal() + draw.between(-spread.halfWidth, spread.halfWidth));
    expect(draws.filter((value) => Math.abs(value) <= halfWidth95).length / draws.length).toBeCloseTo(0.95, 2);
    expect(standardDeviation(draws)).toBeCloseTo(standardUncertainty, 1);
  });

  it('JCGM 100, 4.3.7 example: 15 µV evenly spread is 8.7 µV (recalled)', () => {
    expect(figureOf(0, { normal: 0, halfWidth: 15 }).standardUncertainty).toBeCloseTo(8.66, 2);
  });
});

describe('samples, against simple-statistics', () => {
  const draw = drawFrom(3);
  const lists = [5, 10, 101].map((length) => Array.from({ length }, () => draw.normal() * 3 + 7));
  it.each(lists)('list %#', (...list) => {
    expect(median(list)).toBeCloseTo(quantile(list, 0.5), 12);
    expect(deviationOf(list)).toBeCloseTo(sampleStandardDeviation(list), 12);
    expect(robustDeviation(list)).toBeCloseTo(1.4826 * medianAbsoluteDeviation(list), 12);
    const figure = meanFigure(list);
    expect(figure.value).toBeCloseTo(mean(list), 12);
    expect(figure.standardUncertainty).toBeCloseTo(sampleStandardDeviation(list) / Math.sqrt(list.length), 12);
  });
  it('quantiles lie on straight lines between the values', () => {
    expect(quantileOfSorted(sorted([4, 1, Number.NaN, 3, 2]), 0.5)).toBe(2.5);
    expect(quantileOfSorted(sorted([4, 1, 3, 2]), 0)).toBe(1);
    expect(quantileOfSorted(sorted([4, 1, 3, 2]), 1)).toBe(4);
  });
  it('an odd one is found and nothing else', () => {
    expect(oddOnes([10, 10.1, 9.9, 10, 14, 10.05], 0.5)).toEqual([4]);
    expect(oddOnes([10, 10.1, 9.9], 0.5)).toEqual([]);
  });
});

function numbers(length: number, from: (place: number) => number): Float64Array {
  return Float64Array.from({ length }, (_, place) => from(place));
}

describe('least squares', () => {
  const draw = drawFrom(5);
  const x = numbers(60, (place) => place / 10);

  it('a straight line, against simple-statistics', () => {
    const y = x.map((value) => 3 - 2 * value + 0.3 * draw.normal());
    const fit = fitCurve(polynomial, { x, y }, [0, 0]);
    const other = linearRegression([...x].map((value, place) => [value, y[place] ?? 0]));
    expect(fit.ok && fit.value.parameters[0]).toBeCloseTo(other.b, 8);
    expect(fit.ok && fit.value.parameters[1]).toBeCloseTo(other.m, 8);
  });

  it('a cubic and its covariance, against the normal equations solved by mathjs', () => {
    const y = x.map((value) => 1 + value - 0.5 * value ** 2 + 0.02 * value ** 3 + 0.3 * draw.normal());
    const fit = fitCurve(polynomial, { x, y }, [0, 0, 0, 0]);
    const design = matrix([...x].map((value) => [1, value, value ** 2, value ** 3]));
    const square = multiply(transpose(design), design);
    const solved = lusolve(square, multiply(transpose(design), matrix([...y]))).toArray() as number[][];
    if (!fit.ok) throw new Error('no fit');
    solved.forEach(([parameter = 0], place) => expect(fit.value.parameters[place]).toBeCloseTo(parameter, 6));
    const inverse = inv(square).toArray() as number[][];
    // The noise drawn here is independent, so nothing is added for neighbours that go together.
    inverse.flat().forEach((entry, place) => expect((fit.value.covariance[place] ?? 0) / (entry * fit.value.deviation ** 2)).toBeCloseTo(1, 5));
  });

  it('an inverse, against mathjs', () => {
    const rows = [[4, 1, 0.5, 0.2], [1, 3, 0.7, 0.1], [0.5, 0.7, 2, 0.3], [0.2, 0.1, 0.3, 1]];
    const own = invert(Float64Array.from(rows.flat()), 4);
    (inv(rows) as number[][]).flat().forEach((entry, place) => expect(own?.[place]).toBeCloseTo(entry, 12));
    expect(invert(Float64Array.of(1, 1, 1, 1), 2)).toBeUndefined();
  });

  it('noise whose neighbours go together widens the uncertainty as the theory of such noise says', () => {
    // First-order autoregressive noise of correlation ρ: the variance of a mean is (1 + ρ)/(1 − ρ) times as large (textbook, recalled).
    const correlation = 0.6;
    const ratios = Array.from({ length: 200 }, (_, seed) => {
      const own = drawFrom(seed + 1);
      let last = 0;
      const y = numbers(400, () => (last = correlation * last + own.normal()));
      const fit = fitCurve(polynomial, { x: numbers(400, (place) => place / 400), y }, [0]);
      const variance = 1 / (1 - correlation ** 2);
      return fit.ok ? (fit.value.covariance[0] ?? 0) / (variance / 400) : 0;
    });
    expect(median(ratios)).toBeGreaterThan(3.4);
    expect(median(ratios)).toBeLessThan(4.4);
  });
});

/** Slopes by central differences, which owe nothing to the formulas. */
function expectGradient(curve: Curve, at: number, parameters: readonly number[]): void {
  const gradient = new Float64Array(parameters.length);
  const spare = new Float64Array(parameters.length);
  curve(at, Float64Array.from(parameters), gradient);
  parameters.forEach((value, place) => {
    const step = 1e-6 * Math.max(1, Math.abs(value));
    const moved = (way: number) => curve(at, Float64Array.from(parameters.with(place, value + way * step)), spare);
    expect(gradient[place]).toBeCloseTo((moved(1) - moved(-1)) / (2 * step), 4);
  });
}

describe('curves: slopes against differences', () => {
  it('the law of charging', () => {
    expectGradient(chargingCurve, 2.5, [4, 0.2, 0.3]);
    expectGradient(chargingCurve, 2.5, [4, 1e-5, 0.3]);
  });
  it('burn line and swing', () => {
    expectGradient(burnCurve, 0.8, [1.5, 0.2, 1.2, 3, 60, 0.4]);
    expectGradient(burnCurve, 1.31, [1.5, 0.2, 1.2, 3, 60, 0.4]);
  });
});

describe('a damped swing', () => {
  it('loses the same share each period: the logarithmic decrement (textbook of mechanics, recalled)', () => {
    const spare = new Float64Array(6);
    const [damping, period] = [2, 0.1];
    const parameters = Float64Array.of(1, 0, 0, damping, (2 * Math.PI) / period, 0);
    const tops = [1, 2, 3].map((number) => burnCurve(number * period, parameters, spare));
    expect(Math.log((tops[0] ?? 0) / (tops[1] ?? 1))).toBeCloseTo(damping * period, 12);
    expect(Math.log((tops[1] ?? 0) / (tops[2] ?? 1))).toBeCloseTo(damping * period, 12);
    expect(burnCurve(period / 4, parameters, spare)).toBeCloseTo(0, 12);
  });
});

describe('ranking', () => {
  it('names a weak one for sure, and says so seldom when all are alike', () => {
    let [named, falsely] = [0, 0];
    for (let seed = 1; seed <= 400; seed += 1) {
      const draw = drawFrom(seed);
      const rounds = (weak: number) => Array.from({ length: 8 }, () => new Map([1, 2, 3, 4].map((cylinder) => [cylinder, (cylinder === 3 ? weak : 100) + 3 * draw.normal()])));
      const [faulty, sound] = [rankCylinders(rounds(85), 'share'), rankCylinders(rounds(100), 'share')];
      if (faulty?.weakest === 3 && faulty.sureness > 0.95) named += 1;
      if ((sound?.sureness ?? 0) > 0.95) falsely += 1;
    }
    expect(named).toBeGreaterThan(390);
    // One in twenty of those that claim to be 95 % sure may be wrong, and not more.
    expect(falsely).toBeLessThanOrEqual(20);
  });
  it('says nothing of two rounds or of one cylinder', () => {
    const round = new Map([[1, 5], [2, 6]]);
    expect(rankCylinders([round, round], 'share')).toBeUndefined();
    expect(rankCylinders([1, 2, 3].map(() => new Map([[1, 5]])), 'share')).toBeUndefined();
  });
});
