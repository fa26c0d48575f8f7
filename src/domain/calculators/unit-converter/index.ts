import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { convert, unitList } from '../../units/convert.ts';
import { parseQuantity } from '../../units/parse.ts';
import type { TypedQuantity } from '../../units/parse.ts';
import { dimensionWords } from '../../units/table.data.ts';
import { findUnits } from '../../units/table.ts';
import type { Unit } from '../../units/types.ts';
import type {
  Calculation,
  CalculatorDefinition, CalculatorMaker,
  InputDefinition,
  OutputDefinition,
  ParsedInputs,
} from '../definition.ts';
import { showFigure } from '../show.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'value',
    label: 'Value with its unit',
    kind: 'text',
    optional: false,
    hint: 'Such as 165 psi, 20 lbf ft, 4k7 or 72 F.',
  },
  { name: 'to', label: 'Unit wanted', kind: 'text', optional: false, hint: 'Such as kPa, N m, ohm or C.' },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'result', label: 'The same in the unit wanted', kind: 'quantity', main: true },
];

/** A unit typed and a unit wanted that measure the same thing. */
interface UnitPair {
  readonly from: Unit;
  readonly to: Unit;
}

function dimensionList(units: readonly Unit[]): string {
  return units.map((unit) => dimensionWords[unit.dimension]).join(' or ');
}

function acceptedUnits(units: readonly Unit[]): string {
  return units.map((unit) => unitList(unit.dimension)).join('; or ');
}

/** Such as `22 C` to `F`: every pairing of the two texts that makes sense, the usual one first. */
function findPairs(value: string, typed: TypedQuantity, to: string): Result<readonly UnitPair[], Refusal> {
  const refuse = (code: string, message: string) => failure({ input: 'to', code, message });
  const wanted = findUnits(to);
  const accepted = acceptedUnits(typed.units);
  if (wanted.length === 0)
    return refuse('unknown-unit', `"${to}" is not a unit known here. For "${value}" choose one of: ${accepted}.`);
  const pairs = typed.units.flatMap((from) =>
    wanted.filter((unit) => unit.dimension === from.dimension).map((unit) => ({ from, to: unit })),
  );
  if (pairs.length > 0) return success(pairs);
  const message = `"${value}" is ${dimensionList(typed.units)} and "${to}" measures ${dimensionList(wanted)}; they do not convert. Choose one of: ${accepted}.`;
  return refuse('wrong-dimension', message);
}

/** The other pairings that give another figure: 10 °C is 50 °F, but a rise of 10 °C is one of 18 °F. */
function otherReadings(value: number, usual: number, pairs: readonly UnitPair[]): readonly string[] {
  return pairs.slice(1).flatMap(({ from, to }) => {
    const other = convert(value, from.id, to.id);
    if (!other.ok || Math.abs(other.value - usual) <= 1e-9 * Math.abs(usual)) return [];
    return [`Read as ${dimensionWords[from.dimension]} it is ${showFigure(other.value, to.id)}.`];
  });
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const [text, to] = [given.text('value'), given.text('to')];
  const typed = parseQuantity(text, { input: 'value', label: 'Value with its unit' });
  if (!typed.ok) return typed;
  const pairs = findPairs(text, typed.value, to);
  if (!pairs.ok) return pairs;
  const first = pairs.value[0];
  if (first === undefined)
    return failure({ input: 'to', code: 'unknown-unit', message: `"${to}" is not a unit known here.` });
  const result = convert(typed.value.value, first.from.id, first.to.id);
  if (!result.ok) return result;
  const notes = [
    `${text} is ${showFigure(result.value, first.to.id)}. Round it no finer than the first figure was read.`,
    ...otherReadings(typed.value.value, result.value, pairs.value),
  ];
  return success({ outputs: { result: { value: result.value, unit: first.to.id } }, notes });
}

/** Any quantity of the book in another unit of its kind. */
export const unitConverter: CalculatorDefinition = {
  id: 'unit-converter',
  title: 'Unit converter',
  summary: 'What is this figure in the unit on my gauge, wrench or data sheet?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: [
    'convert',
    'psi to bar',
    'kPa',
    'foot pounds',
    'Nm',
    'newton metre',
    'Fahrenheit',
    'Celsius',
    'thou',
    'inches',
    'inHg',
  ],
  compute,
};

export const calculator: CalculatorMaker = () => unitConverter;
