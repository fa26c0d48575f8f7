import { coilResistance } from './coil-resistance/index.ts';
import type { CalculatorDefinition } from './definition.ts';
import { fuelTrim } from './fuel-trim/index.ts';
import { misfireRate } from './misfire-rate/index.ts';
import { plugGap } from './plug-gap/index.ts';
import { proofRun } from './proof-run/index.ts';
import { makeTroubleCode } from './trouble-code/index.ts';
import type { CodeMeanings } from './trouble-code/index.ts';
import { unitConverter } from './unit-converter/index.ts';

/** Every calculator, in the order of the index. `lookUpCode` brings the meanings that the book's content holds. */
export function makeCalculators(content: { readonly lookUpCode?: CodeMeanings }): readonly CalculatorDefinition[] {
  return [coilResistance, plugGap, misfireRate, fuelTrim, proofRun, makeTroubleCode(content.lookUpCode), unitConverter];
}

/** The calculators without content at hand: the trouble code then points to its page for the meaning. */
export const calculators: readonly CalculatorDefinition[] = makeCalculators({});

export function calculatorById(id: string): CalculatorDefinition | undefined {
  return calculators.find((calculator) => calculator.id === id);
}
