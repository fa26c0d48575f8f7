import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`M_{f} = \frac{M}{1.355818} \qquad M_{i} = 12\,M_{f} \qquad M_{k} = \frac{M}{9.80665}`,
    plain: 'pound-feet = newton metres / 1.355818; pound-inches = 12 × pound-feet; kilogram-force metres = newton metres / 9.80665',
    symbols: [
      { tex: 'M_{f}', meaning: 'torque, pound-force feet' },
      { tex: 'M_{i}', meaning: 'torque, pound-force inches' },
      { tex: 'M_{k}', meaning: 'torque, kilogram-force metres' },
      { tex: 'M', meaning: 'torque, newton metres' },
    ],
    sources: [{ id: 'nist-sp-811', place: 'appendix B.8' }],
  },
  {
    tex: String.raw`M_{w} = M\,\frac{L}{L+E}`,
    plain: 'setting = torque × handle / (handle + extension)',
    symbols: [
      { tex: 'M_{w}', meaning: 'what to set the wrench to' },
      { tex: 'M', meaning: 'torque wanted at the thread' },
      { tex: 'L', meaning: 'from the middle of the square drive to the middle of the grip' },
      { tex: 'E', meaning: 'from the middle of the square drive to the thread, in line with the handle' },
    ],
    sources: [{ id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Plugs, in pound-feet',
    inputs: { torque: '18 lbf ft' },
    says: '18 lbf ft are 24.4 N m.',
  },
  {
    title: 'An extension in line with the handle',
    inputs: { torque: '25 N m', handle: '400 mm', extension: '60 mm' },
    says: 'For 25.0 N m at the thread set the wrench to 21.7 N m.',
  },
];

export const table: TableDefinition = {
  caption: 'Torque in the units that manuals use',
  rows: ['8', '10', '12', '15', '18', '20', '22', '25', '28', '30', '35', '40'].map((value) => ({ torque: `${value} N m` })),
  columns: ['newtonMetres', 'poundFeet', 'poundInches', 'kilogramForceMetres'],
};
