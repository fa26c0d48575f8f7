import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const turns = 'computed by hand from N·V; not a published number';
const capacitor = 'computed by hand from √(2ηE/C); not a published number';
const coil = { clampVoltage: '400', turnsRatio: '85' };

/** mJ, pF, efficiency; kV. */
const limits = [
  ['30', '50', '1', 34.641],
  ['40', '60', '1', 36.515],
  ['60', '70', '0.6', 32.071],
  ['45', '80', '0.5', 23.717],
] as const;

export const cases: readonly CalculatorCase[] = [
  {
    label: 'turns alone step 240 V up to 12 kV',
    inputs: { clampVoltage: '240 V', turnsRatio: '50' },
    expected: { available: [12, 'kV', 1e-12] },
    source: 'OpenStax University Physics 2, 15.6, worked example (12 kV and 240 V, ratio 1/50)',
  },
  { label: '350 V clamp × 100', inputs: { clampVoltage: '350', turnsRatio: '100' }, expected: { available: [35, 'kV', 1e-9] }, absent: ['reserve', 'reservePercent', 'capacitanceLimit'], source: turns },
  { label: '400 V clamp × 85', inputs: coil, expected: { available: [34, 'kV', 1e-9] }, source: turns },
  { label: 'make voltage of 12 V × 100', inputs: { clampVoltage: '12', turnsRatio: '100' }, expected: { available: [1.2, 'kV', 1e-9] }, source: turns },
  ...limits.map(
    ([energy, capacitance, efficiency, limit]): CalculatorCase => ({
      label: `${energy} mJ into ${capacitance} pF at ${efficiency}`,
      inputs: { ...coil, energy, capacitance, efficiency },
      expected: { capacitanceLimit: [limit, 'kV', 5e-4] },
      source: capacitor,
    }),
  ),
  {
    label: 'reserve over 24 kV',
    inputs: { clampVoltage: '350', turnsRatio: '100', demand: '24' },
    expected: { reserve: [11, 'kV', 1e-9], reservePercent: [31.428571, '%', 1e-6] },
    says: /this coil has that/,
    source: 'computed by hand: 35 − 24, and 11/35',
  },
  {
    label: 'too little in hand',
    inputs: { clampVoltage: '300', turnsRatio: '80', demand: '18' },
    expected: { reserve: [6, 'kV', 1e-9], reservePercent: [25, '%', 1e-9] },
    says: /this coil has less/,
    source: 'computed by hand: 24 − 18, and 6/24; rule of 10 kV or 40 % is common practice',
  },
  {
    label: 'asked for more than there is',
    inputs: { clampVoltage: '300', turnsRatio: '80', demand: '30' },
    expected: { reserve: [-6, 'kV', 1e-9], reservePercent: [-25, '%', 1e-9] },
    says: /more than the coil can give/,
    source: 'computed by hand: 24 − 30',
  },
  {
    label: 'the energy is the tighter limit, and the note says what is left',
    inputs: { ...coil, demand: '20', energy: '45', capacitance: '80', efficiency: '0.5' },
    expected: { reserve: [14, 'kV', 1e-9] },
    says: /leaves 3\.7.kV/,
    source: capacitor,
  },
  { label: 'efficiency in percent', inputs: { ...coil, energy: '60', capacitance: '70', efficiency: '60 %' }, expected: { capacitanceLimit: [32.071, 'kV', 5e-4] }, source: capacitor },
  { label: 'energy without capacitance', inputs: { ...coil, energy: '40' }, absent: ['capacitanceLimit'], says: /both the energy and the capacitance/, source: contract },
  { label: 'capacitance without energy', inputs: { ...coil, capacitance: '60' }, absent: ['capacitanceLimit'], says: /both/, source: contract },
  { label: 'more out than in', inputs: { ...coil, energy: '40', capacitance: '60', efficiency: '1.2' }, refusal: { input: 'efficiency', code: 'too-high' }, source: contract },
  { label: 'no clamp', inputs: { ...coil, clampVoltage: '0' }, refusal: { input: 'clampVoltage', code: 'too-low' }, source: contract },
  { label: 'no turns', inputs: { ...coil, turnsRatio: '0' }, refusal: { input: 'turnsRatio', code: 'too-low' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'clampVoltage', code: 'missing' }, source: contract },
  { label: 'turns missing', inputs: { clampVoltage: '400' }, refusal: { input: 'turnsRatio', code: 'missing' }, source: contract },
  { label: 'no capacitance at all', inputs: { ...coil, energy: '40', capacitance: '0' }, refusal: { input: 'capacitance', code: 'too-low' }, source: contract },
  { label: 'amperes for millijoules', inputs: { ...coil, energy: '7 A' }, refusal: { input: 'energy', code: 'wrong-dimension' }, source: contract },
];
