import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const firings = 'arithmetic: each cylinder of a four-stroke engine fires once in two revolutions';
const floors = '13 CCR 1968.2(e)(3.2.1) and (e)(3.2.2): 5 % in 200, 1 % in 1000 revolutions (recalled)';
const codeRule = '13 CCR 1968.2(e)(3.1.3), 2007 text';

/** Cylinders, revolutions, misfires, rate, at or above the lowest limit. */
const rates = [
  ['4', '200', '19', 4.75, false],
  ['4', '200', '20', 5, true],
  ['4', '200', '100', 25, true],
  ['6', '200', '29', 4.833333, false],
  ['6', '200', '30', 5, true],
  ['4', '1000', '19', 0.95, false],
  ['4', '1000', '20', 1, true],
  ['6', '1000', '45', 1.5, true],
  ['8', '1000', '39', 0.975, false],
  ['8', '1000', '40', 1, true],
  ['3', '1000', '500', 33.333333, true],
] as const;

/** Cylinders, firings in 200 revolutions, rate of one dead cylinder. */
const oneDead = [
  ['1', 100, 100],
  ['2', 200, 50],
  ['3', 300, 33.333333],
  ['4', 400, 25],
  ['5', 500, 20],
  ['6', 600, 16.666667],
  ['8', 800, 12.5],
  ['10', 1000, 10],
  ['12', 1200, 8.333333],
] as const;

const single = 'single-cylinder code allowed';
const compulsory = 'multiple-cylinder code compulsory';
const base = 'multiple-cylinder code by the base rule';

/** Counts, shares, rule. */
const rules = [
  ['100 0 0 0', [100, 0, 0, 0], single],
  ['95 2 2 1', [95, 2, 2, 1], single],
  ['91 9 0 0', [91, 9, 0, 0], single],
  ['90 10 0 0', [90, 10, 0, 0], base],
  ['88 12 0 0', [88, 12, 0, 0], compulsory],
  ['85 5 5 5', [85, 5, 5, 5], base],
  ['40 30 20 10', [40, 30, 20, 10], compulsory],
  ['0 0 60 4', [0, 0, 93.75, 6.25], single],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...rates.map(
    ([cylinders, revolutions, counts, rate, floorReached]): CalculatorCase => ({
      label: `${counts} of ${cylinders} cylinders in ${revolutions}`,
      inputs: { cylinders, revolutions, counts },
      expected: { rate: [rate, '%', 1e-6], floorReached },
      absent: ['shares', 'codeRule'],
      source: `${firings}; ${floors}`,
    }),
  ),
  ...oneDead.map(
    ([cylinders, events, rate]): CalculatorCase => ({
      label: `one dead cylinder of ${cylinders}`,
      inputs: { cylinders, revolutions: '200', counts: '100' },
      expected: { events: [events, 'count', 0], rate: [rate, '%', 1e-6], floorReached: true },
      source: firings,
    }),
  ),
  ...rules.map(
    ([counts, values, rule]): CalculatorCase => ({
      label: `shares of ${counts}`,
      inputs: { cylinders: '4', revolutions: '1000', counts },
      expected: { shares: { values, unit: '%', tolerance: 1e-9 }, codeRule: rule },
      source: codeRule,
    }),
  ),
  { label: 'another window', inputs: { cylinders: '4', revolutions: '500', counts: '100' }, expected: { floorReached: 'not applicable', rate: [10, '%', 1e-9] }, says: /200 and 1000/, source: floors },
  { label: 'none counted', inputs: { cylinders: '4', revolutions: '1000', counts: '0 0 0 0' }, expected: { codeRule: 'no misfire counted', shares: { values: [0, 0, 0, 0], unit: '%', tolerance: 0 }, rate: [0, '%', 0] }, source: contract },
  { label: 'semicolons', inputs: { cylinders: '3', revolutions: '200', counts: '1; 2; 3' }, expected: { rate: [2, '%', 1e-9] }, source: firings },
  { label: 'one cylinder', inputs: { cylinders: '1', revolutions: '200', counts: '5' }, expected: { codeRule: single, rate: [5, '%', 1e-9] }, source: contract },
  { label: 'every firing missed', inputs: { cylinders: '4', revolutions: '200', counts: '100 100 100 100' }, expected: { rate: [100, '%', 0], codeRule: compulsory }, source: firings },
  { label: 'too few counts', inputs: { cylinders: '4', revolutions: '200', counts: '1 2 3' }, refusal: { input: 'counts', code: 'wrong-number-of-counts' }, source: contract },
  { label: 'more misfires than firings', inputs: { cylinders: '4', revolutions: '200', counts: '401' }, refusal: { input: 'counts', code: 'more-than-firings' }, source: firings },
  { label: 'one cylinder misses more than it fires', inputs: { cylinders: '4', revolutions: '200', counts: '0 101 0 0' }, refusal: { input: 'counts', code: 'more-than-firings' }, source: firings },
  { label: 'no cylinders', inputs: { cylinders: '0', revolutions: '200', counts: '1' }, refusal: { input: 'cylinders', code: 'too-low' }, source: contract },
  { label: 'half a cylinder', inputs: { cylinders: '4.5', revolutions: '200', counts: '1' }, refusal: { input: 'cylinders', code: 'not-whole' }, source: contract },
  { label: 'too many cylinders', inputs: { cylinders: '18', revolutions: '200', counts: '1' }, refusal: { input: 'cylinders', code: 'too-high' }, source: contract },
  { label: 'half a misfire', inputs: { cylinders: '4', revolutions: '200', counts: '1.5' }, refusal: { input: 'counts', code: 'not-whole' }, source: contract },
  { label: 'less than none', inputs: { cylinders: '4', revolutions: '200', counts: '-1' }, refusal: { input: 'counts', code: 'too-low' }, source: contract },
  { label: 'no revolutions', inputs: { cylinders: '4', revolutions: '0', counts: '0' }, refusal: { input: 'revolutions', code: 'too-low' }, source: contract },
  { label: 'counts forgotten', inputs: { cylinders: '4', revolutions: '200' }, refusal: { input: 'counts', code: 'missing' }, source: contract },
  { label: 'one stands out', inputs: { cylinders: '4', revolutions: '200', counts: '1 0 19 0' }, says: /Cylinder 3: high/, source: contract },
  { label: 'two companions stand out', inputs: { cylinders: '4', revolutions: '1000', counts: '40 1 0 42', order: '1-3-4-2' }, says: /1 and 4 are companions/, source: 'computed: half the order on; shared coil of wasted spark is common practice' },
  { label: 'two that fire one after the other', inputs: { cylinders: '4', revolutions: '1000', counts: '40 0 41 0', order: '1-3-4-2' }, says: /1 and 3 fire one after the other/, source: 'read off the order; side-by-side leads are common practice' },
  { label: 'last and first fire one after the other', inputs: { cylinders: '4', revolutions: '1000', counts: '40 41 0 0', order: '1-3-4-2' }, says: /1 and 2 fire one after the other/, source: 'read off the order: it starts again' },
  { label: 'two neighbours stand out', inputs: { cylinders: '4', revolutions: '1000', counts: '0 40 41 0' }, says: /next to each other/, source: 'common practice: gasket between neighbours' },
  { label: 'order of another engine', inputs: { cylinders: '4', revolutions: '200', counts: '1', order: '1-2-3' }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
  { label: 'order that is none', inputs: { cylinders: '4', revolutions: '200', counts: '1', order: 'first one' }, refusal: { input: 'order', code: 'not-an-order' }, source: contract },
];
