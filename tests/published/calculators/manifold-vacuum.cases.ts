import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const atmosphere = 'computed apart from the code: same manifold pressure under the standard atmosphere (1976, recalled)';
const band = 'common practice: 17 to 22 inHg at sea level, less what the barometer has lost';

/** Feet, how much lower the barometer stands in inHg, vacuum of an engine that draws 20 inHg at sea level. */
const heights = [
  ['0', 0, '20.00'],
  ['1000', 1.07, '18.93'],
  ['2000', 2.1, '17.90'],
  ['3000', 3.1, '16.90'],
  ['4000', 4.08, '15.92'],
  ['5000', 5.02, '14.98'],
  ['7000', 6.83, '13.17'],
  ['10000', 9.34, '10.66'],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...heights.map(
    ([feet, lost, vacuum]): CalculatorCase => ({
      label: `${vacuum} inHg at ${feet} ft`,
      inputs: { vacuum, altitude: `${feet} ft` },
      expected: { seaLevelEquivalent: [20, 'inHg', 1.1e-2], expectedLow: [17 - lost, 'inHg', 6e-3], expectedHigh: [22 - lost, 'inHg', 6e-3], verdict: 'inside' },
      source: `${atmosphere}; ${band}`,
    }),
  ),
  { label: 'from live data', inputs: { manifoldPressure: '32', barometer: '99' }, expected: { vacuum: [19.79, 'inHg', 6e-3], verdict: 'inside' }, source: 'computed: (99 − 32)/3.386389' },
  { label: '20 inHg in kPa', inputs: { vacuum: '67.728 kPa' }, expected: { vacuum: [20, 'inHg', 1e-4], seaLevelEquivalent: [20, 'inHg', 1e-4] }, says: /Taken at sea level/, source: 'computed: 20 · 3.386389 kPa (NIST SP 811)' },
  { label: 'manifold of 20 inHg', inputs: { manifoldPressure: '33.59', barometer: '29.92 inHg' }, expected: { vacuum: [20, 'inHg', 2e-3] }, source: 'computed: 29.92 inHg less 33.59 kPa' },
  { label: '16 inHg at 4000 ft', inputs: { vacuum: '16.0', altitude: '4000 ft' }, expected: { seaLevelEquivalent: [20.08, 'inHg', 6e-3] }, source: atmosphere },
  { label: 'near the rule of an inch for 1000 ft', inputs: { vacuum: '15', altitude: '5000 ft' }, expected: { seaLevelEquivalent: [20, 'inHg', 0.1] }, source: 'US Army ordnance course OD1001, lesson 3: about 5 inHg less at 5000 ft' },
  { label: 'low', inputs: { vacuum: '14.0' }, expected: { verdict: 'below' }, says: /inlet leak/, source: band },
  { label: 'high', inputs: { vacuum: '24.0' }, expected: { verdict: 'above' }, source: band },
  { label: 'on the lower end', inputs: { vacuum: '17' }, expected: { verdict: 'too-close-to-call' }, source: 'JCGM 106 (recalled): half a chance on either side of the limit' },
  { label: 'no vacuum', inputs: { manifoldPressure: '101.325' }, expected: { vacuum: [0, 'inHg', 1e-9], verdict: 'below' }, source: 'computed: the barometer less itself' },
  { label: 'barometer and height that agree', inputs: { vacuum: '17.0', altitude: '1500 m', barometer: '84' }, expected: { seaLevelEquivalent: [17 + 17.325 / 3.386389, 'inHg', 1e-6] }, source: 'computed by hand: the barometer goes before the height' },
  { label: 'neither', inputs: { altitude: '500' }, refusal: { input: 'vacuum', code: 'missing' }, source: contract },
  { label: 'both', inputs: { vacuum: '20', manifoldPressure: '33' }, refusal: { input: 'vacuum', code: 'both-given' }, source: contract },
  { label: 'above the barometer', inputs: { manifoldPressure: '120' }, refusal: { input: 'manifoldPressure', code: 'above-barometer' }, source: contract },
  { label: 'above the barometer of a mountain', inputs: { manifoldPressure: '95', altitude: '2000 m' }, refusal: { input: 'manifoldPressure', code: 'above-barometer' }, source: contract },
  { label: 'a vacuum as manifold pressure', inputs: { manifoldPressure: '-68 kPa' }, refusal: { input: 'manifoldPressure', code: 'not-absolute' }, source: contract },
  { label: 'manifold in gauge', inputs: { manifoldPressure: '30 kPa gauge' }, refusal: { input: 'manifoldPressure', code: 'wrong-pressure' }, source: contract },
  { label: 'vacuum in absolute', inputs: { vacuum: '34 kPa abs' }, refusal: { input: 'vacuum', code: 'wrong-pressure' }, source: contract },
  { label: 'more than the whole barometer', inputs: { vacuum: '68' }, refusal: { input: 'vacuum', code: 'more-than-barometer' }, source: contract },
  { label: 'minus vacuum', inputs: { vacuum: '-20' }, refusal: { input: 'vacuum', code: 'too-low' }, source: contract },
  { label: 'forecast barometer on a mountain', inputs: { vacuum: '15', altitude: '2000 m', barometer: '1013 hPa' }, refusal: { input: 'barometer', code: 'barometer-against-altitude' }, source: contract },
  { label: 'barometer out of reach', inputs: { vacuum: '15', barometer: '1013' }, refusal: { input: 'barometer', code: 'too-high' }, source: contract },
  { label: 'too high to drive', inputs: { vacuum: '15', altitude: '9000' }, refusal: { input: 'altitude', code: 'too-high' }, source: contract },
  { label: 'a temperature', inputs: { vacuum: '20 C' }, refusal: { input: 'vacuum', code: 'wrong-dimension' }, source: contract },
];
