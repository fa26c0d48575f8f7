import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const computed = 'computed apart from the code from the formulas of the U.S. Standard Atmosphere 1976 (recalled), height as maps give it';

/** Metres, hPa, factor; the temperatures are those of the geopotential heights beside them, a few hundredths colder. */
const metres = [
  ['0', 1013.25, 1],
  ['250', 983.58, 0.9707],
  ['500', 954.61, 0.9421],
  ['750', 926.35, 0.9142],
  ['1000', 898.76, 0.887],
  ['1250', 871.85, 0.8604],
  ['1500', 845.6, 0.8345],
  ['2000', 795.01, 0.7846],
  ['2500', 746.92, 0.7372],
  ['3000', 701.21, 0.692],
  ['3500', 657.8, 0.6492],
  ['4000', 616.6, 0.6085],
] as const;

/** Feet, hPa, inHg. */
const feet = [
  ['1000', 977.17, 28.86],
  ['2000', 942.14, 27.82],
  ['3000', 908.13, 26.82],
  ['5000', 843.11, 24.9],
  ['8000', 752.71, 22.23],
  ['10000', 696.95, 20.58],
] as const;

/** Geopotential metres, Pa, as an open-source table gives them; the height on a map is 6356766·H/(6356766 − H). */
const geopotential = [
  [500, 95460.8],
  [1000, 89874.6],
  [1500, 84556],
  [2000, 79495.2],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...metres.map(
    ([altitude, hectopascals, factor]): CalculatorCase => ({
      label: `${altitude} m`,
      inputs: { altitude },
      expected: { pressure: [hectopascals / 10, 'kPa', 6e-4], factor: [factor, '1', 6e-5] },
      source: computed,
    }),
  ),
  ...feet.map(
    ([altitude, hectopascals, inches]): CalculatorCase => ({
      label: `${altitude} ft`,
      inputs: { altitude: `${altitude} ft` },
      expected: { pressure: [hectopascals / 10, 'kPa', 6e-4], pressureMercury: [inches, 'inHg', 6e-3] },
      source: computed,
    }),
  ),
  ...geopotential.map(
    ([height, pascals]): CalculatorCase => ({
      label: `${height} m of geopotential height`,
      inputs: { altitude: `${(6_356_766 * height) / (6_356_766 - height)} m` },
      expected: { pressure: [pascals / 1000, 'kPa', 1e-4], temperature: [15 - 0.0065 * height, 'C', 1e-6] },
      source: 'an open-source table of the standard atmosphere by geopotential height; 1000 and 2000 m also in an open test quoting ISO 2533',
    }),
  ),
  { label: 'the tenth of compression lost', inputs: { altitude: '1524 m' }, says: /83\.2.%/, source: 'computed: 180 psi at sea level is 149.8 psi at 1524 m, factor 0.8321' },
  { label: 'below the sea', inputs: { altitude: '-400' }, expected: { temperature: [17.6, 'C', 1e-3] }, source: 'computed: 288.15 + 0.0065 · 400 K' },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'altitude', code: 'missing' }, source: contract },
  { label: 'words', inputs: { altitude: 'high' }, refusal: { input: 'altitude', code: 'not-a-number' }, source: contract },
  { label: 'two readings of one figure', inputs: { altitude: '1,234' }, refusal: { input: 'altitude', code: 'ambiguous' }, source: contract },
  { label: 'a pressure', inputs: { altitude: '90 kPa' }, refusal: { input: 'altitude', code: 'wrong-dimension' }, source: contract },
  { label: 'deeper than any land', inputs: { altitude: '-501' }, refusal: { input: 'altitude', code: 'too-low' }, source: contract },
  { label: 'above the layer', inputs: { altitude: '11001' }, refusal: { input: 'altitude', code: 'too-high' }, source: contract },
  { label: 'top of the range', inputs: { altitude: '11000' }, expected: { pressure: [22.7, 'kPa', 0.01] }, source: 'U.S. Standard Atmosphere 1976, printed table, 11 000 m: 2.2700e4 Pa (recalled)' },
];
