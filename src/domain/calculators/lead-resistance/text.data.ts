import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`R = l\,r + R_{\mathrm{S}}`,
    plain: 'R = l × r + R_S',
    symbols: [
      { tex: 'R', meaning: 'resistance to expect from end to end' },
      { tex: 'l', meaning: 'length of the lead' },
      { tex: 'r', meaning: 'resistance per length' },
      { tex: String.raw`R_{\mathrm{S}}`, meaning: 'resistors in the ends' },
    ],
    sources: [{ id: 'common-practice', place: 'lead checked by its length' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A carbon lead that reads too high',
    inputs: { length: '0.6 m', resistancePerMetre: '16 kohm/m', reading: '14.2 kohm' },
    says: 'Expected are 9600 Ω, so 14.2 kΩ is above the range.',
  },
  {
    title: 'A wire-wound lead with a resistor in its cap',
    inputs: { length: '0.45 m', resistancePerMetre: '5.6 kohm/m', seriesResistance: '5 kohm', reading: '7.6 kohm' },
    says: 'Expected are 7520 Ω, so 7.6 kΩ is inside the range.',
  },
];

export const table: TableDefinition = {
  caption: 'Resistance to expect of common leads without end resistors',
  rows: ['0.2', '0.4', '0.6', '0.8'].flatMap((length) =>
    ['5.6 kohm/m', '10 kohm/m', '16 kohm/m', '25 kohm/m'].map((resistancePerMetre) => ({ length: `${length} m`, resistancePerMetre })),
  ),
  columns: ['length', 'resistancePerMetre', 'expected'],
};

/** What the verdict means and what to do next. */
export const verdictNotes = {
  inside: 'The core is whole. That says nothing about the insulation: look for tracking in the dark, and flex the lead while you read it.',
  below: 'Too low: probably another kind of lead, or a resistor missing from an end. Read the print on it and compare with the rest of the set.',
  above: 'Too high: the core or an end is burning away. Clean the ends, read again while flexing, compare with the others, and renew the set rather than one.',
  open: 'Open circuit: the core is broken or an end has pulled off. Renew the set. The spark jumps the break until it burns too wide.',
} as const;
