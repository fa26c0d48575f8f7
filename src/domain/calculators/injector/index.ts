import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { refuseDirectInjection } from '../pressures.ts';
import { samples } from '../samples.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, notes, table } from './text.data.ts';

/** A cycle of a four-stroke engine is two revolutions: it lasts this many milliseconds over the revolutions per minute. */
const millisecondsTimesSpeed = 120_000;
/** Above this duty, %, an injector hardly closes between pulses. Common practice. */
const highestSensibleDuty = 85;
const fullDuty = 100;

const flowGroup = ['ratedFlow', 'ratedPressure', 'pressure'] as const;
const dutyGroup = ['pulseWidth', 'speed'] as const;

/** Flow through the same opening at another pressure. */
function flowAt(pressure: number, ratedFlow: number, ratedPressure: number): number {
  return ratedFlow * Math.sqrt(pressure / ratedPressure);
}

/** The first of a group that is missing although another of it was given. */
function findGap(given: ParsedInputs, group: readonly string[]): Refusal | undefined {
  if (!group.some((name) => given.has(name))) return undefined;
  const missing = inputs.find(({ name }) => group.includes(name) && !given.has(name));
  if (missing === undefined) return undefined;
  const labels = inputs.filter(({ name }) => group.includes(name)).map(({ label }) => label.toLowerCase());
  return { input: missing.name, code: 'missing', message: `${missing.label}: nothing was typed. These are needed together: ${labels.join('; ')}.` };
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  if (![...flowGroup, ...dutyGroup].some((name) => given.has(name))) {
    const message = 'Rated flow: nothing was typed. Give rated flow, its pressure and the pressure now for the flow, or pulse width and engine speed for the duty cycle.';
    return { input: 'ratedFlow', code: 'missing', message };
  }
  return (
    findGap(given, flowGroup) ??
    findGap(given, dutyGroup) ??
    refuseDirectInjection('ratedPressure', 'Pressure at the rating', given.optionalNumber('ratedPressure')) ??
    refuseDirectInjection('pressure', 'Pressure now', given.optionalNumber('pressure'))
  );
}

function dutyNote(duty: number): string {
  if (duty > fullDuty) return notes.heldOpen;
  return duty > highestSensibleDuty ? notes.nearLimit : notes.inHand;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const values: Record<string, OutputValue> = {};
  const said: string[] = [];
  if (given.has('pressure')) {
    values['flow'] = { value: flowAt(given.number('pressure'), given.number('ratedFlow'), given.number('ratedPressure')), unit: 'ml/min' };
    said.push(notes.flow);
  }
  if (given.has('speed')) {
    const longest = millisecondsTimesSpeed / (given.number('speed') * given.number('pulsesPerCycle'));
    const duty = (fullDuty * given.number('pulseWidth')) / longest;
    values['dutyCycle'] = { value: duty, unit: '%' };
    values['longestPulse'] = { value: longest, unit: 'ms' };
    said.push(dutyNote(duty));
  }
  const next = [
    { page: 'procedures/injector-drive-pulse', label: 'See whether the injector is driven' },
    { page: 'procedures/injector-resistance', label: 'Injector resistance' },
    { page: 'procedures/swap-injectors', label: 'Swap injectors' },
  ];
  return success({ outputs: values, notes: said, next });
}

const chartPoints = 40;

function chart(given: ParsedInputs): Chart | undefined {
  if (!given.has('pressure') || findProblem(given) !== undefined) return undefined;
  const [flow, rated, pressure] = [given.number('ratedFlow'), given.number('ratedPressure'), given.number('pressure')];
  const highest = 1.25 * Math.max(rated, pressure);
  const points = samples(0, highest, chartPoints, (at) => flowAt(at, flow, rated));
  return {
    title: 'Injector flow against pressure',
    x: { label: 'Pressure across the injector', unit: 'kPa' },
    y: { label: 'Flow, held open', unit: 'ml/min' },
    series: [{ name: 'This injector', kind: 'line', points }],
    marks: [
      { x: rated, y: flow, label: 'Rating' },
      { x: pressure, y: flowAt(pressure, flow, rated), label: 'Now' },
    ],
  };
}

/** Flow of a port injector at another pressure, and the share of the time it is held open. */
export const injector: CalculatorDefinition = {
  id: 'injector',
  title: 'Injector flow and duty cycle',
  summary: 'How much does this injector pass at the pressure it feels, and is there time left for its pulse?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['injector size', 'flow rate', 'cc/min', 'duty cycle', 'pulse width', 'injection time', 'dead time', 'lean under load'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => injector;
