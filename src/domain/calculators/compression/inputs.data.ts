import { seaLevelPressure } from '../../atmosphere.ts';
import type { InputDefinition, OutputDefinition } from '../definition.ts';

/** Far above any petrol engine: a figure beyond it is a slip of digit or unit. */
const mostPressure = 1000;

const pressures = { kind: 'quantity-list', dimension: 'pressure', unit: 'psi', minimum: 0, maximum: mostPressure } as const;
const limit = { kind: 'quantity', dimension: 'pressure', unit: 'psi', optional: true, minimum: 0, exclusiveMinimum: true, maximum: mostPressure, advanced: true } as const;

export const inputs: readonly InputDefinition[] = [
  {
    name: 'readings',
    label: 'Readings, cylinder 1 first',
    optional: false,
    hint: 'Parted by blanks, such as 180 175 130 178, or 12.4 12.1 9.0 12.3 bar. Warm engine, all plugs out, throttle open, the same strokes each.',
    ...pressures,
  },
  {
    name: 'wet',
    label: 'Readings with oil',
    optional: true,
    hint: 'One for each low cylinder in order of number, or one for every cylinder.',
    ...pressures,
  },
  {
    name: 'order',
    label: 'Firing order',
    kind: 'text',
    optional: true,
    hint: 'Such as 1-3-4-2: draws the cylinders in that order as well.',
  },
  {
    name: 'banks',
    label: 'Banks, front to back',
    kind: 'text',
    optional: true,
    hint: 'Only for vee and flat engines, such as 1-3-5 / 2-4-6: tells which cylinders are neighbours.',
    advanced: true,
  },
  { name: 'low', label: 'Maker’s lowest figure', hint: 'At sea level, from the engine maker.', ...limit },
  { name: 'high', label: 'Maker’s highest figure', ...limit },
  {
    name: 'altitude',
    label: 'Height of the workshop above sea level',
    kind: 'quantity',
    dimension: 'length',
    unit: 'm',
    optional: true,
    minimum: -500,
    maximum: 6000,
    hint: 'Gives the pressure by the standard atmosphere. Leave it empty where you read a barometer.',
    advanced: true,
  },
  {
    name: 'barometer',
    label: 'Or outside pressure as read here',
    kind: 'quantity',
    dimension: 'pressure',
    unit: 'kPa',
    optional: true,
    minimum: 40,
    maximum: 115,
    hint: `True pressure at the workshop, not the weather report’s, which is reckoned to sea level. Standard is ${seaLevelPressure} kPa.`,
    advanced: true,
  },
  {
    name: 'compressionRatio',
    label: 'Compression ratio',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    minimum: 1,
    exclusiveMinimum: true,
    maximum: 30,
    hint: 'To estimate what cranking may reach at most.',
    advanced: true,
  },
  {
    name: 'polytropicIndex',
    label: 'Polytropic index',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    default: '1.25',
    minimum: 1,
    maximum: 1.67,
    hint: '1.2 to 1.3 in a real cylinder, 1.4 without any heat loss.',
    advanced: true,
  },
];

export const outputs: readonly OutputDefinition[] = [
  {
    name: 'pattern',
    label: 'Pattern',
    kind: 'word',
    main: true,
    words: {
      even: 'Even',
      uneven: 'Uneven, none clearly low',
      'one-low': 'One cylinder low',
      'two-neighbours-low': 'Two neighbours low',
      'two-apart-low': 'Two cylinders low, not neighbours',
      'several-low': 'Several cylinders low',
      'all-low': 'All low',
      'one-high': 'One cylinder high',
      'one-reading': 'One reading, nothing to compare',
    },
  },
  { name: 'lowestOverHighest', label: 'Lowest over highest', kind: 'quantity', unit: '%', decimals: 1 },
  { name: 'within75', label: 'At least 75 % of the highest', kind: 'word' },
  { name: 'spread', label: 'Highest less lowest', kind: 'quantity', unit: 'psi', decimals: 0 },
  { name: 'lowestBelowMean', label: 'Lowest below the mean', kind: 'quantity', unit: '%', decimals: 1 },
  { name: 'lowestCylinder', label: 'Lowest cylinder', kind: 'quantity', unit: 'count', decimals: 0 },
  { name: 'wetRise', label: 'Rise with oil', kind: 'quantity-list', unit: '%', decimals: 1 },
  {
    name: 'verdict',
    label: 'Against the maker’s figures',
    kind: 'word',
    words: { inside: 'All inside the range', below: 'Below the range', above: 'Above the range' },
  },
  { name: 'seaLevel', label: 'Readings referred to sea level', kind: 'quantity-list', unit: 'psi', decimals: 0 },
  { name: 'expectedGauge', label: 'At most to expect from the ratio, gauge', kind: 'quantity', unit: 'kPa', decimals: 0 },
];
