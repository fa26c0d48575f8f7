import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { verdictWords } from '../limits.ts';
import { barometerInput } from '../pressures.ts';

export const inputs: readonly InputDefinition[] = [
  {
    name: 'vacuum',
    label: 'Manifold vacuum, gauge',
    kind: 'quantity',
    dimension: 'pressure',
    unit: 'inHg',
    pressure: 'gauge',
    optional: true,
    minimum: 0,
    hint: 'On a vacuum gauge at warm idle, without a minus sign. Either this or the manifold pressure.',
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
    hint: 'From live data at warm idle: about 30 to 40 kPa. Counted up from nothing, not down from the barometer.',
  },
  {
    name: 'altitude',
    label: 'Height above the sea',
    kind: 'quantity',
    dimension: 'length',
    unit: 'm',
    optional: true,
    minimum: -500,
    maximum: 6000,
    hint: 'As a map gives it. Taken as sea level when neither it nor the barometer is typed.',
  },
  // No standing value here: without it the height gives one.
  barometerInput,
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'vacuum', label: 'Manifold vacuum', kind: 'quantity', unit: 'inHg', decimals: 1, main: true },
  { name: 'seaLevelEquivalent', label: 'The same engine at sea level', kind: 'quantity', unit: 'inHg', decimals: 1 },
  { name: 'expectedLow', label: 'Usual here, from', kind: 'quantity', unit: 'inHg', decimals: 1 },
  { name: 'expectedHigh', label: 'Usual here, to', kind: 'quantity', unit: 'inHg', decimals: 1 },
  { name: 'verdict', label: 'Against the usual band at warm idle', kind: 'word', words: verdictWords },
];
