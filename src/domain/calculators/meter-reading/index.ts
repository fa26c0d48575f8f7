import { chances, judge, meterHalfWidth, rectangular } from '../../measurement/judge.ts';
import { normalQuantile } from '../../measurement/normal.ts';
import { verdictSentence, verdictWord } from '../../measurement/sentence.ts';
import type { Judgement, Limits, Meter, VerdictWord } from '../../measurement/types.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { UnitId } from '../../units/types.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { samples } from '../samples.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { coverageNote, examples, formulas, narrowNote, noLimitsNote, table, verdictNotes } from './text.data.ts';
import { readTexts } from './typed.ts';
import type { TypedReading } from './typed.ts';

function meterOf(given: ParsedInputs, resolution: number): Meter {
  return { name: 'meter', percent: given.number('meterPercent'), counts: given.number('meterCounts'), resolution };
}

/** Nothing moves a plain reading but the meter: it is judged as it is, without leads or temperature. */
function judgeTyped(typed: TypedReading, meter: Meter, limits: Limits): Result<Judgement, Refusal> {
  const { value, resolution } = typed;
  return judge({ value, resolution, leads: 0, temperature: 20, temperatureTolerance: 0, meter }, limits);
}

function limitsOf({ low, high, unit }: TypedReading): Limits | undefined {
  if (low === undefined && high === undefined) return undefined;
  return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), unit: unit.id, variation: 'none' };
}

/** A verdict by the confidence asked for; with 0.95 it is the one that the whole book gives. */
function verdictAt(confidence: number, { probabilityBelow, probabilityInside, probabilityAbove }: Judgement): VerdictWord {
  if (probabilityInside >= confidence) return 'inside';
  if (probabilityInside > 1 - confidence) return 'too-close-to-call';
  return probabilityBelow > probabilityAbove ? 'below' : 'above';
}

function findProblem(typed: TypedReading, confidence: number): Refusal | undefined {
  if (confidence >= 1) {
    const message = `How sure you want to be: ${showFigure(confidence, '1')} can never be reached; it must be below 1. Type 0.95, or 95 % with the sign.`;
    return { input: 'confidence', code: 'too-high', message };
  }
  const show = (value: number) => showFigure(value, typed.unit.id);
  if (typed.resolution <= 0) {
    const message = `One count of the last digit: ${show(typed.resolution)} is out of range; it must be above 0. Type the smallest step the meter shows on this range, such as 0.01.`;
    return { input: 'meterResolution', code: 'too-low', message };
  }
  const { low, high } = typed;
  if (low === undefined || high === undefined || low <= high) return undefined;
  return { input: 'low', code: 'low-above-high', message: `Lower limit: ${show(low)} is above the upper limit of ${show(high)}. Change them over, or check their units.` };
}

/** Widths on a scale with an offset are differences: 1 °C of error is not the temperature 1 °C. */
const differenceUnits: Readonly<Record<UnitId, UnitId>> = { C: 'Cdiff', F: 'Fdiff', K: 'Kdiff' };

function widths(halfWidth: number, unit: UnitId): Record<string, OutputValue> {
  const of = differenceUnits[unit] ?? unit;
  const standard = rectangular(halfWidth);
  return {
    halfWidth: { value: halfWidth, unit: of },
    standardUncertainty: { value: standard, unit: of },
    expandedUncertainty: { value: 2 * standard, unit: of },
  };
}

interface Acceptance {
  readonly from?: number;
  readonly to?: number;
  /** The guard bands leave no room between them. */
  readonly none: boolean;
}

/** The limits drawn in by a guard band at each end. */
function acceptanceOf({ low, high }: TypedReading, standardUncertainty: number, confidence: number): Acceptance {
  const guard = normalQuantile(confidence) * standardUncertainty;
  const [from, to] = [low === undefined ? undefined : low + guard, high === undefined ? undefined : high - guard];
  if (from !== undefined && to !== undefined && from > to) return { none: true };
  return { none: false, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

function judgedOutputs(judgement: Judgement, acceptance: Acceptance, unit: UnitId): Record<string, OutputValue> {
  return {
    probabilityInside: { value: judgement.probabilityInside, unit: '1' },
    verdict: judgement.verdict,
    ...(acceptance.from === undefined ? {} : { acceptFrom: { value: acceptance.from, unit } }),
    ...(acceptance.to === undefined ? {} : { acceptTo: { value: acceptance.to, unit } }),
  };
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const read = readTexts(given);
  if (!read.ok) return read;
  const typed = read.value;
  const confidence = given.number('confidence');
  const problem = findProblem(typed, confidence);
  if (problem !== undefined) return failure(problem);
  const meter = meterOf(given, typed.resolution);
  const limits = limitsOf(typed);
  const judged = judgeTyped(typed, meter, limits ?? { low: typed.value, unit: typed.unit.id, variation: 'none' });
  if (!judged.ok) return failure({ ...judged.error, input: judged.error.input === 'value' ? 'reading' : judged.error.input });
  const unit = typed.unit.id;
  const values = widths(meterHalfWidth(typed.value, meter, typed.resolution), unit);
  if (limits === undefined) return success({ outputs: values, notes: [giveOrTake(typed, judged.value), noLimitsNote, coverageNote] });
  const judgement = { ...judged.value, verdict: verdictAt(confidence, judged.value) };
  const acceptance = acceptanceOf(typed, judgement.standardUncertainty, confidence);
  return success({
    outputs: { ...values, ...judgedOutputs(judgement, acceptance, unit) },
    notes: [
      `${verdictWord(judgement.verdict)}. ${verdictSentence(judgement, limits)}`,
      verdictNotes[judgement.verdict],
      ...(acceptance.none ? [narrowNote] : []),
      coverageNote,
    ],
  });
}

function giveOrTake(typed: TypedReading, judgement: Judgement): string {
  const { unit } = typed;
  const width = formatValue(judgement.expandedUncertainty, differenceUnits[unit.id] ?? unit.id, { significant: 2 });
  return `The true value lies within ${width} of the reading with at least 19 chances in 20.`;
}

const chartSteps = 60;
/** Standard uncertainties shown beyond each limit. */
const chartMargin = 4;

/** The chance of being inside for every reading near the limits: it rises to the level asked for where the guard band ends. */
function chart(given: ParsedInputs): Chart | undefined {
  const read = readTexts(given);
  if (!read.ok) return undefined;
  const typed = read.value;
  const confidence = given.number('confidence');
  const standard = rectangular(meterHalfWidth(typed.value, meterOf(given, typed.resolution), typed.resolution));
  const limits = limitsOf(typed);
  if (limits === undefined || findProblem(typed, confidence) !== undefined || !(standard > 0 && Number.isFinite(standard))) return undefined;
  const ends = [typed.low, typed.high].filter((limit) => limit !== undefined);
  const from = Math.min(...ends, typed.value) - chartMargin * standard;
  const to = Math.max(...ends, typed.value) + chartMargin * standard;
  const percentInside = (value: number) => 100 * chances(value, standard, limits).inside;
  return {
    title: 'Chance of being inside, by reading',
    x: { label: 'Reading', unit: typed.unit.id },
    y: { label: 'Chance', unit: '%' },
    series: [{ name: 'Inside', kind: 'line', points: samples(from, to, chartSteps, percentInside) }],
    marks: [{ x: typed.value, y: percentInside(typed.value), label: 'This reading' }],
    levels: [{ y: 100 * confidence, label: 'Sure enough to pass' }],
  };
}

/** What a meter's data say about a reading: how far off it may be, whether it is inside its limits, and what may be passed. */
export const meterReading: CalculatorDefinition = {
  id: 'meter-reading',
  title: 'Meter reading',
  summary: 'How far off may this reading be, and is this meter good enough to pass it?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['meter accuracy', 'multimeter', 'uncertainty', 'counts', 'tolerance', 'guard band', 'digits', 'measurement error', 'pass or fail'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => meterReading;
