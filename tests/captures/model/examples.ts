import { stringify } from 'yaml';
import { chargesOf } from './coil.ts';
import { starterCurrentOf, toothTimesOf } from './engine.ts';
import { injectorCurrentOf, injectorCurrents } from './injector.ts';
import { drawFrom } from './random.ts';
import { voltageOf } from './spark.ts';

/** An invented log or trace: its table, and beside it what was put in. */
export interface ExampleFile {
  readonly id: string;
  readonly csv: string;
  readonly yaml: string;
}

interface Beside {
  readonly title: string;
  readonly sentence: string;
  readonly kind: string;
  /** The answers to the questions of the page. */
  readonly answers: Readonly<Record<string, string>>;
  readonly truth: Readonly<Record<string, unknown>>;
}

const order = [1, 3, 4, 2];

function example(id: string, headings: readonly string[], rows: Iterable<readonly (string | number)[]>, beside: Beside): ExampleFile {
  const csv = [headings, ...rows].map((row) => row.join(',')).join('\n');
  const head = '# INVENTED FOR DEMONSTRATION. Worked out by a physical model with noise; no real car stands behind it.\n';
  return { id, csv: `${csv}\n`, yaml: head + stringify({ id, invented: true, ...beside }) };
}

/** Rows at even times: `length` and `interval` in ms. */
function* sampled(length: number, interval: number, decimals: number, signals: (time: number) => readonly string[]): Generator<readonly string[]> {
  for (let place = 0; place * interval < length; place += 1) {
    const time = place * interval;
    yield [time.toFixed(decimals), ...signals(time)];
  }
}

function pulse(time: number, at: readonly number[], width: number): string {
  return at.some((mark) => time >= mark && time < mark + width) ? '5' : '0';
}

function coilCurrent(): ExampleFile {
  const draw = drawFrom(11);
  const sound = { voltage: 13.6, resistance: 0.9, inductance: 4, dwell: 3 };
  const coilOf = (cylinder: number) => (cylinder === 3 ? { ...sound, inductance: 2.4 } : sound);
  // 800 rpm: a firing every 37.5 ms.
  const charges = Array.from({ length: 12 }, (_, number) => ({ at: 8 + 37.5 * number, coil: coilOf(order[number % 4] ?? 1) }));
  const signal = chargesOf(charges);
  const marks = charges.filter((_, number) => number % 4 === 0).map(({ at, coil }) => at + coil.dwell);
  const rows = sampled(450, 0.025, 3, (time) => [(signal(time) + 0.02 * draw.normal()).toFixed(2), pulse(time, marks, 2)]);
  return example('coil-current-one-shorted', ['Time (ms)', 'Coil current (A)', 'Trigger cylinder 1 (V)'], rows, {
    title: 'Coil current of four, one with shorted turns',
    sentence: 'A clamp round the common feed of four coils at idle, with the trigger of cylinder 1.',
    kind: 'coil-current',
    answers: { engine: 'four-inline-1342', marked: '1', supply: '13.6' },
    truth: { cylinder: 3, finding: 'shorted-turns', others: 'alike', dwell: 3, inductance: { sound: 4, shorted: 2.4 }, resistance: 0.9 },
  });
}

function secondaryVoltage(): ExampleFile {
  const draw = drawFrom(12);
  const fire = (cylinder: number) => (cylinder === 2 ? { firing: 19.5, burn: 1.9, burnTime: 0.85 } : { firing: 10.5, burn: 1.3, burnTime: 1.5 });
  // 3000 rpm: a firing every 10 ms.
  const firings = Array.from({ length: 16 }, (_, number) => {
    const { firing, burn, burnTime } = fire(order[number % 4] ?? 1);
    return { at: 3 + 10 * number, spark: { firing: firing * (1 + 0.02 * draw.normal()), rise: 0.05, burn, slope: -0.05, burnTime: burnTime * (1 + 0.01 * draw.normal()), frequency: 11, swings: 4, kick: 0.3 } };
  });
  const voltage = (time: number) => {
    const last = firings[Math.floor((time - 3) / 10)];
    return last === undefined ? 0 : voltageOf(last.spark, time - last.at);
  };
  const marks = firings.filter((_, number) => number % 4 === 0).map(({ at }) => at);
  const rows = sampled(160, 0.005, 3, (time) => [(voltage(time) + 0.02 * draw.normal()).toFixed(2), pulse(time, marks, 1)]);
  return example('secondary-voltage-wide-gap', ['Time (ms)', 'Secondary voltage (kV)', 'Trigger cylinder 1 (V)'], rows, {
    title: 'Secondary voltage of four, one plug with a wide gap',
    sentence: 'A pick-up over the leads of four cylinders at 3000 rpm, with the trigger of cylinder 1.',
    kind: 'ignition-voltage',
    answers: { engine: 'four-inline-1342', marked: '1' },
    truth: { cylinder: 2, finding: 'wide-gap', others: 'alike', firing: { wide: 19.5, sound: 10.5 }, burnTime: { wide: 0.85, sound: 1.5 } },
  });
}

function starterCurrent(): ExampleFile {
  const draw = drawFrom(13);
  const truth = { heights: [80, 80, 56, 80], friction: 90, period: 0.15, droop: 8, rush: 250, length: 7 };
  const top = truth.heights.reduce((sum, height) => sum + height, 0) / 4;
  const marks = Array.from({ length: 12 }, (_, round) => 1000 * truth.period * 4 * round + 400);
  // The starter begins after 0.4 s.
  const rows = sampled(7600, 2, 0, (time) => [(starterCurrentOf(truth, (time - 400) / 1000) + 1.5 * draw.normal()).toFixed(1), pulse(time, marks, 20)]);
  return example('starter-current-one-weak', ['Time (ms)', 'Starter current (A)', 'Trigger cylinder 1 (V)'], rows, {
    title: 'Starter current, one cylinder weak',
    sentence: 'Seven seconds of cranking without fuel and spark, with a mark of cylinder 1.',
    kind: 'starter-current',
    answers: { engine: 'four-inline-1342', marked: '1' },
    truth: { cylinder: 4, finding: 'one-weak', speed: 120 / (4 * truth.period), height: (100 * 56) / top },
  });
}

/** The voltage of an inductive sensor: it rises through nothing where a tooth passes, and rests in the gap. */
function sensorVoltage(teeth: Float64Array, usual: number): (time: number) => number {
  let place = 0;
  return (time) => {
    while (place + 2 < teeth.length && (teeth[place + 1] ?? Infinity) <= time) place += 1;
    const [from = 0, to = 1] = [teeth[place], teeth[place + 1]];
    const missing = Math.max(1, Math.round((to - from) / usual));
    const wave = ((time - from) / (to - from)) * missing;
    if (time < from) return 0;
    return wave < 0.5 || wave > missing - 0.5 ? 4 * Math.sin(2 * Math.PI * wave) : 0;
  };
}

function crankSensor(): ExampleFile {
  const draw = drawFrom(14);
  const gains = [0.02, 0.02, 0.02, -0.06];
  const truth = { places: 60, missing: 2, speed: 750, gains, scatter: 0.004, swing: 0.02, jitter: 0, turns: 18 };
  const teeth = toothTimesOf(truth, draw);
  const usual = 60 / truth.speed / truth.places;
  const voltage = sensorVoltage(teeth, usual);
  const marks = Array.from(teeth).filter((_, tooth) => tooth % (2 * (truth.places - truth.missing)) === 0).map((time) => 1000 * time);
  const rows = sampled(1000 * (teeth.at(-1) ?? 0), 0.05, 2, (time) => [(voltage(time / 1000) + 0.03 * draw.normal()).toFixed(2), pulse(time, marks, 2)]);
  return example('crank-sensor-one-weak', ['Time (ms)', 'Crank sensor (V)', 'Trigger cylinder 1 (V)'], rows, {
    title: 'Crank sensor at idle, one cylinder weak',
    sentence: 'Eighteen turns of a wheel of 60 places, two without a tooth, with the trigger of cylinder 1.',
    kind: 'crank-sensor',
    answers: { engine: 'four-inline-1342', marked: '1', top: '0' },
    truth: { cylinder: 2, finding: 'one-weak', places: 60, missing: 2, speed: 750, gain: -6 },
  });
}

function injectorCurrent(): ExampleFile {
  const draw = drawFrom(15);
  const sound = { voltage: 13.8, resistance: 13, inductance: 11, width: 3.5, moves: 0.8, stops: 1.15, motion: 5 };
  const stuck = { ...sound, moves: 9, stops: 9.5, motion: 0 };
  const pulses = Array.from({ length: 8 }, (_, number) => ({ at: 5 + 20 * number, truth: order[number % 4] === 4 ? stuck : sound }));
  const currents = new Map([sound, stuck].map((truth) => [truth, injectorCurrents(truth)]));
  const signal = (time: number) => {
    const last = pulses[Math.floor((time - 5) / 20)];
    return last === undefined ? 0 : injectorCurrentOf(currents.get(last.truth) ?? new Float64Array(2), last.truth.width, time - last.at);
  };
  const rows = sampled(164, 0.01, 2, (time) => [(signal(time) + 0.002 * draw.normal()).toFixed(3)]);
  return example('injector-current-one-stuck', ['Time (ms)', 'Injector current (A)'], rows, {
    title: 'Injector current of four, one valve that does not move',
    sentence: 'A clamp round the common feed of four port injectors at 1500 rpm; the first pulse is that of cylinder 1.',
    kind: 'injector',
    answers: { engine: 'four-inline-1342', marked: '1' },
    truth: { cylinder: 4, finding: 'no-kink', others: 'alike', width: 3.5, opens: 1.15 },
  });
}

const logHeadings = ['Time (s)', 'Engine speed (rpm)', 'Calculated load (%)', 'Coolant temperature (°C)', 'Short term fuel trim bank 1 (%)', 'Long term fuel trim bank 1 (%)', 'Short term fuel trim bank 2 (%)', 'Long term fuel trim bank 2 (%)', ...[1, 2, 3, 4, 5, 6].map((cylinder) => `Misfires cylinder ${cylinder}`), 'Engine lamp'];

function loggedTable(): ExampleFile {
  const draw = drawFrom(16);
  let four = 0;
  const rows = Array.from({ length: 600 }, (_, second) => {
    // Three minutes of idle, four of cruise, three of idle.
    const isIdle = second < 180 || second >= 420;
    if (isIdle && second % 8 === 4) four += 1;
    const [speed, load] = isIdle ? [700, 22] : [2300, 38];
    const [one, two] = isIdle ? [2, 19] : [1, 13];
    const near = (middle: number, reach: number, decimals: number) => (middle + draw.between(-reach, reach)).toFixed(decimals);
    return [second, near(speed, 25, 0), near(load, 2, 1), near(91, 1, 0), near(one / 2, 1.5, 1), (one / 2).toFixed(1), near(two / 2, 1.5, 1), (two / 2).toFixed(1), 0, 0, 0, four, second > 300 ? 1 : 0, 0, second > 60 ? 'on' : 'off'];
  });
  return example('logged-inlet-leak', logHeadings, rows, {
    title: 'Logged table, air leaking in on the second bank',
    sentence: 'Ten minutes of the vee six whose inlet gasket leaks: idle, cruise, idle.',
    kind: 'logged',
    answers: {},
    truth: { pattern: 'one-bank-adding', cylinder: 4, misfires: { cylinder4: four, all: four + 1 }, totals: { 'Bank 1, idle': 2, 'Bank 1, cruise': 1, 'Bank 2, idle': 19, 'Bank 2, cruise': 13 } },
  });
}

export function exampleFiles(): readonly ExampleFile[] {
  return [loggedTable(), coilCurrent(), secondaryVoltage(), starterCurrent(), crankSensor(), injectorCurrent()];
}
