import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const formula = 'computed apart from the code: η p V n / (120 · 287.05 · T) (Heywood, section 2.10, recalled)';
const load = 'computed apart from the code: 120 m / (1.184 V n), wording of PID 43 in two public copies';

/** kPa, °C, litres, rpm, volumetric efficiency, g/s. */
const flows = [
  ['33', '40', '2.0', '750', '0.8', 3.671],
  ['55', '40', '2.0', '2200', '0.85', 19.07],
  ['98', '30', '1.6', '5500', '0.9', 74.328],
  ['180', '45', '1.4', '3000', '0.95', 65.535],
  ['78', '25', '2.0', '5000', '0.9', 68.354],
] as const;

/** Litres, rpm, measured g/s, kPa, °C, theoretical g/s, percent. */
const efficiencies = [
  ['2.0', '2500', '18.0', '101.325', '25', 49.33, 36.49],
  ['1.6', '6000', '72.0', '100.0', '20', 95.07, 75.73],
  ['2.5', '3000', '52.0', '101.325', '25', 73.995, 70.27],
  ['3.5', '5000', '140.0', '98.0', '30', 164.236, 85.24],
] as const;

/** g/s, litres, rpm, percent. */
const loads = [
  ['3.2', '2.0', '750', 21.62],
  ['18', '2.0', '2500', 36.49],
  ['72', '1.6', '6000', 76.01],
  ['95', '1.4', '3500', 196.5],
] as const;

const engine = { displacement: '2.0', speed: '2500', pressure: '101.325', temperature: '25' };

export const cases: readonly CalculatorCase[] = [
  ...flows.map(
    ([pressure, temperature, displacement, speed, volumetricEfficiency, flow]): CalculatorCase => ({
      label: `${displacement} l, ${speed} rpm, ${pressure} kPa`,
      inputs: { pressure, temperature, displacement, speed, volumetricEfficiency },
      expected: { massFlow: [flow, 'g/s', 6e-4], volumetricEfficiency: [Number(volumetricEfficiency), '1', 1e-12] },
      source: formula,
    }),
  ),
  ...efficiencies.map(
    ([displacement, speed, massFlow, pressure, temperature, theoretical, percent]): CalculatorCase => ({
      label: `${massFlow} g/s through ${displacement} l at ${speed} rpm`,
      inputs: { displacement, speed, massFlow, pressure, temperature },
      expected: { theoreticalFlow: [theoretical, 'g/s', 6e-4], volumetricEfficiency: [percent / 100, '1', 6e-5], massFlow: [Number(massFlow), 'g/s', 1e-12] },
      source: formula,
    }),
  ),
  ...loads.map(
    ([massFlow, displacement, speed, percent]): CalculatorCase => ({
      label: `absolute load of ${massFlow} g/s at ${speed} rpm`,
      inputs: { massFlow, displacement, speed, pressure: '101.325', temperature: '25' },
      expected: { absoluteLoad: [percent, '%', 6e-3] },
      source: load,
    }),
  ),
  { label: 'filled whole when nothing else is said', inputs: engine, expected: { massFlow: [49.33, 'g/s', 6e-4], volumetricEfficiency: [1, '1', 1e-12] }, says: /Hold this against the meter/, source: formula },
  { label: 'efficiency in percent', inputs: { ...engine, volumetricEfficiency: '85 %' }, expected: { massFlow: [41.9305, 'g/s', 6e-4] }, source: 'computed: 0.85 · 49.330 g/s' },
  { label: 'a meter that reads high', inputs: { ...engine, massFlow: '80' }, says: /More air than the cylinders can take/, source: 'common practice: without a charger no more than about 100 %' },
  { label: 'hardly any air', inputs: { ...engine, massFlow: '5' }, says: /Little air for this pressure/, source: 'common practice' },
  { label: 'a believable meter', inputs: { ...engine, massFlow: '42' }, says: /believable/, source: 'common practice: 75 to 100 % at full throttle' },
  { label: 'flow and efficiency', inputs: { ...engine, massFlow: '20', volumetricEfficiency: '0.8' }, refusal: { input: 'volumetricEfficiency', code: 'both-given' }, source: contract },
  { label: 'a vacuum typed as pressure', inputs: { ...engine, pressure: '-20 inHg' }, refusal: { input: 'pressure', code: 'not-absolute' }, source: contract },
  { label: 'nothing of a pressure', inputs: { ...engine, pressure: '0' }, refusal: { input: 'pressure', code: 'not-absolute' }, source: contract },
  { label: 'gauge pressure', inputs: { ...engine, pressure: '0.8 bar g' }, refusal: { input: 'pressure', code: 'wrong-pressure' }, source: contract },
  { label: 'pressure too high', inputs: { ...engine, pressure: '1013' }, refusal: { input: 'pressure', code: 'too-high' }, source: contract },
  { label: 'no engine', inputs: { ...engine, displacement: '0' }, refusal: { input: 'displacement', code: 'too-low' }, source: contract },
  { label: 'engine stands', inputs: { ...engine, speed: '0' }, refusal: { input: 'speed', code: 'too-low' }, source: contract },
  { label: 'cubic centimetres without their unit', inputs: { ...engine, displacement: '1998' }, refusal: { input: 'displacement', code: 'too-high' }, source: contract },
  { label: 'eighty-five without its percent', inputs: { ...engine, volumetricEfficiency: '85' }, refusal: { input: 'volumetricEfficiency', code: 'too-high' }, source: contract },
  { label: 'backwards flow', inputs: { ...engine, massFlow: '-1' }, refusal: { input: 'massFlow', code: 'too-low' }, source: contract },
  { label: 'no temperature', inputs: { displacement: '2', speed: '800', pressure: '40' }, refusal: { input: 'temperature', code: 'missing' }, source: contract },
  { label: 'speed as a frequency', inputs: { ...engine, speed: '40 Hz' }, refusal: { input: 'speed', code: 'wrong-dimension' }, source: contract },
];
