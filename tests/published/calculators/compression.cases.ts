import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const arithmetic = 'computed from the rules of US Army TM 5-4210-230-14&P-1 (75 %) and TM 1-1500-204-23-1 (20 % below the mean)';
const published = 'US Army TM 5-3895-359-14&P, compression pressure table: 445, 440, 405, 435 psi, cylinder 3 to be examined';
const ratioTable = 'computed: p1 (r^n − 1) with p1 = 101.325 kPa; the pressure ratios of an encyclopaedia table are the same formula';
const encyclopaedia = 'encyclopaedia article "Compression ratio": r = 10 and n = 1.4 give a pressure ratio of 25.12';
const atmosphere = 'U.S. Standard Atmosphere 1976: factor 0.8321 at 5000 ft, 795.01 hPa at 2000 m, computed from its constants';
const practice = 'common practice: what a pattern of readings points to';

/** Readings, lowest over highest, lowest below mean, at least 75 %, lowest cylinder, pattern. */
const sets = [
  ['178 182 180 176', 96.7, 1.68, true, 4, 'even'],
  ['180 175 130 178', 72.22, 21.57, false, 3, 'one-low'],
  ['160 120 158 155', 75, 19.06, true, 2, 'uneven'],
  ['182 121 118 180', 64.84, 21.46, false, 3, 'two-neighbours-low'],
] as const;

/** Ratio, index, gauge kPa. */
const expectedPressures = [
  ['8.0', '1.20', 1127.3],
  ['8.0', '1.25', 1261.9],
  ['8.0', '1.30', 1411.3],
  ['9.0', '1.20', 1313.8],
  ['9.0', '1.25', 1478.2],
  ['9.0', '1.30', 1661.6],
  ['10.0', '1.20', 1504.6],
  ['10.0', '1.25', 1700.5],
  ['10.0', '1.30', 1920.4],
  ['10.5', '1.20', 1601.4],
  ['10.5', '1.25', 1813.8],
  ['10.5', '1.30', 2052.8],
  ['11.0', '1.25', 1928.5],
  ['12.0', '1.25', 2161.7],
  ['13.0', '1.20', 2098.8],
  ['13.0', '1.25', 2399.9],
  ['13.0', '1.30', 2742.1],
] as const;

/** Readings, pattern. */
const patterns = [
  ['120 181 119 180', 'two-apart-low'],
  ['120 118 121 180', 'several-low'],
  ['120 181', 'one-low'],
  ['92 90 93 91', 'all-low'],
  ['178 176 245 179', 'one-high'],
  ['180', 'one-reading'],
  ['95', 'all-low'],
  ['0 180 178 181', 'one-low'],
  ['180 178 176 120 179 181', 'one-low'],
  ['180 155 178 176', 'even'],
  ['180 152 178 176', 'uneven'],
] as const;

export const cases: readonly CalculatorCase[] = [
  {
    label: 'the published table fails an absolute rule and passes the share',
    inputs: { readings: '445 440 405 435 psi' },
    expected: { spread: [40, 'psi', 1e-9], lowestOverHighest: [91.01, '%', 0.005], lowestBelowMean: [6.09, '%', 0.005], lowestCylinder: [3, 'count', 0], within75: true },
    source: published,
  },
  ...sets.map(
    ([readings, share, below, within75, lowest, pattern]): CalculatorCase => ({
      label: `set ${readings}`,
      inputs: { readings },
      expected: { lowestOverHighest: [share, '%', 0.005], lowestBelowMean: [below, '%', 0.005], within75, lowestCylinder: [lowest, 'count', 0], pattern },
      absent: ['expectedGauge', 'seaLevel', 'wetRise', 'verdict'],
      source: arithmetic,
    }),
  ),
  ...expectedPressures.map(
    ([compressionRatio, polytropicIndex, gauge]): CalculatorCase => ({
      label: `ratio ${compressionRatio}, index ${polytropicIndex}`,
      inputs: { readings: '180 180', compressionRatio, polytropicIndex },
      expected: { expectedGauge: [gauge, 'kPa', 0.06] },
      source: ratioTable,
    }),
  ),
  { label: 'adiabatic, ratio 10', inputs: { readings: '180 180', compressionRatio: '10', polytropicIndex: '1.4' }, expected: { expectedGauge: [101.325 * 24.12, 'kPa', 0.51] }, source: encyclopaedia },
  { label: 'usual index', inputs: { readings: '180 180', compressionRatio: '10.5' }, expected: { expectedGauge: [1813.8, 'kPa', 0.06] }, source: `${ratioTable}; ${contract}` },
  { label: 'ratio 10.5 at 1000 m', inputs: { readings: '160 160', compressionRatio: '10.5', altitude: '1000 m' }, expected: { expectedGauge: [1608.9, 'kPa', 0.06] }, source: atmosphere },
  { label: '150 psi at 2000 m', inputs: { readings: '150 150', altitude: '2000' }, expected: { seaLevel: { values: [191.2, 191.2], unit: 'psi', tolerance: 0.05 } }, source: atmosphere },
  { label: '149.8 psi at 5000 ft', inputs: { readings: '149.8 149.8', altitude: '5000 ft' }, expected: { seaLevel: { values: [180, 180], unit: 'psi', tolerance: 0.05 } }, source: atmosphere },
  { label: 'a barometer in place of a height', inputs: { readings: '150 150', barometer: '79.501 kPa' }, expected: { seaLevel: { values: [191.2, 191.2], unit: 'psi', tolerance: 0.05 }, lowestOverHighest: [100, '%', 0] }, source: atmosphere },
  { label: 'low only because of the height', inputs: { readings: '110 111 110 112', altitude: '2500 m' }, expected: { pattern: 'even' }, source: `${atmosphere}; ${practice}` },
  { label: 'low whatever the height', inputs: { readings: '90 91 90 92', altitude: '2500 m' }, expected: { pattern: 'all-low' }, source: `${atmosphere}; ${practice}` },
  { label: 'bar and psi', inputs: { readings: '12.41056 11 bar' }, expected: { spread: [180 - 159.5415, 'psi', 0.001] }, source: 'NIST SP 811: 1 psi = 6.894757 kPa' },
  { label: 'exactly three quarters, in bar', inputs: { readings: '12 9 11.85 11.625 bar' }, expected: { within75: true, pattern: 'uneven' }, source: `${arithmetic}; exactly 75 % passes` },
  { label: 'exactly three quarters, in kPa', inputs: { readings: '1103 827.25 1100 1101 kPa' }, expected: { within75: true, pattern: 'uneven' }, source: `${arithmetic}; exactly 75 % passes` },
  { label: 'oil helps', inputs: { readings: '180 175 130 178', wet: '165' }, expected: { wetRise: { values: [26.92], unit: '%', tolerance: 0.005 }, pattern: 'one-low' }, says: /rings/, source: 'computed: (165 − 130) / 130' },
  { label: 'oil does nothing', inputs: { readings: '180 175 130 178', wet: '134' }, expected: { wetRise: { values: [3.08], unit: '%', tolerance: 0.005 } }, says: /points to a valve/, source: 'computed: (134 − 130) / 130; US Army TM 5-4210-230-14&P-1: unchanged = valve' },
  { label: 'oil does nothing for two neighbours', inputs: { readings: '182 121 118 180', wet: '124 120' }, expected: { wetRise: { values: [2.479, 1.695], unit: '%', tolerance: 0.001 } }, says: /gasket between them/, source: 'computed; US Army TM 5-4210-230-14&P-1: two neighbours unchanged = gasket' },
  { label: 'oil in every cylinder', inputs: { readings: '100 100', wet: '112 108' }, expected: { wetRise: { values: [12, 8], unit: '%', tolerance: 1e-9 } }, says: /weak pointer/, source: 'computed by hand; 10 to 15 % is common practice' },
  ...patterns.map(([readings, pattern]): CalculatorCase => ({ label: `pattern of ${readings}`, inputs: { readings }, expected: { pattern }, source: practice })),
  { label: 'one reading leaves comparisons out', inputs: { readings: '180' }, absent: ['lowestOverHighest', 'within75', 'spread', 'lowestBelowMean', 'lowestCylinder'], source: contract },
  { label: 'neighbours across banks', inputs: { readings: '120 121 180 181 180 182', banks: '1-3-5 / 2-4-6' }, expected: { pattern: 'two-apart-low' }, source: practice },
  { label: 'neighbours in a bank', inputs: { readings: '120 180 121 181 180 182', banks: '1-3-5 / 2-4-6' }, expected: { pattern: 'two-neighbours-low' }, source: practice },
  { label: 'firing order given', inputs: { readings: '180 175 130 178', order: '1-3-4-2' }, expected: { pattern: 'one-low' }, source: practice },
  { label: 'under the maker’s lowest', inputs: { readings: '150 151', low: '160' }, expected: { verdict: 'below', pattern: 'all-low' }, source: contract },
  { label: 'over the maker’s highest', inputs: { readings: '250 251', low: '160', high: '220' }, expected: { verdict: 'above' }, source: contract },
  { label: 'equal to both limits', inputs: { readings: '160 180', low: '160', high: '180' }, expected: { verdict: 'inside' }, source: contract },
  { label: 'maker’s figure at a height', inputs: { readings: '150 151', low: '160', altitude: '2000' }, expected: { verdict: 'inside' }, says: /referred to sea level/, source: atmosphere },
  { label: 'no readings', inputs: {}, refusal: { input: 'readings', code: 'missing' }, source: contract },
  { label: 'a resistance', inputs: { readings: '180 175 ohm' }, refusal: { input: 'readings', code: 'wrong-dimension' }, source: contract },
  { label: 'less than nothing', inputs: { readings: '-1 180' }, refusal: { input: 'readings', code: 'too-low' }, source: contract },
  { label: 'far too much', inputs: { readings: '1800 bar' }, refusal: { input: 'readings', code: 'too-high' }, source: contract },
  { label: 'all zero', inputs: { readings: '0 0 0 0' }, refusal: { input: 'readings', code: 'no-compression' }, source: contract },
  { label: 'seventeen cylinders', inputs: { readings: Array.from({ length: 17 }, () => '180').join(' ') }, refusal: { input: 'readings', code: 'too-many-readings' }, source: contract },
  { label: 'height and barometer', inputs: { readings: '180 180', altitude: '100', barometer: '100' }, refusal: { input: 'altitude', code: 'altitude-and-barometer' }, source: contract },
  { label: 'limits changed over', inputs: { readings: '180 180', low: '200', high: '100' }, refusal: { input: 'low', code: 'limits-crossed' }, source: contract },
  { label: 'wet readings that fit no set', inputs: { readings: '182 121 118 180', wet: '120 121 122' }, refusal: { input: 'wet', code: 'wrong-number-of-readings' }, source: contract },
  { label: 'a rise from zero', inputs: { readings: '0 180 178 181', wet: '10' }, refusal: { input: 'wet', code: 'dry-is-zero' }, source: contract },
  { label: 'an order of another engine', inputs: { readings: '180 180 180', order: '1-3-4-2' }, refusal: { input: 'order', code: 'order-wrong' }, source: contract },
  { label: 'an order that is none', inputs: { readings: '180 180', order: 'clockwise' }, refusal: { input: 'order', code: 'not-an-order' }, source: contract },
  { label: 'banks that leave one out', inputs: { readings: '180 180 180 180', banks: '1-2 / 3' }, refusal: { input: 'banks', code: 'banks-wrong' }, source: contract },
  { label: 'banks with one twice', inputs: { readings: '180 180 180 180', banks: '1-2 / 3-3' }, refusal: { input: 'banks', code: 'banks-wrong' }, source: contract },
  { label: 'a ratio of one', inputs: { readings: '180 180', compressionRatio: '1' }, refusal: { input: 'compressionRatio', code: 'too-low' }, source: contract },
];
