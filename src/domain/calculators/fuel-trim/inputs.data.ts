import type { InputDefinition, OutputDefinition } from '../definition.ts';

/** A trim can lie between −100 and +100 %: one byte, 100·A/128 − 100 (SAE J1979). */
function trimInput(name: string, label: string, optional: boolean, hint?: string): InputDefinition {
  const base = {
    name,
    label,
    kind: 'quantity',
    dimension: 'ratio',
    unit: '%',
    optional,
    minimum: -100,
    maximum: 100,
  } as const;
  return hint === undefined ? base : { ...base, hint };
}

export const inputs: readonly InputDefinition[] = [
  trimInput(
    'short',
    'Short trim, bank 1, idle',
    false,
    'Warm engine, closed loop. Plus adds fuel, minus takes it away.',
  ),
  trimInput('long', 'Long trim, bank 1, idle', false),
  trimInput('cruiseShort', 'Short trim, bank 1, 2500 rpm', true, 'Held steady at about 2500 rpm.'),
  trimInput('cruiseLong', 'Long trim, bank 1, 2500 rpm', true),
  trimInput('short2', 'Short trim, bank 2, idle', true, 'Only where the engine has two banks.'),
  trimInput('long2', 'Long trim, bank 2, idle', true),
  trimInput('cruiseShort2', 'Short trim, bank 2, 2500 rpm', true),
  trimInput('cruiseLong2', 'Long trim, bank 2, 2500 rpm', true),
];

function percentOutput(name: string, label: string): OutputDefinition {
  return { name, label, kind: 'quantity', unit: '%', decimals: 1 };
}

export const outputs: readonly OutputDefinition[] = [
  {
    name: 'pattern',
    label: 'Pattern',
    kind: 'word',
    main: true,
    words: {
      'within-usual-band': 'Within the usual band',
      'adding-fuel': 'Adding fuel',
      'adding-at-idle': 'Adding fuel at idle, less with load',
      'adding-with-load': 'Adding fuel with load, less at idle',
      'adding-everywhere': 'Adding fuel everywhere',
      'removing-fuel': 'Taking fuel away',
      'removing-at-idle': 'Taking fuel away at idle, less with load',
      'removing-with-load': 'Taking fuel away with load, less at idle',
      'removing-everywhere': 'Taking fuel away everywhere',
      'one-bank-adding': 'One bank adding fuel',
      'one-bank-removing': 'One bank taking fuel away',
      'banks-opposite': 'One bank adding, the other taking away',
      'banks-apart': 'Both banks in the band, but far apart',
      mixed: 'No single pattern',
    },
  },
  percentOutput('sum', 'Total, bank 1, idle'),
  percentOutput('product', 'As the control unit applies it, bank 1, idle'),
  percentOutput('cruiseSum', 'Total, bank 1, 2500 rpm'),
  percentOutput('cruiseProduct', 'As applied, bank 1, 2500 rpm'),
  percentOutput('sum2', 'Total, bank 2, idle'),
  percentOutput('product2', 'As applied, bank 2, idle'),
  percentOutput('cruiseSum2', 'Total, bank 2, 2500 rpm'),
  percentOutput('cruiseProduct2', 'As applied, bank 2, 2500 rpm'),
  percentOutput('bankDifference', 'Difference between banks, idle'),
  percentOutput('cruiseBankDifference', 'Difference between banks, 2500 rpm'),
];
