import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { convert } from '../../units/convert.ts';
import { formatValue } from '../../units/format.ts';
import type { UnitId } from '../../units/types.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';
import { samples } from '../samples.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  quantity('torque', 'Torque wanted', 'torque', 'N m', { ...aboveZero(2000), hint: 'In any unit: 25 N m, 18 lbf ft, 100 lbf in, 2.5 kgf m.' }),
  quantity('handle', 'Wrench, square drive to middle of grip', 'length', 'mm', {
    ...aboveZero(3000),
    optional: true,
    hint: 'Only with an adapter that makes the wrench longer, in line with the handle.',
  }),
  quantity('extension', 'Adapter, square drive to thread', 'length', 'mm', { minimum: 0, maximum: 1000, optional: true }),
];

const outputs: readonly OutputDefinition[] = [
  { name: 'newtonMetres', label: 'Newton metres', kind: 'quantity', unit: 'N m', decimals: 1, main: true },
  { name: 'poundFeet', label: 'Pound-feet', kind: 'quantity', unit: 'lbf ft', decimals: 1 },
  { name: 'poundInches', label: 'Pound-inches', kind: 'quantity', unit: 'lbf in', decimals: 0 },
  { name: 'kilogramForceMetres', label: 'Kilogram-force metres', kind: 'quantity', unit: 'kgf m', decimals: 2 },
  { name: 'setting', label: 'Set the wrench to', kind: 'quantity', unit: 'N m', decimals: 1 },
];

/** What to set the wrench to with an adapter in line with its handle; lengths in the same unit, the handle above zero. */
export function wrenchSetting(torque: number, handle: number, extension: number): number {
  return (torque * handle) / (handle + extension);
}

function findHalfPair(given: ParsedInputs): Refusal | undefined {
  if (given.has('handle') === given.has('extension')) return undefined;
  const missing = given.has('handle') ? 'extension' : 'handle';
  const label = inputs.find(({ name }) => name === missing)?.label ?? missing;
  return { input: missing, code: 'missing', message: `${label}: nothing was typed. The lengths of wrench and adapter are needed together; leave both empty without an adapter.` };
}

function converted(torque: number): Record<string, OutputValue> {
  const units: readonly (readonly [name: string, unit: UnitId])[] = [
    ['newtonMetres', 'N m'],
    ['poundFeet', 'lbf ft'],
    ['poundInches', 'lbf in'],
    ['kilogramForceMetres', 'kgf m'],
  ];
  return Object.fromEntries(
    units.flatMap(([name, unit]) => {
      const value = convert(torque, 'N m', unit);
      return value.ok ? [[name, { value: value.value, unit }]] : [];
    }),
  );
}

function setting(given: ParsedInputs): number | undefined {
  const [handle, extension] = [given.optionalNumber('handle'), given.optionalNumber('extension')];
  return handle === undefined || extension === undefined ? undefined : wrenchSetting(given.number('torque'), handle, extension);
}

const generalNotes = [
  'The torque is the engine maker’s. A figure for dry threads is too much for greased ones.',
  'Plugs go in by hand until they seat; a thread that binds is crossed, and torque will not save it.',
];

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const half = findHalfPair(given);
  if (half !== undefined) return failure(half);
  const set = setting(given);
  const note = set === undefined ? [] : [`Set ${formatValue(set, 'N m', { decimals: 1 })} with the adapter straight on in line with the handle, and hold the grip at its middle. At a right angle to the handle an adapter changes nothing.`];
  return success({
    outputs: { ...converted(given.number('torque')), ...(set === undefined ? {} : { setting: { value: set, unit: 'N m' } }) },
    notes: [...note, ...generalNotes],
    next: [{ page: 'procedures/fit-plugs', label: 'Fit plugs' }],
  });
}

const chartSteps = 20;
const shortestSpan = 100;

/** How the setting falls as the adapter gets longer. */
function chart(given: ParsedInputs): Chart | undefined {
  const [set, handle, extension] = [setting(given), given.optionalNumber('handle'), given.optionalNumber('extension')];
  if (set === undefined || handle === undefined || extension === undefined) return undefined;
  const longest = Math.max(shortestSpan, 1.5 * extension);
  return {
    title: 'Setting against length of the adapter',
    x: { label: 'Adapter, in line with the handle', unit: 'mm' },
    y: { label: 'Setting', unit: 'N m' },
    series: [{ name: 'Setting', kind: 'line', points: samples(0, longest, chartSteps, (length) => wrenchSetting(given.number('torque'), handle, length)) }],
    marks: [{ x: extension, y: set, label: 'This adapter' }],
  };
}

/** A torque in every unit of the trade, and what to set the wrench to with an adapter on it. */
export const torque: CalculatorDefinition = {
  id: 'torque',
  title: 'Torque',
  summary: 'What is this torque in my wrench’s unit, and what do I set with an adapter on it?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['torque wrench', 'Nm to lb ft', 'foot pounds', 'inch pounds', 'crow foot', 'extension', 'plug torque', 'tighten'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => torque;
