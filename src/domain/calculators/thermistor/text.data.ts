import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`R = R_{25}\,e^{B\left(1/T - 1/298.15\right)}`,
    plain: 'R = R25 × e^(B × (1/T − 1/298.15))',
    symbols: [
      { tex: 'R', meaning: 'resistance at the temperature T' },
      { tex: 'R_{25}', meaning: 'nominal resistance at 25 °C' },
      { tex: 'B', meaning: 'beta value of the material, kelvin' },
      { tex: 'T', meaning: 'temperature, kelvin: °C plus 273.15' },
      { tex: 'e', meaning: 'base of natural logarithms, 2.718' },
    ],
    sources: [{ id: 'computed', place: 'the beta law of thermistors, as data sheets state it' }],
  },
];

const sensor = { nominalResistance: '2500 ohm', beta: '3500' };

export const examples: readonly WorkedExample[] = [
  {
    title: 'What should a coolant sensor read at 80 °C?',
    inputs: { ...sensor, temperature: '80 C' },
    says: 'At 80 °C the sensor should read 402 Ω.',
  },
  {
    title: 'What temperature does 300 Ω mean?',
    inputs: { ...sensor, resistance: '300 ohm' },
    says: '300 Ω means 91 °C.',
  },
];

export const table: TableDefinition = {
  caption: 'A sensor of 2500 Ω at 25 °C with a beta of 3500 K',
  rows: ['-20', '-10', '0', '10', '20', '25', '30', '40', '60', '80', '100', '120'].map((temperature) => ({ ...sensor, temperature })),
  columns: ['temperature', 'resistance'],
};
