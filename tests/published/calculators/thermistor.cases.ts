import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const law = 'computed from R25·e^(B(1/T − 1/298.15)); not a published number';

/** Resistance at 25 °C, beta, and the resistance at these temperatures in °C. */
const temperatures = ['-20', '0', '20', '25', '40', '80', '100'] as const;
const sensors = [
  ['2500', '3500', [20146.45, 7320.7, 3054.19, 2500, 1424.73, 401.73, 236.18]],
  ['10000', '3950', [105384.69, 33620.6, 12535.33, 10000, 5301.47, 1270.32, 697.52]],
  ['2000', '3400', [15184.32, 5679.51, 2429.41, 2000, 1158.25, 338.62, 202.12]],
] as const;

const sensor = { nominalResistance: '2500', beta: '3500' };

/** Back from the resistance to °C. */
const inverse = [
  ['300', 90.721, 5e-4],
  ['1000', 50.2424, 5e-5],
  ['6000', 4.3079, 5e-5],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...sensors.flatMap(([nominalResistance, beta, resistances]) =>
    temperatures.map(
      (temperature, index): CalculatorCase => ({
        label: `${nominalResistance} Ω, beta ${beta} at ${temperature} °C`,
        inputs: { nominalResistance, beta, temperature },
        expected: { resistance: [resistances[index] ?? Number.NaN, 'ohm', 0.0051], temperature: [Number(temperature), 'C', 0] },
        source: law,
      }),
    ),
  ),
  ...inverse.map(
    ([resistance, temperature, tolerance]): CalculatorCase => ({
      label: `${resistance} Ω back to °C`,
      inputs: { ...sensor, resistance },
      expected: { temperature: [temperature, 'C', tolerance], resistance: [Number(resistance), 'ohm', 0] },
      source: `${law}, solved for the temperature`,
    }),
  ),
  {
    label: 'beta worked out from two points gives the second point',
    inputs: { nominalResistance: '10 kohm', beta: '3854.57 K', temperature: '0' },
    expected: { resistance: [32650, 'ohm', 1] },
    source: 'computed: 32 650 Ω at 0 °C and 10 000 Ω at 25 °C give B = 3854.57 K',
  },
  { label: 'Fahrenheit and kilohm', inputs: { nominalResistance: '2.5 kohm', beta: '3500', temperature: '176 F' }, expected: { resistance: [401.73, 'ohm', 0.0051] }, source: law },
  { label: 'neither', inputs: sensor, refusal: { input: 'temperature', code: 'missing' }, source: contract },
  { label: 'both', inputs: { ...sensor, temperature: '20', resistance: '3000' }, refusal: { input: 'resistance', code: 'two-given' }, source: contract },
  { label: 'shorted sensor', inputs: { ...sensor, resistance: '0.01' }, refusal: { input: 'resistance', code: 'not-this-sensor' }, source: contract },
  { label: 'beyond where the law has an answer', inputs: { nominalResistance: '100 Mohm', beta: '500', resistance: '0.001' }, refusal: { input: 'resistance', code: 'not-this-sensor' }, source: contract },
  { label: 'broken sensor', inputs: { ...sensor, resistance: '900 Mohm' }, refusal: { input: 'resistance', code: 'not-this-sensor' }, source: contract },
  { label: 'no resistance', inputs: { ...sensor, resistance: '0' }, refusal: { input: 'resistance', code: 'too-low' }, source: contract },
  { label: 'open', inputs: { ...sensor, resistance: 'OL' }, refusal: { input: 'resistance', code: 'open-not-accepted' }, source: contract },
  { label: 'colder than used', inputs: { ...sensor, temperature: '-100' }, refusal: { input: 'temperature', code: 'too-low' }, source: contract },
  { label: 'beta of a metal', inputs: { ...sensor, beta: '20', temperature: '20' }, refusal: { input: 'beta', code: 'too-low' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'nominalResistance', code: 'missing' }, source: contract },
];
