import { verdictWord } from '../../measurement/sentence.ts';
import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { quantity } from '../quantity.ts';

export const inputs: readonly InputDefinition[] = [
  { name: 'reading', label: 'Meter reading', kind: 'text', optional: false, hint: 'With its unit, every digit shown: 12.62 V, 0.72 ohm, 10.50 kohm.' },
  quantity('meterPercent', 'Meter accuracy, of reading', 'ratio', '%', { minimum: 0, maximum: 100, hint: 'From the meter’s data for this range, such as 0.8.' }),
  quantity('meterCounts', 'Meter accuracy, counts of the last digit', 'count', 'count', { minimum: 0, maximum: 10_000, hint: 'Such as 3.' }),
  {
    name: 'meterResolution',
    label: 'One count of the last digit',
    kind: 'text',
    optional: false,
    hint: 'On this range. Without a unit it takes that of the reading.',
  },
  { name: 'low', label: 'Lower limit', kind: 'text', optional: true, hint: 'Without a unit it takes that of the reading.' },
  { name: 'high', label: 'Upper limit', kind: 'text', optional: true, hint: 'The engine maker’s figure comes first.' },
  quantity('confidence', 'How sure you want to be', 'ratio', '1', {
    optional: true,
    default: '0.95',
    minimum: 0.5,
    hint: '0.95 or 95 %: one chance in twenty of being wrong.',
    advanced: true,
  }),
];

const verdicts = ['inside', 'below', 'above', 'too-close-to-call'] as const;

export const outputs: readonly OutputDefinition[] = [
  { name: 'verdict', label: 'Verdict', kind: 'word', main: true, words: Object.fromEntries(verdicts.map((word) => [word, verdictWord(word)])) },
  { name: 'expandedUncertainty', label: 'Give or take (k = 2)', kind: 'quantity', uncertaintyFrom: 'expandedUncertainty' },
  { name: 'halfWidth', label: 'Meter’s limit of error, plus or minus', kind: 'quantity', uncertaintyFrom: 'expandedUncertainty' },
  { name: 'standardUncertainty', label: 'Standard uncertainty', kind: 'quantity', uncertaintyFrom: 'expandedUncertainty' },
  { name: 'probabilityInside', label: 'Chance that the true value is inside', kind: 'quantity', unit: '1', decimals: 2 },
  { name: 'acceptFrom', label: 'Pass a reading from', kind: 'quantity', uncertaintyFrom: 'standardUncertainty' },
  { name: 'acceptTo', label: 'Pass a reading up to', kind: 'quantity', uncertaintyFrom: 'standardUncertainty' },
];
