import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const uniformField = 'computed from 24.22x + 6.08√x (Naidu and Kamaraju, chapter 2, recalled)';

/** Gap cm, temperature K, expected kV; open air at 760 torr. */
const openAir = [
  ['0.05', '293', 2.5705],
  ['0.07', '293', 3.304],
  ['0.1', '293', 4.3447],
  ['0.11', '293', 4.6807],
  ['0.5', '293', 16.4092],
  ['1', '293', 30.3],
  ['2', '293', 57.0384],
  ['1', '300', 29.6635],
] as const;

/** Intake kPa, intake K, ratio, index; expected kPa, K and kV at 0.8 and 1.1 mm. */
const compressed = [
  ['100', '293.15', '6', '1.40', 1228.604, 600.275, 15.651, 20.674],
  ['100', '300', '10', '1.30', 1995.262, 598.579, 24.015, 31.941],
  ['101.325', '298.15', '9.5', '1.32', 1978.389, 612.783, 23.344, 31.034],
  ['95', '310', '10.5', '1.30', 2019.62, 627.651, 23.274, 30.941],
  ['40', '310', '10.5', '1.30', 850.366, 627.651, 10.995, 14.429],
  ['180', '320', '9', '1.30', 3131.755, 618.618, 34.945, 46.717],
  ['100', '293', '8', '1.35', 1656.424, 606.665, 20.13, 26.701],
  ['30', '330', '11', '1.30', 677.535, 677.535, 8.527, 11.133],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...openAir.map(
    ([gap, kelvin, kilovolts]): CalculatorCase => ({
      label: `${gap} cm in open air at ${kelvin} K`,
      inputs: { gap: `${gap} cm`, intakeTemperature: `${kelvin} K` },
      expected: { breakdown: [kilovolts, 'kV', 6e-5] },
      absent: ['largestGap'],
      says: /open air/,
      source: uniformField,
    }),
  ),
  {
    label: '740 torr and 303 K',
    inputs: { gap: '1 cm', intakePressure: '740 mmHg', intakeTemperature: '303 K' },
    expected: { relativeDensityGap: [0.941549, 'cm', 2e-6], breakdown: [28.704, 'kV', 1e-4] },
    source: uniformField,
  },
  {
    label: 'textbook exercise: 1 mm of air',
    inputs: { gap: '1 mm', intakeTemperature: '293 K' },
    expected: { breakdown: [4.345, 'kV', 0.001] },
    source: 'Naidu and Kamaraju, chapter 2, exercise: 43.45 kV/cm (answer recalled)',
  },
  ...compressed.flatMap(([intakePressure, kelvin, compressionRatio, polytropicIndex, pressure, temperature, at08, at11]) =>
    ([['0.8', at08], ['1.1', at11]] as const).map(
      ([gap, kilovolts]): CalculatorCase => ({
        label: `${gap} mm, ratio ${compressionRatio}, index ${polytropicIndex}, ${intakePressure} kPa`,
        inputs: { gap, intakePressure, intakeTemperature: `${kelvin} K`, compressionRatio, polytropicIndex },
        expected: { pressure: [pressure, 'kPa', 6e-4], temperature: [temperature, 'K', 6e-4], breakdown: [kilovolts, 'kV', 6e-4] },
        source: `${uniformField}; p·rⁿ and T·rⁿ⁻¹`,
      }),
    ),
  ),
  {
    label: 'adiabatic compression of a textbook',
    inputs: { gap: '1', intakePressure: '100 kPa', intakeTemperature: '293 K', compressionRatio: '6', polytropicIndex: '1.4' },
    expected: { pressure: [1230, 'kPa', 5], temperature: [600, 'K', 0.5] },
    source: 'OpenStax University Physics 2, 3.6, worked example: 1.23 MPa and 600 K',
  },
  {
    label: 'widest gap for 30 kV, by bisection of the formula',
    inputs: { gap: '0.8', intakePressure: '95', intakeTemperature: '310 K', compressionRatio: '10.5', available: '30 kV' },
    expected: { largestGap: [1.0629, 'mm', 1e-4] },
    says: /6\.7.kV to spare/,
    source: uniformField,
  },
  {
    label: 'the widest gap gives back its own voltage',
    inputs: { gap: '1', intakeTemperature: '293 K', available: '4344.7 V' },
    expected: { largestGap: [1, 'mm', 3e-5] },
    source: uniformField,
  },
  { label: 'coil too weak', inputs: { gap: '1.1', compressionRatio: '10.5', available: '20 kV' }, says: /more than the coil can give/, source: contract },
  { label: 'no gap', inputs: { gap: '0' }, refusal: { input: 'gap', code: 'too-low' }, source: contract },
  { label: 'a gap in metres', inputs: { gap: '0.8 m' }, refusal: { input: 'gap', code: 'too-high' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'gap', code: 'missing' }, source: contract },
  { label: 'ratio below one', inputs: { gap: '1', compressionRatio: '0.5' }, refusal: { input: 'compressionRatio', code: 'too-low' }, source: contract },
  { label: 'ratio of a dream', inputs: { gap: '1', compressionRatio: '105' }, refusal: { input: 'compressionRatio', code: 'too-high' }, source: contract },
  { label: 'vacuum', inputs: { gap: '1', intakePressure: '0' }, refusal: { input: 'intakePressure', code: 'too-low' }, source: contract },
  { label: 'pressure as a temperature', inputs: { gap: '1', intakePressure: '20 C' }, refusal: { input: 'intakePressure', code: 'wrong-dimension' }, source: contract },
  { label: 'no voltage at all', inputs: { gap: '1', available: '0' }, refusal: { input: 'available', code: 'too-low' }, source: contract },
  { label: 'meter shows open', inputs: { gap: 'OL' }, refusal: { input: 'gap', code: 'open-not-accepted' }, source: contract },
];
