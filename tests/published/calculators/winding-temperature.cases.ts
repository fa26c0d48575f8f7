import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const byHand = 'computed from (R2/R1)(k + t1) − k with k = 234.5 (extract of an electrical safety standard); not a published number';

/** R1, R2, t1, temperature when hot and how far it was rounded. */
const rows = [
  ['1.000', '1.200', '20', 70.9, 0.05],
  ['0.650', '0.780', '20', 70.9, 0.05],
  ['2.50', '3.15', '22', 88.69, 0.005],
  ['0.520', '0.700', '18', 105.404, 5e-4],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...rows.map(
    ([coldResistance, hotResistance, coldTemperature, temperature, tolerance]): CalculatorCase => ({
      label: `${coldResistance} Ω at ${coldTemperature} °C, ${hotResistance} Ω hot`,
      inputs: { coldResistance, hotResistance, coldTemperature },
      expected: { temperature: [temperature, 'C', tolerance], rise: [temperature - Number(coldTemperature), 'K', tolerance] },
      source: byHand,
    }),
  ),
  {
    label: 'aluminium',
    inputs: { coldResistance: '1.000', hotResistance: '1.150', coldTemperature: '20', material: 'aluminium' },
    expected: { temperature: [56.75, 'C', 1e-9], rise: [36.75, 'K', 1e-9] },
    source: 'computed from 1.15 × 245 − 225, k = 225 (same extract)',
  },
  {
    label: 'rise over the air around it',
    inputs: { coldResistance: '0.520', hotResistance: '0.700', coldTemperature: '18', surroundingTemperature: '30' },
    expected: { rise: [75.404, 'K', 5e-4] },
    source: `${byHand}; less 30 °C`,
  },
  {
    label: 'another standard’s k of 235 differs by no more than 0.2 °C',
    inputs: { coldResistance: '2.50', hotResistance: '3.15', coldTemperature: '22' },
    expected: { temperature: [88.82, 'C', 0.2] },
    source: 'IEC 60034-1 uses k = 235 for copper (recalled): 1.26 × 257 − 235 = 88.82',
  },
  { label: 'nothing changed', inputs: { coldResistance: '0.5', hotResistance: '0.5', coldTemperature: '20' }, expected: { temperature: [20, 'C', 1e-9], rise: [0, 'K', 1e-9] }, source: contract },
  { label: 'changed over', inputs: { coldResistance: '1.2', hotResistance: '1.0', coldTemperature: '71' }, expected: { temperature: [20.0833333, 'C', 1e-6] }, says: /changed over/, source: 'computed from 305.5/1.2 − 234.5' },
  { label: 'Fahrenheit and milliohm', inputs: { coldResistance: '1000 mohm', hotResistance: '1.2', coldTemperature: '68 F' }, expected: { temperature: [70.9, 'C', 1e-6] }, source: byHand },
  { label: 'kilohm for ohm', inputs: { coldResistance: '0.5', hotResistance: '0.6 kohm', coldTemperature: '20' }, refusal: { input: 'hotResistance', code: 'not-one-winding' }, source: contract },
  { label: 'far too little', inputs: { coldResistance: '0.5', hotResistance: '0.1', coldTemperature: '20' }, refusal: { input: 'hotResistance', code: 'not-one-winding' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'coldResistance', code: 'missing' }, source: contract },
  { label: 'no temperature', inputs: { coldResistance: '0.5', hotResistance: '0.6' }, refusal: { input: 'coldTemperature', code: 'missing' }, source: contract },
  { label: 'no resistance', inputs: { coldResistance: '0', hotResistance: '0.6', coldTemperature: '20' }, refusal: { input: 'coldResistance', code: 'too-low' }, source: contract },
  { label: 'open when hot', inputs: { coldResistance: '0.5', hotResistance: 'OL', coldTemperature: '20' }, refusal: { input: 'hotResistance', code: 'open-not-accepted' }, source: contract },
  { label: 'brass', inputs: { coldResistance: '0.5', hotResistance: '0.6', coldTemperature: '20', material: 'brass' }, refusal: { input: 'material', code: 'not-a-choice' }, source: contract },
  { label: 'colder than any shop', inputs: { coldResistance: '0.5', hotResistance: '0.6', coldTemperature: '-100' }, refusal: { input: 'coldTemperature', code: 'too-low' }, source: contract },
];
