import { unitById } from '../units/table.ts';
import type { CalculatorDefinition, InputDefinition } from './definition.ts';

/** An input as a record or a wall chart states it. */
export interface InputWords {
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

/** What goes into a calculation, in words and in the order of the form: what was typed, and what stands in for an empty field. */
export function inputWords(definition: CalculatorDefinition, texts: Readonly<Record<string, string>>): readonly InputWords[] {
  return definition.inputs.flatMap((input) => {
    const typed = (texts[input.name] ?? '').trim();
    const text = typed === '' ? input.default : typed;
    if (text === undefined) return [];
    const words = withUnit(input, text);
    return [{ name: input.name, label: input.label, text: typed === '' ? `${words} (usual)` : words }];
  });
}

/** A figure that ends in a digit was typed without its unit; the form's unit is what was meant. */
function withUnit(input: InputDefinition, text: string): string {
  const choice = input.choices?.find(({ value }) => value === text);
  if (choice !== undefined) return choice.label;
  const symbol = input.unit === undefined ? '' : (unitById(input.unit)?.symbol ?? input.unit);
  const isFigure = input.kind === 'quantity' || input.kind === 'quantity-list';
  return isFigure && symbol !== '' && /[\d.,]$/.test(text) ? `${text} ${symbol}` : text;
}

/** The page of the calculator with these inputs filled in, from the root of the book. */
export function calculatorAddress(definition: CalculatorDefinition, texts: Readonly<Record<string, string>>): string {
  const asked = Object.entries(texts).map(([name, text]) => `${encodeURIComponent(name)}=${encodeURIComponent(text)}`);
  return `calculators/${definition.id}/${asked.length === 0 ? '' : `?${asked.join('&')}`}`;
}
