import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';

export const inputs: readonly InputDefinition[] = [
  quantity('current', 'Current', 'current', 'A', { minimum: 0, maximum: 5000 }),
  quantity('length', 'Length, one way', 'length', 'm', { ...aboveZero(1000), hint: 'Along the wire, not the straight line.' }),
  quantity('area', 'Cross-section', 'area', 'mm2', { optional: true, ...aboveZero(1000), hint: 'Or the gauge, or the resistance per length: one of the three.' }),
  quantity('awg', 'American wire gauge', 'count', 'count', {
    optional: true,
    minimum: -3,
    maximum: 40,
    wholeNumber: true,
    hint: 'Such as 14. For 00, 000 and 0000 type -1, -2 and -3.',
  }),
  quantity('resistancePerMetre', 'Resistance per length at 20 °C', 'resistance-per-length', 'ohm/m', { optional: true, minimum: 0, maximum: 1000 }),
  quantity('allowed', 'Voltage drop allowed', 'voltage', 'V', { optional: true, ...aboveZero(100), hint: 'About 0.2 V for a cable as a rule. Gives the size needed.' }),
  {
    name: 'returnPath',
    label: 'Return through a wire of the same size',
    kind: 'choice',
    optional: true,
    default: 'no',
    choices: [
      { value: 'no', label: 'No' },
      { value: 'yes', label: 'Yes' },
    ],
    hint: 'No where the body is the return.',
  },
  quantity('temperature', 'Wire temperature', 'temperature', 'C', { optional: true, default: '20', minimum: -50, maximum: 200, advanced: true }),
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'drop', label: 'Voltage drop', kind: 'quantity', unit: 'V', decimals: 2, main: true },
  { name: 'resistance', label: 'Resistance of the wire', kind: 'quantity', unit: 'ohm', decimals: 4 },
  { name: 'areaNeeded', label: 'Copper needed for the drop allowed', kind: 'quantity', unit: 'mm2', decimals: 2 },
  { name: 'nextSize', label: 'Next listed size', kind: 'quantity', unit: 'mm2' },
  { name: 'sureSize', label: 'Size that keeps within it at the worst its standard allows', kind: 'quantity', unit: 'mm2' },
];
