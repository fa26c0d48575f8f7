import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge, verdictFrom } from '../../src/domain/measurement/judge.ts';
import type { Judgement, Limits, Reading } from '../../src/domain/measurement/types.ts';

const meter = { name: 'workshop meter', percent: 0.8, counts: 3 };
const reading: Reading = { value: 0.62, resolution: 0.01, leads: 0, temperature: 20, temperatureTolerance: 3, meter };
const winding: Limits = { low: 0.3, high: 1, unit: 'ohm', variation: 'copper', referenceTemperature: 20 };

function judged(changed: Partial<Reading>, limits: Limits = winding): Judgement {
  const result = judge({ ...reading, ...changed }, limits);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

describe('correction', () => {
  test('takes the leads off before the temperature is allowed for', () => {
    // (0.9 − 0.2) Ω at 95 °C against 25 °C: 0.7 · (1 + 0.00393 · 5) / (1 + 0.00393 · 75), worked by hand.
    const corrected = judged({ value: 0.9, leads: 0.2, temperature: 95 }, { ...winding, referenceTemperature: 25 }).corrected;
    expect(corrected).toBeCloseTo((0.7 * 1.01965) / 1.29475, 12);
  });

  test('leaves alone what does not vary with temperature', () => {
    const { corrected, contributions } = judged({ temperature: 95 }, { low: 0.3, high: 1, unit: 'ohm', variation: 'none' });
    expect(corrected).toBe(0.62);
    expect(contributions.map((part) => part.from)).toEqual(['meter']);
  });
});

describe('uncertainty', () => {
  test('combines meter, leads and temperature, largest first', () => {
    const { contributions, standardUncertainty } = judged({ value: 0.92, leads: 0.2, temperatureTolerance: 10 });
    expect(contributions.map((part) => part.from)).toEqual(['meter', 'leads', 'temperature']);
    // a = 0.03736, 0.0316 and 0.72 · 0.00393 · 10 Ω; each over √3, added in quadrature.
    expect(standardUncertainty).toBeCloseTo(Math.sqrt((0.03736 ** 2 + 0.0316 ** 2 + (0.72 * 0.00393 * 10) ** 2) / 3), 12);
  });

  test('sorts a doubtful temperature first', () => {
    const { contributions } = judged({ value: 0.92, temperatureTolerance: 60, meter: { name: 'bench meter', percent: 0.1, counts: 1 } });
    expect(contributions[0]?.from).toBe('temperature');
  });

  test('is scaled to the reference temperature with the value', () => {
    const cold = judged({ temperature: 20, temperatureTolerance: 0 });
    const hot = judged({ temperature: 90, temperatureTolerance: 0 });
    expect(hot.standardUncertainty).toBeCloseTo(cold.standardUncertainty / 1.2751, 12);
  });

  test('of temperature is what the correction does when the temperature moves', () => {
    const exact = { name: 'exact', percent: 0, counts: 0 };
    const at = (temperature: number) => Number(judged({ temperature, temperatureTolerance: 0, meter: exact }).corrected);
    const slope = Math.abs(at(60.01) - at(59.99)) / 0.02;
    expect(judged({ temperature: 60, temperatureTolerance: 3, meter: exact }).standardUncertainty).toBeCloseTo((slope * 3) / Math.sqrt(3), 8);
  });

  test("uses the meter's own count where it is given", () => {
    const { standardUncertainty } = judged({ meter: { name: 'm', percent: 0, counts: 1, resolution: 0.3 }, temperatureTolerance: 0 });
    expect(standardUncertainty).toBeCloseTo(0.3 / Math.sqrt(3), 12);
  });
});

describe('no uncertainty', () => {
  const exact: Partial<Reading> = { meter: { name: 'exact', percent: 0, counts: 0 }, temperatureTolerance: 0 };
  test.each<readonly [number, Judgement['verdict']]>([
    [0.299, 'below'],
    [0.3, 'inside'],
    [0.62, 'inside'],
    [1, 'inside'],
    [1.001, 'above'],
  ])('%d is %s', (value, verdict) => {
    const judgement = judged({ ...exact, value }, { low: 0.3, high: 1, unit: 'ohm', variation: 'none' });
    expect(judgement.verdict).toBe(verdict);
    expect([judgement.probabilityBelow, judgement.probabilityInside, judgement.probabilityAbove].sort()).toEqual([0, 0, 1]);
  });
});

describe('open circuit', () => {
  test('is above a high limit', () => expect(judged({ value: 'open' })).toMatchObject({ corrected: 'open', verdict: 'above', probabilityAbove: 1 }));
  test('is inside where more is always good', () => {
    expect(judged({ value: 'open' }, { low: 500, unit: 'kohm', variation: 'none' })).toMatchObject({ verdict: 'inside', probabilityInside: 1 });
  });
});

test('at the agreed chances themselves the verdict is given', () => {
  expect(verdictFrom(0.05, 0.95, 0)).toBe('inside');
  expect(verdictFrom(0.95, 0.05, 0)).toBe('below');
  expect(verdictFrom(0.949, 0.051, 0)).toBe('too-close-to-call');
  expect(verdictFrom(0, 0.049, 0.951)).toBe('above');
  expect(verdictFrom(0.06, 0.94, 0)).toBe('too-close-to-call');
});

describe('refuses', () => {
  test.each<readonly [string, Partial<Reading>, Partial<Limits>, string, string]>([
    ['a reading less than its leads', { value: 0.1, leads: 0.2 }, {}, 'reading', 'less-than-leads'],
    ['a resistance below nothing', { value: -0.1 }, {}, 'reading', 'negative-resistance'],
    ['NaN', { value: NaN }, {}, 'reading', 'not-finite'],
    ['an infinite reading', { value: Infinity }, {}, 'reading', 'not-finite'],
    ['a reading past all arithmetic', { value: 1.7e308, temperature: -100 }, {}, 'reading', 'not-finite'],
    ['negative leads', { leads: -0.1 }, {}, 'leadResistance', 'negative'],
    ['leads that are no number', { leads: NaN }, {}, 'leadResistance', 'not-finite'],
    ['a negative percentage', { meter: { ...meter, percent: -1 } }, {}, 'meterPercent', 'negative'],
    ['negative counts', { meter: { ...meter, counts: -1 } }, {}, 'meterCounts', 'negative'],
    ['a count that is no number', { resolution: NaN }, {}, 'meterResolution', 'not-finite'],
    ['a part below absolute zero', { temperature: -300 }, {}, 'readingTemperature', 'out-of-range'],
    ['a part with no temperature', { temperature: NaN }, {}, 'readingTemperature', 'not-finite'],
    ['a negative tolerance', { temperatureTolerance: -1 }, {}, 'temperatureUncertainty', 'negative'],
    ['crossed limits', {}, { low: 2 }, 'low', 'limits-crossed'],
    ['a limit that is no number', {}, { high: NaN }, 'high', 'not-finite'],
    ['a reference temperature that is no number', {}, { referenceTemperature: NaN }, 'referenceTemperature', 'not-finite'],
  ])('%s', (_, changedReading, changedLimits, input, code) => {
    const result = judge({ ...reading, ...changedReading }, { ...winding, ...changedLimits });
    expect(result).toMatchObject({ ok: false, error: { input, code } });
    expect(result.ok ? '' : result.error.message).toMatch(/\. /u);
  });

  test('copper without a reference temperature', () => {
    expect(judge(reading, { low: 0.3, unit: 'ohm', variation: 'copper' })).toMatchObject({ ok: false, error: { input: 'referenceTemperature', code: 'missing' } });
  });

  test('limits without an end', () => {
    expect(judge(reading, { unit: 'ohm', variation: 'none' })).toMatchObject({ ok: false, error: { input: 'low', code: 'missing' } });
  });

  test('not a negative voltage', () => expect(judged({ value: -5.47 }, { high: -5.4, unit: 'V', variation: 'none' }).corrected).toBe(-5.47));
});

describe('for any reading', () => {
  const size = (max: number) => fc.double({ min: 0, max, noNaN: true });
  const anyReading = fc.record({
    value: size(100),
    resolution: size(1),
    leads: fc.constant(0),
    temperature: fc.double({ min: -40, max: 150, noNaN: true }),
    temperatureTolerance: size(20),
    meter: fc.record({ name: fc.constant('m'), percent: size(5), counts: fc.nat(10) }),
  });
  const anyLimits = fc.tuple(size(50), size(50), fc.constantFrom('none' as const, 'copper' as const)).map(
    ([low, width, variation]): Limits => ({ low, high: low + width, unit: 'ohm', variation, referenceTemperature: 20 }),
  );

  test('the chances lie from 0 to 1 and sum to 1, and the verdict follows from them', () => {
    fc.assert(
      fc.property(anyReading, anyLimits, (one, limits) => {
        const { probabilityBelow, probabilityInside, probabilityAbove, verdict, standardUncertainty, expandedUncertainty } = judged(one, limits);
        for (const chance of [probabilityBelow, probabilityInside, probabilityAbove]) {
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1);
        }
        expect(Math.abs(probabilityBelow + probabilityInside + probabilityAbove - 1)).toBeLessThan(1e-12);
        expect(verdict === 'inside').toBe(probabilityInside >= 0.95);
        expect(expandedUncertainty).toBe(2 * standardUncertainty);
      }),
      { numRuns: 1000 },
    );
  });

  test('a higher reading is never likelier to be below, or less likely to be above, on the same meter', () => {
    fc.assert(
      fc.property(anyReading, size(10), anyLimits, (one, step, limits) => {
        // The percentage grows with the reading, so it is left out: only then is the spread the same.
        const fixed = { ...one, meter: { ...one.meter, percent: 0 }, temperatureTolerance: 0 };
        const lower = judged(fixed, limits);
        const higher = judged({ ...fixed, value: fixed.value + step }, limits);
        expect(higher.probabilityBelow).toBeLessThanOrEqual(lower.probabilityBelow + 1e-14);
        expect(higher.probabilityAbove).toBeGreaterThanOrEqual(lower.probabilityAbove - 1e-14);
      }),
    );
  });

  test('a wider range is never less likely to hold it', () => {
    fc.assert(
      fc.property(anyReading, anyLimits, size(10), (one, limits, more) => {
        const wider = { ...limits, low: (limits.low ?? 0) - more, high: (limits.high ?? 0) + more };
        expect(judged(one, wider).probabilityInside).toBeGreaterThanOrEqual(judged(one, limits).probabilityInside - 1e-14);
      }),
    );
  });

  test('the unit does not change the verdict', () => {
    fc.assert(
      fc.property(anyReading, anyLimits, (one, limits) => {
        const ohms = judged(one, limits);
        const milliohms = judged(
          { ...one, value: one.value * 1000, resolution: one.resolution * 1000 },
          { ...limits, low: (limits.low ?? 0) * 1000, high: (limits.high ?? 0) * 1000, unit: 'mohm' },
        );
        fc.pre(ohms.standardUncertainty > 1e-6);
        expect(Math.abs(milliohms.probabilityInside - ohms.probabilityInside)).toBeLessThan(1e-6);
      }),
    );
  });
});
