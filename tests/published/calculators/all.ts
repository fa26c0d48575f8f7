import type { CalculatorCase } from './case.ts';
import { cases as coilResistance } from './coil-resistance.cases.ts';
import { cases as fuelTrim } from './fuel-trim.cases.ts';
import { cases as misfireRate } from './misfire-rate.cases.ts';
import { cases as plugGap } from './plug-gap.cases.ts';
import { cases as proofRun } from './proof-run.cases.ts';
import { cases as troubleCode } from './trouble-code.cases.ts';
import { cases as batteryState } from './battery-state.cases.ts';
import { cases as coilCharge } from './coil-charge.cases.ts';
import { cases as coilOutput } from './coil-output.cases.ts';
import { cases as leadResistance } from './lead-resistance.cases.ts';
import { cases as meterReading } from './meter-reading.cases.ts';
import { cases as plugWear } from './plug-wear.cases.ts';
import { cases as thermistor } from './thermistor.cases.ts';
import { cases as voltageDrop } from './voltage-drop.cases.ts';
import { cases as windingTemperature } from './winding-temperature.cases.ts';
import { cases as compression } from './compression.cases.ts';
import { cases as leakDown } from './leak-down.cases.ts';
import { cases as dwell } from './dwell.cases.ts';
import { cases as firingOrder } from './firing-order.cases.ts';
import { cases as similarConditions } from './similar-conditions.cases.ts';
import { cases as liveData } from './live-data.cases.ts';
import { cases as monitorStatus } from './monitor-status.cases.ts';
import { cases as misfireRecord } from './misfire-record.cases.ts';
import { cases as torque } from './torque.cases.ts';
import { cases as oxygenCell } from './oxygen-cell.cases.ts';
import { cases as airFuelRatio } from './air-fuel-ratio.cases.ts';
import { cases as exhaustLambda } from './exhaust-lambda.cases.ts';
import { cases as airFlow } from './air-flow.cases.ts';
import { cases as fuelPressure } from './fuel-pressure.cases.ts';
import { cases as injector } from './injector.cases.ts';
import { cases as injectorBalance } from './injector-balance.cases.ts';
import { cases as manifoldVacuum } from './manifold-vacuum.cases.ts';
import { cases as standardAtmosphere } from './standard-atmosphere.cases.ts';
import { cases as unitConverter } from './unit-converter.cases.ts';

/** Every table of cases, by the id of its calculator. */
export const allCases: Readonly<Record<string, readonly CalculatorCase[]>> = {
  'coil-resistance': coilResistance,
  'fuel-trim': fuelTrim,
  'misfire-rate': misfireRate,
  'plug-gap': plugGap,
  'proof-run': proofRun,
  'trouble-code': troubleCode,
  'battery-state': batteryState,
  'coil-charge': coilCharge,
  'coil-output': coilOutput,
  'lead-resistance': leadResistance,
  'meter-reading': meterReading,
  'plug-wear': plugWear,
  thermistor,
  'voltage-drop': voltageDrop,
  'winding-temperature': windingTemperature,
  compression,
  'leak-down': leakDown,
  dwell,
  'firing-order': firingOrder,
  'similar-conditions': similarConditions,
  'live-data': liveData,
  'monitor-status': monitorStatus,
  'misfire-record': misfireRecord,
  torque,
  'oxygen-cell': oxygenCell,
  'air-fuel-ratio': airFuelRatio,
  'exhaust-lambda': exhaustLambda,
  'air-flow': airFlow,
  'fuel-pressure': fuelPressure,
  injector,
  'injector-balance': injectorBalance,
  'manifold-vacuum': manifoldVacuum,
  'standard-atmosphere': standardAtmosphere,
  'unit-converter': unitConverter,
};
