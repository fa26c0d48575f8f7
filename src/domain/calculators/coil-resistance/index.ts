import { judge } from '../../measurement/judge.ts';
import { verdictSentence, verdictWord } from '../../measurement/sentence.ts';
import { referToTemperature } from '../../measurement/temperature.ts';
import type { Judgement, Limits, Reading } from '../../measurement/types.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, noLimitsNote, table, verdictNotes } from './text.data.ts';

const unit = 'ohm';

function limitsOf(given: ParsedInputs): Limits | undefined {
  const [low, high] = [given.optionalNumber('low'), given.optionalNumber('high')];
  if (low === undefined && high === undefined) return undefined;
  return {
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    unit,
    variation: 'copper',
    referenceTemperature: given.number('referenceTemperature'),
  };
}

/** The limit that says nothing, where none was given: no resistance is below zero. */
function withoutLimits(given: ParsedInputs): Limits {
  return { low: 0, unit, variation: 'copper', referenceTemperature: given.number('referenceTemperature') };
}

function readingOf(given: ParsedInputs): Reading {
  const value = given.optionalNumber('reading') ?? 'open';
  const resolution = given.optionalNumber('meterResolution') ?? (value === 'open' ? 0 : given.resolution('reading'));
  return {
    value,
    resolution,
    leads: given.number('leadResistance'),
    temperature: given.number('readingTemperature'),
    temperatureTolerance: given.number('temperatureUncertainty'),
    meter: { name: 'meter', percent: given.number('meterPercent'), counts: given.number('meterCounts'), resolution },
  };
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const [low, high] = [given.optionalNumber('low'), given.optionalNumber('high')];
  const show = (value: number) => showFigure(value, unit);
  if (low !== undefined && high !== undefined && low > high) {
    const message = `Lower limit: ${show(low)} is above the upper limit of ${show(high)}. Change them over, or check their units.`;
    return { input: 'low', code: 'low-above-high', message };
  }
  const [reading, leads] = [given.optionalNumber('reading'), given.number('leadResistance')];
  if (reading === undefined || leads <= reading) return undefined;
  const message = `Leads alone: ${show(leads)} is more than the whole reading of ${show(reading)}. Touch the probes together and read them again.`;
  return { input: 'leadResistance', code: 'leads-above-reading', message };
}

function outputsOf(judgement: Judgement, limits: Limits | undefined): Record<string, OutputValue> {
  const values: Record<string, OutputValue> = {};
  // An open circuit is a fault; only against an upper limit does the verdict say so.
  const judged = judgement.corrected === 'open' ? limits?.high !== undefined : limits !== undefined;
  if (judgement.corrected !== 'open') {
    values['corrected'] = { value: judgement.corrected, unit };
    values['expandedUncertainty'] = { value: judgement.expandedUncertainty, unit };
  }
  if (judged) {
    values['probabilityInside'] = { value: judgement.probabilityInside, unit: '1' };
    values['verdict'] = judgement.verdict;
  }
  return values;
}

function notesOf(judgement: Judgement, limits: Limits | undefined): readonly string[] {
  if (judgement.corrected === 'open') return [verdictNotes.open];
  if (limits === undefined) return [noLimitsNote];
  return [`${verdictWord(judgement.verdict)}. ${verdictSentence(judgement, limits)}`, verdictNotes[judgement.verdict]];
}

/** The measurement domain names its own fields; a refusal must name the field that was typed in. */
const fieldNames: Readonly<Record<string, string>> = {
  value: 'reading',
  leads: 'leadResistance',
  temperature: 'readingTemperature',
};

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const limits = limitsOf(given);
  const judged = judge(readingOf(given), limits ?? withoutLimits(given));
  if (!judged.ok) return failure({ ...judged.error, input: fieldNames[judged.error.input] ?? judged.error.input });
  return success({ outputs: outputsOf(judged.value, limits), notes: notesOf(judged.value, limits) });
}

const chartFrom = -20;
const chartTo = 120;
const chartStep = 10;

/** A value known at one temperature, drawn over all of them. */
function line(name: string, value: number, knownAt: number) {
  const count = (chartTo - chartFrom) / chartStep + 1;
  const points = Array.from({ length: count }, (_, index) => chartFrom + index * chartStep).map((x) => ({
    x,
    y: referToTemperature(value, knownAt, x, 'copper'),
  }));
  return { name, kind: 'line', points } as const;
}

function chart(given: ParsedInputs): Chart | undefined {
  const reading = given.optionalNumber('reading');
  if (reading === undefined || findProblem(given) !== undefined) return undefined;
  const [low, high] = [given.optionalNumber('low'), given.optionalNumber('high')];
  const [at, reference] = [given.number('readingTemperature'), given.number('referenceTemperature')];
  const winding = reading - given.number('leadResistance');
  return {
    title: 'Winding resistance against temperature',
    x: { label: 'Winding temperature', unit: 'C' },
    y: { label: 'Resistance', unit },
    series: [
      line('This winding', winding, at),
      ...(low === undefined ? [] : [line('Lower limit', low, reference)]),
      ...(high === undefined ? [] : [line('Upper limit', high, reference)]),
    ],
    marks: [{ x: at, y: winding, label: 'Read here' }],
  };
}

/** A coil winding's resistance, freed of leads, referred to the temperature of its limits and judged against them. */
export const coilResistance: CalculatorDefinition = {
  id: 'coil-resistance',
  title: 'Coil resistance',
  summary: 'Is this winding good, once leads, temperature and meter are allowed for?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: [
    'primary resistance',
    'secondary resistance',
    'ohms',
    'coil test',
    'ignition coil',
    'winding',
    'multimeter',
    'temperature correction',
  ],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => coilResistance;
