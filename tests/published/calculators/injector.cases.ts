import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const root = 'computed apart from the code: Q·√(p2/p1)';
const duty = 'computed by hand: ms · rpm · pulses / 1200';

/** ml/min, rated kPa, kPa now, ml/min. */
const flows = [
  ['200', '300', '350', 216.02],
  ['240', '300', '250', 219.09],
  ['440', '300', '400', 508.07],
  ['300', '380', '300', 266.56],
] as const;

/** ms, rpm, percent in sequence, percent fired on every revolution. */
const duties = [
  ['2.5', '800', 1.667, 3.333],
  ['3.2', '3000', 8, 16],
  ['12', '6000', 60, 120],
  ['18', '6500', 97.5, 195],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...flows.map(
    ([ratedFlow, ratedPressure, pressure, flow]): CalculatorCase => ({
      label: `${ratedFlow} ml/min, ${ratedPressure} to ${pressure} kPa`,
      inputs: { ratedFlow, ratedPressure, pressure },
      expected: { flow: [flow, 'ml/min', 6e-3] },
      absent: ['dutyCycle', 'longestPulse'],
      source: root,
    }),
  ),
  ...duties.flatMap(([pulseWidth, speed, once, twice]): CalculatorCase[] => [
    { label: `${pulseWidth} ms at ${speed} rpm`, inputs: { pulseWidth, speed }, expected: { dutyCycle: [once, '%', 6e-4] }, absent: ['flow'], source: duty },
    { label: `${pulseWidth} ms at ${speed} rpm, every revolution`, inputs: { pulseWidth, speed, pulsesPerCycle: '2' }, expected: { dutyCycle: [twice, '%', 6e-4] }, source: duty },
  ]),
  { label: 'time in a cycle at 6000 rpm', inputs: { pulseWidth: '20 ms', speed: '6000' }, expected: { dutyCycle: [100, '%', 1e-9], longestPulse: [20, 'ms', 1e-9] }, says: /Little or no time/, source: 'computed by hand: 120 000 / 6000' },
  { label: '300 kPa regulator without a vacuum pipe', inputs: { ratedFlow: '100', ratedPressure: '300', pressure: '366.3' }, expected: { flow: [110.5, 'ml/min', 6e-3] }, source: 'computed: √(366.3/300) = 1.1050' },
  { label: 'both at once', inputs: { ratedFlow: '200', ratedPressure: '300', pressure: '300', pulseWidth: '3.2', speed: '3000' }, expected: { flow: [200, 'ml/min', 1e-9], dutyCycle: [8, '%', 1e-9] }, source: `${root}; ${duty}` },
  { label: 'held open', inputs: { pulseWidth: '12', speed: '6000', pulsesPerCycle: '2' }, says: /held open/, source: 'computed by hand: 120 %, longer than the cycle' },
  { label: 'time in hand', inputs: { pulseWidth: '3', speed: '800' }, says: /time in hand/, source: 'common practice: 80 to 90 % is the most that is sensible' },
  { label: 'other units', inputs: { ratedFlow: '12 l/h', ratedPressure: '3 bar', pressure: '350 kPa' }, expected: { flow: [216.02, 'ml/min', 6e-3] }, source: `${root}; 12 l/h are 200 ml/min` },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'ratedFlow', code: 'missing' }, source: contract },
  { label: 'flow without its pressure', inputs: { ratedFlow: '200', pressure: '300' }, refusal: { input: 'ratedPressure', code: 'missing' }, source: contract },
  { label: 'pressure without a flow', inputs: { pressure: '300', ratedPressure: '300' }, refusal: { input: 'ratedFlow', code: 'missing' }, source: contract },
  { label: 'pulse without a speed', inputs: { pulseWidth: '3' }, refusal: { input: 'speed', code: 'missing' }, source: contract },
  { label: 'speed without a pulse', inputs: { speed: '800' }, refusal: { input: 'pulseWidth', code: 'missing' }, source: contract },
  { label: 'direct injection now', inputs: { ratedFlow: '200', ratedPressure: '300', pressure: '50 bar' }, refusal: { input: 'pressure', code: 'direct-injection-pressure' }, source: contract },
  { label: 'direct injection rating', inputs: { ratedFlow: '900', ratedPressure: '100 bar', pressure: '300' }, refusal: { input: 'ratedPressure', code: 'direct-injection-pressure' }, source: contract },
  { label: 'no pressure', inputs: { ratedFlow: '200', ratedPressure: '300', pressure: '0' }, refusal: { input: 'pressure', code: 'too-low' }, source: contract },
  { label: 'half a pulse', inputs: { pulseWidth: '3', speed: '800', pulsesPerCycle: '1.5' }, refusal: { input: 'pulsesPerCycle', code: 'not-whole' }, source: contract },
  { label: 'no pulse', inputs: { pulseWidth: '0', speed: '800' }, refusal: { input: 'pulseWidth', code: 'too-low' }, source: contract },
  { label: 'a pulse of seconds', inputs: { pulseWidth: '3 s', speed: '800' }, refusal: { input: 'pulseWidth', code: 'too-high' }, source: contract },
  { label: 'mass in place of volume', inputs: { ratedFlow: '3 g/s', ratedPressure: '300', pressure: '300' }, refusal: { input: 'ratedFlow', code: 'wrong-dimension' }, source: contract },
];
