import type { InputDefinition, OutputDefinition } from '../definition.ts';

function percent(name: string, label: string, maximum: number, hint: string): InputDefinition {
  return { name, label, kind: 'quantity', dimension: 'ratio', unit: '%', optional: false, minimum: 0, maximum, hint };
}

export const inputs: readonly InputDefinition[] = [
  percent('co', 'Carbon monoxide, CO', 20, 'As the analyser shows it; not the value it calls corrected.'),
  percent('co2', 'Carbon dioxide, CO2', 21, 'Near 15 in sound petrol exhaust.'),
  percent('o2', 'Oxygen, O2', 21, 'Outside air holds 20.9.'),
  {
    name: 'hc',
    label: 'Unburnt fuel, HC',
    kind: 'quantity',
    dimension: 'ratio',
    unit: 'ppm',
    optional: false,
    minimum: 0,
    maximum: 50_000,
    hint: 'In parts per million.',
  },
  {
    name: 'no',
    label: 'Nitric oxide, NO',
    kind: 'quantity',
    dimension: 'ratio',
    unit: 'ppm',
    optional: true,
    minimum: 0,
    maximum: 10_000,
    hint: 'Only if it was measured.',
    advanced: true,
  },
  {
    name: 'hcAs',
    label: 'HC is shown as',
    kind: 'choice',
    optional: true,
    default: 'hexane',
    choices: [
      { value: 'hexane', label: 'Hexane, six carbon atoms' },
      { value: 'propane', label: 'Propane, three carbon atoms' },
      { value: 'methane', label: 'Methane or single carbon atoms' },
    ],
    hint: 'Exhaust testers show hexane unless they say otherwise.',
    advanced: true,
  },
  {
    name: 'hydrogenCarbon',
    label: 'Hydrogen to carbon atoms in the fuel',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    default: '1.7261',
    minimum: 0,
    maximum: 4,
    hint: 'About 1.93 for E10, 2.53 for LPG.',
    advanced: true,
  },
  {
    name: 'oxygenCarbon',
    label: 'Oxygen to carbon atoms in the fuel',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    default: '0.0176',
    minimum: 0,
    maximum: 1,
    hint: 'About 0.033 for E10, 0 for LPG.',
    advanced: true,
  },
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'lambda', label: 'Lambda', kind: 'quantity', unit: '1', decimals: 3, main: true },
  {
    name: 'pattern',
    label: 'The gases together',
    kind: 'word',
    words: {
      healthy: 'Healthy',
      'ahead-of-catalyst': 'As usual ahead of a catalyst',
      rich: 'Rich',
      'rich-misfire': 'Rich with misfire, or rich with air leaking into the exhaust',
      'lean-or-air-leak': 'Lean without misfire, or air leaking into exhaust or sample',
      misfire: 'Misfire',
      'cold-or-oil': 'Cold engine or catalyst, oil vapour, or now and then a misfire',
      'sample-leak': 'Air in the sample: hose or probe first',
      'no-single-pattern': 'The gases do not add up to one pattern',
    },
  },
];
