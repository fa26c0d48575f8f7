import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const list = 'encyclopaedia article on firing order for the order; interval 720 / n and companions half the order on computed by hand';
const recalled = 'order recalled; interval 720 / n and companions half the order on computed by hand';

/** Order, interval, companions lower number first, source of the order. */
const engines: readonly (readonly [order: string, interval: number, companions: readonly string[], source: string])[] = [
  ['1-2', 360, ['1+2'], recalled],
  ['1-2-3', 240, [], list],
  ['1-3-4-2', 180, ['1+4', '2+3'], list],
  ['1-2-4-3', 180, ['1+4', '2+3'], list],
  ['1-3-2-4', 180, ['1+2', '3+4'], recalled],
  ['1-2-4-5-3', 144, [], list],
  ['1-5-3-6-2-4', 120, ['1+6', '2+5', '3+4'], list],
  ['1-2-3-4-5-6', 120, ['1+4', '2+5', '3+6'], list],
  ['1-6-5-4-3-2', 120, ['1+4', '2+5', '3+6'], list],
  ['1-4-3-6-2-5', 120, ['1+6', '2+4', '3+5'], list],
  ['1-4-2-5-3-6', 120, ['1+5', '2+6', '3+4'], list],
  ['1-6-2-4-3-5', 120, ['1+4', '2+5', '3+6'], list],
  ['1-8-4-3-6-5-7-2', 90, ['1+6', '2+3', '4+7', '5+8'], list],
  ['1-3-7-2-6-5-4-8', 90, ['1+6', '2+8', '3+5', '4+7'], recalled],
  ['1-5-4-2-6-3-7-8', 90, ['1+6', '2+8', '3+5', '4+7'], recalled],
  ['1-8-7-2-6-5-4-3', 90, ['1+6', '2+3', '4+7', '5+8'], recalled],
  ['1-10-9-4-3-6-5-8-7-2', 72, ['1+6', '2+3', '4+7', '5+10', '8+9'], list],
  ['1-6-5-10-2-7-3-8-4-9', 72, ['1+7', '2+9', '3+6', '4+10', '5+8'], recalled],
  ['1-7-5-11-3-9-6-12-2-8-4-10', 60, ['1+6', '2+5', '3+4', '7+12', '8+11', '9+10'], list],
  ['1-12-5-8-3-10-6-7-2-11-4-9', 60, ['1+6', '2+5', '3+4', '7+12', '8+11', '9+10'], list],
];

/** The same order as people type it. */
const spellings = ['1 3 4 2', '1,3,4,2', '1–3–4–2', '1342', ' 1 - 3 - 4 - 2 ', '1; 3; 4; 2'];

export const cases: readonly CalculatorCase[] = [
  ...engines.map(
    ([order, interval, companions, source]): CalculatorCase => ({
      label: order,
      inputs: { order },
      expected: { interval: [interval, 'deg', 1e-9], companions, evenFire: true },
      source,
    }),
  ),
  ...spellings.map((order): CalculatorCase => ({ label: `typed ${order}`, inputs: { order }, expected: { companions: ['1+4', '2+3'] }, source: contract })),
  { label: 'one cylinder', inputs: { order: '1' }, expected: { interval: [720, 'deg', 0], companions: [] }, source: 'computed: a four-stroke cylinder fires once in two turns' },
  { label: 'uneven firing has no companions to compute', inputs: { order: '1-6-5-10-2-7-3-8-4-9', firing: 'uneven' }, expected: { evenFire: false }, absent: ['companions', 'interval'], says: /maker/, source: 'geometry: with gaps of 90 and 54 degrees, five of them make 378 or 342 and not 360' },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'order', code: 'missing' }, source: contract },
  { label: 'no numbers', inputs: { order: 'abc' }, refusal: { input: 'order', code: 'not-an-order' }, source: contract },
  { label: 'one twice', inputs: { order: '1-3-3-2' }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
  { label: 'one left out', inputs: { order: '1-3-5-2' }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
  { label: 'a cylinder zero', inputs: { order: '0-1-2-3' }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
  { label: 'too many', inputs: { order: Array.from({ length: 17 }, (_, index) => index + 1).join('-') }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
  { label: 'a run of digits for more than nine', inputs: { order: '11094365872' }, refusal: { input: 'order', code: 'not-an-order' }, source: contract },
  { label: 'only dashes', inputs: { order: '---' }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
];
