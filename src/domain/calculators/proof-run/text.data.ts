import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`N = \frac{-\ln(1-c)}{m}\cdot 1000`,
    plain: 'N = −ln(1 − c) / m × 1000',
    symbols: [
      { tex: 'N', meaning: 'revolutions to run without a misfire' },
      { tex: 'c', meaning: 'confidence, 0 to 1' },
      { tex: 'm', meaning: 'misfires per 1000 revolutions before the repair' },
    ],
    sources: [{ id: 'computed', place: 'Poisson counting: the chance of no event where M are expected is e^(−M)' }],
  },
  {
    tex: String.raw`t = \frac{N}{n}`,
    plain: 't = N / n',
    symbols: [
      { tex: 't', meaning: 'time, minutes' },
      { tex: 'N', meaning: 'revolutions to run' },
      { tex: 'n', meaning: 'engine speed, revolutions per minute' },
    ],
    sources: [{ id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A misfire that came five times in 1000 revolutions',
    inputs: { rateBefore: '5', confidence: '95 %', speed: '2000 rpm' },
    says: 'The engine has to run 599 revolutions without a misfire, 0.3 min at 2000 rpm.',
  },
  {
    title: 'A rare misfire, and more certainty',
    inputs: { rateBefore: '0.05 per 1000 rev', confidence: '0.99', speed: '2500' },
    says: 'It takes 92103 revolutions without a misfire, 36.8 min at 2500 rpm.',
  },
];

export const table: TableDefinition = {
  caption: 'Clean run that proves a repair, 95 % sure, at 2000 rpm',
  rows: ['0.05', '0.1', '0.2', '0.5', '1', '2', '5', '10', '50'].map((rateBefore) => ({ rateBefore })),
  columns: ['rateBefore', 'revolutions', 'minutes'],
};
