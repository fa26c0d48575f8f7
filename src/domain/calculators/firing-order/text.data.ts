import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`\delta = \frac{720}{z}`,
    plain: 'interval = 720 / cylinders',
    symbols: [
      { tex: String.raw`\delta`, meaning: 'crank degrees from one firing to the next, even firing, four-stroke' },
      { tex: 'z', meaning: 'cylinders' },
    ],
    sources: [{ id: 'computed' }],
  },
  {
    tex: String.raw`c_{k} = o_{k+\frac{z}{2}}`,
    plain: 'the companion of the cylinder at place k stands half the order further on',
    symbols: [
      { tex: 'c_{k}', meaning: 'companion of the cylinder at place k: its piston is at the top at the same time, a turn apart in its cycle' },
      { tex: 'o', meaning: 'cylinder at a place of the order' },
      { tex: 'k', meaning: 'place in the order' },
      { tex: 'z', meaning: 'cylinders, an even number' },
    ],
    sources: [{ id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Four cylinders in line',
    inputs: { order: '1-3-4-2' },
    says: 'One fires every 180 degrees of the crank; companions are 1+4 and 2+3.',
  },
  {
    title: 'A vee of eight',
    inputs: { order: '1-8-4-3-6-5-7-2' },
    says: 'One fires every 90 degrees; companions are 1+6, 2+3, 4+7 and 5+8.',
  },
];

export const table: TableDefinition = {
  caption: 'Orders met in practice; the numbering of the cylinders varies by maker',
  rows: [
    '1-2-3',
    '1-3-4-2',
    '1-2-4-3',
    '1-2-4-5-3',
    '1-5-3-6-2-4',
    '1-2-3-4-5-6',
    '1-6-5-4-3-2',
    '1-4-3-6-2-5',
    '1-4-2-5-3-6',
    '1-6-2-4-3-5',
    '1-8-4-3-6-5-7-2',
    '1-10-9-4-3-6-5-8-7-2',
    '1-7-5-11-3-9-6-12-2-8-4-10',
    '1-12-5-8-3-10-6-7-2-11-4-9',
  ].map((order) => ({ order })),
  columns: ['order', 'interval', 'companions'],
};
