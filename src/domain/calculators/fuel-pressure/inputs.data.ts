import { seaLevelPressure } from '../../atmosphere.ts';
import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { verdictWords } from '../limits.ts';
import { barometerInput } from '../pressures.ts';

function pressure(name: string, label: string, hint: string): InputDefinition {
  return { name, label, kind: 'quantity', dimension: 'pressure', unit: 'kPa', pressure: 'gauge', optional: true, minimum: 0, hint };
}

export const inputs: readonly InputDefinition[] = [
  {
    ...pressure('rail', 'Rail pressure, gauge', 'On the gauge at the rail of a port-injected engine. Not for direct injection.'),
    optional: false,
  },
  {
    name: 'manifoldPressure',
    label: 'Manifold pressure, absolute',
    kind: 'quantity',
    dimension: 'pressure',
    unit: 'kPa',
    pressure: 'absolute',
    optional: true,
    maximum: 400,
    hint: 'From live data: about 30 at idle, the barometer with the engine off. Not a vacuum.',
  },
  { ...barometerInput, default: String(seaLevelPressure), advanced: true },
  {
    name: 'charged',
    label: 'Turbocharger or supercharger fitted',
    kind: 'choice',
    optional: true,
    choices: [
      { value: 'yes', label: 'Yes' },
      { value: 'no', label: 'No' },
    ],
    hint: 'Without one the manifold never stands above the barometer.',
    advanced: true,
  },
  pressure('low', 'Lower limit, gauge', 'The engine maker’s figure for the rail.'),
  pressure('high', 'Upper limit, gauge', 'The engine maker’s figure for the rail.'),
  pressure('after', 'Rail pressure after standing, gauge', 'Engine off, gauge left on.'),
  {
    name: 'minutes',
    label: 'Time it stood',
    kind: 'quantity',
    dimension: 'time',
    unit: 'min',
    optional: true,
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 1440,
    hint: 'Five minutes is usual.',
  },
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'acrossInjector', label: 'Pressure across the injector', kind: 'quantity', unit: 'kPa', decimals: 1, main: true },
  { name: 'verdict', label: 'Rail pressure against the limits', kind: 'word', words: verdictWords },
  { name: 'holdLoss', label: 'Lost while standing', kind: 'quantity', unit: '%', decimals: 1 },
  { name: 'lossPerMinute', label: 'Lost each minute', kind: 'quantity', unit: 'kPa/min', decimals: 1 },
];
