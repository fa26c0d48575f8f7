import { ZERO_CELSIUS } from '../../constants.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, ParsedInputs } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';
import { samples } from '../samples.ts';
import { examples, formulas, table } from './text.data.ts';

/** °C that a sensor of this kind is used at; outside them the beta law has long left the truth. */
const coldest = -80;
const hottest = 400;

const inputs: readonly InputDefinition[] = [
  quantity('nominalResistance', 'Resistance at 25 °C', 'resistance', 'ohm', { ...aboveZero(100_000_000), hint: 'From the data of the sensor, or read at 25 °C.' }),
  quantity('beta', 'Beta value', 'temperature', 'K', { minimum: 500, maximum: 10_000, hint: '3300 to 4000 K as a rule.' }),
  quantity('temperature', 'Temperature', 'temperature', 'C', { optional: true, minimum: coldest, maximum: hottest, hint: 'Gives the resistance to expect.' }),
  quantity('resistance', 'Resistance read', 'resistance', 'ohm', { optional: true, ...aboveZero(1_000_000_000), hint: 'Gives the temperature it means. Type this or the temperature, not both.' }),
];

const outputs: readonly OutputDefinition[] = [
  { name: 'temperature', label: 'Temperature', kind: 'quantity', unit: 'C', decimals: 0, main: true },
  { name: 'resistance', label: 'Resistance', kind: 'quantity', unit: 'ohm' },
];

interface Sensor {
  /** Ω at 25 °C. */
  readonly nominal: number;
  /** K. */
  readonly beta: number;
}

/** The temperature of the nominal resistance, K. */
const nominalTemperature = 25 + ZERO_CELSIUS;

/** Ω at a temperature in °C. */
function resistanceAt(temperature: number, { nominal, beta }: Sensor): number {
  return nominal * Math.exp(beta * (1 / (temperature + ZERO_CELSIUS) - 1 / nominalTemperature));
}

/** °C for a resistance in Ω; not finite or below absolute zero where the law has no answer. */
function temperatureFor(resistance: number, { nominal, beta }: Sensor): number {
  const reciprocal = 1 / nominalTemperature + Math.log(resistance / nominal) / beta;
  return reciprocal <= 0 ? Infinity : 1 / reciprocal - ZERO_CELSIUS;
}

function sensorOf(given: ParsedInputs): Sensor {
  return { nominal: given.number('nominalResistance'), beta: given.number('beta') };
}

const showResistance = (ohms: number) => formatValue(ohms, 'ohm', { significant: 3 });
const showTemperature = (celsius: number) => formatValue(celsius, 'C', { decimals: 0 });

/** A temperature and a resistance that belong together, or why there is no such pair. */
function pairOf(given: ParsedInputs): Result<{ readonly temperature: number; readonly resistance: number }, Refusal> {
  const sensor = sensorOf(given);
  const [temperature, resistance] = [given.optionalNumber('temperature'), given.optionalNumber('resistance')];
  if (temperature !== undefined && resistance !== undefined) return failure(twoGiven(temperature, resistance, sensor));
  if (temperature !== undefined) return success({ temperature, resistance: resistanceAt(temperature, sensor) });
  if (resistance === undefined) {
    return failure({ input: 'temperature', code: 'missing', message: 'Temperature: nothing was typed. Type a temperature to get the resistance, or a resistance to get the temperature.' });
  }
  const found = temperatureFor(resistance, sensor);
  return found >= coldest && found <= hottest ? success({ temperature: found, resistance }) : failure(notThisSensor(resistance, found));
}

function twoGiven(temperature: number, resistance: number, sensor: Sensor): Refusal {
  const message = `Temperature and resistance were both typed. At ${showTemperature(temperature)} this sensor should read ${showResistance(resistanceAt(temperature, sensor))}, and ${showResistance(resistance)} was typed: empty one of the two fields.`;
  return { input: 'resistance', code: 'two-given', message };
}

function notThisSensor(resistance: number, temperature: number): Refusal {
  const side = temperature > hottest ? `hotter than ${showTemperature(hottest)}` : `colder than ${showTemperature(coldest)}`;
  const message = `Resistance read: ${showResistance(resistance)} would mean ${side}. Check its unit, the resistance at 25 °C and the beta value; a sensor that truly reads this is shorted or broken.`;
  return { input: 'resistance', code: 'not-this-sensor', message };
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const pair = pairOf(given);
  if (!pair.ok) return pair;
  const { temperature, resistance } = pair.value;
  return success({
    outputs: { temperature: { value: temperature, unit: 'C' }, resistance: { value: resistance, unit: 'ohm' } },
    notes: [
      `${showResistance(resistance)} belongs to ${showTemperature(temperature)}. The beta law is good to a few kelvin between about 0 and 100 °C; the sensor maker’s table comes first.`,
      'After a night’s standing the coolant and intake air sensors should show the same temperature as the air, within a few degrees. One that does not is at fault, or its wiring is.',
      'Read the sensor unplugged. A control unit that believes in a cold engine enriches the mixture, and one that believes in a hot engine starts badly in the cold.',
    ],
  });
}

const chartFrom = -20;
const chartTo = 120;
const chartSteps = 56;

function chart(given: ParsedInputs): Chart | undefined {
  const pair = pairOf(given);
  if (!pair.ok) return undefined;
  const sensor = sensorOf(given);
  const { temperature, resistance } = pair.value;
  return {
    title: 'Resistance against temperature',
    x: { label: 'Temperature', unit: 'C' },
    y: { label: 'Resistance', unit: 'ohm' },
    series: [
      {
        name: 'This sensor',
        kind: 'line',
        points: samples(Math.min(chartFrom, temperature), Math.max(chartTo, temperature), chartSteps, (x) => resistanceAt(x, sensor)),
      },
    ],
    marks: [{ x: temperature, y: resistance, label: 'Here' }],
  };
}

/** Resistance and temperature of a sensor whose resistance falls with heat (NTC), by its beta value. */
export const thermistor: CalculatorDefinition = {
  id: 'thermistor',
  title: 'Temperature sensor',
  summary: 'What should this temperature sensor read, or what temperature does its resistance mean?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['NTC', 'coolant temperature sensor', 'intake air temperature sensor', 'thermistor', 'beta value', 'sensor resistance', 'ECT', 'IAT'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => thermistor;
