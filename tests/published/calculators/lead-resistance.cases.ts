import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const byHand = 'computed by hand: length × resistance per metre + series; ± 20 % is common practice';
const lead = { length: '0.6', resistancePerMetre: '16 kohm/m' };

export const cases: readonly CalculatorCase[] = [
  { label: '0.6 m of carbon core', inputs: lead, expected: { expected: [9600, 'ohm', 1e-9], lowest: [7680, 'ohm', 1e-9], highest: [11520, 'ohm', 1e-9] }, absent: ['verdict'], source: byHand },
  { label: '0.45 m of wire-wound', inputs: { length: '45 cm', resistancePerMetre: '5600' }, expected: { expected: [2520, 'ohm', 1e-9] }, source: byHand },
  { label: 'with a resistor in the cap', inputs: { length: '0.45', resistancePerMetre: '5.6 kohm/m', seriesResistance: '5k0', reading: '7.6 kohm' }, expected: { expected: [7520, 'ohm', 1e-9], verdict: 'inside' }, source: byHand },
  { label: 'inside', inputs: { ...lead, reading: '10.5 kohm' }, expected: { verdict: 'inside' }, source: byHand },
  { label: 'on the upper limit', inputs: { ...lead, reading: '11520' }, expected: { verdict: 'inside' }, source: byHand },
  { label: 'on the lower limit', inputs: { ...lead, reading: '7680' }, expected: { verdict: 'inside' }, source: byHand },
  { label: 'above', inputs: { ...lead, reading: '11530' }, expected: { verdict: 'above' }, says: /renew the set/, source: byHand },
  { label: 'below', inputs: { ...lead, reading: '7670' }, expected: { verdict: 'below' }, says: /another kind of lead/, source: byHand },
  { label: 'open', inputs: { ...lead, reading: 'OL' }, expected: { verdict: 'above' }, says: /Open circuit/, source: contract },
  { label: 'a tighter band', inputs: { ...lead, reading: '10.5 kohm', tolerancePercent: '5' }, expected: { verdict: 'above', highest: [10080, 'ohm', 1e-9] }, source: byHand },
  { label: 'copper core: nothing to read', inputs: { length: '0.6', resistancePerMetre: '0', reading: '0' }, expected: { expected: [0, 'ohm', 0], verdict: 'inside' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'length', code: 'missing' }, source: contract },
  { label: 'no length', inputs: { ...lead, length: '0' }, refusal: { input: 'length', code: 'too-low' }, source: contract },
  { label: 'longer than any lead', inputs: { ...lead, length: '600' }, refusal: { input: 'length', code: 'too-high' }, source: contract },
  { label: 'ohms alone for ohms per metre', inputs: { ...lead, resistancePerMetre: '16 kohm' }, refusal: { input: 'resistancePerMetre', code: 'wrong-dimension' }, source: contract },
  { label: 'below zero', inputs: { ...lead, reading: '-1' }, refusal: { input: 'reading', code: 'too-low' }, source: contract },
  { label: 'everything accepted', inputs: { ...lead, tolerancePercent: '150' }, refusal: { input: 'tolerancePercent', code: 'too-high' }, source: contract },
];
