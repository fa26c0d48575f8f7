import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`t_2 = \frac{R_2}{R_1}\left(k + t_1\right) - k`,
    plain: 't2 = R2 / R1 × (k + t1) − k',
    symbols: [
      { tex: 't_2', meaning: 'temperature of the winding when hot, °C' },
      { tex: 'R_2', meaning: 'resistance when hot' },
      { tex: 'R_1', meaning: 'resistance when cold' },
      { tex: 't_1', meaning: 'temperature of the winding when cold, °C' },
      { tex: 'k', meaning: '234.5 for copper, 225 for aluminium' },
    ],
    sources: [{ id: 'resistance-method', place: 'temperature of a winding from its resistance, extract' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A coil that misfires when hot',
    inputs: { coldResistance: '0.520 ohm', coldTemperature: '18 C', hotResistance: '0.700 ohm', surroundingTemperature: '30 C' },
    says: 'The winding is at 105 °C, 75 K above the air around it.',
  },
  {
    title: 'A fifth more resistance than cold',
    inputs: { coldResistance: '1.000', coldTemperature: '20', hotResistance: '1.200' },
    says: 'The winding is at 71 °C, 51 K warmer than when it was cold.',
  },
];

export const table: TableDefinition = {
  caption: 'Temperature of a copper winding that reads 1.000 Ω at 20 °C',
  rows: ['0.900', '0.950', '1.000', '1.100', '1.200', '1.300', '1.400', '1.500'].map((hotResistance) => ({
    coldResistance: '1.000',
    coldTemperature: '20',
    hotResistance,
  })),
  columns: ['hotResistance', 'temperature', 'rise'],
};
