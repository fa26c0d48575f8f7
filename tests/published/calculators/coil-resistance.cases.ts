import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const copper = 'computed by hand from R·(1 + α(tref − 20))/(1 + α(t − 20)), α = 0.00393/K (IEC 60028, recalled)';
const gum = 'computed by hand: a = % of reading + counts, u = a/√3 (JCGM 100, 4.3.7, recalled), U = 2u';

/** Reading, winding temperature, reference temperature, expected. */
const corrections = [
  ['0.50', '20', '80', 0.6179],
  ['0.70', '25', '95', 0.888859],
  ['1.50', '20', '0', 1.3821],
  ['3.00', '20', '100', 3.9432],
  ['0.40', '90', '20', 0.313701],
  ['10 kohm', '25', '-10', 8651.008],
  ['1.20', '15', '60', 1.416474],
  ['450', '20', '110', 609.165],
  ['12 kohm', '80', '25', 9901.117],
] as const;

/** A meter of no percent whose counts give u = 0.03: counts × 0.01 / √3. */
const meterOf003 = { meterPercent: '0', meterCounts: '5.19615242', meterResolution: '0.01', temperatureUncertainty: '0' };

const conformity = (reading: string, probability: number, verdict: string): CalculatorCase => ({
  label: `chance inside 0.5 to 0.8 at ${reading}, u = 0.03`,
  inputs: { reading, low: '0.5', high: '0.8', ...meterOf003 },
  expected: { probabilityInside: [probability, '1', 1e-6], verdict },
  source: 'computed from the normal distribution, method of JCGM 106, 7.3 to 7.4 (recalled)',
});

export const cases: readonly CalculatorCase[] = [
  ...corrections.map(
    ([reading, readingTemperature, referenceTemperature, corrected]): CalculatorCase => ({
      label: `${reading} at ${readingTemperature} °C referred to ${referenceTemperature} °C`,
      inputs: { reading, readingTemperature, referenceTemperature },
      expected: { corrected: [corrected, 'ohm', corrected * 1e-6] },
      absent: ['verdict', 'probabilityInside'],
      source: copper,
    }),
  ),
  {
    label: 'meter of 0.8 % and 3 counts on 0.72 ohm',
    inputs: { reading: '0.72', temperatureUncertainty: '0' },
    expected: { expandedUncertainty: [2 * 0.020646, 'ohm', 2e-6] },
    source: gum,
  },
  {
    label: 'finer meter, 0.5 % and 5 counts of 0.001',
    inputs: { reading: '0.720', meterPercent: '0.5', meterCounts: '5', temperatureUncertainty: '0' },
    expected: { expandedUncertainty: [2 * 0.0049652, 'ohm', 2e-7] },
    source: gum,
  },
  {
    label: 'reading in kilohm: the last digit typed is 10 ohm',
    inputs: { reading: '10.50 kohm', meterPercent: '1', temperatureUncertainty: '0' },
    expected: { corrected: [10500, 'ohm', 1e-9], expandedUncertainty: [2 * 77.942, 'ohm', 2e-3] },
    source: gum,
  },
  {
    label: 'leads taken off; both readings count towards the doubt',
    inputs: { reading: '0.92', leadResistance: '0.20', temperatureUncertainty: '0' },
    expected: { corrected: [0.72, 'ohm', 1e-12], expandedUncertainty: [0.056502, 'ohm', 1e-6] },
    source: gum,
  },
  {
    label: 'temperature known to 3 K adds its part',
    inputs: { reading: '0.62' },
    expected: { corrected: [0.62, 'ohm', 1e-12], expandedUncertainty: [0.04124131869925274, 'ohm', 1e-9] },
    source: `${gum}; temperature part R·α·3/√3`,
  },
  {
    label: 'warm coil, leads and limits together',
    inputs: { reading: '0.92 ohm', leadResistance: '0.20 ohm', readingTemperature: '80 C', low: '0.5', high: '0.8' },
    expected: {
      corrected: [0.5826185466904029, 'ohm', 1e-9],
      expandedUncertainty: [0.04616903162202705, 'ohm', 1e-9],
      probabilityInside: [0.9998275175, '1', 1e-8],
      verdict: 'inside',
    },
    source: `${copper}; ${gum}`,
  },
  {
    label: 'two-sided example: 12.5 to 16.3, y = 13.6, u = 1.8',
    inputs: { reading: '13.6', low: '12.5', high: '16.3', meterPercent: '0', meterCounts: '31.1769145', temperatureUncertainty: '0' },
    expected: { probabilityInside: [0.66, '1', 0.005], verdict: 'too-close-to-call' },
    source: 'JCGM 106:2012, 7.4 (printed 0.66, recalled)',
  },
  {
    label: 'the same to more digits',
    inputs: { reading: '13.6', low: '12.5', high: '16.3', meterPercent: '0', meterCounts: '31.1769145', temperatureUncertainty: '0' },
    expected: { probabilityInside: [0.66263, '1', 1e-5] },
    source: 'recomputed from JCGM 106:2012, 7.4',
  },
  conformity('0.72', 0.99617, 'inside'),
  conformity('0.78', 0.747507, 'too-close-to-call'),
  conformity('0.80', 0.5, 'too-close-to-call'),
  conformity('0.82', 0.252493, 'too-close-to-call'),
  {
    label: 'far below',
    inputs: { reading: '0.10', low: '0.5', high: '0.8', ...meterOf003 },
    expected: { probabilityInside: [0, '1', 1e-9], verdict: 'below' },
    says: /Below the range/,
    source: contract,
  },
  {
    label: 'far above, upper limit alone',
    inputs: { reading: '1.50', high: '0.8', ...meterOf003 },
    expected: { verdict: 'above' },
    source: contract,
  },
  {
    label: 'Fahrenheit and milliohm',
    inputs: { reading: '500 mohm', readingTemperature: '68 F', referenceTemperature: '176 F' },
    expected: { corrected: [0.6179, 'ohm', 1e-9] },
    source: copper,
  },
  {
    label: 'open circuit against an upper limit',
    inputs: { reading: 'OL', high: '0.8' },
    expected: { verdict: 'above', probabilityInside: [0, '1', 0] },
    absent: ['corrected', 'expandedUncertainty'],
    says: /open circuit/i,
    source: contract,
  },
  {
    label: 'open circuit is never called inside for want of an upper limit',
    inputs: { reading: 'OL', low: '0.3' },
    absent: ['corrected', 'verdict', 'probabilityInside'],
    says: /open circuit/i,
    source: contract,
  },
  { label: 'no limits, no verdict', inputs: { reading: '0.6' }, absent: ['verdict'], says: /Without limits/, source: contract },
  {
    label: 'shorted winding reads nothing',
    inputs: { reading: '0.00', low: '0.5', high: '0.8' },
    expected: { corrected: [0, 'ohm', 0], verdict: 'below' },
    source: contract,
  },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'reading', code: 'missing' }, source: contract },
  { label: 'only blanks', inputs: { reading: '  ' }, refusal: { input: 'reading', code: 'missing' }, source: contract },
  { label: 'words', inputs: { reading: 'about one' }, refusal: { input: 'reading', code: 'not-a-number' }, source: contract },
  { label: 'two readings of a comma', inputs: { reading: '1,234' }, refusal: { input: 'reading', code: 'ambiguous' }, source: contract },
  { label: 'no such unit', inputs: { reading: '0.6 blobs' }, refusal: { input: 'reading', code: 'unknown-unit' }, source: contract },
  { label: 'volts for ohms', inputs: { reading: '0.6 V' }, refusal: { input: 'reading', code: 'wrong-dimension' }, source: contract },
  { label: 'below zero', inputs: { reading: '-0.1' }, refusal: { input: 'reading', code: 'too-low' }, source: contract },
  { label: 'beyond any coil', inputs: { reading: '50 Mohm' }, refusal: { input: 'reading', code: 'too-high' }, source: contract },
  { label: 'open leads', inputs: { reading: '0.6', leadResistance: 'OL' }, refusal: { input: 'leadResistance', code: 'open-not-accepted' }, source: contract },
  { label: 'limits crossed', inputs: { reading: '0.6', low: '0.8', high: '0.5' }, refusal: { input: 'low', code: 'low-above-high' }, source: contract },
  { label: 'leads above the reading', inputs: { reading: '0.2', leadResistance: '0.5' }, refusal: { input: 'leadResistance', code: 'leads-above-reading' }, source: contract },
  { label: 'winding colder than space', inputs: { reading: '0.6', readingTemperature: '-300' }, refusal: { input: 'readingTemperature', code: 'too-low' }, source: contract },
  { label: 'meter step of nothing', inputs: { reading: '0.6', meterResolution: '0' }, refusal: { input: 'meterResolution', code: 'too-low' }, source: contract },
  { label: 'unknown field', inputs: { reading: '0.6', resistance: '1' }, refusal: { input: 'resistance', code: 'unknown-input' }, source: contract },
];
