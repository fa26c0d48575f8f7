import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { convertBetween, convertStep, unitList } from '../../units/convert.ts';
import { parseQuantity } from '../../units/parse.ts';
import type { TypedQuantity } from '../../units/parse.ts';
import { dimensionWords } from '../../units/table.data.ts';
import type { Unit } from '../../units/types.ts';
import type { ParsedInputs } from '../definition.ts';

/** A reading and what goes with it, all in the unit typed with the reading. */
export interface TypedReading {
  readonly unit: Unit;
  readonly value: number;
  /** One count of the meter's last digit. */
  readonly resolution: number;
  readonly low?: number;
  readonly high?: number;
}

/** The fields that share the unit of the reading, and what each is called. */
const fields = [
  ['reading', 'Meter reading'],
  ['meterResolution', 'One count of the last digit'],
  ['low', 'Lower limit'],
  ['high', 'Upper limit'],
] as const;
type Field = (typeof fields)[number][0];
type Typed = ReadonlyMap<Field, TypedQuantity>;

function parseAll(given: ParsedInputs): Result<Typed, Refusal> {
  const typed = new Map<Field, TypedQuantity>();
  for (const [input, label] of fields) {
    const text = given.optionalText(input);
    if (text === undefined) continue;
    const parsed = parseQuantity(text, { input, label });
    if (!parsed.ok) return parsed;
    typed.set(input, parsed.value);
  }
  return success(typed);
}

/** A bare number reads as a plain ratio: it has no unit of its own and takes that of the reading. */
function isBare(quantity: TypedQuantity): boolean {
  return quantity.units.every((unit) => unit.id === '1');
}

function mixed(input: Field, own: TypedQuantity, reading: readonly Unit[]): Refusal {
  const label = fields.find(([name]) => name === input)?.[1] ?? input;
  const words = (units: readonly Unit[]) => units.map((unit) => dimensionWords[unit.dimension]).join(' or ');
  const [first] = reading;
  const message =
    first?.id === '1'
      ? `${label} is ${words(own.units)}, but the reading was typed without a unit. Type the unit with the reading too.`
      : `${label} is ${words(own.units)}, but the reading is ${words(reading)}. Type it in the unit of the reading${first === undefined ? '' : ` (${unitList(first.dimension)})`}, or as a bare number.`;
  return { input, code: 'wrong-dimension', message };
}

/** The units of the reading that every other field can be converted to; a field that can be converted to none is refused. */
function sharedUnits(typed: Typed): Result<readonly Unit[], Refusal> {
  let units = typed.get('reading')?.units ?? [];
  for (const [input, quantity] of typed) {
    if (isBare(quantity)) continue;
    const fitting = units.filter((unit) => quantity.units.some((own) => own.dimension === unit.dimension));
    if (fitting.length === 0) return failure(mixed(input, quantity, units));
    units = fitting;
  }
  return success(units);
}

/** The value, or with `convertStep` the step, in the unit of the reading. */
function inUnit(quantity: TypedQuantity | undefined, unit: Unit, convert: typeof convertBetween): number | undefined {
  if (quantity === undefined) return undefined;
  const own = isBare(quantity) ? unit : quantity.units.find((candidate) => candidate.dimension === unit.dimension);
  return own === undefined ? undefined : convert(quantity.value, own, unit);
}

/**
 * The texts of a reading, its meter's step and its limits, brought to the unit typed with the reading. Fields without a unit take
 * that one. Refuses, as `wrong-dimension`, a field that measures something else than the reading.
 */
export function readTexts(given: ParsedInputs): Result<TypedReading, Refusal> {
  const typed = parseAll(given);
  if (!typed.ok) return typed;
  const units = sharedUnits(typed.value);
  if (!units.ok) return units;
  const unit = units.value[0];
  const value = typed.value.get('reading')?.value;
  if (unit === undefined || value === undefined) return failure({ input: 'reading', code: 'missing', message: 'Meter reading: nothing was typed.' });
  const [low, high] = [inUnit(typed.value.get('low'), unit, convertBetween), inUnit(typed.value.get('high'), unit, convertBetween)];
  return success({
    unit,
    value,
    resolution: inUnit(typed.value.get('meterResolution'), unit, convertStep) ?? 0,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  });
}
