import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const arithmetic = 'computed by hand: S + L and (1 + S)(1 + L) − 1';
const practice = 'common practice: what a pattern of trims points to';

/** Short, long, sum, product. */
const totals = [
  ['+3', '+5', 8, 8.15],
  ['+10', '+10', 20, 21],
  ['-4', '+12', 8, 7.52],
  ['+20', '+15', 35, 38],
  ['-12', '-10', -22, -20.8],
  ['+25', '+25', 50, 56.25],
  ['-8', '+8', 0, -0.64],
] as const;

/** Idle total, cruise total, pattern of one bank. */
const patterns = [
  ['5', '3', 'within-usual-band'],
  ['10', '-10', 'within-usual-band'],
  ['20', '1', 'adding-at-idle'],
  ['20', '-2', 'adding-at-idle'],
  ['1', '20', 'adding-with-load'],
  ['18', '16', 'adding-everywhere'],
  ['12', '9.5', 'adding-everywhere'],
  ['-18', '-2', 'removing-at-idle'],
  ['-2', '-18', 'removing-with-load'],
  ['-18', '-16', 'removing-everywhere'],
  ['15', '-15', 'mixed'],
] as const;

/** Totals of bank 1 and 2 at idle, pattern, difference. */
const banks = [
  ['4', '3', 'within-usual-band', 1],
  ['18', '1', 'one-bank-adding', 17],
  ['1', '18', 'one-bank-adding', 17],
  ['-18', '0', 'one-bank-removing', 18],
  ['20', '-22', 'banks-opposite', 42],
  ['8', '-6', 'banks-apart', 14],
  ['8', '-2', 'within-usual-band', 10],
  ['15', '17', 'adding-fuel', 2],
  ['-15', '-17', 'removing-fuel', 2],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...totals.map(
    ([short, long, sum, product]): CalculatorCase => ({
      label: `${short} and ${long}`,
      inputs: { short, long },
      expected: { sum: [sum, '%', 1e-9], product: [product, '%', 1e-9] },
      absent: ['sum2', 'bankDifference', 'cruiseSum'],
      source: arithmetic,
    }),
  ),
  ...patterns.map(
    ([short, cruiseShort, pattern]): CalculatorCase => ({
      label: `idle ${short}, cruise ${cruiseShort}`,
      inputs: { short, long: '0', cruiseShort, cruiseLong: '0' },
      expected: { pattern, cruiseSum: [Number(cruiseShort), '%', 1e-9] },
      source: practice,
    }),
  ),
  ...banks.map(
    ([short, short2, pattern, difference]): CalculatorCase => ({
      label: `bank 1 ${short}, bank 2 ${short2}`,
      inputs: { short, long: '0', short2, long2: '0' },
      expected: { pattern, bankDifference: [difference, '%', 1e-9] },
      source: practice,
    }),
  ),
  {
    label: 'both banks, idle and cruise',
    inputs: { short: '12', long: '8', cruiseShort: '2', cruiseLong: '1', short2: '10', long2: '9', cruiseShort2: '0', cruiseLong2: '2' },
    expected: { pattern: 'adding-at-idle', sum2: [19, '%', 1e-9], product2: [19.9, '%', 1e-9], cruiseProduct2: [2, '%', 1e-9], cruiseBankDifference: [1, '%', 1e-9] },
    source: `${arithmetic}; ${practice}`,
  },
  { label: 'lean idle alone', inputs: { short: '15', long: '0' }, expected: { pattern: 'adding-fuel' }, says: /2500 rpm/, source: practice },
  { label: 'plus trims may be an effect', inputs: { short: '15', long: '0' }, says: /effect of the misfire/, source: practice },
  { label: 'ends of the byte', inputs: { short: '-100', long: '99.21875' }, expected: { product: [-100, '%', 1e-9] }, source: 'SAE J1979: 100·A/128 − 100, A = 0 and 255 (recalled)' },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'short', code: 'missing' }, source: contract },
  { label: 'half a pair', inputs: { short: '1', long: '2', cruiseShort: '3' }, refusal: { input: 'cruiseLong', code: 'missing' }, source: contract },
  { label: 'the other half', inputs: { short: '1', long: '2', long2: '3' }, refusal: { input: 'short2', code: 'missing' }, source: contract },
  { label: 'below the byte', inputs: { short: '-101', long: '0' }, refusal: { input: 'short', code: 'too-low' }, source: contract },
  { label: 'above the byte', inputs: { short: '0', long: '101' }, refusal: { input: 'long', code: 'too-high' }, source: contract },
  { label: 'a voltage', inputs: { short: '0.4 V', long: '0' }, refusal: { input: 'short', code: 'wrong-dimension' }, source: contract },
];
