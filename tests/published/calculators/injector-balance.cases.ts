import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const arithmetic = 'computed by hand: each drop against the mean; the band of 20 % is common practice';

export const cases: readonly CalculatorCase[] = [
  {
    label: 'good',
    inputs: { drops: '42 44 43 43' },
    expected: { mean: [43, 'kPa', 1e-9], worst: [1, 'count', 0], verdict: 'inside', deviations: { values: [-2.33, 2.33, 0, 0], unit: '%', tolerance: 5e-3 } },
    source: arithmetic,
  },
  { label: 'one lazy', inputs: { drops: '42 30 43 41' }, expected: { mean: [39, 'kPa', 1e-9], worst: [2, 'count', 0], verdict: 'below', deviations: { values: [7.69, -23.08, 10.26, 5.13], unit: '%', tolerance: 5e-3 } }, says: /injector 2 at −23\.1/, source: arithmetic },
  { label: 'one leaking', inputs: { drops: '40 41 55 42' }, expected: { mean: [44.5, 'kPa', 1e-9], worst: [3, 'count', 0], verdict: 'above', deviations: { values: [-10.11, -7.87, 23.6, -5.62], unit: '%', tolerance: 5e-3 } }, says: /does not shut/, source: arithmetic },
  { label: 'stricter band', inputs: { drops: '40 41 55 42', tolerancePercent: '25' }, expected: { verdict: 'inside', worst: [3, 'count', 0] }, source: arithmetic },
  { label: 'exactly on the band', inputs: { drops: '40 40 60 60', tolerancePercent: '20' }, expected: { verdict: 'inside', mean: [50, 'kPa', 1e-9] }, source: 'computed by hand: 40 and 60 lie 20 % from 50; the limit itself is allowed' },
  { label: 'just past the band', inputs: { drops: '39.9 40 60 60.1', tolerancePercent: '20' }, expected: { verdict: 'below', worst: [1, 'count', 0] }, source: 'computed by hand: 39.9 lies 20.2 % below 50' },
  { label: 'one that does not open', inputs: { drops: '40 40 0 40' }, expected: { verdict: 'below', worst: [3, 'count', 0], deviations: { values: [33.333, 33.333, -100, 33.333], unit: '%', tolerance: 1e-3 } }, source: 'computed by hand: mean 30' },
  { label: 'all alike', inputs: { drops: '40 40 40' }, expected: { verdict: 'inside', deviations: { values: [0, 0, 0], unit: '%', tolerance: 1e-12 } }, absent: ['worst'], source: arithmetic },
  { label: 'two that differ', inputs: { drops: '30 50' }, expected: { mean: [40, 'kPa', 1e-9] }, absent: ['worst', 'verdict'], says: /of two each lies as far/, source: 'computed by hand: 25 % either way' },
  { label: 'two alike', inputs: { drops: '40 41' }, expected: { verdict: 'inside' }, absent: ['worst'], source: arithmetic },
  { label: 'in psi', inputs: { drops: '6 6 4 6 psi' }, expected: { mean: [37.9212, 'kPa', 1e-3], verdict: 'below', worst: [3, 'count', 0] }, source: 'computed by hand: mean 5.5 psi at 6.894757 kPa; 4 lies 27.3 % below' },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'drops', code: 'missing' }, source: contract },
  { label: 'one alone', inputs: { drops: '40' }, refusal: { input: 'drops', code: 'too-few' }, source: contract },
  { label: 'seventeen', inputs: { drops: Array(17).fill('40').join(' ') }, refusal: { input: 'drops', code: 'too-many' }, source: contract },
  { label: 'no drop at all', inputs: { drops: '0 0 0 0' }, refusal: { input: 'drops', code: 'no-drop' }, source: contract },
  { label: 'a rise', inputs: { drops: '40 -5 40' }, refusal: { input: 'drops', code: 'too-low' }, source: contract },
  { label: 'drops of direct injection', inputs: { drops: '20 bar; 21 bar; 20 bar' }, refusal: { input: 'drops', code: 'direct-injection-pressure' }, source: contract },
  { label: 'units after some only', inputs: { drops: '40 kPa 42 41 kPa' }, refusal: { input: 'drops', code: 'unknown-unit' }, source: contract },
  { label: 'no band', inputs: { drops: '40 41', tolerancePercent: '0' }, refusal: { input: 'tolerancePercent', code: 'too-low' }, source: contract },
  { label: 'band of more than all', inputs: { drops: '40 41', tolerancePercent: '150' }, refusal: { input: 'tolerancePercent', code: 'too-high' }, source: contract },
  { label: 'words', inputs: { drops: 'good good bad' }, refusal: { input: 'drops', code: 'not-a-number' }, source: contract },
  { label: 'volts', inputs: { drops: '12 12 11 V' }, refusal: { input: 'drops', code: 'wrong-dimension' }, source: contract },
];
