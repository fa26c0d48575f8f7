import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const nist = 'NIST SP 811, appendix B.8 factors';

/** Value, unit wanted as typed, expected, unit. */
const conversions = [
  ['150 psi', 'kPa', 1034.21359, 'kPa', 1e-5],
  ['1000 kPa', 'psi', 145.037738, 'psi', 1e-6],
  ['12.5 bar', 'psi', 181.297172, 'psi', 1e-6],
  ['180 psi', 'bar', 12.4105631, 'bar', 1e-7],
  ['20 inHg', 'kPa', 67.72778, 'kPa', 1e-5],
  ['65 kPa', 'inHg', 19.1944871, 'inHg', 1e-6],
  ['20 lbf ft', 'Nm', 27.116359, 'N m', 1e-6],
  ['27 N m', 'ft lb', 19.914178, 'lbf ft', 1e-6],
  ['120 lbf in', 'N m', 13.5581795, 'N m', 1e-6],
  ['2.5 m kgf', 'N m', 24.516625, 'N m', 1e-9],
  ['0.035 in', 'mm', 0.889, 'mm', 1e-9],
  ['1.1 mm', 'in', 0.0433070866, 'in', 1e-10],
  ['195 F', 'C', 90.5555556, 'C', 1e-7],
  ['-18 C', 'F', -0.4, 'F', 1e-9],
  ['-40 C', 'fahrenheit', -40, 'F', 1e-9],
  ['300 K', '°F', 80.33, 'F', 1e-9],
  ['12 kgf/cm2', 'kPa', 1176.798, 'kPa', 1e-6],
  ['1 atm', 'psi', 14.6959488, 'psi', 1e-7],
  ['70 mph', 'km/h', 112.65408, 'km/h', 1e-8],
  ['760 mmHg', 'kPa', 101.325014, 'kPa', 1e-6],
  ['150 hp', 'kW', 111.854981, 'kW', 1e-6],
  ['4k7', 'ohm', 4700, 'ohm', 1e-9],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...conversions.map(
    ([value, to, result, unit, tolerance]): CalculatorCase => ({
      label: `${value} to ${to}`,
      inputs: { value, to },
      expected: { result: [result, unit, tolerance] },
      source: nist,
    }),
  ),
  { label: 'a rise is not a temperature', inputs: { value: '10 C', to: 'F' }, expected: { result: [50, 'F', 1e-9] }, says: /difference it is 18.°F/, source: nist },
  { label: 'decimal comma', inputs: { value: '0,62 Ω', to: 'mohm' }, expected: { result: [620, 'mohm', 1e-9] }, source: contract },
  { label: 'share to percent', inputs: { value: '0.25', to: '%' }, expected: { result: [25, '%', 1e-9] }, source: contract },
  { label: 'nothing typed', inputs: { to: 'kPa' }, refusal: { input: 'value', code: 'missing' }, source: contract },
  { label: 'no unit wanted', inputs: { value: '10 psi' }, refusal: { input: 'to', code: 'missing' }, source: contract },
  { label: 'no number', inputs: { value: 'psi', to: 'kPa' }, refusal: { input: 'value', code: 'not-a-number' }, source: contract },
  { label: 'unknown unit given', inputs: { value: '10 blobs', to: 'kPa' }, refusal: { input: 'value', code: 'unknown-unit' }, source: contract },
  { label: 'unknown unit wanted', inputs: { value: '10 psi', to: 'blobs' }, refusal: { input: 'to', code: 'unknown-unit' }, source: contract },
  { label: 'pressure to torque', inputs: { value: '10 psi', to: 'N m' }, refusal: { input: 'to', code: 'wrong-dimension' }, source: contract },
  { label: 'number without a unit', inputs: { value: '165', to: 'kPa' }, refusal: { input: 'to', code: 'wrong-dimension' }, source: contract },
  { label: 'two readings of a comma', inputs: { value: '1,234 psi', to: 'kPa' }, refusal: { input: 'value', code: 'ambiguous' }, source: contract },
  { label: 'no field for it', inputs: { value: '10 psi', to: 'kPa', from: 'psi' }, refusal: { input: 'from', code: 'unknown-input' }, source: contract },
];
