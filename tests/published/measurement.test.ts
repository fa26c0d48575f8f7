import { describe, expect, test } from 'vitest';
import { chances, judge, meterHalfWidth, rectangular } from '../../src/domain/measurement/judge.ts';
import { normalCumulative, normalQuantile } from '../../src/domain/measurement/normal.ts';
import { COPPER_COEFFICIENT, referToTemperature } from '../../src/domain/measurement/temperature.ts';
import type { Judgement, Limits, Reading } from '../../src/domain/measurement/types.ts';

function judged(reading: Reading, limits: Limits): Judgement {
  const result = judge(reading, limits);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** A reading whose meter gives exactly this standard uncertainty: one count of √3 times it, and no percentage. */
function readingWith(value: number, standardUncertainty: number): Reading {
  const meter = { name: 'of the example', percent: 0, counts: 1, resolution: Math.sqrt(3) * standardUncertainty };
  return { value, resolution: 0, leads: 0, temperature: 20, temperatureTolerance: 0, meter };
}

describe('copper', () => {
  test('coefficient at 20 °C, IEC 60028 (recalled)', () => expect(COPPER_COEFFICIENT).toBe(0.00393));

  // Computed apart from this program: R [1 + 0.00393 (t2 − 20)] / [1 + 0.00393 (t1 − 20)]. Six decimals, or the digits shown. Ω.
  test.each<readonly [r1: number, t1: number, t2: number, expected: number, tolerance: number]>([
    [0.5, 20, 80, 0.6179, 5e-7],
    [0.7, 25, 95, 0.888859, 5e-7],
    [1.5, 20, 0, 1.3821, 5e-7],
    [3, 20, 100, 3.9432, 5e-7],
    [0.4, 90, 20, 0.313701, 5e-7],
    [8000, 20, 90, 10200.8, 5e-4],
    [10000, 25, -10, 8651.008, 5e-4],
    [1.2, 15, 60, 1.416474, 5e-7],
    [450, 20, 110, 609.165, 5e-5],
    [12000, 80, 25, 9901.117, 5e-4],
  ])('%d Ω at %d °C is at %d °C %d Ω', (r1, t1, t2, expected, tolerance) => {
    expect(Math.abs(referToTemperature(r1, t1, t2, 'copper') - expected)).toBeLessThanOrEqual(tolerance);
  });

  // The other law in use, R (234.5 + t2) / (234.5 + t1), printed in electrical safety standards: agrees to 2 parts in 10⁴.
  test.each([
    [0.5, 20, 80, 0.617878],
    [0.4, 90, 20, 0.313713],
    [12000, 80, 25, 9901.431],
  ])('agrees with the law of inferred zero resistance: %d Ω, %d °C to %d °C, %d Ω', (r1, t1, t2, expected) => {
    expect(Math.abs(referToTemperature(r1, t1, t2, 'copper') / expected - 1)).toBeLessThan(1e-4);
  });
});

describe('meter limits: a = reading × % + counts × resolution, u = a/√3 (computed; to the digits shown)', () => {
  test.each<readonly [reading: number, percent: number, counts: number, resolution: number, a: number, u: number, unit: string]>([
    [0.72, 0.8, 3, 0.01, 0.03576, 0.020646, 'Ω'],
    [0.72, 0.5, 5, 0.001, 0.0086, 0.0049652, 'Ω'],
    [12.62, 0.5, 2, 0.01, 0.0831, 0.047978, 'V'],
    [10500, 1, 3, 10, 135, 77.942, 'Ω'],
    [5020, 0.9, 1, 10, 55.18, 31.858, 'Ω'],
    [0.184, 0.5, 3, 0.001, 0.00392, 0.0022632, 'V'],
    [0.45, 0.3, 2, 0.001, 0.00335, 0.0019341, 'V'],
  ])('%d ± (%d % + %d × %d) is ± %d, u = %d %s', (value, percent, counts, resolution, a, u) => {
    const meter = { name: 'of the example', percent, counts };
    expect(Math.abs(meterHalfWidth(value, meter, resolution) / a - 1)).toBeLessThan(1e-12);
    const judgement = judged(
      { value, resolution, leads: 0, temperature: 20, temperatureTolerance: 3, meter },
      { high: 20000, unit: 'ohm', variation: 'none' },
    );
    expect(Math.abs(judgement.standardUncertainty / u - 1)).toBeLessThan(3e-5);
  });

  test('leads taken off as an independent reading: 0.92 − 0.20 Ω, 0.8 % + 3 counts', () => {
    const reading = { value: 0.92, resolution: 0.01, leads: 0.2, temperature: 20, temperatureTolerance: 0, meter: { name: 'm', percent: 0.8, counts: 3 } };
    const judgement = judged(reading, { low: 0.5, high: 0.8, unit: 'ohm', variation: 'none' });
    expect(judgement.corrected).toBeCloseTo(0.72, 12);
    expect(judgement.standardUncertainty).toBeCloseTo(0.028251, 6);
    expect(judgement.expandedUncertainty).toBeCloseTo(0.056502, 6);
  });
});

describe('JCGM 100:2008 (clauses recalled; printed values to the printed digits)', () => {
  test('4.3.7 example 1: ± 0.40e-6 per °C, evenly spread', () => expect(rectangular(0.4e-6) * 1e6).toBeCloseTo(0.23, 2));

  test('4.3.7 example 2: 14e-6 of 0.928571 V and 2e-6 of a 1 V range', () => {
    const a = meterHalfWidth(0.928571, { name: 'voltmeter', percent: 14e-4, counts: 2 }, 1e-6);
    expect(a * 1e6).toBeCloseTo(15, 3);
    expect(rectangular(a) * 1e6).toBeCloseTo(8.7, 1);
  });

  test('resolution 0.01 alone: half a count, evenly spread', () => expect(rectangular(0.005)).toBeCloseTo(0.00288675, 8));

  test('4.3.4: ± 129 µΩ at 99 % is u = 50 µΩ', () => expect(129 / normalQuantile(0.995)).toBeCloseTo(50, 0));
  test('4.3.5: ± 0.04 mm at 50 : 50 is u = 0.06 mm', () => expect(0.04 / normalQuantile(0.75)).toBeCloseTo(0.0593, 3));

  test.each([
    [0.6827, 1, 1e-3],
    [0.9, 1.645, 5e-4],
    [0.95, 1.96, 5e-4],
    [0.9545, 2, 1e-3],
    [0.99, 2.576, 5e-4],
    [0.9973, 3, 1e-3],
  ])('table G.1: level %d has factor %d', (level, k, tolerance) => {
    expect(Math.abs(normalQuantile((1 + level) / 2) - k)).toBeLessThanOrEqual(tolerance);
  });
});

describe('normal distribution', () => {
  // Six decimals, computed apart from this program and the same as printed in statistical tables.
  test.each([
    [0, 0.5],
    [0.5, 0.691462],
    [0.6, 0.725747],
    [1, 0.841345],
    [1.28, 0.899727],
    [1.4, 0.919243],
    [1.5, 0.933193],
    [1.645, 0.950015],
    [1.96, 0.975002],
    [2, 0.97725],
    [2.33, 0.990097],
    [3, 0.99865],
  ])('Φ(%d) is %d', (z, expected) => {
    expect(Math.abs(normalCumulative(z) - expected)).toBeLessThanOrEqual(6e-7);
    expect(Math.abs(normalCumulative(-z) - (1 - expected))).toBeLessThanOrEqual(6e-7);
  });

  test.each([
    [0.8, 0.84, 0.84162],
    [0.9, 1.28, 1.28155],
    [0.95, 1.64, 1.64485],
    [0.99, 2.33, 2.32635],
    [0.999, 3.09, 3.09023],
  ])('JCGM 106:2012, 7.3 table 1: Pc %d has z = %d', (probability, printed, recomputed) => {
    expect(Math.abs(normalQuantile(probability) - printed)).toBeLessThanOrEqual(0.005);
    expect(Math.abs(normalQuantile(probability) - recomputed)).toBeLessThanOrEqual(5e-6);
  });
});

describe('conformance probability', () => {
  const JCGM106 = 'JCGM 106:2012 (values recalled)';
  const COMPUTED = 'computed apart from this program';
  test.each<readonly [y: number, u: number, low: number | undefined, high: number | undefined, expected: number, tolerance: number, source: string]>([
    [-5.47, 0.05, undefined, -5.4, 0.92, 0.005, `${JCGM106} 7.3 example 1, V`],
    [-5.47, 0.05, undefined, -5.4, 0.919243, 6e-7, COMPUTED],
    [509.7, 8.6, 490, undefined, 0.99, 0.005, `${JCGM106} 7.3 example 2, kPa`],
    [509.7, 8.6, 490, undefined, 0.98901, 6e-7, COMPUTED],
    [13.6, 1.8, 12.5, 16.3, 0.66, 0.005, `${JCGM106} 7.4, mm²/s`],
    [13.6, 1.8, 12.5, 16.3, 0.66263, 6e-7, COMPUTED],
    [0.72, 0.03, 0.5, 0.8, 0.99617, 6e-7, COMPUTED],
    [0.78, 0.03, 0.5, 0.8, 0.747507, 6e-7, COMPUTED],
    [0.8, 0.03, 0.5, 0.8, 0.5, 6e-7, COMPUTED],
    [0.82, 0.03, 0.5, 0.8, 0.252493, 6e-7, COMPUTED],
    [9.5, 0.05, 9.6, undefined, 0.02275, 6e-7, COMPUTED],
    [9.6, 0.05, 9.6, undefined, 0.5, 6e-7, COMPUTED],
    [9.68, 0.05, 9.6, undefined, 0.945201, 6e-7, COMPUTED],
    [9.7, 0.05, 9.6, undefined, 0.97725, 6e-7, COMPUTED],
    [7.2, 0.3, 3, 7.5, 0.841345, 6e-7, COMPUTED],
    [14.75, 0.08, 13.5, 14.8, 0.734014, 6e-7, COMPUTED],
    [14, 0.3, 13.5, 14.8, 0.948379, 6e-7, COMPUTED],
    [0.19, 0.006, undefined, 0.2, 0.95221, 6e-7, COMPUTED],
    [0.21, 0.006, undefined, 0.2, 0.04779, 6e-7, COMPUTED],
    [1.05, 0.03, 1, 1.1, 0.904419, 6e-7, COMPUTED],
    [0.45, 0.1, 0.4, 0.5, 0.382925, 6e-7, COMPUTED],
  ])('y = %d, u = %d, limits %d to %d: %d within %d (%s)', (y, u, low, high, expected, tolerance) => {
    const limits = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
    expect(Math.abs(chances(y, u, limits).inside - expected)).toBeLessThanOrEqual(tolerance);
    const judgement = judged(readingWith(y, u), { ...limits, unit: 'V', variation: 'none' });
    expect(Math.abs(judgement.probabilityInside - expected)).toBeLessThanOrEqual(tolerance);
  });

  // The agreed level is 0.95 either way: inside from 0.95 up, outside from 0.05 down.
  test.each<readonly [y: number, u: number, low: number | undefined, high: number | undefined, verdict: Judgement['verdict']]>([
    [0.72, 0.03, 0.5, 0.8, 'inside'],
    [0.78, 0.03, 0.5, 0.8, 'too-close-to-call'],
    [9.5, 0.05, 9.6, undefined, 'below'],
    [9.68, 0.05, 9.6, undefined, 'too-close-to-call'],
    [9.7, 0.05, 9.6, undefined, 'inside'],
    [0.19, 0.006, undefined, 0.2, 'inside'],
    [0.21, 0.006, undefined, 0.2, 'above'],
    [14, 0.3, 13.5, 14.8, 'too-close-to-call'],
  ])('y = %d, u = %d, limits %d to %d: %s', (y, u, low, high, verdict) => {
    const limits = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
    expect(judged(readingWith(y, u), { ...limits, unit: 'V', variation: 'none' }).verdict).toBe(verdict);
  });

  // JCGM 106, 8.3.2: a guard band of two standard uncertainties keeps false acceptance to 2.3 % at most.
  test('on the edge of a guard band of 2u', () => expect(1 - chances(9.7, 0.05, { low: 9.6 }).inside).toBeCloseTo(0.02275, 5));

  // Guard bands for 9.60 V or more, u = 0.05 V: Φ⁻¹(confidence) · u. Computed; six decimals.
  test.each([
    [0.95, 0.082243],
    [0.975, 0.097998],
    [0.99, 0.116317],
  ])('guard band for %d is %d V', (confidence, width) => expect(normalQuantile(confidence) * 0.05).toBeCloseTo(width, 6));
});
