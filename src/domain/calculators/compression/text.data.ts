import type { Calculation, FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';
import type { CompressionPattern } from './compare.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`q = 100\,\frac{p_\ell}{p_h} \qquad b = 100\,\frac{\bar p - p_\ell}{\bar p}`,
    plain: 'q = 100 × lowest / highest and b = 100 × (mean − lowest) / mean',
    symbols: [
      { tex: 'q', meaning: 'lowest over highest, percent; at least 75 passes' },
      { tex: 'b', meaning: 'how far the lowest lies below the mean, percent; 20 or more is to be looked into' },
      { tex: String.raw`p_\ell`, meaning: 'lowest reading' },
      { tex: 'p_h', meaning: 'highest reading' },
      { tex: String.raw`\bar p`, meaning: 'mean of all readings' },
    ],
    sources: [
      { id: 'army-tm-5-4210-230', place: 'engine addendum 2, compression test' },
      { id: 'army-tm-1-1500-204', place: 'compression test' },
    ],
  },
  {
    tex: String.raw`w = 100\,\frac{p_w - p_d}{p_d}`,
    plain: 'w = 100 × (wet − dry) / dry',
    symbols: [
      { tex: 'w', meaning: 'rise with oil, percent' },
      { tex: 'p_w', meaning: 'reading with oil' },
      { tex: 'p_d', meaning: 'reading without' },
    ],
    sources: [{ id: 'army-tm-5-4210-230', place: 'engine addendum 2, compression test' }, { id: 'common-practice' }],
  },
  {
    tex: String.raw`p_g = p_1\,(r^{n}-1)`,
    plain: 'gauge = outside pressure × (r^n − 1)',
    symbols: [
      { tex: 'p_g', meaning: 'pressure that cranking may reach at most, gauge' },
      { tex: 'p_1', meaning: 'outside pressure, absolute' },
      { tex: 'r', meaning: 'compression ratio' },
      { tex: 'n', meaning: 'polytropic index' },
    ],
    sources: [{ id: 'openstax-university-physics-2', place: 'section 3.6, adiabatic process' }],
  },
  {
    tex: String.raw`p_0 = p\,\frac{B_0}{B} \qquad B = B_0\,\left(1-\frac{L\,h}{T_0}\right)^{5.25588} \qquad h = \frac{E\,z}{E+z}`,
    plain: 'sea level = reading × B0 / B; B = B0 × (1 − L h / T0)^5.25588; h = E z / (E + z)',
    symbols: [
      { tex: 'p_0', meaning: 'reading referred to sea level' },
      { tex: 'p', meaning: 'reading, gauge' },
      { tex: 'B_0', meaning: 'pressure at sea level, 101.325 kPa' },
      { tex: 'B', meaning: 'outside pressure at the workshop, absolute' },
      { tex: 'L', meaning: 'fall of temperature, 0.0065 K per metre' },
      { tex: 'h', meaning: 'geopotential height' },
      { tex: 'T_0', meaning: 'temperature at sea level, 288.15 K' },
      { tex: 'E', meaning: 'radius of the earth, 6 356 766 m' },
      { tex: 'z', meaning: 'height above sea level as maps give it' },
    ],
    sources: [{ id: 'us-standard-atmosphere-1976', place: 'layer up to 11 km' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'One cylinder low, and oil helps',
    inputs: { readings: '180 175 130 178', wet: '165', order: '1-3-4-2' },
    says: 'One cylinder low: cylinder 3 has 130 psi, 72.2 % of the highest. With oil it rises by 26.9 %, which points to the rings or the bore.',
  },
  {
    title: 'Two neighbours low',
    inputs: { readings: '182 121 118 180', wet: '124 120' },
    says: 'Two neighbours low: cylinder 3 has 64.8 % of the highest. Oil lifts them by only 2.5 % and 1.7 %, which points to the gasket between them.',
  },
  {
    title: 'A workshop at 2000 m',
    inputs: { readings: '150 148 151 149', altitude: '2000 m' },
    says: 'Even: referred to sea level the readings are 191, 189, 192 and 190 psi.',
  },
];

export const table: TableDefinition = {
  caption: 'Sets of readings in psi, how they compare, and the pattern they make',
  rows: ['178 182 180 176', '180 175 130 178', '160 120 158 155', '182 121 118 180', '120 181 119 180', '92 90 93 91', '178 176 245 179', '180 178 176 120 179 181'].map((readings) => ({ readings })),
  columns: ['readings', 'lowestOverHighest', 'within75', 'lowestBelowMean', 'spread', 'pattern'],
};

/** What each pattern points to and what to do next. Common practice, except where the method above says so. */
export const patternNotes: Readonly<Record<CompressionPattern, string>> = {
  even: 'The cylinders are even. A valve that leaks only hot or at speed can still pass, so if the misfire stays with one cylinder after spark and fuel are cleared, test it for leakage.',
  uneven: 'No cylinder is under three quarters of the highest, but they differ by more than 15 %. Repeat the test with the same strokes each; the lowest may shake the idle.',
  'one-low': 'One cylinder falls behind. Repeat it with about a tablespoon (15 ml) of oil in the cylinder: a clear rise points to rings or bore, none to a valve.',
  'two-neighbours-low': 'Two neighbours are low together. If oil hardly lifts them, the gasket between them is the first suspect; look for coolant loss too.',
  'two-apart-low': 'Two cylinders are low that do not stand side by side. Take each as its own fault: oil test, then leakage.',
  'several-low': 'Several cylinders fall behind. Check first what they share: battery and cranking speed, throttle held open, cam timing of that bank, then test each with oil.',
  'all-low': 'All are low and none stands out. Suspect the test before the engine: slow cranking, throttle shut, cold engine, the gauge, a workshop high above the sea; then cam timing.',
  'one-high': 'One cylinder is well above fellows that are even. Carbon or oil in it takes up room; or it was cranked for longer. Look at its plug.',
  'one-reading': 'One reading has nothing to be compared with. Measure the other cylinders with the same number of strokes.',
};

type Links = NonNullable<Calculation['next']>;

const dry = { page: 'procedures/compression-dry', label: 'Compression test' } as const;
const wet = { page: 'procedures/compression-wet', label: 'Compression test with oil' } as const;
const leakage = { page: 'calculators/leak-down', label: 'Leak-down test: work out the loss' } as const;
const plug = { page: 'procedures/plug-removal-and-reading', label: 'Take out and read the plugs' } as const;
const counters = { page: 'procedures/misfire-counters', label: 'Misfire counters by cylinder' } as const;

/** Where to go next by pattern, before a wet test; after one the leak-down test settles it. */
export const patternLinks: Readonly<Record<CompressionPattern, Links>> = {
  even: [counters, leakage],
  uneven: [dry, wet],
  'one-low': [wet, leakage],
  'two-neighbours-low': [wet, leakage],
  'two-apart-low': [wet, leakage],
  'several-low': [dry, wet],
  'all-low': [dry],
  'one-high': [plug, dry],
  'one-reading': [dry],
};

export const linksAfterOil: Links = [leakage, dry];
