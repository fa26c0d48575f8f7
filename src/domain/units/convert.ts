import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { dimensionWords } from './table.data.ts';
import { unitById, unitsOf } from './table.ts';
import type { Dimension, Unit, UnitId } from './types.ts';

export type ConvertCode = 'not-finite' | 'unknown-unit' | 'wrong-dimension';

/** Digits a double carries whatever the value; the rest is noise of the arithmetic. */
const CERTAIN_DIGITS = 15;

/**
 * The same quantity in another unit of its dimension.
 * Refuses a unit that is not in the table, units of two dimensions, and a number that is not finite before or after.
 * Temperatures convert with their offset; for a difference of temperatures use the units of that dimension.
 * A result that is a short decimal but for the noise of the arithmetic is given as that: 2.3 MΩ is 2300000 Ω, not 2299999.9999999995 Ω.
 */
export function convert(value: number, from: UnitId, to: UnitId): Result<number, Refusal<ConvertCode>> {
  const source = unitById(from);
  const target = unitById(to);
  if (!source) return failure(unknownUnit('from', from));
  if (!target) return failure(unknownUnit('to', to));
  if (source.dimension !== target.dimension) return failure(otherDimension(source, target));
  const result = convertBetween(value, source, target);
  if (Number.isFinite(result)) return success(result);
  return failure({
    input: 'value',
    code: 'not-finite',
    message: `${value} ${source.symbol} cannot be converted to ${target.symbol || to}: type a number that is finite and not so large.`,
  });
}

/** The arithmetic alone, for two units already known to share a dimension. */
export function convertBetween(value: number, from: Unit, to: Unit): number {
  if (from.id === to.id) return value;
  const scaled = scaleBetween(value + from.offset, from, to);
  return tidy(scaled - to.offset, Math.max(Math.abs(scaled), Math.abs(to.offset)));
}

/** A difference or step in the other unit: as `convertBetween`, without the offsets of temperature scales. */
export function convertStep(step: number, from: Unit, to: Unit): number {
  if (from.id === to.id) return step;
  const scaled = scaleBetween(step, from, to);
  return tidy(scaled, Math.abs(scaled));
}

/** Multiplies or divides by the ratio that is above 1: for metric units that one is a whole number, so nothing is lost. */
function scaleBetween(value: number, from: Unit, to: Unit): number {
  return from.factor >= to.factor ? value * (from.factor / to.factor) : value / (to.factor / from.factor);
}

/**
 * Where the digits that are certain end in at least three noughts, the rest is noise of the arithmetic and is dropped.
 * A subtraction loses as many digits as the largest number that took part is longer.
 */
function tidy(value: number, largest: number): number {
  if (!Number.isFinite(value) || value === 0) return value;
  const lost = Math.floor(Math.log10(largest)) - Math.floor(Math.log10(Math.abs(value)));
  const digits = CERTAIN_DIGITS - Math.max(0, lost);
  if (digits < 1) return 0;
  const short = Number(value.toPrecision(Math.max(1, digits - 3)));
  return short === Number(value.toPrecision(digits)) ? short : value;
}

function unknownUnit(input: string, id: UnitId): Refusal<ConvertCode> {
  return { input, code: 'unknown-unit', message: `"${id}" is not a unit this book knows. Type one such as ohm, kPa, psi or C.` };
}

function otherDimension(source: Unit, target: Unit): Refusal<ConvertCode> {
  const found = `${source.name} measures ${dimensionWords[source.dimension]}, ${target.name} ${dimensionWords[target.dimension]}`;
  return { input: 'to', code: 'wrong-dimension', message: `${found}: they do not convert. Choose ${unitList(source.dimension)}.` };
}

/** Such as `mΩ, Ω, kΩ or MΩ`. */
export function unitList(dimension: Dimension): string {
  const symbols = unitsOf(dimension).map((unit) => unit.symbol || 'no unit');
  const last = symbols.at(-1) ?? '';
  return symbols.length > 1 ? `${symbols.slice(0, -1).join(', ')} or ${last}` : last;
}
