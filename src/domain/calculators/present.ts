import { formatNumber, formatValue } from '../units/format.ts';
import { unitById } from '../units/table.ts';
import type { CalculatorDefinition, Calculation, OutputDefinition, OutputValue } from './definition.ts';

export interface PresentOptions {
  readonly decimalMark?: '.' | ',';
}

/** An output as people read it: rounded by its uncertainty where it has one, else by the decimals of its definition. */
export function presentOutput(definition: OutputDefinition, value: OutputValue, options: PresentOptions = {}, uncertainty?: number): string {
  const { decimals, rounding } = definition;
  // An uncertainty decides the place of the last digit wherever there is one.
  const byUncertainty = uncertainty !== undefined && uncertainty > 0;
  const format = { ...options, ...(byUncertainty ? { uncertainty } : decimals === undefined ? {} : { decimals }) };
  if (typeof value === 'object' && 'unit' in value) return presentQuantity(rounding === 'up' ? roundedUp(value, decimals ?? 0) : value, format);
  const words = (typeof value === 'object' ? value : [String(value)]).map((word) => definition.words?.[word] ?? plainWords[word] ?? word);
  // An empty list is an answer too.
  return words.join('; ') || plainWords['none'] || '';
}

const plainWords: Readonly<Record<string, string>> = { true: 'Yes', false: 'No', none: 'None' };

type QuantityValue = Extract<OutputValue, { readonly unit: string }>;

/** The next figure of so many decimals that is not less; the noise of arithmetic does not push it on. */
function roundedUp(value: QuantityValue, decimals: number): QuantityValue {
  const scale = 10 ** decimals;
  return 'value' in value ? { ...value, value: Math.ceil(value.value * scale - 1e-9) / scale } : value;
}

function presentQuantity(value: QuantityValue, rounding: Parameters<typeof formatValue>[2]): string {
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
