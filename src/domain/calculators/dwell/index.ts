import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, ParsedInputs } from '../definition.ts';
import { samples } from '../samples.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, table } from './text.data.ts';
import { angleOf, coilPeriod, eventRate, eventSpacing, timeOf } from './timing.ts';
import type { Arrangement } from './timing.ts';

interface Engine {
  readonly cylinders: number;
  readonly speed: number;
  readonly arrangement: Arrangement;
}

function refuse(input: string, code: string, message: string): { readonly ok: false; readonly error: Refusal } {
  return failure({ input, code, message });
}

function arrangementOf(text: string): Arrangement {
  return text === 'wasted-spark' || text === 'distributor' ? text : 'coil-per-plug';
}

function readEngine(given: ParsedInputs): Result<Engine, Refusal> {
  const arrangement = arrangementOf(given.text('arrangement'));
  const cylinders = given.number('cylinders');
  if (arrangement === 'wasted-spark' && cylinders % 2 === 1) {
    return refuse('arrangement', 'wasted-spark-odd', `A coil for two plugs needs cylinders in pairs; this engine has ${cylinders}. Choose another ignition.`);
  }
  return success({ cylinders, speed: given.number('speed'), arrangement });
}

/** The time, from whichever of time and angle was given. */
function readTime(given: ParsedInputs, { speed }: Engine): Result<number, Refusal> {
  const [time, angle] = [given.optionalNumber('time'), given.optionalNumber('angle')];
  if (time !== undefined && angle !== undefined) {
    return refuse('angle', 'time-and-angle', 'A time and an angle were both given, and each follows from the other. Give one of them.');
  }
  if (time !== undefined) return success(time);
  if (angle !== undefined) return success(timeOf(angle, speed));
  return refuse('time', 'missing', 'Neither a time nor an angle was given. Give the time in milliseconds or the angle at the crank in degrees.');
}

function tooLong(given: ParsedInputs, time: number, period: number) {
  const input = given.has('time') ? 'time' : 'angle';
  const [found, room] = [formatValue(time, 'ms', { decimals: 2 }), formatValue(period, 'ms', { decimals: 2 })];
  return refuse(input, 'longer-than-period', `${found} does not fit: at this speed the coil fires every ${room}. Check the speed, the unit and the ignition.`);
}

/** Engine and time, held against each other. */
function readTiming(given: ParsedInputs): Result<Engine & { readonly time: number; readonly period: number }, Refusal> {
  const engine = readEngine(given);
  if (!engine.ok) return engine;
  const time = readTime(given, engine.value);
  if (!time.ok) return time;
  const { arrangement, speed, cylinders } = engine.value;
  const period = coilPeriod(arrangement, speed, cylinders);
  // An angle is turned into a time and back, which may add noise in the last digit.
  if (time.value > period * (1 + 1e-12)) return tooLong(given, time.value, period);
  return success({ ...engine.value, time: time.value, period });
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const timing = readTiming(given);
  if (!timing.ok) return timing;
  const { cylinders, speed, time, period } = timing.value;
  const angle = given.optionalNumber('angle') ?? angleOf(time, speed);
  const left = formatValue(Math.max(0, period - time), 'ms', { decimals: 2 });
  return success({
    outputs: {
      angle: { value: angle, unit: 'deg' },
      time: { value: time, unit: 'ms' },
      distributorAngle: { value: angle / 2, unit: 'deg' },
      share: { value: (100 * time) / period, unit: '%' },
      eventSpacing: { value: eventSpacing(speed, cylinders), unit: 'ms' },
      eventRate: { value: eventRate(speed, cylinders), unit: 'Hz' },
    },
    notes: [
      `The coil fires every ${formatValue(period, 'ms', { decimals: 2 })}; after this time ${left} is left for the spark to burn and for the coil to rest.`,
      'Control units set dwell by battery voltage and speed, so it shrinks as the voltage rises: note both beside a reading.',
    ],
  });
}

const chartSteps = 40;
const usualLowSpeed = 500;
const usualTopSpeed = 7000;

/** How a fixed time eats up the coil's period as the engine speeds up. */
function chart(given: ParsedInputs): Chart | undefined {
  const timing = readTiming(given);
  if (!timing.ok) return undefined;
  const { arrangement, cylinders, speed, time, period } = timing.value;
  const top = Math.max(usualTopSpeed, 1.2 * speed);
  const share = (at: number) => (100 * time) / coilPeriod(arrangement, at, cylinders);
  const longestSpeed = speed * (period / time);
  return {
    title: 'Share of the coil’s period that this time takes',
    x: { label: 'Engine speed', unit: 'rpm' },
    y: { label: 'Share', unit: '%' },
    series: [{ name: 'This time', kind: 'line', points: samples(Math.min(speed, usualLowSpeed), Math.min(top, longestSpeed), chartSteps, share) }],
    marks: [{ x: speed, y: share(speed), label: 'This speed' }],
    levels: [{ y: 100, label: 'No time left' }],
  };
}

/** Milliseconds and degrees of crank or distributor, and how much of a coil's period they take. */
export const dwell: CalculatorDefinition = {
  id: 'dwell',
  title: 'Dwell and timing',
  summary: 'How many degrees is this time at this speed, and how much of the coil’s time does it take?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['dwell angle', 'dwell time', 'milliseconds to degrees', 'burn time', 'points', 'contact breaker', 'duty', 'ignition frequency'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => dwell;
