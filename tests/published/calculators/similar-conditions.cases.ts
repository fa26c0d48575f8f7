import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const rule = '13 CCR 1968.2(c) and (e)(3.4.4): 375 rpm, 20 % load, same warm-up state (recalled)';
const stored = { speed: '2000', load: '40', warm: 'yes' };

/** Speed, load and warmth now; similar; what differs. */
const runs: readonly (readonly [speed: string, load: string, warm: string, similar: boolean | string, misses: readonly string[]])[] = [
  ['2375', '40', 'yes', true, []],
  ['2376', '40', 'yes', false, ['speed']],
  ['1625', '45', 'yes', true, []],
  ['1624', '45', 'yes', false, ['speed']],
  ['2000', '65', 'yes', false, ['load']],
  ['2000', '40', 'no', false, ['warm-up state']],
  ['2000', '50', 'yes', 'unsettled', []],
  ['2000', '48', 'yes', true, []],
  ['2000', '32', 'yes', true, []],
  ['2000', '60', 'yes', 'unsettled', []],
  ['2000', '20', 'yes', 'unsettled', []],
  ['2000', '19', 'yes', false, ['load']],
  ['3000', '90', 'no', false, ['speed', 'load', 'warm-up state']],
  ['2500', '50', 'yes', false, ['speed']],
];

export const cases: readonly CalculatorCase[] = [
  ...runs.map(
    ([nowSpeed, nowLoad, nowWarm, similar, misses]): CalculatorCase => ({
      label: `${nowSpeed} rpm, ${nowLoad} %, warm ${nowWarm}`,
      inputs: { ...stored, nowSpeed, nowLoad, nowWarm },
      expected: { similar, misses },
      source: rule,
    }),
  ),
  {
    label: 'the window to drive in',
    inputs: { ...stored, nowSpeed: '2000', nowLoad: '40', nowWarm: 'yes' },
    expected: { speedFrom: [1625, 'rpm', 0], speedTo: [2375, 'rpm', 0], loadFrom: [32, '%', 1e-9], loadTo: [48, '%', 1e-9] },
    source: `${rule}; both readings of 20 % hold from 32 to 48`,
  },
  { label: 'window near standstill', inputs: { ...stored, speed: '200', nowSpeed: '0', nowLoad: '40', nowWarm: 'yes' }, expected: { similar: true, speedFrom: [0, 'rpm', 0] }, source: rule },
  { label: 'over 100 % points are the narrower', inputs: { ...stored, load: '150', nowSpeed: '2000', nowLoad: '175', nowWarm: 'yes' }, expected: { similar: 'unsettled', loadTo: [170, '%', 1e-9] }, source: rule },
  { label: 'cold both times', inputs: { ...stored, warm: 'no', nowSpeed: '2000', nowLoad: '40', nowWarm: 'no' }, expected: { similar: true }, source: rule },
  { label: 'words of the choice', inputs: { ...stored, warm: 'Warm', nowSpeed: '2000', nowLoad: '40', nowWarm: 'YES' }, expected: { similar: true }, source: contract },
  { label: 'nothing about now', inputs: stored, refusal: { input: 'nowSpeed', code: 'missing' }, source: contract },
  { label: 'perhaps warm', inputs: { ...stored, nowSpeed: '2000', nowLoad: '40', nowWarm: 'perhaps' }, refusal: { input: 'nowWarm', code: 'not-a-choice' }, source: contract },
  { label: 'backwards', inputs: { ...stored, nowSpeed: '-1', nowLoad: '40', nowWarm: 'yes' }, refusal: { input: 'nowSpeed', code: 'too-low' }, source: contract },
  { label: 'load in volts', inputs: { ...stored, nowSpeed: '2000', nowLoad: '4 V', nowWarm: 'yes' }, refusal: { input: 'nowLoad', code: 'wrong-dimension' }, source: contract },
  { label: 'far too much load', inputs: { ...stored, nowSpeed: '2000', nowLoad: '500', nowWarm: 'yes' }, refusal: { input: 'nowLoad', code: 'too-high' }, source: contract },
];
