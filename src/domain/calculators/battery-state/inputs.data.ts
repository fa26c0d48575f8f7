import { verdictWord } from '../../measurement/sentence.ts';
import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { quantity } from '../quantity.ts';

export const inputs: readonly InputDefinition[] = [
  quantity('openCircuitVoltage', 'Voltage at rest', 'voltage', 'V', {
    optional: true,
    minimum: 0,
    maximum: 30,
    hint: 'Nothing drawing, rested some hours after a charge or drive.',
  }),
  quantity('specificGravity', 'Specific gravity of the acid', 'ratio', '1', {
    optional: true,
    minimum: 1,
    maximum: 1.4,
    hint: 'Such as 1.265. Only where the cells open: goggles and gloves first.',
  }),
  quantity('loadVoltage', 'Voltage under load', 'voltage', 'V', {
    optional: true,
    minimum: 0,
    maximum: 30,
    hint: 'After 15 s at half the cold-cranking amperes.',
  }),
  quantity('temperature', 'Battery temperature', 'temperature', 'C', {
    optional: true,
    default: '26.7',
    minimum: -40,
    maximum: 60,
    hint: 'Of the acid, not of the air.',
  }),
];

const verdicts = ['inside', 'below', 'too-close-to-call'] as const;

export const outputs: readonly OutputDefinition[] = [
  { name: 'stateOfCharge', label: 'State of charge', kind: 'quantity', unit: '%', decimals: 0, main: true },
  { name: 'correctedSpecificGravity', label: 'Specific gravity at 80 °F (26.7 °C)', kind: 'quantity', unit: '1', decimals: 3 },
  { name: 'loadMinimum', label: 'Least voltage under load at this temperature', kind: 'quantity', unit: 'V', decimals: 2 },
  { name: 'verdict', label: 'Verdict', kind: 'word', words: Object.fromEntries(verdicts.map((word) => [word, verdictWord(word)])) },
];
