import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`S_{80} = S + 0.004\,\frac{F - 80}{10}`,
    plain: 'S80 = S + 0.004 × (F − 80) / 10',
    symbols: [
      { tex: 'S_{80}', meaning: 'specific gravity at 80 °F' },
      { tex: 'S', meaning: 'specific gravity as read' },
      { tex: 'F', meaning: 'temperature of the acid, °F' },
    ],
    sources: [{ id: 'common-practice', place: '0.004 for every 10 °F, also in a public table' }],
  },
  {
    tex: String.raw`q = q_1 + (q_2 - q_1)\,\frac{U - U_1}{U_2 - U_1}`,
    plain: 'q = q1 + (q2 − q1) × (U − U1) / (U2 − U1)',
    symbols: [
      { tex: 'q', meaning: 'state of charge; from specific gravity in the same way' },
      { tex: 'U', meaning: 'voltage at rest' },
      { tex: 'q_1', meaning: 'charge in the row of the table below' },
      { tex: 'q_2', meaning: 'charge in the row above' },
      { tex: 'U_1', meaning: 'voltage in the row below' },
      { tex: 'U_2', meaning: 'voltage in the row above' },
    ],
    sources: [{ id: 'battery-state-table', place: 'rows of 0, 25, 50, 75 and 100 %' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Rested overnight, before a misfire is looked for',
    inputs: { openCircuitVoltage: '12.30 V' },
    says: 'The battery holds 57 % of its charge: below the range.',
  },
  {
    title: 'A load test in a cold shop',
    inputs: { openCircuitVoltage: '12.60 V', loadVoltage: '9.8 V', temperature: '41 F' },
    says: 'Charged to 94 %, the battery must hold at least 9.31 V at 41 °F; 9.8 V is inside the range.',
  },
];

export const table: TableDefinition = {
  caption: 'State of charge by voltage at rest, about 27 °C',
  rows: ['11.89', '12.00', '12.06', '12.10', '12.24', '12.30', '12.45', '12.50', '12.60', '12.65'].map((openCircuitVoltage) => ({
    openCircuitVoltage: `${openCircuitVoltage} V`,
  })),
  columns: ['openCircuitVoltage', 'stateOfCharge'],
};
