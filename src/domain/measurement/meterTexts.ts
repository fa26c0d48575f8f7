import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { convertBetween, convertStep } from '../units/convert.ts';
import { formatNumber } from '../units/format.ts';
import { parseInputText } from '../units/parse.ts';
import { unitById } from '../units/table.ts';
import type { Dimension, Unit, UnitId } from '../units/types.ts';
import { meterQuantities } from './meters.data.ts';
import { problemWithMeter } from './meters.ts';
import type { MeterRange, UserMeter } from './meters.ts';
import type { SentenceOptions } from './sentence.ts';

/** One range as typed. */
export interface RangeTexts {
  /** Dimension id, such as `resistance`. */
  readonly quantity: string;
  /** Full scale with its unit: `200 ohm`, `2k`. Empty: the range holds any reading. */
  readonly upTo: string;
  readonly percent: string;
  readonly counts: string;
  /** Size of one count; without a unit it is in that of the full scale. Empty: from the digits of each reading. */
  readonly resolution: string;
}

export interface MeterTexts {
  readonly name: string;
  readonly ranges: readonly RangeTexts[];
}

/**
 * A meter from what was typed, checked whole. Names the field of a refusal as `problemWithMeter` does: `ranges.1.upTo`.
 * Percent and counts must be typed: an empty field is not taken for an exact meter.
 */
export function readMeterTexts(texts: MeterTexts): Result<Omit<UserMeter, 'id'>, Refusal> {
  const ranges: MeterRange[] = [];
  for (const [index, text] of texts.ranges.entries()) {
    const range = readRange(text, `ranges.${index}`);
    if (!range.ok) return range;
    ranges.push(range.value);
  }
  const meter = { name: texts.name.trim(), ranges };
  const problem = problemWithMeter(meter);
  return problem ? failure(problem) : success(meter);
}

function readRange(texts: RangeTexts, at: string): Result<MeterRange, Refusal> {
  const known = meterQuantities.find(({ dimension }) => dimension === texts.quantity);
  if (known === undefined) return failure({ input: `${at}.quantity`, code: 'missing', message: 'Choose what this range measures.' });
  const { dimension: quantity } = known;
  const upTo = readSize(texts.upTo, `${at}.upTo`, 'Full scale', quantity, known.unit);
  if (!upTo.ok) return upTo;
  const accuracy = readAccuracy(texts, at);
  if (!accuracy.ok) return accuracy;
  const resolution = readSize(texts.resolution, `${at}.resolution`, 'Size of one count', quantity, upTo.value?.unit.id ?? known.unit);
  if (!resolution.ok) return resolution;
  const unit = upTo.value?.unit ?? resolution.value?.unit;
  return success({
    quantity,
    unit: unit?.id ?? known.unit,
    ...(upTo.value === undefined ? {} : { upTo: upTo.value.value }),
    ...accuracy.value,
    ...(resolution.value === undefined || unit === undefined ? {} : { resolution: convertStep(resolution.value.value, resolution.value.unit, unit) }),
  });
}

function readAccuracy(texts: RangeTexts, at: string): Result<Pick<MeterRange, 'percent' | 'counts'>, Refusal> {
  const percent = readFigure(texts.percent, `${at}.percent`, 'Per cent of the reading', 'ratio', '%');
  if (!percent.ok) return percent;
  const counts = readFigure(texts.counts, `${at}.counts`, 'Counts of the last digit', 'count', 'count');
  return counts.ok ? success({ percent: percent.value, counts: counts.value }) : counts;
}

interface Size {
  readonly value: number;
  readonly unit: Unit;
}

/** A size in the unit it was typed in; nothing where the field is empty. */
function readSize(text: string, input: string, label: string, dimension: Dimension, usual: UnitId): Result<Size | undefined, Refusal> {
  if (text.trim() === '') return success(undefined);
  const parsed = parseInputText(text, { input, label, dimension, unit: usual });
  if (!parsed.ok) return parsed;
  if (parsed.value.kind === 'open') return success(undefined);
  const [asked, typed] = [unitById(usual), unitById(parsed.value.typedUnit)];
  return success(asked && typed ? { value: convertBetween(parsed.value.value, asked, typed), unit: typed } : undefined);
}

function readFigure(text: string, input: string, label: string, dimension: Dimension, unit: UnitId): Result<number, Refusal> {
  const parsed = parseInputText(text, { input, label, dimension, unit });
  if (!parsed.ok) return parsed;
  return success(parsed.value.kind === 'value' ? parsed.value.value : 0);
}

/** The texts that `readMeterTexts` reads back as the same meter. */
export function textsOfMeter(meter: UserMeter, options: SentenceOptions = {}): MeterTexts {
  return { name: meter.name, ranges: meter.ranges.map((range) => textsOfRange(range, options)) };
}

/** A figure as a field takes it back: `1,234` could be read two ways, `1,2340` only one. */
export function figureText(value: number, options: SentenceOptions = {}): string {
  const written = formatNumber(value, options);
  return /^\d{1,3},\d{3}$/.test(written) ? `${written}0` : written;
}

function textsOfRange(range: MeterRange, options: SentenceOptions): RangeTexts {
  const symbol = unitById(range.unit)?.symbol ?? range.unit;
  const size = (value: number | undefined): string => (value === undefined ? '' : `${figureText(value, options)} ${symbol}`);
  return {
    quantity: range.quantity,
    upTo: size(range.upTo),
    percent: figureText(range.percent, options),
    counts: figureText(range.counts, options),
    resolution: size(range.resolution),
  };
}
