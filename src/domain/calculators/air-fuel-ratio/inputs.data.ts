import type { InputDefinition, OutputDefinition } from '../definition.ts';

function atoms(name: string, label: string, hint: string): InputDefinition {
  return { name, label, kind: 'quantity', dimension: 'count', unit: 'count', optional: true, minimum: 0, maximum: 100, hint, advanced: true };
}

function ratio(name: string, label: string, standard: string, hint: string): InputDefinition {
  return { name, label, kind: 'quantity', dimension: 'ratio', unit: '1', optional: true, default: standard, minimum: 1, maximum: 50, hint, advanced: true };
}

function density(name: string, label: string, standard: string): InputDefinition {
  return { name, label, kind: 'quantity', dimension: 'density', unit: 'kg/l', optional: true, default: standard, minimum: 0.5, maximum: 1.2, hint: 'At 20 °C.', advanced: true };
}

export const inputs: readonly InputDefinition[] = [
  {
    name: 'ethanolPercent',
    label: 'Ethanol in the fuel, by volume',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '%',
    optional: true,
    minimum: 0,
    maximum: 100,
    hint: 'Type 0 for plain petrol, 10 for E10. Pump E85 holds less in winter: measure it.',
  },
  {
    name: 'actual',
    label: 'Air-fuel ratio by mass, as measured',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 500,
    hint: 'The true ratio for this fuel. A wide-band gauge shows lambda times the ratio it was set for, often 14.7.',
  },
  ratio('petrolRatio', 'Air that petrol needs', '14.6', 'Textbooks give 14.6; 14.7 is the common round figure.'),
  ratio('ethanolRatio', 'Air that ethanol needs', '9.00', 'By mass.'),
  density('petrolDensity', 'Density of petrol', '0.745'),
  density('ethanolDensity', 'Density of ethanol', '0.789'),
  atoms('carbon', 'Carbon atoms', 'For a pure fuel in place of the blend: 8 for isooctane.'),
  atoms('hydrogen', 'Hydrogen atoms', '18 for isooctane.'),
  atoms('oxygen', 'Oxygen atoms', '1 for ethanol and methanol, none in a plain hydrocarbon.'),
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'stoichiometric', label: 'Air that just burns the fuel, by mass', kind: 'quantity', unit: '1', decimals: 2, main: true },
  { name: 'lambda', label: 'Lambda', kind: 'quantity', unit: '1', decimals: 3 },
  { name: 'equivalenceRatio', label: 'Equivalence ratio, fuel over air', kind: 'quantity', unit: '1', decimals: 3 },
  { name: 'ethanolMassFraction', label: 'Ethanol by mass, as a part', kind: 'quantity', unit: '1', decimals: 4 },
];
