import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const method = 'FAA AC 43.13-1B, chapter 8, paragraphs 8-14 and 8-15: suspect over 25 % of the supply (below 60 of 80)';
const arithmetic = 'computed by hand: (supply − cylinder) / supply';
const bands = 'common practice: to 10, 20 and 30 %';

/** Supply, cylinder, leakage, band, not over 25 %. */
const readings = [
  ['80 psi', '72 psi', 10, 'good', true],
  ['80 psi', '60 psi', 25, 'worn', true],
  ['80 psi', '59 psi', 26.25, 'worn', false],
  ['100 psi', '92 psi', 8, 'good', true],
  ['100 psi', '68 psi', 32, 'repair', false],
  ['6.0 bar', '5.1 bar', 15, 'serviceable', true],
  ['700 kPa', '490 kPa', 30, 'worn', false],
  ['5.5 bar', '5.5 bar', 0, 'good', true],
  ['552 kPa', '414 kPa', 25, 'worn', true],
  ['5.52 bar', '4.14 bar', 25, 'worn', true],
  ['100 psi', '80 psi', 20, 'serviceable', true],
  ['100 psi', '0 psi', 100, 'repair', false],
] as const;

/** Where the air comes out, and what it points to. */
const places = [
  ['exhaust', 'exhaust-valve'],
  ['intake', 'inlet-valve'],
  ['exhaust-and-intake', 'both-valves'],
  ['crankcase', 'rings-or-bore'],
  ['coolant', 'head-gasket-or-crack'],
  ['neighbour', 'gasket-between-cylinders'],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...readings.map(
    ([supply, cylinder, leakage, verdict, within25]): CalculatorCase => ({
      label: `${cylinder} of ${supply}`,
      inputs: { supply, cylinder },
      expected: { leakage: [leakage, '%', 1e-9], verdict, within25 },
      absent: ['pattern', 'aboveOthers'],
      source: `${arithmetic}; ${method}; ${bands}`,
    }),
  ),
  ...places.map(
    ([escapes, pattern]): CalculatorCase => ({
      label: `air at ${escapes}`,
      inputs: { supply: '80', cylinder: '50', escapes },
      expected: { pattern },
      source: 'FAA AC 43.13-1B for exhaust, intake and breather; coolant and neighbour are common practice',
    }),
  ),
  { label: 'all lost at both ends', inputs: { supply: '80', cylinder: '2', escapes: 'exhaust-and-intake' }, expected: { pattern: 'not-at-top-dead-centre' }, says: /not at the top/, source: 'common practice' },
  { label: 'all lost, place not looked for', inputs: { supply: '80', cylinder: '2' }, says: /top of compression/, source: 'common practice' },
  { label: 'beside its fellows', inputs: { supply: '100', cylinder: '78', others: '92 94 91' }, expected: { aboveOthers: [22 - (8 + 6 + 9) / 3, '%', 1e-9] }, says: /more than its fellows/, source: arithmetic },
  { label: 'ten points apart exactly', inputs: { supply: '100', cylinder: '80', others: '90 90' }, expected: { aboveOthers: [10, '%', 1e-9] }, says: /fault is in this cylinder/, source: 'common practice: 10 points' },
  { label: 'better than its fellows', inputs: { supply: '100', cylinder: '95', others: '90' }, expected: { aboveOthers: [-5, '%', 1e-9] }, says: /better/, source: arithmetic },
  { label: 'more than was supplied', inputs: { supply: '80', cylinder: '81' }, refusal: { input: 'cylinder', code: 'above-supply' }, source: contract },
  { label: 'another with more than was supplied', inputs: { supply: '80', cylinder: '70', others: '75 90' }, refusal: { input: 'others', code: 'above-supply' }, source: contract },
  { label: 'no supply', inputs: { supply: '0', cylinder: '0' }, refusal: { input: 'supply', code: 'too-low' }, source: contract },
  { label: 'supply forgotten', inputs: { cylinder: '60' }, refusal: { input: 'supply', code: 'missing' }, source: contract },
  { label: 'below nothing', inputs: { supply: '80', cylinder: '-1' }, refusal: { input: 'cylinder', code: 'too-low' }, source: contract },
  { label: 'a place that is none', inputs: { supply: '80', cylinder: '60', escapes: 'roof' }, refusal: { input: 'escapes', code: 'not-a-choice' }, source: contract },
  { label: 'a supply no tester has', inputs: { supply: '80 bar', cylinder: '60' }, refusal: { input: 'supply', code: 'too-high' }, source: contract },
];
