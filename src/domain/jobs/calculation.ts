import type { CalculatorDefinition } from '../calculators/definition.ts';
import { calculatorAddress, inputWords } from '../calculators/inputWords.ts';
import type { PresentedOutput } from '../calculators/present.ts';
import type { CalculationKept } from './types.ts';

/** The entry of a job for a calculation: what went in and what came out, in the words the page showed. */
export function calculationBody(
  definition: CalculatorDefinition,
  texts: Readonly<Record<string, string>>,
  outputs: readonly PresentedOutput[],
): Omit<CalculationKept, 'id' | 'sequence' | 'at'> {
  return {
    kind: 'calculation',
    calculator: definition.id,
    title: definition.title,
    inputs: inputWords(definition, texts),
    outputs: outputs.map(({ name, label, text }) => ({ name, label, text })),
    address: calculatorAddress(definition, texts),
  };
}
