import { ALUMINIUM_INFERRED_ZERO, COPPER_INFERRED_ZERO } from '../../constants.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, InputDefinition, OutputDefinition, ParsedInputs } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';
import { showFigure } from '../show.ts';
import { examples, formulas, table } from './text.data.ts';

const inferredZeros: Readonly<Record<string, number>> = { copper: COPPER_INFERRED_ZERO, aluminium: ALUMINIUM_INFERRED_ZERO };

const inputs: readonly InputDefinition[] = [
  quantity('coldResistance', 'Resistance cold', 'resistance', 'ohm', {
    ...aboveZero(10_000_000),
    hint: 'Leads taken off or meter zeroed, every digit shown.',
  }),
  quantity('coldTemperature', 'Winding temperature cold', 'temperature', 'C', {
    minimum: -50,
    maximum: 200,
    hint: 'Air temperature, after standing overnight.',
  }),
  quantity('hotResistance', 'Resistance hot', 'resistance', 'ohm', {
    ...aboveZero(10_000_000),
    hint: 'Same meter, same leads, within a minute of switching off.',
  }),
  {
    name: 'material',
    label: 'Winding of',
    kind: 'choice',
    optional: true,
    default: 'copper',
    choices: [
      { value: 'copper', label: 'Copper' },
      { value: 'aluminium', label: 'Aluminium' },
    ],
    advanced: true,
  },
  quantity('surroundingTemperature', 'Air around it when hot', 'temperature', 'C', {
    optional: true,
    minimum: -50,
    maximum: 200,
    hint: 'Left empty, the rise is counted from the cold winding.',
    advanced: true,
  }),
];

const outputs: readonly OutputDefinition[] = [
  { name: 'temperature', label: 'Winding temperature hot', kind: 'quantity', unit: 'C', decimals: 0, main: true },
  { name: 'rise', label: 'Rise', kind: 'quantity', unit: 'K', decimals: 0 },
];

/** No winding in a car lives outside these, °C: beyond them a figure or its unit is wrong, or two windings were compared. */
const coldest = -60;
const hottest = 400;

function notOneWinding(temperature: number): Refusal {
  const found = `Resistance hot: with the cold one it would mean a winding at ${formatValue(temperature, 'C', { decimals: 0 })}.`;
  const message = `${found} Results from ${showFigure(coldest, 'C')} to ${showFigure(hottest, 'C')} are accepted. Check the units of both readings, and that they are of the same winding.`;
  return { input: 'hotResistance', code: 'not-one-winding', message };
}

function notesOf(temperature: number, rise: number, k: number): readonly string[] {
  const perPercent = (k + temperature) / 100;
  return [
    rise < 0 ? 'The winding is colder than its reference: check that the two readings were not changed over.' : 'This is the mean of the whole winding; its hottest place is warmer.',
    `One per cent off in either resistance moves the temperature by ${formatValue(perPercent, 'K', { decimals: 1 })}. On a winding of less than an ohm a common meter is worse than that: use one that reads milliohms.`,
    'A winding that falls out of line with its own temperature, or reads open only when hot, is breaking or shorting: compare with another coil treated the same way.',
  ];
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const k = inferredZeros[given.text('material')] ?? COPPER_INFERRED_ZERO;
  const cold = given.number('coldTemperature');
  const temperature = (given.number('hotResistance') / given.number('coldResistance')) * (k + cold) - k;
  if (temperature < coldest || temperature > hottest) return failure(notOneWinding(temperature));
  const rise = temperature - (given.optionalNumber('surroundingTemperature') ?? cold);
  return success({
    // A rise is counted in kelvin: the contract's unit, not a point on the absolute scale.
    outputs: { temperature: { value: temperature, unit: 'C' }, rise: { value: rise, unit: 'K' } },
    notes: notesOf(temperature, rise, k),
    next: [{ page: 'procedures/coil-primary-resistance', label: 'Measure the primary resistance' }],
  });
}

/** How warm a winding is, from its resistance cold and hot. */
export const windingTemperature: CalculatorDefinition = {
  id: 'winding-temperature',
  title: 'Winding temperature',
  summary: 'How hot is this winding inside, by its resistance cold and hot?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['coil overheating', 'hot coil', 'temperature rise', 'resistance method', 'heat soak', 'injector winding', 'copper', 'aluminium'],
  compute,
};

export const calculator: CalculatorMaker = () => windingTemperature;
