import { calculator as airFlow } from './air-flow/index.ts';
import { calculator as airFuelRatio } from './air-fuel-ratio/index.ts';
import { calculator as batteryState } from './battery-state/index.ts';
import { calculator as coilCharge } from './coil-charge/index.ts';
import { calculator as coilOutput } from './coil-output/index.ts';
import { calculator as coilResistance } from './coil-resistance/index.ts';
import { calculator as compression } from './compression/index.ts';
import type { CalculatorDefinition, CalculatorMaker, CodeMeanings } from './definition.ts';
import { calculator as dwell } from './dwell/index.ts';
import { calculator as exhaustLambda } from './exhaust-lambda/index.ts';
import { calculator as firingOrder } from './firing-order/index.ts';
import { calculator as fuelPressure } from './fuel-pressure/index.ts';
import { calculator as fuelTrim } from './fuel-trim/index.ts';
import { calculator as injectorBalance } from './injector-balance/index.ts';
import { calculator as injector } from './injector/index.ts';
import { calculator as leadResistance } from './lead-resistance/index.ts';
import { calculator as leakDown } from './leak-down/index.ts';
import { calculator as liveData } from './live-data/index.ts';
import { calculator as manifoldVacuum } from './manifold-vacuum/index.ts';
import { calculator as meterReading } from './meter-reading/index.ts';
import { calculator as misfireRate } from './misfire-rate/index.ts';
import { calculator as misfireRecord } from './misfire-record/index.ts';
import { calculator as monitorStatus } from './monitor-status/index.ts';
import { calculator as oxygenCell } from './oxygen-cell/index.ts';
import { calculator as plugGap } from './plug-gap/index.ts';
import { calculator as plugWear } from './plug-wear/index.ts';
import { calculator as proofRun } from './proof-run/index.ts';
import { calculator as similarConditions } from './similar-conditions/index.ts';
import { calculator as standardAtmosphere } from './standard-atmosphere/index.ts';
import { calculator as thermistor } from './thermistor/index.ts';
import { calculator as torque } from './torque/index.ts';
import { calculator as troubleCode } from './trouble-code/index.ts';
import { calculator as unitConverter } from './unit-converter/index.ts';
import { calculator as voltageDrop } from './voltage-drop/index.ts';
import { calculator as windingTemperature } from './winding-temperature/index.ts';

const makers: readonly CalculatorMaker[] = [
  coilResistance,
  plugGap,
  meterReading,
  windingTemperature,
  coilCharge,
  coilOutput,
  plugWear,
  leadResistance,
  voltageDrop,
  batteryState,
  thermistor,
  compression,
  leakDown,
  dwell,
  firingOrder,
  oxygenCell,
  airFuelRatio,
  exhaustLambda,
  airFlow,
  fuelPressure,
  injector,
  injectorBalance,
  manifoldVacuum,
  standardAtmosphere,
  misfireRate,
  misfireRecord,
  fuelTrim,
  liveData,
  monitorStatus,
  similarConditions,
  proofRun,
  troubleCode,
  torque,
  unitConverter,
];

/** Every calculator, in the order of the index. `lookUpCode` brings the meanings that the book's content holds. */
export function makeCalculators(content: { readonly lookUpCode?: CodeMeanings }): readonly CalculatorDefinition[] {
  return makers.map((make) => make(content));
}

/** The calculators without content at hand: the trouble code then points to its page for the meaning. */
export const calculators: readonly CalculatorDefinition[] = makeCalculators({});

export function calculatorById(id: string): CalculatorDefinition | undefined {
  return calculators.find((calculator) => calculator.id === id);
}
