import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`y = (x + o_1)\,\frac{f_1}{f_2} - o_2`,
    plain: 'y = (x + o1) × f1 / f2 − o2',
    symbols: [
      { tex: 'x', meaning: 'value in the unit given' },
      { tex: 'y', meaning: 'value in the unit wanted' },
      { tex: 'f_1', meaning: 'size of the unit given, in the base unit of its kind' },
      { tex: 'f_2', meaning: 'size of the unit wanted, in the same base unit' },
      { tex: 'o_1', meaning: 'offset of the unit given; zero for all but temperatures' },
      { tex: 'o_2', meaning: 'offset of the unit wanted' },
    ],
    sources: [{ id: 'nist-sp-811', place: 'appendix B' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A compression reading',
    inputs: { value: '180 psi', to: 'bar' },
    says: '180 psi is 12.4 bar.',
  },
  {
    title: 'A torque from an older sheet',
    inputs: { value: '20 lbf ft', to: 'N m' },
    says: '20 lbf ft is 27.1 N m.',
  },
];

export const table: TableDefinition = {
  caption: 'Conversions met in this work',
  rows: [
    ['150 psi', 'kPa'],
    ['180 psi', 'bar'],
    ['12.5 bar', 'psi'],
    ['20 inHg', 'kPa'],
    ['65 kPa', 'inHg'],
    ['20 lbf ft', 'N m'],
    ['120 lbf in', 'N m'],
    ['27 N m', 'lbf ft'],
    ['0.035 in', 'mm'],
    ['195 F', 'C'],
    ['-18 C', 'F'],
    ['10.5 kohm', 'ohm'],
  ].map(([value = '', to = '']) => ({ value, to })),
  columns: ['value', 'result'],
};
