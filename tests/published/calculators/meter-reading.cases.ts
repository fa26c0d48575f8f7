import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const gum = 'computed by hand: a = % of reading + counts × step, u = a/√3 (JCGM 100, 4.3.7, recalled)';
const normal = 'computed from the normal distribution, method of JCGM 106, 7.3 to 7.4 (recalled)';
const guard = 'computed: limit and Φ⁻¹(confidence) × u, method of JCGM 106, clause 8 (recalled)';

/** Reading, %, counts, step; limit of error and standard uncertainty in the unit of the reading, half a digit of the last place. */
const widths = [
  ['0.72 ohm', '0.8', '3', '0.01', 'ohm', 0.03576, 0.020646, 5e-7],
  ['0.720 ohm', '0.5', '5', '0.001', 'ohm', 0.0086, 0.0049652, 5e-8],
  ['12.62 V', '0.5', '2', '0.01', 'V', 0.0831, 0.047978, 5e-7],
  ['10.50 kohm', '1.0', '3', '10 ohm', 'kohm', 0.135, 0.077942, 5e-7],
  ['5.02 kohm', '0.9', '1', '10 ohm', 'kohm', 0.05518, 0.031858, 5e-7],
  ['0.184 V', '0.5', '3', '1 mV', 'V', 0.00392, 0.0022632, 5e-8],
  ['0.450 V', '0.3', '2', '0.001', 'V', 0.00335, 0.0019341, 5e-8],
] as const;

/** A meter of no percent whose counts give the standard uncertainty: counts × step / √3. */
const meterWith = (uncertainty: number) => ({ meterPercent: '0', meterCounts: (uncertainty * 100 * Math.sqrt(3)).toFixed(9), meterResolution: '0.01' });

/** Reading, u, limits; chance of inside. */
const conformity = [
  ['0.72 ohm', 0.03, '0.5', '0.8', 0.99617, 'inside'],
  ['0.78 ohm', 0.03, '0.5', '0.8', 0.747507, 'too-close-to-call'],
  ['0.80 ohm', 0.03, '0.5', '0.8', 0.5, 'too-close-to-call'],
  ['0.82 ohm', 0.03, '0.5', '0.8', 0.252493, 'too-close-to-call'],
  ['9.50 V', 0.05, '9.6', undefined, 0.02275, 'below'],
  ['9.60 V', 0.05, '9.6', undefined, 0.5, 'too-close-to-call'],
  ['9.68 V', 0.05, '9.6', undefined, 0.945201, 'too-close-to-call'],
  ['9.70 V', 0.05, '9.6', undefined, 0.97725, 'inside'],
  ['7.2 kohm', 0.3, '3', '7.5', 0.841345, 'too-close-to-call'],
  ['14.75 V', 0.08, '13.5', '14.8', 0.734014, 'too-close-to-call'],
  ['14.0 V', 0.3, '13.5', '14.8', 0.948379, 'too-close-to-call'],
  ['0.190 V', 0.006, undefined, '0.20', 0.95221, 'inside'],
  ['0.210 V', 0.006, undefined, '0.20', 0.04779, 'above'],
  ['1.05 mm', 0.03, '1.0', '1.1', 0.904419, 'too-close-to-call'],
  ['0.45 V', 0.1, '0.4', '0.5', 0.382925, 'too-close-to-call'],
] as const;

/** Confidence; where a limit of 9.60 V or more with u = 0.05 V may be passed. */
const guards = [
  ['0.95', 9.68224],
  ['0.975', 9.698],
  ['99 %', 9.71632],
  ['0.5', 9.6],
] as const;

const volts = { meterPercent: '0.5', meterCounts: '2', meterResolution: '0.01' };

export const cases: readonly CalculatorCase[] = [
  ...widths.map(
    ([reading, meterPercent, meterCounts, meterResolution, unit, halfWidth, standard, tolerance]): CalculatorCase => ({
      label: `${reading} on ${meterPercent} % and ${meterCounts} counts of ${meterResolution}`,
      inputs: { reading, meterPercent, meterCounts, meterResolution },
      expected: { halfWidth: [halfWidth, unit, 1e-12], standardUncertainty: [standard, unit, tolerance], expandedUncertainty: [2 * standard, unit, 2 * tolerance] },
      absent: ['verdict', 'probabilityInside', 'acceptFrom', 'acceptTo'],
      source: gum,
    }),
  ),
  ...conformity.map(
    ([reading, uncertainty, low, high, chance, verdict]): CalculatorCase => ({
      label: `${reading} against ${low ?? '…'} to ${high ?? '…'}, u = ${uncertainty}`,
      inputs: { reading, ...meterWith(uncertainty), ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) },
      expected: { probabilityInside: [chance, '1', 1e-6], verdict },
      source: normal,
    }),
  ),
  ...guards.map(
    ([confidence, acceptFrom]): CalculatorCase => ({
      label: `9.60 V or more, ${confidence} sure`,
      inputs: { reading: '9.70 V', ...meterWith(0.05), low: '9.60', confidence },
      expected: { acceptFrom: [acceptFrom, 'V', 6e-6] },
      absent: ['acceptTo'],
      source: guard,
    }),
  ),
  {
    label: 'guard band at both ends',
    inputs: { reading: '0.72 ohm', ...meterWith(0.03), low: '0.5', high: '0.8' },
    expected: { acceptFrom: [0.54935, 'ohm', 1e-5], acceptTo: [0.75065, 'ohm', 1e-5] },
    source: guard,
  },
  {
    label: 'printed: a half width of 0.40 evenly spread has a standard uncertainty of 0.23',
    inputs: { reading: '0 V', meterPercent: '0', meterCounts: '40', meterResolution: '0.01' },
    expected: { standardUncertainty: [0.23, 'V', 0.005] },
    source: 'JCGM 100:2008, 4.3.7, example 1 (printed 0.23 for a half width of 0.40, recalled)',
  },
  {
    label: 'printed: viscosity 12.5 to 16.3, y = 13.6, u = 1.8',
    inputs: { reading: '13.6', ...meterWith(1.8), low: '12.5', high: '16.3' },
    expected: { probabilityInside: [0.66, '1', 0.005], verdict: 'too-close-to-call' },
    source: 'JCGM 106:2012, 7.4 (printed 0.66, recalled)',
  },
  {
    label: 'printed: burst pressure 490 kPa, y = 509.7, u = 8.6',
    inputs: { reading: '509.7 kPa', ...meterWith(8.6), low: '490 kPa' },
    expected: { probabilityInside: [0.99, '1', 0.005], verdict: 'inside' },
    source: 'JCGM 106:2012, 7.3, example 2 (printed about 0.99, recalled)',
  },
  {
    label: 'printed: Zener voltage limit −5.40 V, y = −5.47, u = 0.05',
    inputs: { reading: '-5.47 V', ...meterWith(0.05), high: '-5.40' },
    expected: { probabilityInside: [0.92, '1', 0.005] },
    source: 'JCGM 106:2012, 7.3, example 1 (printed about 0.92, recalled)',
  },
  { label: 'limits in another unit of the same kind', inputs: { reading: '9700 mV', ...meterWith(5), meterResolution: '0.1 mV', meterCounts: '866.0254', low: '9.6 V' }, expected: { probabilityInside: [0.97725, '1', 1e-5], acceptFrom: [9682.24, 'mV', 0.01] }, source: guard },
  { label: 'IEC style and decimal comma', inputs: { reading: '4k70', meterPercent: '1', meterCounts: '1', meterResolution: '10', low: '4,5 kohm' }, expected: { halfWidth: [57, 'ohm', 1e-9] }, source: gum },
  { label: 'a temperature: widths are differences', inputs: { reading: '90 C', meterPercent: '1', meterCounts: '1', meterResolution: '0.1', high: '212 F' }, expected: { halfWidth: [1, 'Cdiff', 1e-9], acceptTo: [99.050343, 'C', 1e-5] }, source: `${gum}; 212 °F is 100 °C; ${guard}` },
  { label: 'below zero: the percent still widens', inputs: { reading: '-0.450 V', meterPercent: '0.3', meterCounts: '2', meterResolution: '0.001' }, expected: { halfWidth: [0.00335, 'V', 1e-12] }, source: gum },
  { label: 'a perfect meter goes by the limits', inputs: { reading: '9.6 V', meterPercent: '0', meterCounts: '0', meterResolution: '0.1', low: '9.6' }, expected: { verdict: 'inside', probabilityInside: [1, '1', 0], acceptFrom: [9.6, 'V', 1e-12] }, source: contract },
  { label: 'limits too close for the meter', inputs: { reading: '0.45 V', ...meterWith(0.1), low: '0.4', high: '0.5' }, absent: ['acceptFrom', 'acceptTo'], says: /no reading on it can be passed/, source: contract },
  { label: 'less sure, sooner passed', inputs: { reading: '9.68 V', ...meterWith(0.05), low: '9.6', confidence: '0.9' }, expected: { verdict: 'inside' }, source: normal },
  { label: 'more sure, later passed', inputs: { reading: '9.70 V', ...meterWith(0.05), low: '9.6', confidence: '0.99' }, expected: { verdict: 'too-close-to-call' }, source: normal },
  { label: 'no limits, no verdict', inputs: { reading: '12.62 V', ...volts }, absent: ['verdict'], says: /Without limits/, source: contract },
  { label: 'limit in another dimension', inputs: { reading: '12.62 V', ...volts, low: '12 ohm' }, refusal: { input: 'low', code: 'wrong-dimension' }, source: contract },
  { label: 'step in another dimension', inputs: { reading: '12.62 V', ...volts, meterResolution: '0.01 A' }, refusal: { input: 'meterResolution', code: 'wrong-dimension' }, source: contract },
  { label: 'unit on the limit alone', inputs: { reading: '12.62', ...volts, high: '15 V' }, refusal: { input: 'high', code: 'wrong-dimension' }, source: contract },
  { label: 'limits crossed, in two units', inputs: { reading: '12.62 V', ...volts, low: '15', high: '12000 mV' }, refusal: { input: 'low', code: 'low-above-high' }, source: contract },
  { label: 'certainty', inputs: { reading: '12.62 V', ...volts, confidence: '1' }, refusal: { input: 'confidence', code: 'too-high' }, source: contract },
  { label: 'less than a toss of a coin', inputs: { reading: '12.62 V', ...volts, confidence: '0.4' }, refusal: { input: 'confidence', code: 'too-low' }, source: contract },
  { label: 'step of nothing', inputs: { reading: '12.62 V', ...volts, meterResolution: '0' }, refusal: { input: 'meterResolution', code: 'too-low' }, source: contract },
  { label: 'resistance below zero', inputs: { reading: '-0.2 ohm', ...volts, low: '0.1' }, refusal: { input: 'reading', code: 'negative-resistance' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'reading', code: 'missing' }, source: contract },
  { label: 'accuracy missing', inputs: { reading: '12.62 V' }, refusal: { input: 'meterPercent', code: 'missing' }, source: contract },
  { label: 'no number', inputs: { reading: 'OL', ...volts }, refusal: { input: 'reading', code: 'not-a-number' }, source: contract },
  { label: 'unknown unit', inputs: { reading: '12 blobs', ...volts }, refusal: { input: 'reading', code: 'unknown-unit' }, source: contract },
  { label: 'two readings of a comma', inputs: { reading: '1,234 V', ...volts }, refusal: { input: 'reading', code: 'ambiguous' }, source: contract },
  { label: 'accuracy below zero', inputs: { reading: '12 V', ...volts, meterPercent: '-1' }, refusal: { input: 'meterPercent', code: 'too-low' }, source: contract },
];
