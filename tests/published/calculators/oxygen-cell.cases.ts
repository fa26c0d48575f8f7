import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const nernst = 'computed apart from the code: RT/4F · ln(0.209/p), R and F from the SI';

/** °C, atm, mV. */
const voltages = [
  ['600', '0.01', 57.179],
  ['600', '1e-5', 187.118],
  ['700', '0.01', 63.728],
  ['800', '0.05', 33.068],
  ['350', '1e-20', 597.216],
  ['600', '1e-20', 836.812],
  ['900', '1e-15', 833.354],
] as const;

/** °C, oxygen pressure at 450 mV in atm, mV for each power of ten. */
const switching = [
  ['350', 5.7875e-16, 30.9116],
  ['500', 3.8623e-13, 38.3524],
  ['600', 8.5239e-12, 43.3129],
  ['700', 9.9598e-11, 48.2735],
  ['800', 7.3604e-10, 53.234],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...voltages.map(
    ([temperature, oxygenPressure, millivolts]): CalculatorCase => ({
      label: `${oxygenPressure} atm at ${temperature} °C`,
      inputs: { temperature, oxygenPressure },
      expected: { voltage: [millivolts, 'mV', 6e-4] },
      source: nernst,
    }),
  ),
  ...switching.map(
    ([temperature, pressure, perDecade]): CalculatorCase => ({
      label: `450 mV at ${temperature} °C`,
      inputs: { temperature, voltage: '0.45 V' },
      expected: { oxygenPressure: [pressure, 'atm', pressure * 6e-5], decades: [450 / perDecade, '1', 5e-4], side: 'switching' },
      source: nernst,
    }),
  ),
  { label: 'the reference on both sides', inputs: { temperature: '600', oxygenPressure: '0.209' }, expected: { voltage: [0, 'mV', 1e-12], decades: [0, '1', 1e-12], side: 'lean' }, source: 'the logarithm of one is nothing' },
  { label: 'another reference', inputs: { temperature: '600', oxygenPressure: '0.0001 atm', referencePressure: '0.001 atm' }, expected: { voltage: [43.3129, 'mV', 1e-4] }, source: `${nernst}; one power of ten` },
  { label: 'in pascals', inputs: { temperature: '873.15 K', oxygenPressure: '1013.25 Pa' }, expected: { voltage: [57.179, 'mV', 6e-4] }, source: nernst },
  { label: 'lean', inputs: { temperature: '700', voltage: '120' }, expected: { side: 'lean' }, says: /air leaks in/, source: 'common practice: a cell swings from 100 to 900 mV round 450' },
  { label: 'rich', inputs: { temperature: '700', voltage: '800' }, expected: { side: 'rich' }, says: /rich/, source: 'common practice: a cell swings from 100 to 900 mV round 450' },
  { label: 'negative', inputs: { temperature: '700', voltage: '-50' }, expected: { side: 'lean' }, says: /reference side is starved/, source: contract },
  { label: 'volts typed as millivolts', inputs: { temperature: '700', voltage: '0.45' }, says: /0\.45 V is 450 mV/, source: contract },
  { label: 'a cold cell', inputs: { temperature: '300', voltage: '400' }, says: /hardly conducts/, source: 'a university page on oxygen sensors: works from 350 °C' },
  { label: 'neither', inputs: { temperature: '600' }, refusal: { input: 'voltage', code: 'missing' }, source: contract },
  { label: 'both', inputs: { temperature: '600', voltage: '450', oxygenPressure: '0.01' }, refusal: { input: 'voltage', code: 'both-given' }, source: contract },
  { label: 'no temperature', inputs: { voltage: '450' }, refusal: { input: 'temperature', code: 'missing' }, source: contract },
  { label: 'cold ceramic', inputs: { temperature: '20', voltage: '450' }, refusal: { input: 'temperature', code: 'too-low' }, source: contract },
  { label: 'glowing ceramic', inputs: { temperature: '1500', voltage: '450' }, refusal: { input: 'temperature', code: 'too-high' }, source: contract },
  { label: 'no oxygen whatever', inputs: { temperature: '600', oxygenPressure: '0' }, refusal: { input: 'oxygenPressure', code: 'too-low' }, source: contract },
  { label: 'more oxygen than an atmosphere', inputs: { temperature: '600', oxygenPressure: '2' }, refusal: { input: 'oxygenPressure', code: 'too-high' }, source: contract },
  { label: 'gauge pressure', inputs: { temperature: '600', oxygenPressure: '1 kPa gauge' }, refusal: { input: 'oxygenPressure', code: 'wrong-pressure' }, source: contract },
  { label: 'a battery', inputs: { temperature: '600', voltage: '12 V' }, refusal: { input: 'voltage', code: 'too-high' }, source: contract },
  { label: 'a resistance', inputs: { temperature: '600', voltage: '6 ohm' }, refusal: { input: 'voltage', code: 'wrong-dimension' }, source: contract },
  { label: 'meter shows open', inputs: { temperature: '600', voltage: 'OL' }, refusal: { input: 'voltage', code: 'open-not-accepted' }, source: contract },
  { label: 'no reference', inputs: { temperature: '600', voltage: '450', referencePressure: '0' }, refusal: { input: 'referencePressure', code: 'too-low' }, source: contract },
];
