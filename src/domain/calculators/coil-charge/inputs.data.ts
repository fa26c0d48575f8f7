import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';

export const inputs: readonly InputDefinition[] = [
  quantity('supplyVoltage', 'Supply voltage', 'voltage', 'V', {
    ...aboveZero(1000),
    hint: 'At the coil, engine running or cranking.',
  }),
  quantity('resistance', 'Primary circuit resistance', 'resistance', 'ohm', {
    ...aboveZero(1_000_000),
    hint: 'Winding, with the ballast and wires where there are any.',
  }),
  quantity('inductance', 'Primary inductance', 'inductance', 'mH', {
    ...aboveZero(1_000_000),
    hint: 'From the maker’s data or a bridge.',
  }),
  quantity('chargeTime', 'Charging time', 'time', 'ms', { optional: true, minimum: 0, maximum: 1_000_000, hint: 'The dwell, 2 to 5 ms as a rule.' }),
  quantity('targetCurrent', 'Current wanted', 'current', 'A', { optional: true, ...aboveZero(1000), hint: 'At switch-off, 6 to 10 A as a rule.' }),
  quantity('switchDrop', 'Voltage lost in the switch', 'voltage', 'V', {
    optional: true,
    default: '0',
    minimum: 0,
    maximum: 1000,
    hint: '0.5 to 1.5 V across a power transistor as a rule.',
    advanced: true,
  }),
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'current', label: 'Current after the charging time', kind: 'quantity', unit: 'A', decimals: 2, main: true },
  { name: 'energy', label: 'Energy stored then', kind: 'quantity', unit: 'mJ', decimals: 1 },
  { name: 'timeToTarget', label: 'Time to the current wanted', kind: 'quantity', unit: 'ms', decimals: 2 },
  { name: 'energyAtTarget', label: 'Energy stored at that current', kind: 'quantity', unit: 'mJ', decimals: 1 },
  { name: 'finalCurrent', label: 'Final current, if left on', kind: 'quantity', unit: 'A', decimals: 2 },
  { name: 'timeConstant', label: 'Time constant', kind: 'quantity', unit: 'ms', decimals: 2 },
];
