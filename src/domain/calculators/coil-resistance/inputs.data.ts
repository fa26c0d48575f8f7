import { verdictWord } from '../../measurement/sentence.ts';
import { openChoice } from '../parse-field.ts';
import type { InputDefinition, OutputDefinition } from '../definition.ts';

function resistance(name: string, label: string, rest: Partial<InputDefinition>): InputDefinition {
  return {
    name,
    label,
    kind: 'quantity',
    dimension: 'resistance',
    unit: 'ohm',
    optional: true,
    minimum: 0,
    maximum: 10_000_000,
    ...rest,
  };
}

function temperature(name: string, label: string, rest: Partial<InputDefinition>): InputDefinition {
  return {
    name,
    label,
    kind: 'quantity',
    dimension: 'temperature',
    unit: 'C',
    optional: true,
    default: '20',
    minimum: -50,
    maximum: 200,
    ...rest,
  };
}

export const inputs: readonly InputDefinition[] = [
  resistance('reading', 'Meter reading', {
    optional: false,
    choices: [{ value: openChoice, label: 'Open circuit (OL)' }],
    hint: 'Type every digit shown: 0.62 ohm, 9.4 kohm, or OL.',
  }),
  temperature('readingTemperature', 'Winding temperature', {
    hint: 'A coil on a warm engine is far above the air around it.',
  }),
  resistance('low', 'Lower limit', { hint: 'The engine maker’s figure comes first.' }),
  resistance('high', 'Upper limit', {}),
  temperature('referenceTemperature', 'Temperature the limits hold at', {
    hint: 'Usually 20 °C; some data use 25 °C.',
  }),
  resistance('leadResistance', 'Leads alone', {
    default: '0',
    maximum: 1000,
    hint: 'Probes touched together; 0 when the meter was zeroed that way.',
  }),
  {
    name: 'meterPercent',
    label: 'Meter accuracy, of reading',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '%',
    optional: true,
    default: '0.8',
    minimum: 0,
    maximum: 100,
    advanced: true,
  },
  {
    name: 'meterCounts',
    label: 'Meter accuracy, counts of the last digit',
    kind: 'quantity',
    dimension: 'count',
    unit: 'count',
    optional: true,
    default: '3',
    minimum: 0,
    maximum: 1000,
    advanced: true,
  },
  resistance('meterResolution', 'One count of the last digit', {
    exclusiveMinimum: true,
    hint: 'Left empty, it is taken from the digits typed.',
    advanced: true,
  }),
  {
    name: 'temperatureUncertainty',
    label: 'Temperature known to within, plus or minus',
    kind: 'quantity',
    dimension: 'temperature-difference',
    unit: 'Kdiff',
    optional: true,
    default: '3',
    minimum: 0,
    maximum: 50,
    advanced: true,
  },
];

const verdicts = ['inside', 'below', 'above', 'too-close-to-call'] as const;

export const outputs: readonly OutputDefinition[] = [
  {
    name: 'verdict',
    label: 'Verdict',
    kind: 'word',
    main: true,
    words: Object.fromEntries(verdicts.map((verdict) => [verdict, verdictWord(verdict)])),
  },
  {
    name: 'corrected',
    label: 'Winding at the reference temperature',
    kind: 'quantity',
    unit: 'ohm',
    uncertaintyFrom: 'expandedUncertainty',
  },
  {
    name: 'expandedUncertainty',
    label: 'Give or take (k = 2)',
    kind: 'quantity',
    unit: 'ohm',
    uncertaintyFrom: 'expandedUncertainty',
  },
  {
    name: 'probabilityInside',
    label: 'Chance that the true value is inside',
    kind: 'quantity',
    unit: '1',
    decimals: 2,
  },
];
