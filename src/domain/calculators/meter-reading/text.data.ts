import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`a = \frac{p}{100}\,y + n\,d \qquad u = \frac{a}{\sqrt{3}} \qquad U = 2\,u`,
    plain: 'a = p / 100 × y + n × d, u = a / √3 and U = 2 u',
    symbols: [
      { tex: 'a', meaning: 'limit of error of the meter, plus or minus' },
      { tex: 'p', meaning: 'accuracy in percent of the reading' },
      { tex: 'y', meaning: 'reading' },
      { tex: 'n', meaning: 'accuracy in counts' },
      { tex: 'd', meaning: 'one count of the last digit' },
      { tex: 'u', meaning: 'standard uncertainty' },
      { tex: 'U', meaning: 'expanded uncertainty, k = 2' },
    ],
    sources: [{ id: 'jcgm-100', place: '4.3.7, recalled' }],
  },
  {
    tex: String.raw`P = \Phi\left(\frac{H - y}{u}\right) - \Phi\left(\frac{L - y}{u}\right)`,
    plain: 'P = Φ((H − y) / u) − Φ((L − y) / u)',
    symbols: [
      { tex: 'P', meaning: 'chance that the true value lies inside the limits' },
      { tex: String.raw`\Phi`, meaning: 'cumulative normal distribution' },
      { tex: 'L', meaning: 'lower limit' },
      { tex: 'H', meaning: 'upper limit' },
      { tex: 'y', meaning: 'reading' },
      { tex: 'u', meaning: 'standard uncertainty' },
    ],
    sources: [{ id: 'jcgm-106', place: '7.3 and 7.4, recalled' }],
  },
  {
    tex: String.raw`L_2 = L + z\,u \qquad H_2 = H - z\,u \qquad z = \Phi^{-1}(c)`,
    plain: 'L2 = L + z u and H2 = H − z u, with z = Φ⁻¹(c)',
    symbols: [
      { tex: 'L_2', meaning: 'lowest reading to pass' },
      { tex: 'H_2', meaning: 'highest reading to pass' },
      { tex: 'L', meaning: 'lower limit' },
      { tex: 'H', meaning: 'upper limit' },
      { tex: 'u', meaning: 'standard uncertainty' },
      { tex: 'z', meaning: 'width of the guard band in standard uncertainties, 1.645 for 0.95' },
      { tex: String.raw`\Phi^{-1}`, meaning: 'inverse of the cumulative normal distribution' },
      { tex: 'c', meaning: 'how sure you want to be' },
    ],
    sources: [{ id: 'jcgm-106', place: 'clause 8, guarded acceptance, recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A coil winding on a common meter',
    inputs: { reading: '0.72 ohm', meterPercent: '0.8', meterCounts: '3', meterResolution: '0.01', low: '0.5', high: '0.8' },
    says: '0.72 Ω, give or take 0.041 Ω, is inside the range; up to 0.766 Ω could be passed on this meter.',
  },
  {
    title: 'A battery that just makes it',
    inputs: { reading: '9.64 V', meterPercent: '0.5', meterCounts: '2', meterResolution: '10 mV', low: '9.6' },
    says: '9.64 V is too close to call: the true value is at or above 9.6 V with a chance of 0.85, and only from 9.665 V may it be passed.',
  },
];

export const table: TableDefinition = {
  caption: 'A limit of at least 9.6 V, read on a meter of 0.5 % and 2 counts of 0.01 V',
  rows: ['9.50', '9.55', '9.58', '9.60', '9.62', '9.64', '9.66', '9.68', '9.70'].map((volts) => ({
    reading: `${volts} V`,
    meterPercent: '0.5',
    meterCounts: '2',
    meterResolution: '0.01',
    low: '9.6',
  })),
  columns: ['reading', 'expandedUncertainty', 'probabilityInside', 'verdict'],
};

export const verdictNotes = {
  inside: 'This meter is good enough for that verdict.',
  below: 'This meter is good enough for that verdict. Confirm it with a second reading before a part is condemned.',
  above: 'This meter is good enough for that verdict. Confirm it with a second reading before a part is condemned.',
  'too-close-to-call': 'Neither pass nor condemn on it. A finer range or a better meter narrows the doubt; a second reading on the same meter does not.',
} as const;

export const noLimitsNote = 'Without limits there is no verdict. Type one limit or both.';

export const narrowNote =
  'The limits are closer together than this meter can tell apart: no reading on it can be passed. Use a finer range or a better meter.';

export const coverageNote =
  'Only the meter is counted. Leads, contact, temperature and an unsteady reading come on top.';
