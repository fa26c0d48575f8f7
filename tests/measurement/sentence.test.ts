import { describe, expect, test } from 'vitest';
import { judge } from '../../src/domain/measurement/judge.ts';
import { limitsText, verdictSentence, verdictWord } from '../../src/domain/measurement/sentence.ts';
import type { Limits, Reading } from '../../src/domain/measurement/types.ts';

const winding: Limits = { low: 0.3, high: 1, unit: 'ohm', variation: 'copper', referenceTemperature: 20 };
const battery: Limits = { low: 9.6, unit: 'V', variation: 'none' };
const drop: Limits = { high: 0.2, unit: 'V', variation: 'none' };

/** The sentence with plain spaces, so that the cases can be read. */
function sentence(changed: Partial<Reading>, limits: Limits, options: { decimalMark?: '.' | ',' } = {}): string {
  const meter = { name: 'm', percent: 0.8, counts: 3 };
  const result = judge({ value: 0.62, resolution: 0.01, leads: 0, temperature: 20, temperatureTolerance: 3, meter, ...changed }, limits);
  if (!result.ok) throw new Error(result.error.message);
  return verdictSentence(result.value, limits, options).replaceAll('\u00a0', ' ');
}

test('the four words', () => {
  expect((['inside', 'below', 'above', 'too-close-to-call'] as const).map(verdictWord)).toEqual([
    'Inside the range',
    'Below the range',
    'Above the range',
    'Too close to call',
  ]);
});

describe('limits', () => {
  test.each<readonly [Limits, string]>([
    [winding, '0.3 to 1.0 Ω'],
    [battery, '9.6 V or more'],
    [drop, '0.2 V or less'],
    [{ low: -10, high: 10, unit: '%', variation: 'none' }, '−10 to 10 %'],
    [{ low: 7000, high: 12000, unit: 'ohm', variation: 'none' }, '7000 to 12\u202f000 Ω'],
  ])('%o', (limits, text) => expect(limitsText(limits).replaceAll('\u00a0', ' ')).toBe(text));
  test('with a comma', () => expect(limitsText(winding, { decimalMark: ',' })).toBe('0,3 to 1,0\u00a0Ω'));
});

describe('why', () => {
  test('inside', () => expect(sentence({}, winding)).toBe('0.620 Ω at 20 °C, give or take 0.041 Ω, lies between 0.3 Ω and 1.0 Ω.'));
  test('with a comma', () => expect(sentence({}, winding, { decimalMark: ',' })).toContain('0,620 Ω at 20 °C, give or take 0,041 Ω, lies between 0,3 Ω'));
  test('below', () => expect(sentence({ value: 0.05 }, winding)).toBe('0.050 Ω at 20 °C, give or take 0.035 Ω, is below 0.3 Ω.'));
  test('above', () => expect(sentence({ value: 3.2 }, winding)).toBe('3.200 Ω at 20 °C, give or take 0.078 Ω, is above 1.0 Ω.'));
  test('one-ended', () => {
    expect(sentence({ value: 12.6 }, battery)).toBe('12.60 V, give or take 0.15 V, is not below 9.6 V.');
    expect(sentence({ value: 0.05, resolution: 0.001 }, drop)).toBe('0.0500 V, give or take 0.0039 V, is not above 0.2 V.');
  });
  test('without uncertainty', () => {
    expect(sentence({ meter: { name: 'exact', percent: 0, counts: 0 } }, battery)).toBe('0.62 V is below 9.6 V.');
  });
  test('open', () => {
    expect(sentence({ value: 'open' }, winding)).toBe('The circuit is open: no current passes, where 1.0 Ω is the most allowed.');
    expect(sentence({ value: 'open' }, { low: 500, unit: 'kohm', variation: 'none' })).toContain('500 kΩ or more');
  });
  test('a range narrower than the doubt says that the side is not known', () => {
    const narrow: Limits = { low: 0.62, high: 0.6201, unit: 'ohm', variation: 'none' };
    expect(sentence({}, narrow)).toContain('other side');
  });
});

describe('too close to call says what would settle it', () => {
  test.each<readonly [string, Partial<Reading>, RegExp]>([
    ['a finer meter range', { value: 1.01 }, /may be inside or above the range of 0\.3 to 1\.0 Ω; about 33 chances in 100.* finer range/u],
    ['zeroed leads', { value: 2.01, leads: 1.01, meter: { name: 'm', percent: 0, counts: 3 } }, /finer range|zero the meter/u],
    ['a measured temperature', { value: 1.27, temperature: 90, temperatureTolerance: 40 }, /temperature.*measure it on the part/u],
  ])('%s', (_, changed, pattern) => expect(sentence(changed, winding)).toMatch(pattern));

  test('zeroed leads, where they add most', () => {
    const judgement = {
      corrected: 1,
      standardUncertainty: 0.05,
      expandedUncertainty: 0.1,
      probabilityBelow: 0,
      probabilityInside: 0.5,
      probabilityAbove: 0.5,
      verdict: 'too-close-to-call' as const,
      contributions: [{ from: 'leads' as const, standardUncertainty: 0.05 }],
    };
    expect(verdictSentence(judgement, winding)).toContain('zero the meter');
  });

  test('one-ended', () => expect(sentence({ value: 9.6 }, battery)).toContain('may be on either side of 9.6 V; about 50 chances in 100'));
});
