import { burntGas } from './gas.ts';
import type { Fuel, Gas } from './gas.ts';

export type GasPattern =
  | 'healthy'
  | 'ahead-of-catalyst'
  | 'rich'
  | 'rich-misfire'
  | 'lean-or-air-leak'
  | 'misfire'
  | 'cold-or-oil'
  | 'sample-leak'
  | 'no-single-pattern';

/** Where high and low begin. All common practice: no standard sets them. Gases in % by volume, HC in ppm as hexane. */
const highCo = 1;
const lowCo = 0.5;
const highO2 = 1;
const highHc = 200;
/** CO2 counts as low under nine tenths of the most this fuel can give, about 14 % for petrol. */
const lowCo2Share = 0.9;

/** What the gases point to together, as the trade reads them. `hc` in ppm as hexane. */
export function gasPattern({ co, co2, o2 }: Gas, hc: number, fuel: Fuel): GasPattern {
  if (co > highCo) return o2 > highO2 ? 'rich-misfire' : 'rich';
  if (o2 > highO2) {
    if (hc > highHc) return 'misfire';
    return co > lowCo ? 'sample-leak' : 'lean-or-air-leak';
  }
  if (co2 < lowCo2Share * burntGas(1, fuel).co2) return 'no-single-pattern';
  if (hc > highHc) return 'cold-or-oil';
  return co > lowCo ? 'ahead-of-catalyst' : 'healthy';
}
