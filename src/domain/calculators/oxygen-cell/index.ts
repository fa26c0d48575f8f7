import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, ParsedInputs } from '../definition.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { cellVoltage, oxygenPressureFrom } from './nernst.ts';
import { examples, formulas, notes, table } from './text.data.ts';

/** Below this, °C, the ceramic hardly conducts and the meter reads less than the cell gives. Common practice; a university page gives 350. */
const workingTemperature = 350;
/** A cell swings between about 100 and 900 mV and switches at about 450. Common practice; the middle third counts as the switch. */
const leanBelow = 300;
const richAbove = 600;
/** A figure this small, mV, is more likely a reading in volts typed without its unit. */
const highestLikelyVolts = 1.3;

type Side = 'lean' | 'switching' | 'rich';

function sideOf(voltage: number): Side {
  if (voltage < leanBelow) return 'lean';
  return voltage > richAbove ? 'rich' : 'switching';
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const [voltage, pressure] = [given.optionalNumber('voltage'), given.optionalNumber('oxygenPressure')];
  if (voltage === undefined && pressure === undefined) {
    const message = 'Voltage of the cell: nothing was typed. Give the voltage to get the oxygen, or the oxygen pressure to get the voltage.';
    return { input: 'voltage', code: 'missing', message };
  }
  if (voltage === undefined || pressure === undefined) return undefined;
  const message = `Voltage ${showFigure(voltage, 'mV')} and oxygen pressure ${showFigure(pressure, 'atm')} were both given, but each follows from the other. Clear one of them.`;
  return { input: 'voltage', code: 'both-given', message };
}

function notesFor(given: ParsedInputs, voltage: number, side: Side): readonly string[] {
  const typed = given.optionalNumber('voltage');
  return [
    ...(typed !== undefined && typed !== 0 && Math.abs(typed) <= highestLikelyVolts ? [notes.perhapsVolts] : []),
    ...(given.number('temperature') < workingTemperature ? [notes.cold] : []),
    ...(voltage < 0 ? [notes.negative] : [notes[side]]),
    notes.oxygenOnly,
  ];
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const [temperature, reference] = [given.number('temperature'), given.number('referencePressure')];
  const pressure = given.optionalNumber('oxygenPressure') ?? oxygenPressureFrom(temperature, given.number('voltage'), reference);
  const voltage = given.optionalNumber('voltage') ?? cellVoltage(temperature, pressure, reference);
  const side = sideOf(voltage);
  return success({
    outputs: {
      voltage: { value: voltage, unit: 'mV' },
      oxygenPressure: { value: pressure, unit: 'atm' },
      decades: { value: Math.log10(reference / pressure), unit: '1' },
      side,
    },
    notes: notesFor(given, voltage, side),
    next: [
      { page: 'procedures/lambda-sensor-response', label: 'Test how the sensor responds' },
      { page: 'calculators/exhaust-lambda', label: 'Lambda from the exhaust gas' },
    ],
  });
}

/** Voltage of a zirconia oxygen cell from the oxygen on its two sides, or the oxygen from the voltage, by the Nernst equation. */
export const oxygenCell: CalculatorDefinition = {
  id: 'oxygen-cell',
  title: 'Oxygen sensor cell',
  summary: 'What voltage should this oxygen sensor give, or what oxygen does its voltage stand for?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['oxygen sensor', 'O2 sensor', 'lambda sensor', 'lambda probe', 'narrow band', 'zirconia', 'Nernst', '450 mV', '0.45 V'],
  compute,
};

export const calculator: CalculatorMaker = () => oxygenCell;
