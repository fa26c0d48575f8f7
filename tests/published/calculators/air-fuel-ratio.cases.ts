import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const table = 'Heywood, table D.4 (recalled)';
const formula = 'computed apart from the code: 138.2 (x + y/4 − z/2) / (12.011x + 1.008y + 15.999z)';
const blends = 'computed apart from the code: mass-weighted 9.00 and 14.6, densities 0.789 and 0.745 kg/l';

/** Fuel, carbon, hydrogen, oxygen, the table's ratio, the formula's. */
const fuels = [
  ['methane', '1', '4', '', 17.23, 17.229],
  ['propane', '3', '8', '', 15.67, 15.67],
  ['isooctane', '8', '18', '', 15.13, 15.123],
  ['benzene', '6', '6', '', 13.27, 13.269],
  ['toluene', '7', '8', '', 13.5, 13.499],
  ['methanol', '1', '4', '1', 6.47, 6.47],
  ['ethanol', '2', '6', '1', 9, 9],
  ['petrol as CH1.87', '1', '1.87', '', 14.6, 14.595],
  ['carbon', '1', '', '', 11.51, 11.506],
  ['carbon monoxide', '1', '', '1', 2.467, 2.467],
  ['hydrogen', '', '2', '', 34.3, 34.276],
] as const;

/** Percent by volume, part by mass, ratio, ratio with petrol at 14.7. */
const ethanol = [
  ['0', 0, 14.6, 14.7],
  ['5', 0.0528, 14.304, 14.399],
  ['10', 0.1053, 14.01, 14.1],
  ['15', 0.1575, 13.718, 13.802],
  ['20', 0.2093, 13.428, 13.507],
  ['25', 0.2609, 13.139, 13.213],
  ['27', 0.2815, 13.024, 13.096],
  ['30', 0.3122, 12.852, 12.921],
  ['50', 0.5143, 11.72, 11.768],
  ['70', 0.7119, 10.613, 10.642],
  ['85', 0.8572, 9.8, 9.814],
  ['100', 1, 9, 9],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...fuels.flatMap(([fuel, carbon, hydrogen, oxygen, printed, calculated]): CalculatorCase[] => [
    // The table is printed to three or four figures.
    { label: `${fuel} against the table`, inputs: { carbon, hydrogen, oxygen }, expected: { stoichiometric: [printed, '1', printed * 1e-3] }, absent: ['ethanolMassFraction', 'lambda'], source: table },
    { label: `${fuel} by the formula`, inputs: { carbon, hydrogen, oxygen }, expected: { stoichiometric: [calculated, '1', 6e-4] }, source: formula },
  ]),
  ...ethanol.flatMap(([ethanolPercent, fraction, ratio, habit]): CalculatorCase[] => [
    { label: `E${ethanolPercent}`, inputs: { ethanolPercent }, expected: { ethanolMassFraction: [fraction, '1', 6e-5], stoichiometric: [ratio, '1', 6e-4] }, absent: ['lambda', 'equivalenceRatio'], source: blends },
    { label: `E${ethanolPercent}, petrol at 14.7`, inputs: { ethanolPercent, petrolRatio: '14.7' }, expected: { stoichiometric: [habit, '1', 6e-4] }, source: blends },
  ]),
  { label: '13.2 on petrol', inputs: { ethanolPercent: '0', actual: '13.2' }, expected: { lambda: [0.9041, '1', 6e-5], equivalenceRatio: [1.1061, '1', 6e-5] }, says: /most power/, source: 'computed: 13.2/14.6 and 14.6/13.2' },
  { label: 'lambda 0.88 is 12.848', inputs: { ethanolPercent: '0', actual: '12.848:1' }, expected: { lambda: [0.88, '1', 1e-9] }, source: 'computed: 0.88 · 14.6' },
  { label: 'lambda 1.05 on E85', inputs: { ethanolPercent: '85', actual: '10.290' }, expected: { lambda: [1.05, '1', 6e-5] }, source: 'computed: 1.05 · 9.800' },
  { label: 'lean misfire', inputs: { ethanolPercent: '0', actual: '18.5' }, says: /begins to miss/, source: 'Heywood, chapter 7 (recalled): lean misfire above about 1.2' },
  { label: 'flooded', inputs: { ethanolPercent: '0', actual: '8' }, says: /stops firing/, source: 'Heywood, chapter 7 (recalled): rich limit near 0.6' },
  { label: 'as it should be', inputs: { ethanolPercent: '0', actual: '14.6' }, expected: { lambda: [1, '1', 1e-12] }, says: /not the likely cause/, source: 'the ratio over itself' },
  { label: 'densities in other units', inputs: { ethanolPercent: '10', petrolDensity: '745 kg/m3', ethanolDensity: '0.789 g/cm3' }, expected: { stoichiometric: [14.01, '1', 6e-4] }, source: blends },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'ethanolPercent', code: 'missing' }, source: contract },
  { label: 'blend and atoms', inputs: { ethanolPercent: '10', carbon: '8' }, refusal: { input: 'ethanolPercent', code: 'both-given' }, source: contract },
  { label: 'carbon dioxide', inputs: { carbon: '1', oxygen: '2' }, refusal: { input: 'carbon', code: 'no-fuel' }, source: contract },
  { label: 'no atoms', inputs: { carbon: '0', hydrogen: '0' }, refusal: { input: 'carbon', code: 'no-fuel' }, source: contract },
  { label: 'more than all ethanol', inputs: { ethanolPercent: '101' }, refusal: { input: 'ethanolPercent', code: 'too-high' }, source: contract },
  { label: 'less than none', inputs: { ethanolPercent: '-1' }, refusal: { input: 'ethanolPercent', code: 'too-low' }, source: contract },
  { label: 'no air', inputs: { ethanolPercent: '0', actual: '0' }, refusal: { input: 'actual', code: 'too-low' }, source: contract },
  { label: 'a voltage', inputs: { ethanolPercent: '0', actual: '2.5 V' }, refusal: { input: 'actual', code: 'wrong-dimension' }, source: contract },
  { label: 'density of a stone', inputs: { ethanolPercent: '0', petrolDensity: '2.5' }, refusal: { input: 'petrolDensity', code: 'too-high' }, source: contract },
  { label: 'density in kg/m3 without its unit', inputs: { ethanolPercent: '0', petrolDensity: '745' }, refusal: { input: 'petrolDensity', code: 'too-high' }, source: contract },
];
