import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

const practice = [{ id: 'common-practice', place: 'wear taken as steady with distance' }];

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`g_2 = g_1 + w\,\frac{s}{1000}`,
    plain: 'g2 = g1 + w × s / 1000',
    symbols: [
      { tex: 'g_2', meaning: 'gap then, millimetres' },
      { tex: 'g_1', meaning: 'gap now, millimetres' },
      { tex: 'w', meaning: 'wear, millimetres in 1000 kilometres' },
      { tex: 's', meaning: 'distance, kilometres' },
    ],
    sources: practice,
  },
  {
    tex: String.raw`d = 1000\,\frac{g_3 - g_1}{w}`,
    plain: 'd = 1000 × (g3 − g1) / w',
    symbols: [
      { tex: 'd', meaning: 'distance to the limit, kilometres' },
      { tex: 'g_3', meaning: 'widest gap allowed, millimetres' },
      { tex: 'g_1', meaning: 'gap now, millimetres' },
      { tex: 'w', meaning: 'wear, millimetres in 1000 kilometres' },
    ],
    sources: practice,
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Will these plugs last to the next service?',
    inputs: { gap: '0.85 mm', distance: '15000 km', wearRate: '0.01', limit: '1.1 mm' },
    says: 'In 15000 km the gap grows to 1.00 mm; it reaches 1.1 mm after 25000 km.',
  },
  {
    title: 'In inches and miles',
    inputs: { gap: '0.035 in', distance: '10000 mi', wearRate: '0.02 mm/1000 km', limit: '0.043 in' },
    says: 'The gap grows to 1.21 mm, past the limit: 10160 km are left.',
  },
];

export const table: TableDefinition = {
  caption: 'Gap of a plug that starts at 0.80 mm',
  rows: ['10000', '20000', '40000', '60000'].flatMap((distance) =>
    ['0.005', '0.01', '0.02'].map((wearRate) => ({ gap: '0.80 mm', distance: `${distance} km`, wearRate })),
  ),
  columns: ['distance', 'wearRate', 'gapThen'],
};
