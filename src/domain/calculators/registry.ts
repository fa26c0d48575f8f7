import { calculator as coilResistance } from './coil-resistance/index.ts';
import type { CalculatorDefinition, CalculatorMaker, CodeMeanings } from './definition.ts';
import { calculator as fuelTrim } from './fuel-trim/index.ts';
import { calculator as misfireRate } from './misfire-rate/index.ts';
import { calculator as plugGap } from './plug-gap/index.ts';
import { calculator as proofRun } from './proof-run/index.ts';
import { calculator as troubleCode } from './trouble-code/index.ts';
import { calculator as unitConverter } from './unit-converter/index.ts';

const makers: readonly CalculatorMaker[] = [coilResistance, plugGap, misfireRate, fuelTrim, proofRun, troubleCode, unitConverter];

/** Every calculator, in the order of the index. `lookUpCode` brings the meanings that the book's content holds. */
export function makeCalculators(content: { readonly lookUpCode?: CodeMeanings }): readonly CalculatorDefinition[] {
  return makers.map((make) => make(content));
}

/** The calculators without content at hand: the trouble code then points to its page for the meaning. */
export const calculators: readonly CalculatorDefinition[] = makeCalculators({});

export function calculatorById(id: string): CalculatorDefinition | undefined {
  return calculators.find((calculator) => calculator.id === id);
}
