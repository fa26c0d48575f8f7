import { success } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';
import { samples } from '../samples.ts';
import { showFigure } from '../show.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  quantity('gap', 'Gap now', 'length', 'mm', { ...aboveZero(25), hint: 'The widest of the set, measured with a wire gauge.' }),
  quantity('distance', 'Distance to run', 'length', 'km', { minimum: 0, maximum: 1_000_000 }),
  quantity('wearRate', 'Wear in 1000 km', 'wear-rate', 'mm/1000 km', {
    ...aboveZero(1),
    hint: 'Best from this engine: how much the gap has grown over the distance since the plugs were new.',
  }),
  quantity('limit', 'Widest gap allowed', 'length', 'mm', { optional: true, ...aboveZero(25), hint: 'The engine maker’s figure comes first.' }),
];

const outputs: readonly OutputDefinition[] = [
  { name: 'gapThen', label: 'Gap after that distance', kind: 'quantity', unit: 'mm', decimals: 2, main: true },
  { name: 'distanceToLimit', label: 'Distance until the gap is too wide', kind: 'quantity', unit: 'km', decimals: 0 },
];

const kilometresPerRate = 1000;

/** Millimetres, after so many kilometres. */
function gapAfter(distance: number, given: ParsedInputs): number {
  return given.number('gap') + (given.number('wearRate') * distance) / kilometresPerRate;
}

/** Kilometres, none once the gap has reached its limit. */
function distanceToLimit(limit: number, given: ParsedInputs): number {
  return Math.max(0, ((limit - given.number('gap')) / given.number('wearRate')) * kilometresPerRate);
}

function limitNote(limit: number, given: ParsedInputs): string {
  const [left, distance] = [distanceToLimit(limit, given), given.number('distance')];
  if (left === 0) return `The gap of ${showFigure(given.number('gap'), 'mm')} has reached the limit of ${showFigure(limit, 'mm')} already. Fit new plugs now.`;
  const about = formatValue(left, 'km', { significant: 2 });
  return left < distance
    ? `The gap passes its limit after about ${about}, before the distance is run. Fit new plugs now or plan to at that distance.`
    : `The gap stays within its limit for about ${about}.`;
}

function compute(given: ParsedInputs) {
  const limit = given.optionalNumber('limit');
  const values: Record<string, OutputValue> = { gapThen: { value: gapAfter(given.number('distance'), given), unit: 'mm' } };
  if (limit !== undefined) values['distanceToLimit'] = { value: distanceToLimit(limit, given), unit: 'km' };
  return success<Calculation>({
    outputs: values,
    notes: [
      ...(limit === undefined ? [] : [limitNote(limit, given)]),
      'Wear is taken as steady. It quickens with heat, weak mixture and a worn-round electrode, so look again at half the distance.',
    ],
    next: [
      { page: 'procedures/plug-gap', label: 'Measure the plug gap' },
      { page: 'calculators/plug-gap', label: 'What a wider gap asks of the coil' },
    ],
  });
}

function chart(given: ParsedInputs): Chart {
  const [limit, distance] = [given.optionalNumber('limit'), given.number('distance')];
  const end = Math.max(distance, limit === undefined ? 0 : distanceToLimit(limit, given), kilometresPerRate);
  return {
    title: 'Gap against distance',
    x: { label: 'Distance', unit: 'km' },
    y: { label: 'Gap', unit: 'mm' },
    series: [{ name: 'Gap', kind: 'line', points: samples(0, end, 1, (x) => gapAfter(x, given)) }],
    marks: [{ x: distance, y: gapAfter(distance, given), label: 'After this distance' }],
    ...(limit === undefined ? {} : { levels: [{ y: limit, label: 'Widest allowed' }] }),
  };
}

/** The gap of a worn plug after more distance, and the distance until it is too wide. */
export const plugWear: CalculatorDefinition = {
  id: 'plug-wear',
  title: 'Plug wear',
  summary: 'How wide will this gap be at the next service, and how far can these plugs still go?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['spark plug life', 'change interval', 'electrode wear', 'gap growth', 'worn plugs', 'service interval', 'mileage'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => plugWear;
