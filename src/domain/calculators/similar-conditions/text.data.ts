import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

const rule = [{ id: 'ccr-1968-2', place: '(c), similar conditions, and (e)(3.4.4), recalled' }] as const;

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`\left|n - n_0\right| \le 375`,
    plain: '|speed − stored speed| ≤ 375 rpm',
    symbols: [
      { tex: 'n_0', meaning: 'engine speed when the misfire was stored, rpm' },
      { tex: 'n', meaning: 'engine speed now, rpm' },
    ],
    sources: rule,
  },
  {
    tex: String.raw`\left|q - q_0\right| \le 20 \qquad \left|q - q_0\right| \le 0.2\,q_0`,
    plain: '|load − stored load| ≤ 20 points, or ≤ 20 % of the stored load: the texts seen do not settle which',
    symbols: [
      { tex: 'q_0', meaning: 'load when the misfire was stored, percent' },
      { tex: 'q', meaning: 'load now, percent' },
    ],
    sources: rule,
  },
];

const hot = { speed: '2000', load: '40', warm: 'yes' };

export const examples: readonly WorkedExample[] = [
  {
    title: 'Near enough',
    inputs: { ...hot, nowSpeed: '1625', nowLoad: '45', nowWarm: 'yes' },
    says: 'Yes: 1625 rpm is just within reach of 2000 rpm, 45 % load is near 40 %, and the engine is warm both times.',
  },
  {
    title: 'Cold instead of hot',
    inputs: { ...hot, nowSpeed: '2000', nowLoad: '40', nowWarm: 'no' },
    says: 'No: speed and load agree, but the warm-up state differs.',
  },
];

export const table: TableDefinition = {
  caption: 'Misfire stored at 2000 rpm, 40 % load, warm: which conditions are similar',
  rows: [
    ['2375', '40', 'yes'],
    ['2376', '40', 'yes'],
    ['1625', '45', 'yes'],
    ['2000', '48', 'yes'],
    ['2000', '50', 'yes'],
    ['2000', '65', 'yes'],
    ['2000', '40', 'no'],
  ].map(([nowSpeed = '', nowLoad = '', nowWarm = '']) => ({ ...hot, nowSpeed, nowLoad, nowWarm })),
  columns: ['nowSpeed', 'nowLoad', 'nowWarm', 'similar', 'misses'],
};
