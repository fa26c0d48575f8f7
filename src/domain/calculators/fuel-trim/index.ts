import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, patternLinks, patternNotes, table } from './text.data.ts';
import { investigateBeyond, trimPattern, trimProduct, trimSum } from './trims.ts';
import type { BankTotals, TrimPair } from './trims.ts';

/** Where each pair of trims is typed and what comes out of it. */
const places = [
  { bank: 1, state: 'idle', short: 'short', long: 'long', sum: 'sum', product: 'product' },
  { bank: 1, state: 'cruise', short: 'cruiseShort', long: 'cruiseLong', sum: 'cruiseSum', product: 'cruiseProduct' },
  { bank: 2, state: 'idle', short: 'short2', long: 'long2', sum: 'sum2', product: 'product2' },
  {
    bank: 2,
    state: 'cruise',
    short: 'cruiseShort2',
    long: 'cruiseLong2',
    sum: 'cruiseSum2',
    product: 'cruiseProduct2',
  },
] as const;

type Place = (typeof places)[number];

function pairAt(inputs: ParsedInputs, place: Place): TrimPair | undefined {
  const [short, long] = [inputs.optionalNumber(place.short), inputs.optionalNumber(place.long)];
  return short === undefined || long === undefined ? undefined : { short, long };
}

/** A trim without its partner would give a wrong total. */
function findHalfPair(given: ParsedInputs): Refusal | undefined {
  const place = places.find(({ short, long }) => given.has(short) !== given.has(long));
  if (place === undefined) return undefined;
  const missing = given.has(place.short) ? place.long : place.short;
  const label = inputs.find((input) => input.name === missing)?.label ?? missing;
  return {
    input: missing,
    code: 'missing',
    message: `${label}: nothing was typed. Short and long trim are needed together; type 0 where one reads zero.`,
  };
}

function totalsOf(inputs: ParsedInputs, bank: 1 | 2): BankTotals {
  const found = places
    .filter((place) => place.bank === bank)
    .flatMap((place) => {
      const pair = pairAt(inputs, place);
      return pair === undefined ? [] : [[place.state, trimSum(pair)] as const];
    });
  return Object.fromEntries(found);
}

function difference(one: number | undefined, two: number | undefined): number | undefined {
  return one === undefined || two === undefined ? undefined : Math.abs(one - two);
}

function percentOutputs(given: ParsedInputs, bank1: BankTotals, bank2: BankTotals): Record<string, OutputValue> {
  const values: [string, number | undefined][] = places.flatMap((place) => {
    const pair = pairAt(given, place);
    return pair === undefined
      ? []
      : [
          [place.sum, trimSum(pair)],
          [place.product, trimProduct(pair)],
        ];
  });
  values.push(
    ['bankDifference', difference(bank1.idle, bank2.idle)],
    ['cruiseBankDifference', difference(bank1.cruise, bank2.cruise)],
  );
  return Object.fromEntries(
    values.flatMap(([name, value]) => (value === undefined ? [] : [[name, { value, unit: '%' }]])),
  );
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const half = findHalfPair(given);
  if (half !== undefined) return failure(half);
  const [bank1, bank2] = [totalsOf(given, 1), totalsOf(given, 2)];
  const hasBank2 = bank2.idle !== undefined || bank2.cruise !== undefined;
  const pattern = trimPattern(bank1, hasBank2 ? bank2 : undefined);
  const sums = [bank1.idle, bank1.cruise, bank2.idle, bank2.cruise].filter((sum) => sum !== undefined);
  const notes = [
    patternNotes[pattern],
    ...(sums.some((sum) => sum > investigateBeyond)
      ? [
          'While a cylinder misses, its unburnt oxygen reads as lean: plus trims may be the effect of the misfire and not its cause. Cure the misfire first, then read again.',
        ]
      : []),
    'The bands are common practice; makers differ, and about ±20 to ±25 % sets a code. The engine maker’s figure comes first.',
  ];
  return success({ outputs: { ...percentOutputs(given, bank1, bank2), pattern }, notes, next: patternLinks[pattern] });
}

function bars(given: ParsedInputs, state: Place['state']) {
  return places
    .filter((place) => place.state === state)
    .flatMap((place) => {
      const pair = pairAt(given, place);
      return pair === undefined ? [] : [{ x: place.bank, y: trimSum(pair), label: `Bank ${place.bank}` }];
    });
}

function chart(given: ParsedInputs): Chart {
  const series = [
    { name: 'Idle', kind: 'bars', points: bars(given, 'idle') },
    { name: '2500 rpm', kind: 'bars', points: bars(given, 'cruise') },
  ] as const;
  return {
    title: 'Total trim by bank',
    x: { label: 'Bank', unit: 'count' },
    y: { label: 'Total trim, plus adds fuel', unit: '%' },
    series: series.filter(({ points }) => points.length > 0),
    marks: [],
    levels: [
      { y: investigateBeyond, label: 'Look into it above' },
      { y: -investigateBeyond, label: 'Look into it below' },
    ],
  };
}

/** Totals of short and long fuel trim by bank, and the pattern they make between idle and cruise. */
export const fuelTrim: CalculatorDefinition = {
  id: 'fuel-trim',
  title: 'Fuel trims',
  summary: 'Is the engine adding fuel or taking it away, on which bank, and does it change with load?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: [
    'STFT',
    'LTFT',
    'short term fuel trim',
    'long term fuel trim',
    'lean',
    'rich',
    'vacuum leak',
    'mixture',
    'P0171',
    'P0174',
  ],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => fuelTrim;
