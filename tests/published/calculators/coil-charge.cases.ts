import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const openstax = 'OpenStax University Physics 2';
const computed = 'computed by hand from V/R·(1 − e^(−tR/L)) and L·I²/2; not a published number';
const solved = 'computed by hand from −(L/R)·ln(1 − IR/V) and L·I²/2; not a published number';

/** V, Ω, mH, ms; time constant ms, final A, current A, energy mJ. */
const charges = [
  ['12', '0.5', '2.5', '2.0', 5, 24, 7.91232, 78.256],
  ['14', '0.6', '3.0', '3.0', 5, 23.3333, 10.52773, 166.25],
  ['13.5', '0.4', '1.8', '1.5', 4.5, 33.75, 9.56707, 82.376],
  ['12', '3.0', '8.0', '5.0', 2.66667, 4, 3.38658, 45.876],
  ['10.5', '0.5', '2.5', '2.0', 5, 21, 6.92328, 59.915],
  ['14.2', '0.7', '4.2', '4.0', 6, 20.2857, 9.87068, 204.604],
] as const;

/** V, Ω, mH, A; ms, mJ. */
const targets = [
  ['14', '0.6', '3.0', '7', 1.78337, 73.5],
  ['12', '0.5', '2.5', '7.5', 1.87347, 70.3125],
  ['10', '0.5', '2.5', '7.5', 2.35002, 70.3125],
  ['13.8', '0.45', '2.0', '8', 1.34347, 64],
  ['9.6', '0.6', '3.0', '7', 2.87682, 73.5],
  ['12', '1.5', '6.0', '7', 8.31777, 147],
] as const;

const coil = { supplyVoltage: '12', resistance: '0.5', inductance: '2.5' };

export const cases: readonly CalculatorCase[] = [
  ...charges.map(
    ([supplyVoltage, resistance, inductance, chargeTime, tau, final, current, energy]): CalculatorCase => ({
      label: `${supplyVoltage} V, ${resistance} Ω, ${inductance} mH after ${chargeTime} ms`,
      inputs: { supplyVoltage, resistance, inductance, chargeTime },
      expected: { timeConstant: [tau, 'ms', 5e-6], finalCurrent: [final, 'A', 5e-5], current: [current, 'A', 5e-6], energy: [energy, 'mJ', 5e-4] },
      absent: ['timeToTarget', 'energyAtTarget'],
      source: computed,
    }),
  ),
  ...targets.map(
    ([supplyVoltage, resistance, inductance, targetCurrent, time, energy]): CalculatorCase => ({
      label: `${targetCurrent} A from ${supplyVoltage} V, ${resistance} Ω, ${inductance} mH`,
      inputs: { supplyVoltage, resistance, inductance, targetCurrent },
      expected: { timeToTarget: [time, 'ms', 5e-6], energyAtTarget: [energy, 'mJ', 1e-9] },
      absent: ['current', 'energy'],
      source: solved,
    }),
  ),
  {
    label: 'two time constants of 1 s',
    inputs: { supplyVoltage: '2.0 V', resistance: '4.0 ohm', inductance: '4.0 H', chargeTime: '2 s' },
    expected: { timeConstant: [1000, 'ms', 1e-9], finalCurrent: [0.5, 'A', 1e-12], current: [0.43, 'A', 0.005] },
    source: `${openstax}, 14.4, RL circuit with a source (printed 1.0 s, 0.50 A, 0.43 A)`,
  },
  {
    label: 'half the current at 0.69 of a time constant',
    inputs: { supplyVoltage: '2 V', resistance: '4 ohm', inductance: '4 H', targetCurrent: '0.25 A' },
    expected: { timeToTarget: [690, 'ms', 5] },
    source: `${openstax}, 14.4 (printed 0.69 s; decay and growth reach half at the same time)`,
  },
  {
    label: '90 % of the current in 5.0 s, 43.4294 H and 20 Ω',
    inputs: { supplyVoltage: '10', resistance: '20', inductance: '43.4294 H', targetCurrent: '0.45' },
    expected: { timeConstant: [2200, 'ms', 50], timeToTarget: [5000, 'ms', 0.05] },
    source: `${openstax}, 14.4, check your understanding (printed 5.0 s, 2.2 s, 43 H; inductance to more digits)`,
  },
  {
    label: 'half the current at 1.75 ms, 250 mH',
    inputs: { supplyVoltage: '10', resistance: '99.021', inductance: '250', targetCurrent: '0.0504943' },
    expected: { timeConstant: [2.52, 'ms', 0.005], timeToTarget: [1.75, 'ms', 1e-4] },
    source: `${openstax}, 14.4, problem (printed 2.52 ms; resistance to more digits, the print rounds first)`,
  },
  {
    label: 'energy of 4.0 H at 0.50 A',
    inputs: { supplyVoltage: '2', resistance: '1', inductance: '4 H', targetCurrent: '0.50 A' },
    expected: { energyAtTarget: [500, 'mJ', 1e-9] },
    source: `${openstax}, 14.3, check your understanding (printed 0.50 J)`,
  },
  {
    label: '63 % after one time constant',
    inputs: { supplyVoltage: '1', resistance: '1', inductance: '1', chargeTime: '1' },
    expected: { current: [0.63, 'A', 0.005] },
    source: `${openstax}, 14.4, text (printed 63 %)`,
  },
  {
    label: 'a switch that takes a volt: as from 11 V',
    inputs: { supplyVoltage: '12', resistance: '0.5', inductance: '2.5', switchDrop: '1', chargeTime: '2' },
    expected: { finalCurrent: [22, 'A', 1e-12], current: [22 * 0.32967995, 'A', 1e-6] },
    source: 'computed by hand: 11/0.5·(1 − e^(−0.4))',
  },
  { label: 'no time yet, no current', inputs: { ...coil, chargeTime: '0' }, expected: { current: [0, 'A', 0], energy: [0, 'mJ', 0] }, source: contract },
  {
    label: 'winding alone',
    inputs: coil,
    expected: { timeConstant: [5, 'ms', 1e-12], finalCurrent: [24, 'A', 1e-12] },
    absent: ['current', 'energy', 'timeToTarget', 'energyAtTarget'],
    says: /charging time or the current/,
    source: contract,
  },
  { label: 'more than drivers take', inputs: { ...coil, chargeTime: '5' }, says: /this is more/, source: contract },
  { label: 'less than usual', inputs: { ...coil, chargeTime: '1' }, says: /this is less/, source: contract },
  { label: 'never reached: final 6 A', inputs: { supplyVoltage: '12', resistance: '2.0', inductance: '6.0', targetCurrent: '7' }, refusal: { input: 'targetCurrent', code: 'never-reached' }, source: 'computed by hand: 12 V / 2 Ω = 6 A' },
  { label: 'the final current itself is never quite reached', inputs: { ...coil, targetCurrent: '24' }, refusal: { input: 'targetCurrent', code: 'never-reached' }, source: contract },
  { label: 'switch takes all', inputs: { ...coil, switchDrop: '12' }, refusal: { input: 'switchDrop', code: 'drop-above-supply' }, source: contract },
  { label: 'no supply', inputs: { ...coil, supplyVoltage: '0' }, refusal: { input: 'supplyVoltage', code: 'too-low' }, source: contract },
  { label: 'no resistance', inputs: { ...coil, resistance: '0' }, refusal: { input: 'resistance', code: 'too-low' }, source: contract },
  { label: 'no inductance', inputs: { ...coil, inductance: '0' }, refusal: { input: 'inductance', code: 'too-low' }, source: contract },
  { label: 'time below zero', inputs: { ...coil, chargeTime: '-1' }, refusal: { input: 'chargeTime', code: 'too-low' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'supplyVoltage', code: 'missing' }, source: contract },
  { label: 'volts for ohms', inputs: { ...coil, resistance: '0.5 V' }, refusal: { input: 'resistance', code: 'wrong-dimension' }, source: contract },
  { label: 'open winding', inputs: { ...coil, resistance: 'OL' }, refusal: { input: 'resistance', code: 'open-not-accepted' }, source: contract },
];
