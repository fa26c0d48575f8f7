import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`U_2 = N\,U_1`,
    plain: 'U2 = N × U1',
    symbols: [
      { tex: 'U_2', meaning: 'voltage the secondary can give' },
      { tex: 'N', meaning: 'turns ratio, secondary to primary' },
      { tex: 'U_1', meaning: 'clamp voltage of the primary' },
    ],
    sources: [{ id: 'openstax-university-physics-2', place: 'section 15.6, transformers' }],
  },
  {
    tex: String.raw`U_{\mathrm{C}} = \sqrt{\frac{2\,\eta\,E}{C}}`,
    plain: 'U_C = √(2 η E / C)',
    symbols: [
      { tex: String.raw`U_{\mathrm{C}}`, meaning: 'voltage at which the energy is used up in charging the capacitance, volts' },
      { tex: String.raw`\eta`, meaning: 'share of the energy that reaches the secondary, 0 to 1' },
      { tex: 'E', meaning: 'energy stored in the coil, joules' },
      { tex: 'C', meaning: 'capacitance of secondary, lead and plug, farads' },
    ],
    sources: [{ id: 'computed', place: 'energy of a charged capacitor, C U²/2' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A coil against a worn plug under load',
    inputs: { clampVoltage: '350 V', turnsRatio: '100', demand: '24 kV' },
    says: 'The turns can give 35.0 kV; with 24 kV asked for, 11.0 kV or 31 % is left.',
  },
  {
    title: 'A dirty lead of high capacitance takes the energy',
    inputs: { clampVoltage: '400 V', turnsRatio: '85', energy: '45 mJ', capacitance: '80 pF', efficiency: '0.5' },
    says: 'The turns can give 34.0 kV, but the energy reaches only 23.7 kV.',
  },
];

export const table: TableDefinition = {
  caption: 'Voltage the turns can give, by clamp voltage and turns ratio',
  rows: ['300', '350', '400', '450'].flatMap((clampVoltage) =>
    ['70', '85', '100'].map((turnsRatio) => ({ clampVoltage: `${clampVoltage} V`, turnsRatio })),
  ),
  columns: ['clampVoltage', 'turnsRatio', 'available'],
};
