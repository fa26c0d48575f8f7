import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const factors = 'NIST SP 811 appendix B.8: 1 lbf ft = 1.355818 N m, 1 lbf in = 0.1129848 N m, 1 kgf m = 9.80665 N m (recalled)';
const lever = 'computed from the lever: L / (L + E)';

export const cases: readonly CalculatorCase[] = [
  { label: '28 N m', inputs: { torque: '28' }, expected: { poundFeet: [20.65, 'lbf ft', 0.005], newtonMetres: [28, 'N m', 0] }, absent: ['setting'], source: factors },
  { label: '18 lbf ft', inputs: { torque: '18 lbf ft' }, expected: { newtonMetres: [24.4, 'N m', 0.005], poundFeet: [18, 'lbf ft', 1e-9] }, source: factors },
  { label: '12 N m', inputs: { torque: '12 N m' }, expected: { poundInches: [106.2, 'lbf in', 0.05] }, source: factors },
  { label: '2.5 kgf m', inputs: { torque: '2.5 kgf m' }, expected: { newtonMetres: [24.52, 'N m', 0.005], kilogramForceMetres: [2.5, 'kgf m', 1e-9] }, source: factors },
  { label: '1 lbf ft', inputs: { torque: '1 lbf ft' }, expected: { newtonMetres: [1.355818, 'N m', 5e-7], poundInches: [12, 'lbf in', 1e-9] }, source: factors },
  { label: '1 lbf in', inputs: { torque: '1 lbf in' }, expected: { newtonMetres: [0.1129848, 'N m', 5e-8] }, source: factors },
  { label: 'adapter of 60 mm', inputs: { torque: '25', handle: '400', extension: '60' }, expected: { setting: [21.74, 'N m', 0.005] }, source: lever },
  { label: 'lengths in centimetres', inputs: { torque: '25', handle: '40 cm', extension: '6 cm' }, expected: { setting: [21.74, 'N m', 0.005] }, source: lever },
  { label: 'adapter as long as the wrench', inputs: { torque: '30', handle: '300', extension: '300' }, expected: { setting: [15, 'N m', 1e-9] }, source: lever },
  { label: 'no adapter', inputs: { torque: '30', handle: '300', extension: '0' }, expected: { setting: [30, 'N m', 1e-9] }, source: lever },
  { label: 'handle forgotten', inputs: { torque: '25', extension: '60' }, refusal: { input: 'handle', code: 'missing' }, source: contract },
  { label: 'adapter forgotten', inputs: { torque: '25', handle: '400' }, refusal: { input: 'extension', code: 'missing' }, source: contract },
  { label: 'nothing to tighten', inputs: { torque: '0' }, refusal: { input: 'torque', code: 'too-low' }, source: contract },
  { label: 'more than any bolt', inputs: { torque: '3000' }, refusal: { input: 'torque', code: 'too-high' }, source: contract },
  { label: 'an energy', inputs: { torque: '25 J' }, refusal: { input: 'torque', code: 'wrong-dimension' }, source: contract },
  { label: 'a handle of nothing', inputs: { torque: '25', handle: '0', extension: '60' }, refusal: { input: 'handle', code: 'too-low' }, source: contract },
  { label: 'a doubtful comma', inputs: { torque: '1,234' }, refusal: { input: 'torque', code: 'ambiguous' }, source: contract },
];
