import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const equation = 'computed apart from the code from the Brettschneider equation, constants of OIML R 99 (recalled)';
const forward = 'gas made up from a known lambda (whole burn, water-gas constant 3.5), which the equation must give back';
const practice = 'common practice: what the gases point to together';

/** CO, CO2, HC as hexane, O2, NO, lambda for 1.7261/0.0176, 1.73/0.02 and 1.89/0.016, pattern. */
const gases = [
  ['0.05', '15.2', '20', '0.1', '0', 1.0024, 1.0024, 1.0023, 'healthy'],
  ['0.1', '15.0', '30', '0.2', '0', 1.0052, 1.0052, 1.005, 'healthy'],
  ['0.2', '15.1', '80', '0.35', '0', 1.0072, 1.0072, 1.0068, 'healthy'],
  ['0.7', '14.7', '150', '0.7', '0', 1.006, 1.006, 1.0053, 'ahead-of-catalyst'],
  ['0.7', '14.7', '150', '0.7', '1000', 1.0083, 1.0083, 1.0075, 'ahead-of-catalyst'],
  ['3.0', '12.8', '250', '0.3', '0', 0.9189, 0.9188, 0.9192, 'rich'],
  ['6.0', '10.8', '450', '0.2', '0', 0.828, 0.8279, 0.8287, 'rich'],
  ['0.1', '13.0', '60', '2.9', '0', 1.1491, 1.1491, 1.1447, 'lean-or-air-leak'],
  ['0.1', '13.7', '20', '2.1', '0', 1.1028, 1.1028, 1.0998, 'lean-or-air-leak'],
  ['0.5', '11.5', '2500', '4.6', '0', 1.1121, 1.1121, 1.1054, 'misfire'],
  ['0.1', '11.0', '900', '5.5', '0', 1.282, 1.282, 1.2725, 'misfire'],
  ['0.25', '13.9', '320', '1.6', '0', 1.0574, 1.0574, 1.0552, 'misfire'],
] as const;

/** Lambda, CO, CO2, O2 of the gas it makes. */
const made = [
  [0.8, '7.731', '10.643', '0'],
  [0.85, '5.704', '11.944', '0'],
  [0.9, '3.734', '13.228', '0'],
  [0.95, '1.830', '14.484', '0'],
  [0.98, '0.723', '15.220', '0'],
  [1, '0', '15.704', '0'],
  [1.02, '0', '15.376', '0.438'],
  [1.05, '0', '14.909', '1.061'],
  [1.1, '0', '14.190', '2.019'],
  [1.2, '0', '12.943', '3.683'],
  [1.3, '0', '11.897', '5.078'],
] as const;

/** Unburnt charge at lambda 1: CO2, O2, HC as hexane; lambda stays where it was. Air leaked in shifts it. */
const diluted = [
  ['5 % of charge unburnt', '14.85', '1.11', '1303', 1],
  ['one cylinder of eight dead', '13.58', '2.76', '3234', 1],
  ['one cylinder of four dead', '11.51', '5.46', '6395', 1],
  ['one of four, half the HC seen', '11.51', '5.46', '3198', 1.1429],
  ['5 % of air leaked in', '14.92', '1.05', '0', 1.0494],
  ['20 % of air leaked in', '12.56', '4.19', '0', 1.2344],
] as const;

/** CO, CO2, O2, HC, pattern: the rows of the trade's table that no case above shows. */
const patterns = [
  ['3', '11', '2.5', '900', 'rich-misfire'],
  ['0.2', '14.8', '0.4', '500', 'cold-or-oil'],
  ['0.8', '12', '3.5', '60', 'sample-leak'],
  ['0.3', '11', '0.4', '60', 'no-single-pattern'],
] as const;

const sound = { co: '0.1', co2: '15', o2: '0.2', hc: '30' };

export const cases: readonly CalculatorCase[] = [
  ...gases.flatMap(([co, co2, hc, o2, no, standard, directive, e5, pattern]): CalculatorCase[] => [
    { label: `CO ${co}, CO2 ${co2}, HC ${hc}, O2 ${o2}, NO ${no}`, inputs: { co, co2, hc, o2, no }, expected: { lambda: [standard, '1', 6e-5], pattern }, source: `${equation}; ${practice}` },
    { label: `the same with 1.73 and 0.02: CO ${co}, HC ${hc}, NO ${no}`, inputs: { co, co2, hc, o2, no, hydrogenCarbon: '1.73', oxygenCarbon: '0.02' }, expected: { lambda: [directive, '1', 6e-5] }, source: equation },
    { label: `the same with 1.89 and 0.016: CO ${co}, HC ${hc}, NO ${no}`, inputs: { co, co2, hc, o2, no, hydrogenCarbon: '1.89', oxygenCarbon: '0.016' }, expected: { lambda: [e5, '1', 6e-5] }, source: equation },
  ]),
  ...made.map(([lambda, co, co2, o2]): CalculatorCase => ({ label: `gas of lambda ${lambda}`, inputs: { co, co2, o2, hc: '0' }, expected: { lambda: [lambda, '1', 6e-5] }, source: forward })),
  ...diluted.map(([label, co2, o2, hc, lambda]): CalculatorCase => ({ label, inputs: { co: '0', co2, o2, hc }, expected: { lambda: [lambda, '1', 5e-4] }, source: `${forward}; gases rounded to 0.01 %` })),
  ...patterns.map(([co, co2, o2, hc, pattern]): CalculatorCase => ({ label: `pattern ${pattern}`, inputs: { co, co2, o2, hc }, expected: { pattern }, source: practice })),
  { label: 'HC as propane', inputs: { ...sound, hc: '60', hcAs: 'propane' }, expected: { lambda: [1.0052, '1', 6e-5] }, source: `${equation}: 60 ppm of three carbon atoms are 30 of six` },
  { label: 'HC as methane', inputs: { ...sound, hc: '180', hcAs: 'methane' }, expected: { lambda: [1.0052, '1', 6e-5] }, source: `${equation}: 180 ppm of one carbon atom are 30 of six` },
  { label: 'CO in ppm', inputs: { ...sound, co: '1000 ppm' }, expected: { lambda: [1.0052, '1', 6e-5] }, source: `${equation}: 1000 ppm are 0.1 %` },
  { label: 'no CO2 at all', inputs: { co: '5', co2: '0', o2: '1', hc: '0' }, expected: { lambda: [((2.5 + 1) - 0.0088 * 5) / (1.422725 * 5), '1', 1e-9] }, source: 'computed by hand: with all carbon as CO the water-gas term is nothing' },
  { label: 'what a yearly test asks', inputs: sound, says: /between 0\.97 and 1\.03/, source: 'fast idle lambda of a road-code text and an inspection summary' },
  { label: 'outside air', inputs: { co: '0', co2: '0.04', o2: '20.9', hc: '0' }, refusal: { input: 'co2', code: 'no-burnt-gas' }, source: contract },
  { label: 'more oxygen than air holds', inputs: { co: '0.1', co2: '15', o2: '8', hc: '0' }, refusal: { input: 'o2', code: 'more-oxygen-than-air' }, source: contract },
  { label: 'O2 and CO2 changed over is still seen as lean', inputs: { co: '0.1', co2: '2', o2: '15', hc: '30' }, expected: { pattern: 'lean-or-air-leak' }, source: practice },
  { label: 'no CO', inputs: { co2: '15', o2: '0.2', hc: '30' }, refusal: { input: 'co', code: 'missing' }, source: contract },
  { label: 'no HC', inputs: { co: '0.1', co2: '15', o2: '0.2' }, refusal: { input: 'hc', code: 'missing' }, source: contract },
  { label: 'CO below nothing', inputs: { ...sound, co: '-0.1' }, refusal: { input: 'co', code: 'too-low' }, source: contract },
  { label: 'more CO2 than can be', inputs: { ...sound, co2: '25' }, refusal: { input: 'co2', code: 'too-high' }, source: contract },
  { label: 'more O2 than air', inputs: { ...sound, o2: '22' }, refusal: { input: 'o2', code: 'too-high' }, source: contract },
  { label: 'HC in percent by mistake', inputs: { ...sound, hc: '30 %' }, refusal: { input: 'hc', code: 'too-high' }, source: contract },
  { label: 'another gas', inputs: { ...sound, hcAs: 'butane' }, refusal: { input: 'hcAs', code: 'not-a-choice' }, source: contract },
  { label: 'a pressure', inputs: { ...sound, o2: '2 kPa' }, refusal: { input: 'o2', code: 'wrong-dimension' }, source: contract },
  { label: 'two readings of one figure', inputs: { ...sound, hc: '1,200' }, refusal: { input: 'hc', code: 'ambiguous' }, source: contract },
];
