import type { CalculatorCase } from './case.ts';
import { cases as coilResistance } from './coil-resistance.cases.ts';
import { cases as fuelTrim } from './fuel-trim.cases.ts';
import { cases as misfireRate } from './misfire-rate.cases.ts';
import { cases as plugGap } from './plug-gap.cases.ts';
import { cases as proofRun } from './proof-run.cases.ts';
import { cases as troubleCode } from './trouble-code.cases.ts';
import { cases as unitConverter } from './unit-converter.cases.ts';

/** Every table of cases, by the id of its calculator. */
export const allCases: Readonly<Record<string, readonly CalculatorCase[]>> = {
  'coil-resistance': coilResistance,
  'fuel-trim': fuelTrim,
  'misfire-rate': misfireRate,
  'plug-gap': plugGap,
  'proof-run': proofRun,
  'trouble-code': troubleCode,
  'unit-converter': unitConverter,
};
