import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { samples } from '../samples.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, table } from './text.data.ts';

/** A winding and what drives it. Milliseconds, millihenries and millijoules belong together, so no factor is needed. */
interface Circuit {
  /** V, after the switch has taken its part. */
  readonly voltage: number;
  /** Ω. */
  readonly resistance: number;
  /** mH. */
  readonly inductance: number;
}

function circuitOf(given: ParsedInputs): Circuit {
  const voltage = given.number('supplyVoltage') - given.number('switchDrop');
  return { voltage, resistance: given.number('resistance'), inductance: given.number('inductance') };
}

/** Milliseconds. */
function timeConstant({ inductance, resistance }: Circuit): number {
  return inductance / resistance;
}

/** Amperes. */
function finalCurrent({ voltage, resistance }: Circuit): number {
  return voltage / resistance;
}

function currentAfter(time: number, circuit: Circuit): number {
  return finalCurrent(circuit) * -Math.expm1(-time / timeConstant(circuit));
}

/** Milliseconds to a current below the final one. */
function timeTo(current: number, circuit: Circuit): number {
  return -timeConstant(circuit) * Math.log1p(-current / finalCurrent(circuit));
}

/** Millijoules. */
function energyAt(current: number, { inductance }: Circuit): number {
  return (inductance * current ** 2) / 2;
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const [supply, drop] = [given.number('supplyVoltage'), given.number('switchDrop')];
  if (drop >= supply) {
    const message = `Voltage lost in the switch: ${showFigure(drop, 'V')} leaves nothing of the supply of ${showFigure(supply, 'V')} for the coil. It must be less than the supply.`;
    return { input: 'switchDrop', code: 'drop-above-supply', message };
  }
  const [target, final] = [given.optionalNumber('targetCurrent'), finalCurrent(circuitOf(given))];
  if (target === undefined || target < final) return undefined;
  const message = `Current wanted: ${showFigure(target, 'A')} is never reached. With this voltage and resistance the current levels off at ${showFigure(final, 'A')}; ask for less, or look for lost volts or too much resistance.`;
  return { input: 'targetCurrent', code: 'never-reached', message };
}

/** Usual figures of the trade, without a published source. */
const usualCurrent = { low: 6, high: 10 };
const usualEnergy = { low: 30, high: 100 };

function currentNote(current: number, energy: number): string {
  const found = `After the charging time the coil carries ${formatValue(current, 'A', { decimals: 1 })} and holds ${formatValue(energy, 'mJ', { decimals: 0 })}.`;
  const usual = `Electronic ignitions as a rule switch off at ${usualCurrent.low} to ${usualCurrent.high} A with ${usualEnergy.low} to ${usualEnergy.high} mJ (common practice)`;
  if (current < usualCurrent.low) return `${found} ${usual}; this is less, and the spark is weak when voltage or time falls further. Check the supply at the coil first.`;
  if (current > usualCurrent.high) return `${found} ${usual}; this is more. A driver that limits the current cuts it off there, and one that does not overheats coil and switch.`;
  return `${found} ${usual}.`;
}

const modelNote =
  'The core is taken as never full. A real core saturates, and the current then rises faster than this near the end, without storing the energy in step: compare with a clamp meter and scope.';

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const circuit = circuitOf(given);
  const values: Record<string, OutputValue> = {
    timeConstant: { value: timeConstant(circuit), unit: 'ms' },
    finalCurrent: { value: finalCurrent(circuit), unit: 'A' },
  };
  const notes: string[] = [];
  const [time, target] = [given.optionalNumber('chargeTime'), given.optionalNumber('targetCurrent')];
  if (time !== undefined) {
    const current = currentAfter(time, circuit);
    values['current'] = { value: current, unit: 'A' };
    values['energy'] = { value: energyAt(current, circuit), unit: 'mJ' };
    notes.push(currentNote(current, energyAt(current, circuit)));
  }
  if (target !== undefined) {
    values['timeToTarget'] = { value: timeTo(target, circuit), unit: 'ms' };
    values['energyAtTarget'] = { value: energyAt(target, circuit), unit: 'mJ' };
    notes.push(`It takes ${formatValue(timeTo(target, circuit), 'ms', { decimals: 2 })} of charging to reach ${showFigure(target, 'A')}; a lower voltage makes it longer.`);
  }
  if (time === undefined && target === undefined) notes.push('Type the charging time or the current wanted to see more than the final current.');
  return success({
    outputs: values,
    notes: [...notes, modelNote],
    next: [{ page: 'procedures/coil-supply-volt-drop', label: 'Measure the voltage drop of the coil supply' }],
  });
}

const chartSteps = 60;
/** After three time constants 95 % of the final current flows. */
const timeConstantsShown = 3;

function chart(given: ParsedInputs): Chart | undefined {
  if (findProblem(given) !== undefined) return undefined;
  const circuit = circuitOf(given);
  const [time, target] = [given.optionalNumber('chargeTime'), given.optionalNumber('targetCurrent')];
  const toTarget = target === undefined ? 0 : timeTo(target, circuit);
  const end = Math.max(timeConstantsShown * timeConstant(circuit), time ?? 0, toTarget);
  return {
    title: 'Current in the coil against time',
    x: { label: 'Time', unit: 'ms' },
    y: { label: 'Current', unit: 'A' },
    series: [{ name: 'Current', kind: 'line', points: samples(0, end, chartSteps, (x) => currentAfter(x, circuit)) }],
    marks: time === undefined ? [] : [{ x: time, y: currentAfter(time, circuit), label: 'Switched off here' }],
    levels: [
      { y: finalCurrent(circuit), label: 'Final current' },
      ...(target === undefined ? [] : [{ y: target, label: 'Current wanted' }]),
    ],
  };
}

/** Current and energy of an ignition coil while it charges: a winding of resistance and inductance on a steady voltage. */
export const coilCharge: CalculatorDefinition = {
  id: 'coil-charge',
  title: 'Coil charging',
  summary: 'How much current and energy does the coil have after this dwell, and how long does it need?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['dwell', 'primary current', 'charging time', 'inductance', 'millihenry', 'stored energy', 'millijoule', 'time constant', 'current ramp'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => coilCharge;
