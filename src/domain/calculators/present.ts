import { formatNumber, formatValue } from '../units/format.ts';
import { unitById } from '../units/table.ts';
import type { CalculatorDefinition, Calculation, OutputDefinition, OutputValue } from './definition.ts';

export interface PresentOptions {
  readonly decimalMark?: '.' | ',';
}

/** An output as people read it: rounded by its uncertainty where it has one, else by the decimals of its definition. */
export function presentOutput(definition: OutputDefinition, value: OutputValue, options: PresentOptions = {}, uncertainty?: number): string {
  const rounding = {
    ...options,
    ...(definition.decimals === undefined ? {} : { decimals: definition.decimals }),
    // An uncertainty decides the place of the last digit wherever there is one.
    ...(uncertainty === undefined || uncertainty === 0 ? {} : { uncertainty }),
  };
  if (typeof value === 'object' && 'unit' in value) return presentQuantity(value, rounding);
  const words = (typeof value === 'object' ? value : [String(value)]).map((word) => definition.words?.[word] ?? plainWords[word] ?? word);
  return words.join('; ');
}

const plainWords: Readonly<Record<string, string>> = { true: 'Yes', false: 'No' };

function presentQuantity(value: Extract<OutputValue, { readonly unit: string }>, rounding: Parameters<typeof formatValue>[2]): string {
  if ('value' in value) return formatValue(value.value, value.unit, rounding);
  const symbol = unitById(value.unit)?.symbol ?? value.unit;
  return `${value.values.map((one) => formatNumber(one, rounding)).join(' · ')} ${symbol}`.trim();
}

export interface PresentedOutput {
  readonly name: string;
  readonly label: string;
  readonly text: string;
  readonly main: boolean;
}

/** Every output that the result holds, in the order of the definition. */
export function presentCalculation(definition: CalculatorDefinition, calculation: Calculation, options: PresentOptions = {}): PresentedOutput[] {
  return definition.outputs.flatMap((output) => {
    const value = calculation.outputs[output.name];
    if (value === undefined) return [];
    const uncertainty = output.uncertaintyFrom === undefined ? undefined : calculation.outputs[output.uncertaintyFrom];
    const size = typeof uncertainty === 'object' && 'value' in uncertainty ? uncertainty.value : undefined;
    return [{ name: output.name, label: output.label, text: presentOutput(output, value, options, size), main: output.main ?? false }];
  });
}
