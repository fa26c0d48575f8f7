import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const printed = 'encyclopaedia table of rest voltage and specific gravity, copy (printed rows)';
const between = 'computed: straight line between the printed rows';
const correction = 'computed: 0.004 for each 10 °F from 80 °F';
const load = 'table of least voltage under load by temperature, common practice';

const voltages = [
  ['12.65', 100],
  ['12.45', 75],
  ['12.24', 50],
  ['12.06', 25],
  ['11.89', 0],
] as const;
const gravities = [
  ['1.265', 100],
  ['1.225', 75],
  ['1.190', 50],
  ['1.155', 25],
  ['1.120', 0],
] as const;
const interpolated = [
  ['12.10', 30.556],
  ['12.30', 57.143],
  ['12.50', 81.25],
  ['12.60', 93.75],
  ['12.00', 16.176],
  ['11.95', 8.824],
] as const;
const corrected = [
  ['1.250', '20 F', 1.226],
  ['1.230', '100 F', 1.238],
  ['1.240', '60 F', 1.232],
  ['1.255', '110 F', 1.267],
  ['1.200', '32 F', 1.1808],
] as const;
const loads = [
  ['70 F', 9.6],
  ['60 F', 9.5],
  ['50 F', 9.4],
  ['40 F', 9.3],
  ['30 F', 9.1],
  ['20 F', 8.9],
  ['10 F', 8.7],
  ['0 F', 8.5],
  ['45 F', 9.35],
  ['5 C', 9.31],
  ['15 F', 8.8],
  ['100 F', 9.6],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...voltages.map(([volts, charge]): CalculatorCase => ({ label: `${volts} V at rest`, inputs: { openCircuitVoltage: volts }, expected: { stateOfCharge: [charge, '%', 1e-9] }, absent: ['correctedSpecificGravity'], source: printed })),
  ...gravities.map(([gravity, charge]): CalculatorCase => ({ label: `specific gravity ${gravity} at 80 °F`, inputs: { specificGravity: gravity, temperature: '80 F' }, expected: { stateOfCharge: [charge, '%', 1e-9], correctedSpecificGravity: [Number(gravity), '1', 1e-12] }, source: printed })),
  ...interpolated.map(([volts, charge]): CalculatorCase => ({ label: `${volts} V between the rows`, inputs: { openCircuitVoltage: volts }, expected: { stateOfCharge: [charge, '%', 5e-4] }, source: between })),
  ...corrected.map(([specificGravity, temperature, at80]): CalculatorCase => ({ label: `${specificGravity} at ${temperature}`, inputs: { specificGravity, temperature }, expected: { correctedSpecificGravity: [at80, '1', 1e-9] }, source: correction })),
  ...loads.map(([temperature, volts]): CalculatorCase => ({ label: `least under load at ${temperature}`, inputs: { loadVoltage: '9.7', temperature }, expected: { loadMinimum: [volts, 'V', 1e-9], verdict: 'inside' }, absent: ['stateOfCharge'], source: load })),
  { label: 'the usual temperature corrects nothing worth naming', inputs: { specificGravity: '1.225' }, expected: { correctedSpecificGravity: [1.225, '1', 3e-5] }, source: correction },
  { label: 'holds up', inputs: { openCircuitVoltage: '12.60', loadVoltage: '9.8', temperature: '41 F' }, expected: { verdict: 'inside', loadMinimum: [9.31, 'V', 1e-9] }, says: /it holds/, source: load },
  { label: 'charged, and does not hold up', inputs: { openCircuitVoltage: '12.60', loadVoltage: '9.1', temperature: '70 F' }, expected: { verdict: 'below' }, says: /renew the battery/, source: load },
  { label: 'on the limit', inputs: { openCircuitVoltage: '12.60', loadVoltage: '9.6', temperature: '70 F' }, expected: { verdict: 'inside' }, source: load },
  { label: 'flat, and does not hold up: not judged', inputs: { openCircuitVoltage: '12.10', loadVoltage: '9.1', temperature: '70 F' }, expected: { verdict: 'too-close-to-call' }, says: /Charge it fully/, source: 'common practice: a load test counts from three quarters charged' },
  { label: 'charged enough by rest voltage alone', inputs: { openCircuitVoltage: '12.45' }, expected: { verdict: 'inside' }, source: contract },
  { label: 'not charged enough', inputs: { openCircuitVoltage: '12.30' }, expected: { verdict: 'below' }, says: /Charge it before/, source: contract },
  { label: 'just off the charger', inputs: { openCircuitVoltage: '12.90' }, expected: { stateOfCharge: [100, '%', 0] }, source: contract },
  { label: 'a dead cell', inputs: { openCircuitVoltage: '10.5' }, expected: { stateOfCharge: [0, '%', 0], verdict: 'below' }, says: /cell has failed/, source: contract },
  { label: 'acid goes before voltage', inputs: { openCircuitVoltage: '12.65', specificGravity: '1.190', temperature: '80 F' }, expected: { stateOfCharge: [50, '%', 1e-9] }, says: /By the voltage it would be 100.%, by the acid 50.%/, source: contract },
  { label: 'freezing: no load table, but the charge stands', inputs: { openCircuitVoltage: '12.45', temperature: '-25 C' }, expected: { stateOfCharge: [75, '%', 1e-9] }, absent: ['loadMinimum'], source: contract },
  { label: 'load test in deep frost', inputs: { loadVoltage: '9', temperature: '-25 C' }, refusal: { input: 'temperature', code: 'too-cold' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'openCircuitVoltage', code: 'missing' }, source: contract },
  { label: 'temperature alone', inputs: { temperature: '20' }, refusal: { input: 'openCircuitVoltage', code: 'missing' }, source: contract },
  { label: 'on charge', inputs: { openCircuitVoltage: '14.2' }, refusal: { input: 'openCircuitVoltage', code: 'not-at-rest' }, source: contract },
  { label: 'changed over', inputs: { openCircuitVoltage: '9.8', loadVoltage: '12.5' }, refusal: { input: 'loadVoltage', code: 'load-above-rest' }, source: contract },
  { label: 'hydrometer read in points', inputs: { specificGravity: '1265' }, refusal: { input: 'specificGravity', code: 'too-high' }, source: contract },
  { label: 'lighter than water', inputs: { specificGravity: '0.9' }, refusal: { input: 'specificGravity', code: 'too-low' }, source: contract },
  { label: 'hotter than a battery may be', inputs: { openCircuitVoltage: '12.5', temperature: '90' }, refusal: { input: 'temperature', code: 'too-high' }, source: contract },
  { label: 'amperes', inputs: { openCircuitVoltage: '12.5 A' }, refusal: { input: 'openCircuitVoltage', code: 'wrong-dimension' }, source: contract },
];
