import type { Row } from '../interpolate.ts';

/** Volts at rest at about 27 °C, and state of charge, %. Encyclopaedia table, copy seen (source battery-state-table). */
export const chargeByVoltage: readonly Row[] = [
  [11.89, 0],
  [12.06, 25],
  [12.24, 50],
  [12.45, 75],
  [12.65, 100],
];

/** Specific gravity at 80 °F, and state of charge, %. The same table. */
export const chargeByGravity: readonly Row[] = [
  [1.12, 0],
  [1.155, 25],
  [1.19, 50],
  [1.225, 75],
  [1.265, 100],
];

/** Temperature of the battery, °F, and the least voltage after 15 s at half the cold-cranking amperes. Common practice. */
export const loadMinimumByTemperature: readonly Row[] = [
  [0, 8.5],
  [10, 8.7],
  [20, 8.9],
  [30, 9.1],
  [40, 9.3],
  [50, 9.4],
  [60, 9.5],
  [70, 9.6],
];
