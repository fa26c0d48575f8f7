import { judge } from '../measurement/judge.ts';
import type { Judgement, Limits } from '../measurement/types.ts';
import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { convert } from '../units/convert.ts';
import { parseInputText } from '../units/parse.ts';
import { unitById } from '../units/table.ts';
import type { Dimension, ParsedText } from '../units/types.ts';
import type { JobRange } from './book.ts';
import { makerSourceId } from './reduce.ts';
import type { MeterNoted, PlaceNoted, ReadingTaken } from './types.ts';

/** What was typed into the fields of a reading; empty text takes the stated default. */
export interface ReadingTexts {
  readonly reading: string;
  /** Temperature of the part. Without a unit it is in `temperatureUnit`. Empty: 20 °C. */
  readonly temperature: string;
  /** Leads touched together. Empty: 0. */
  readonly leads: string;
  /** Meter: percent of reading and counts of the last digit. Empty: the usual meter of the range. */
  readonly meterPercent: string;
  readonly meterCounts: string;
  /** Size of one count. Empty or left out: from the digits of the reading. */
  readonly meterResolution?: string;
  /** What the meter is called; kept with the reading. */
  readonly meterName?: string;
  /** The engine maker's limits. Both empty: the book's range is used. */
  readonly makerLow: string;
  readonly makerHigh: string;
  /** The temperature the maker's limits hold at. Empty: that of the book's range. */
  readonly makerTemperature: string;
  /** Where the maker's figure was read, when it came with the engine and stands as it came. Left out: it was typed. */
  readonly makerFrom?: string;
}

export interface ReadingPlace {
  readonly test?: string;
  readonly place?: PlaceNoted;
}

export interface JudgedReading {
  readonly limits: Limits;
  readonly judgement: Judgement;
  readonly body: Omit<ReadingTaken, 'id' | 'sequence' | 'at'>;
}

const usualTemperature = 20;
/** How far off a temperature read from a workshop thermometer may be: an estimate, common practice. */
const temperatureTolerance = 3;

/**
 * A typed reading judged against a range of the book, or against the engine maker's figure once that is typed.
 * Refuses, naming the field, whatever cannot be read.
 */
export function judgeTypedReading(
  texts: ReadingTexts,
  range: JobRange,
  temperatureUnit: 'C' | 'F',
  where: ReadingPlace = {},
): Result<JudgedReading, Refusal> {
  const fields = readFields(texts, range, temperatureUnit);
  if (!fields.ok) return fields;
  const { reading, temperature, leads, meter, limits, fromMaker } = fields.value;
  const value = reading.kind === 'open' ? ('open' as const) : reading.value;
  const resolution = reading.kind === 'open' ? 0 : reading.resolution;
  const judged = judge({ value, resolution, leads, temperature, temperatureTolerance, meter }, limits);
  if (!judged.ok) return judged;
  const body = {
    kind: 'reading-taken' as const,
    ...where,
    range: range.id,
    title: range.title,
    text: texts.reading.trim(),
    value,
    unit: range.unit,
    leads,
    temperature,
    meter,
    corrected: judged.value.corrected,
    expandedUncertainty: judged.value.expandedUncertainty,
    verdict: judged.value.verdict,
    limits: { ...endsOf(limits), ...(fromMaker ? makerSource(texts.makerFrom) : bookSource(range)) },
  };
  return success({ limits, judgement: judged.value, body });
}

interface LimitsSource {
  readonly sourceId: string;
  readonly sourceLabel: string;
}

function makerSource(from = "the engine maker's figure, as typed"): LimitsSource {
  return { sourceId: makerSourceId, sourceLabel: from };
}

function bookSource(range: JobRange): LimitsSource {
  return { sourceId: range.sourceId, sourceLabel: range.sourceLabel };
}

function endsOf({ low, high, referenceTemperature }: Limits): Pick<Limits, 'low' | 'high' | 'referenceTemperature'> {
  return {
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    ...(referenceTemperature === undefined ? {} : { referenceTemperature }),
  };
}

/** The limits of a range as measurement takes them. */
export function limitsOfRange(range: JobRange): Limits {
  return { ...endsOf(range), unit: range.unit, variation: range.variation };
}

interface ReadFields {
  readonly reading: ParsedText;
  readonly temperature: number;
  readonly leads: number;
  readonly meter: MeterNoted;
  readonly limits: Limits;
  readonly fromMaker: boolean;
}

function readFields(texts: ReadingTexts, range: JobRange, temperatureUnit: 'C' | 'F'): Result<ReadFields, Refusal> {
  const dimension = unitById(range.unit)?.dimension ?? 'count';
  const acceptOpen = dimension === 'resistance';
  const reading = parseInputText(texts.reading, { input: 'reading', label: 'Your reading', dimension, unit: range.unit, acceptOpen, ...(range.pressure ? { pressure: range.pressure } : {}) });
  if (!reading.ok) return reading;
  const temperature = readTemperature(texts.temperature, 'temperature', temperatureUnit, usualTemperature);
  if (!temperature.ok) return temperature;
  const leads = numberOr(0, texts.leads, 'leads', 'Leads', dimension, range.unit);
  if (!leads.ok) return leads;
  const percent = numberOr(range.usualMeter.percent, texts.meterPercent, 'meterPercent', 'Per cent of the reading', 'ratio', '%');
  if (!percent.ok) return percent;
  const counts = numberOr(range.usualMeter.counts, texts.meterCounts, 'meterCounts', 'Counts of the last digit', 'count', 'count');
  if (!counts.ok) return counts;
  const resolution = optionalNumber(texts.meterResolution ?? '', 'meterResolution', 'Size of one count', dimension, range.unit);
  if (!resolution.ok) return resolution;
  const limits = readLimits(texts, range, dimension, temperatureUnit);
  if (!limits.ok) return limits;
  const figures = { name: texts.meterName ?? '', percent: percent.value, counts: counts.value };
  const meter = resolution.value === undefined ? figures : { ...figures, resolution: resolution.value };
  return success({ reading: reading.value, temperature: temperature.value, leads: leads.value, meter, ...limits.value });
}

function readTemperature(text: string, input: string, unit: 'C' | 'F', usual: number): Result<number, Refusal> {
  if (text.trim() === '') return success(usual);
  const typed = numberOr(usual, text, input, 'Temperature', 'temperature', unit);
  return typed.ok ? convert(typed.value, unit, 'C') : typed;
}

/** The maker's figure, once either end is typed, stands instead of the book's. */
function readLimits(
  texts: ReadingTexts,
  range: JobRange,
  dimension: Dimension,
  temperatureUnit: 'C' | 'F',
): Result<Pick<ReadFields, 'limits' | 'fromMaker'>, Refusal> {
  const limits = limitsOfRange(range);
  const low = optionalNumber(texts.makerLow, 'makerLow', "Maker's lowest", dimension, range.unit);
  if (!low.ok) return low;
  const high = optionalNumber(texts.makerHigh, 'makerHigh', "Maker's highest", dimension, range.unit);
  if (!high.ok) return high;
  if (low.value === undefined && high.value === undefined) return success({ limits, fromMaker: false });
  if (low.value !== undefined && high.value !== undefined && low.value > high.value) return endsSwapped(texts);
  const ends = {
    ...(low.value === undefined ? {} : { low: low.value }),
    ...(high.value === undefined ? {} : { high: high.value }),
    unit: range.unit,
    variation: range.variation,
  };
  if (limits.referenceTemperature === undefined) return success({ limits: ends, fromMaker: true });
  const at = readTemperature(texts.makerTemperature, 'makerTemperature', temperatureUnit, limits.referenceTemperature);
  return at.ok ? success({ limits: { ...ends, referenceTemperature: at.value }, fromMaker: true }) : at;
}

function endsSwapped(texts: ReadingTexts): Result<never, Refusal> {
  return failure({
    input: 'makerHigh',
    code: 'ends-swapped',
    message: `The highest, ${texts.makerHigh}, is below the lowest, ${texts.makerLow}. Type them the other way round.`,
  });
}

function numberOr(usual: number, text: string, input: string, label: string, dimension: Dimension, unit: string): Result<number, Refusal> {
  const typed = optionalNumber(text, input, label, dimension, unit);
  return typed.ok ? success(typed.value ?? usual) : typed;
}

function optionalNumber(text: string, input: string, label: string, dimension: Dimension, unit: string): Result<number | undefined, Refusal> {
  if (text.trim() === '') return success(undefined);
  const parsed = parseInputText(text, { input, label, dimension, unit });
  if (!parsed.ok) return parsed;
  return success(parsed.value.kind === 'value' ? parsed.value.value : undefined);
}
