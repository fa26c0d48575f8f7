import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { parseInputText, parseList } from '../units/parse.ts';
import type { ExpectedInput } from '../units/parse.ts';
import type { TypedValue } from '../units/types.ts';
import type { InputDefinition } from './definition.ts';
import { showFigure } from './show.ts';

/** One input, read from its text. */
export type ParsedField =
  | { readonly kind: 'value'; readonly value: number; readonly resolution: number; readonly text: string }
  | { readonly kind: 'open'; readonly text: string }
  | { readonly kind: 'list'; readonly values: readonly number[]; readonly text: string }
  | { readonly kind: 'text'; readonly text: string };

/** The word among a quantity's choices that lets an open circuit (`OL`) stand in place of a number. */
export const openChoice = 'open';

function acceptsOpen(input: InputDefinition): boolean {
  return input.choices?.some((choice) => choice.value === openChoice) ?? false;
}

function expected(input: InputDefinition): ExpectedInput {
  return {
    input: input.name,
    label: input.label,
    dimension: input.dimension ?? 'count',
    unit: input.unit ?? 'count',
    acceptOpen: acceptsOpen(input),
    ...(input.pressure === undefined ? {} : { pressure: input.pressure }),
  };
}

function accepted(input: InputDefinition): string {
  const show = (value: number) => showFigure(value, input.unit ?? 'count');
  const low =
    input.minimum === undefined
      ? undefined
      : `${input.exclusiveMinimum === true ? 'above' : 'at least'} ${show(input.minimum)}`;
  const high = input.maximum === undefined ? undefined : `at most ${show(input.maximum)}`;
  return [low, high].filter((part) => part !== undefined).join(' and ');
}

function checkRange(input: InputDefinition, typed: TypedValue): Result<number, Refusal> {
  const { value } = typed;
  const { minimum, maximum } = input;
  const shown = showFigure(value, input.unit ?? 'count');
  const refuse = (code: string, message: string) => failure({ input: input.name, code, message });
  const outside = `${input.label}: ${shown} is out of range; it must be ${accepted(input)}. Check the figure and its unit.`;
  if (minimum !== undefined && (value < minimum || (input.exclusiveMinimum === true && value === minimum)))
    return refuse('too-low', outside);
  if (maximum !== undefined && value > maximum) return refuse('too-high', outside);
  if (input.wholeNumber === true && !Number.isInteger(value)) {
    return refuse('not-whole', `${input.label}: ${shown} is not a whole number, and it must be one.`);
  }
  return success(value);
}

function parseQuantity(input: InputDefinition, text: string): Result<ParsedField, Refusal> {
  const parsed = parseInputText(text, expected(input));
  if (!parsed.ok) return parsed;
  if (parsed.value.kind === 'open') return success({ kind: 'open', text });
  const checked = checkRange(input, parsed.value);
  return checked.ok
    ? success({ kind: 'value', value: checked.value, resolution: parsed.value.resolution, text })
    : checked;
}

function parseQuantityList(input: InputDefinition, text: string): Result<ParsedField, Refusal> {
  const parsed = parseList(text, expected(input));
  if (!parsed.ok) return parsed;
  const values: number[] = [];
  for (const typed of parsed.value) {
    const checked = checkRange(input, typed);
    if (!checked.ok) return checked;
    values.push(checked.value);
  }
  return success({ kind: 'list', values, text });
}

function parseChoice(input: InputDefinition, text: string): Result<ParsedField, Refusal> {
  const choices = input.choices ?? [];
  const wanted = text.trim().toLowerCase();
  const choice = choices.find(({ value, label }) => value.toLowerCase() === wanted || label.toLowerCase() === wanted);
  if (choice !== undefined) return success({ kind: 'text', text: choice.value });
  const known = choices.map(({ value }) => value).join(', ');
  return failure({
    input: input.name,
    code: 'not-a-choice',
    message: `${input.label}: "${text.trim()}" is not one of the choices. Choose one of ${known}.`,
  });
}

/** One input read from what was typed, and held against the range, the choices and the whole-number rule of its definition. */
export function parseField(input: InputDefinition, text: string): Result<ParsedField, Refusal> {
  switch (input.kind) {
    case 'quantity':
      return parseQuantity(input, text);
    case 'quantity-list':
      return parseQuantityList(input, text);
    case 'choice':
      return parseChoice(input, text);
    case 'text':
      return success({ kind: 'text', text: text.trim() });
  }
}
