import type { Dimension, UnitId } from '../units/types.ts';

/** What a meter or gauge of the workshop may measure, in the order offered, with the unit taken when none is typed. */
export const meterQuantities: readonly { readonly dimension: Dimension; readonly label: string; readonly unit: UnitId }[] = [
  { dimension: 'resistance', label: 'Resistance', unit: 'ohm' },
  { dimension: 'voltage', label: 'Voltage', unit: 'V' },
  { dimension: 'current', label: 'Current', unit: 'A' },
  { dimension: 'resistance-per-length', label: 'Resistance per length', unit: 'ohm/m' },
  { dimension: 'capacitance', label: 'Capacitance', unit: 'nF' },
  { dimension: 'inductance', label: 'Inductance', unit: 'mH' },
  { dimension: 'frequency', label: 'Frequency', unit: 'Hz' },
  { dimension: 'time', label: 'Time', unit: 'ms' },
  { dimension: 'rotation', label: 'Engine speed', unit: 'rpm' },
  { dimension: 'angle', label: 'Angle', unit: 'deg' },
  { dimension: 'pressure', label: 'Pressure and vacuum', unit: 'kPa' },
  { dimension: 'temperature', label: 'Temperature', unit: 'C' },
  { dimension: 'length', label: 'Length and gap', unit: 'mm' },
  { dimension: 'torque', label: 'Torque', unit: 'N m' },
  { dimension: 'ratio', label: 'Share (duty, trim, leak-down)', unit: '%' },
];
