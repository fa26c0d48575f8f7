import { companions, firingInterval } from '../../diagnosis/layout.ts';
import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { parseFiringOrder } from '../cylinders.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, ParsedInputs } from '../definition.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'order',
    label: 'Firing order',
    kind: 'text',
    optional: false,
    hint: 'Such as 1-3-4-2, each cylinder once. It is on the engine, its cover or in the maker’s documents.',
  },
  {
    name: 'firing',
    label: 'Firing',
    kind: 'choice',
    optional: true,
    default: 'even',
    choices: [
      { value: 'even', label: 'At equal distances' },
      { value: 'uneven', label: 'At unequal distances' },
    ],
    hint: 'Some vee engines with shared crank pins fire at unequal distances; the order alone does not tell.',
    advanced: true,
  },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'companions', label: 'Companions', kind: 'word-list', main: true },
  { name: 'interval', label: 'From one firing to the next, crank', kind: 'quantity', unit: 'deg', decimals: 0 },
  { name: 'evenFire', label: 'Fires at equal distances', kind: 'word' },
];

const numberingNote = 'Cylinder numbers vary by maker: find out which end or bank number 1 is before you move a lead or a coil.';

function companionNote(count: number): string {
  return count === 0
    ? 'An odd number of cylinders has no companions: no two pistons are at the top together, so no coil can serve two plugs by wasted spark.'
    : 'Companions reach the top together, one firing and the other at the end of exhaust. In wasted spark they share a coil: if both of a pair miss, look at that coil, its leads and its supply first. If only one of them misses, look at its plug, lead, fuel and compression.';
}

const unevenNote = 'With uneven firing the distances and the companions do not follow from the order. Take them from the engine maker’s documents.';

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const order = parseFiringOrder(given.text('order'), 'order');
  if (!order.ok) return order;
  if (given.text('firing') === 'uneven') return success({ outputs: { evenFire: false }, notes: [unevenNote, numberingNote] });
  const pairs = companions(order.value);
  return success({
    outputs: {
      companions: pairs.map(([one, other]) => `${one}+${other}`),
      interval: { value: firingInterval(order.value.length), unit: 'deg' },
      evenFire: true,
    },
    notes: [companionNote(pairs.length), numberingNote],
  });
}

const oneTurn = 360;

/** Two turns of the crank, one over the other: companions stand in one column. */
function chart(given: ParsedInputs): Chart | undefined {
  const order = parseFiringOrder(given.text('order'), 'order');
  if (!order.ok || given.text('firing') === 'uneven') return undefined;
  const interval = firingInterval(order.value.length);
  return {
    title: 'When each cylinder fires: companions stand in one column',
    x: { label: 'Angle within the turn', unit: 'deg' },
    y: { label: 'Turn of the crank: first below, second above', unit: 'count' },
    series: [{ name: 'First turn', kind: 'line', points: [{ x: 0, y: 1 }, { x: oneTurn, y: 1 }] }],
    marks: order.value.map((cylinder, place) => {
      const angle = place * interval;
      return { x: angle % oneTurn, y: angle < oneTurn ? 1 : 2, label: String(cylinder) };
    }),
  };
}

/** Distance between firings and the cylinders that reach the top together. */
export const firingOrder: CalculatorDefinition = {
  id: 'firing-order',
  title: 'Firing order',
  summary: 'Which cylinders are companions and share a coil, and how far apart do the firings lie?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['companion cylinders', 'wasted spark pairs', 'paired cylinders', 'firing interval', 'coil pack', '1-3-4-2', 'top dead centre'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => firingOrder;
