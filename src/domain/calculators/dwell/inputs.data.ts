import { mostCylinders } from '../cylinders.ts';
import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';

export const inputs: readonly InputDefinition[] = [
  quantity('cylinders', 'Cylinders', 'count', 'count', { minimum: 1, maximum: mostCylinders, wholeNumber: true }),
  quantity('speed', 'Engine speed', 'rotation', 'rpm', aboveZero(20_000)),
  quantity('time', 'Time, such as dwell or burn time', 'time', 'ms', {
    ...aboveZero(10_000),
    optional: true,
    hint: 'As read on a scope. Give the time or the angle.',
  }),
  quantity('angle', 'Or angle at the crank', 'angle', 'deg', { ...aboveZero(720), optional: true }),
  {
    name: 'arrangement',
    label: 'Ignition',
    kind: 'choice',
    optional: true,
    default: 'coil-per-plug',
    choices: [
      { value: 'coil-per-plug', label: 'One coil for each plug' },
      { value: 'wasted-spark', label: 'One coil for two plugs' },
      { value: 'distributor', label: 'One coil and a distributor' },
    ],
    hint: 'It decides how often a coil has to fire.',
  },
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'angle', label: 'Angle at the crank', kind: 'quantity', unit: 'deg', decimals: 1, main: true },
  { name: 'time', label: 'Time', kind: 'quantity', unit: 'ms', decimals: 2 },
  { name: 'distributorAngle', label: 'Angle at the distributor or camshaft', kind: 'quantity', unit: 'deg', decimals: 1 },
  { name: 'share', label: 'Share of the time from one firing of the coil to its next', kind: 'quantity', unit: '%', decimals: 1 },
  { name: 'eventSpacing', label: 'From one ignition of the engine to the next', kind: 'quantity', unit: 'ms', decimals: 2 },
  { name: 'eventRate', label: 'Ignitions of the engine', kind: 'quantity', unit: 'Hz', decimals: 1 },
];
