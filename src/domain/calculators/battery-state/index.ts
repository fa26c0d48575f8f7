import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { convertBetween } from '../../units/convert.ts';
import { formatValue } from '../../units/format.ts';
import { unitById } from '../../units/table.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { interpolate } from '../interpolate.ts';
import type { Row } from '../interpolate.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { chargeByGravity, chargeByVoltage, loadMinimumByTemperature } from './tables.data.ts';
import { examples, formulas, table } from './text.data.ts';

/** °F at which the specific gravity needs no correction, and the correction for each 10 °F. Common practice, in a public table too. */
const referenceFahrenheit = 80;
const gravityPerTenFahrenheit = 0.004;
/** Common practice: less charge than this is charged before the battery is judged. */
const chargedEnough = 75;
/** A battery shows more than this only while it is charged or just after: older public tables begin charging voltage here. */
const mostAtRest = 13.2;

/** What can be said of the battery; a part is absent where its reading is. */
interface State {
  readonly fahrenheit: number;
  readonly byVoltage?: number;
  readonly gravity?: number;
  readonly byGravity?: number;
  /** From the acid where it was read, for it cannot be fooled by a recent charge. */
  readonly charge?: number;
  /** V; absent below the coldest row of the table. */
  readonly loadMinimum?: number;
}

function fahrenheitOf(celsius: number): number {
  const [from, to] = [unitById('C'), unitById('F')];
  if (from === undefined || to === undefined) throw new RangeError('The unit table has lost its temperatures.');
  return convertBetween(celsius, from, to);
}

function stateOf(given: ParsedInputs): State {
  const fahrenheit = fahrenheitOf(given.number('temperature'));
  const [voltage, read] = [given.optionalNumber('openCircuitVoltage'), given.optionalNumber('specificGravity')];
  const byVoltage = voltage === undefined ? undefined : interpolate(chargeByVoltage, voltage);
  const gravity = read === undefined ? undefined : read + (gravityPerTenFahrenheit * (fahrenheit - referenceFahrenheit)) / 10;
  const byGravity = gravity === undefined ? undefined : interpolate(chargeByGravity, gravity);
  const charge = byGravity ?? byVoltage;
  const coldest = loadMinimumByTemperature[0]?.[0] ?? 0;
  return {
    fahrenheit,
    ...(byVoltage === undefined ? {} : { byVoltage }),
    ...(gravity === undefined || byGravity === undefined ? {} : { gravity, byGravity }),
    ...(charge === undefined ? {} : { charge }),
    ...(fahrenheit < coldest ? {} : { loadMinimum: interpolate(loadMinimumByTemperature, fahrenheit) }),
  };
}

function findProblem(given: ParsedInputs, state: State): Refusal | undefined {
  if (!['openCircuitVoltage', 'specificGravity', 'loadVoltage'].some((name) => given.has(name))) {
    const message = 'Voltage at rest: nothing was typed. Type the voltage at rest, the specific gravity or the voltage under load.';
    return { input: 'openCircuitVoltage', code: 'missing', message };
  }
  const [voltage, load] = [given.optionalNumber('openCircuitVoltage'), given.optionalNumber('loadVoltage')];
  if (voltage !== undefined && voltage > mostAtRest) {
    const message = `Voltage at rest: ${showFigure(voltage, 'V')} is a charging voltage, or not a 12 V battery. Take the charger off, let a 12 V battery rest for some hours, and read again: at most ${mostAtRest} V is accepted.`;
    return { input: 'openCircuitVoltage', code: 'not-at-rest', message };
  }
  if (load !== undefined && voltage !== undefined && load > voltage) {
    const message = `Voltage under load: ${showFigure(load, 'V')} is more than the ${showFigure(voltage, 'V')} at rest, and a load only pulls it down. Change the two over, or read again with the load on.`;
    return { input: 'loadVoltage', code: 'load-above-rest', message };
  }
  if (load === undefined || state.loadMinimum !== undefined) return undefined;
  const message = `Battery temperature: the load test is not laid down below 0 °F (−17.8 °C). Warm the battery and test again.`;
  return { input: 'temperature', code: 'too-cold', message };
}

type Verdict = 'inside' | 'below' | 'too-close-to-call';

/** Under load where it was loaded; else by the charge. A flat battery that fails under load is not judged: it may only be flat. */
function verdictOf(given: ParsedInputs, { charge, loadMinimum }: State): Verdict {
  const load = given.optionalNumber('loadVoltage');
  const charged = charge === undefined || charge >= chargedEnough;
  if (load === undefined || loadMinimum === undefined) return charged ? 'inside' : 'below';
  if (load >= loadMinimum) return 'inside';
  return charged ? 'below' : 'too-close-to-call';
}

const percent = (value: number) => formatValue(value, '%', { decimals: 0 });

/** Voltage and acid this far apart, in percent of charge, tell of something more than the table's own doubt. */
const apart = 25;

function chargeNotes({ charge, byVoltage, byGravity }: State): readonly string[] {
  if (charge === undefined) return ['Without a voltage at rest the load test counts only for a battery at least three quarters charged.'];
  const differ = byVoltage !== undefined && byGravity !== undefined && Math.abs(byVoltage - byGravity) > apart;
  return [
    charge >= chargedEnough
      ? `Charged to ${percent(charge)}: enough for tests that need the starter or a steady supply. Charge is not health; the voltage under load shows that.`
      : `Charged to ${percent(charge)} only. Charge it before any test that needs the starter or a steady supply, and find out why it was low.`,
    ...(charge <= 0 ? ['This is the bottom of the table: fully flat, or a cell has failed. If charging does not lift it, renew it.'] : []),
    ...(differ ? [`By the voltage it would be ${percent(byVoltage)}, by the acid ${percent(byGravity)}. The acid is shown: rest the battery longer, and ask whether acid or water was added.`] : []),
  ];
}

function loadNotes(given: ParsedInputs, state: State): readonly string[] {
  const load = given.optionalNumber('loadVoltage');
  if (load === undefined || state.loadMinimum === undefined) return [];
  const found = `Under load ${showFigure(load, 'V')} against ${formatValue(state.loadMinimum, 'V', { decimals: 2 })} at ${formatValue(state.fahrenheit, 'F', { decimals: 0 })}`;
  switch (verdictOf(given, state)) {
    case 'inside':
      return [`${found}: it holds.`];
    case 'below':
      return [`${found}: it does not hold. Check the clamps and test once more, then renew the battery.`];
    case 'too-close-to-call':
      return [`${found}: it does not hold, but it is not charged enough to be judged. Charge it fully, let it rest, and test again.`];
  }
}

const safetyNote = 'A charging battery gives off explosive gas and holds acid: eye protection on, no flame or spark near, load off before the clamps are moved.';

function outputsOf(given: ParsedInputs, state: State): Record<string, OutputValue> {
  const values: Record<string, OutputValue> = {};
  if (state.charge !== undefined) values['stateOfCharge'] = { value: state.charge, unit: '%' };
  if (state.gravity !== undefined) values['correctedSpecificGravity'] = { value: state.gravity, unit: '1' };
  if (state.loadMinimum !== undefined) values['loadMinimum'] = { value: state.loadMinimum, unit: 'V' };
  values['verdict'] = verdictOf(given, state);
  return values;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const state = stateOf(given);
  const problem = findProblem(given, state);
  if (problem !== undefined) return failure(problem);
  return success({
    outputs: outputsOf(given, state),
    notes: [...loadNotes(given, state), ...chargeNotes(state), safetyNote],
    next: [{ page: 'ranges/battery-rest', label: 'Battery at rest' }],
  });
}

const pointsOf = (rows: readonly Row[]) => rows.map(([x, y]) => ({ x, y }));

/** Charge against voltage where the voltage at rest was read; the least voltage against temperature where the battery was loaded. */
function chart(given: ParsedInputs): readonly Chart[] {
  const state = stateOf(given);
  if (findProblem(given, state) !== undefined) return [];
  const [voltage, load] = [given.optionalNumber('openCircuitVoltage'), given.optionalNumber('loadVoltage')];
  const charge: readonly Chart[] = voltage === undefined || state.byVoltage === undefined ? [] : [chargeChart(voltage, state.byVoltage)];
  return load === undefined ? charge : [...charge, loadChart(state.fahrenheit, load)];
}

function chargeChart(voltage: number, charge: number): Chart {
  return {
    title: 'State of charge against voltage at rest',
    x: { label: 'Voltage at rest', unit: 'V' },
    y: { label: 'Charge', unit: '%' },
    series: [{ name: 'Table', kind: 'line', points: pointsOf(chargeByVoltage) }],
    marks: [{ x: voltage, y: charge, label: 'This battery' }],
    levels: [{ y: chargedEnough, label: 'Enough to test' }],
  };
}

function loadChart(fahrenheit: number, load: number): Chart {
  return {
    title: 'Least voltage under load against temperature',
    x: { label: 'Battery temperature', unit: 'F' },
    y: { label: 'Voltage', unit: 'V' },
    series: [{ name: 'Least', kind: 'line', points: pointsOf(loadMinimumByTemperature) }],
    marks: [{ x: fahrenheit, y: load, label: 'This battery' }],
  };
}

/** State of charge of a 12 V lead-acid battery and whether it holds up under load. */
export const batteryState: CalculatorDefinition = {
  id: 'battery-state',
  title: 'Battery state',
  summary: 'How far is this 12 V battery charged, and does it hold up under load?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['state of charge', 'battery voltage', 'hydrometer', 'specific gravity', 'load test', 'cranking', 'flat battery', 'lead-acid'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => batteryState;
