import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { convertBetween, convertStep } from '../units/convert.ts';
import { formatNumber, formatValue, shortestDecimals } from '../units/format.ts';
import { unitById } from '../units/table.ts';
import type { Dimension, UnitId } from '../units/types.ts';
import { meterQuantities } from './meters.data.ts';
import type { SentenceOptions } from './sentence.ts';
import type { Meter } from './types.ts';

/** One range of a meter as its data sheet states it: ± (percent of the reading + counts of the last digit). */
export interface MeterRange {
  /** What it measures. */
  readonly quantity: Dimension;
  /** Unit of `upTo` and `resolution`; one of the quantity. */
  readonly unit: UnitId;
  /** Full scale, above 0. Left out: the range holds any reading. */
  readonly upTo?: number;
  /** Percent of the reading, 0 to 100. */
  readonly percent: number;
  /** Counts of the last digit, 0 or more. */
  readonly counts: number;
  /** Size of one count, above 0. Left out: taken from the digits that were typed. */
  readonly resolution?: number;
}

/** A meter or gauge of the shop. */
export interface UserMeter {
  /** Letters, digits and hyphens; the same meter has the same id on every device. */
  readonly id: string;
  readonly name: string;
  /** At least one; no two of one quantity with the same full scale. */
  readonly ranges: readonly MeterRange[];
}

export const longestName = 80;
export const mostRanges = 40;
export const mostMeters = 100;
/** More counts than any data sheet states. */
export const mostCounts = 100_000;

/** What a meter measures, in words: `Resistance`. */
export function quantityLabel(quantity: Dimension): string {
  return meterQuantities.find(({ dimension }) => dimension === quantity)?.label ?? quantity;
}

/** The meters that have a range for this quantity, in their order. */
export function metersFor(meters: readonly UserMeter[], quantity: Dimension): readonly UserMeter[] {
  return meters.filter((meter) => meter.ranges.some((range) => range.quantity === quantity));
}

export type MeterChoiceCode = 'no-such-range' | 'over-range';

/**
 * The range that a reading is taken in: the lowest that holds it, as an automatic meter chooses. An open circuit is taken in the highest.
 * Refuses a quantity that the meter does not measure and a reading past its highest range.
 */
export function rangeFor(
  meter: UserMeter,
  quantity: Dimension,
  reading: { readonly value: number | 'open'; readonly unit: UnitId },
): Result<MeterRange, Refusal<MeterChoiceCode>> {
  const ranges = meter.ranges.filter((range) => range.quantity === quantity).sort((one, other) => fullScale(one) - fullScale(other));
  const highest = ranges.at(-1);
  if (highest === undefined) {
    const message = `${meter.name} has no range for ${quantityLabel(quantity).toLowerCase()}. Choose another meter, or type its figures.`;
    return failure({ input: 'meter', code: 'no-such-range', message });
  }
  if (reading.value === 'open') return success(highest);
  const { value } = reading;
  const fitting = ranges.find((range) => range.upTo === undefined || Math.abs(inUnit(value, reading.unit, range.unit)) <= range.upTo);
  return fitting ? success(fitting) : failure(overRange(meter, highest, value, reading.unit));
}

/** The same as the judgement takes it: its figures in the unit of the reading. */
export function meterFor(
  meter: UserMeter,
  quantity: Dimension,
  reading: { readonly value: number | 'open'; readonly unit: UnitId },
): Result<Meter, Refusal<MeterChoiceCode>> {
  const range = rangeFor(meter, quantity, reading);
  if (!range.ok) return range;
  const { percent, counts, resolution, unit } = range.value;
  const figures = { name: meter.name, percent, counts };
  return success(resolution === undefined ? figures : { ...figures, resolution: stepInUnit(resolution, unit, reading.unit) });
}

function overRange(meter: UserMeter, highest: MeterRange, value: number, unit: UnitId): Refusal<MeterChoiceCode> {
  const shown = formatValue(value, unit, { decimals: shortestDecimals(value) });
  const most = formatNumber(highest.upTo ?? 0);
  const symbol = unitById(highest.unit)?.symbol ?? highest.unit;
  return {
    input: 'meter',
    code: 'over-range',
    message: `${meter.name} reads up to ${most} ${symbol}, and ${shown} is past that. Check the reading and its unit, or choose another meter.`,
  };
}

/** Full scale in the base unit, so that ranges in different units compare. */
function fullScale({ upTo, unit }: MeterRange): number {
  const factor = unitById(unit)?.factor ?? 1;
  return upTo === undefined ? Infinity : upTo * factor;
}

function inUnit(value: number, from: UnitId, to: UnitId): number {
  const [source, target] = [unitById(from), unitById(to)];
  return source && target ? convertBetween(value, source, target) : value;
}

function stepInUnit(step: number, from: UnitId, to: UnitId): number {
  const [source, target] = [unitById(from), unitById(to)];
  return source && target ? convertStep(step, source, target) : step;
}

/** `up to 200 Ω: ±0.8 % ±3 counts of 0.1 Ω`. */
export function rangeWords(range: MeterRange, options: SentenceOptions = {}): string {
  const symbol = unitById(range.unit)?.symbol ?? range.unit;
  const figure = (value: number): string => `${formatNumber(value, options)} ${symbol}`;
  const scale = range.upTo === undefined ? 'any reading' : `up to ${figure(range.upTo)}`;
  const size = range.resolution === undefined ? '' : ` of ${figure(range.resolution)}`;
  return `${scale}: ±${formatNumber(range.percent, options)} % ±${formatNumber(range.counts, options)} ${range.counts === 1 ? 'count' : 'counts'}${size}`;
}

export type MeterCode =
  | 'missing'
  | 'too-long'
  | 'too-many'
  | 'no-range'
  | 'unknown-quantity'
  | 'wrong-unit'
  | 'out-of-range'
  | 'count-above-scale'
  | 'same-range-twice';

/** What is wrong with a meter, or nothing. `input` is `name`, `ranges`, or a field of a range such as `ranges.0.percent`. */
export function problemWithMeter(meter: Omit<UserMeter, 'id'>): Refusal<MeterCode> | undefined {
  const { name, ranges } = meter;
  if (name.trim() === '') return refusal('name', 'missing', 'Give the meter a name, such as the words on its case.');
  if (name.length > longestName) return refusal('name', 'too-long', `The name has ${name.length} characters; at most ${longestName} are kept. Shorten it.`);
  if (ranges.length === 0) return refusal('ranges', 'no-range', 'The meter has no range. Add at least one: what it measures and how far off it may be.');
  if (ranges.length > mostRanges) return refusal('ranges', 'too-many', `The meter has ${ranges.length} ranges; at most ${mostRanges} are kept.`);
  for (const [index, range] of ranges.entries()) {
    const problem = problemWithRange(range, `ranges.${index}`) ?? sameAsEarlier(ranges, index);
    if (problem) return problem;
  }
  return undefined;
}

function problemWithRange(range: MeterRange, at: string): Refusal<MeterCode> | undefined {
  const { quantity, unit, upTo, percent, counts, resolution } = range;
  if (!meterQuantities.some(({ dimension }) => dimension === quantity)) {
    return refusal(`${at}.quantity`, 'unknown-quantity', `“${quantity}” is not something a meter of this book measures. Choose one of the list.`);
  }
  if (unitById(unit)?.dimension !== quantity) {
    return refusal(`${at}.unit`, 'wrong-unit', `“${unit}” is no unit of ${quantityLabel(quantity).toLowerCase()}.`);
  }
  return (
    outside(`${at}.upTo`, 'The full scale', upTo, Number.MIN_VALUE, 1e15, 'Type the highest reading of this range, above 0, or leave it empty.') ??
    outside(`${at}.percent`, 'Per cent of the reading', percent, 0, 100, 'Type 0 to 100.') ??
    outside(`${at}.counts`, 'Counts of the last digit', counts, 0, mostCounts, `Type 0 to ${mostCounts}.`) ??
    outside(`${at}.resolution`, 'The size of one count', resolution, Number.MIN_VALUE, 1e15, 'Type a size above 0, or leave it empty.') ??
    countAboveScale(at, upTo, resolution)
  );
}

function outside(input: string, label: string, value: number | undefined, least: number, most: number, mend: string): Refusal<MeterCode> | undefined {
  if (value === undefined || (Number.isFinite(value) && value >= least && value <= most)) return undefined;
  return refusal(input, 'out-of-range', `${label} is ${formatNumber(value)}. ${mend}`);
}

function countAboveScale(at: string, upTo: number | undefined, resolution: number | undefined): Refusal<MeterCode> | undefined {
  if (upTo === undefined || resolution === undefined || resolution <= upTo) return undefined;
  const found = `One count, ${formatNumber(resolution)}, is larger than the whole scale, ${formatNumber(upTo)}.`;
  return refusal(`${at}.resolution`, 'count-above-scale', `${found} Check both and their units.`);
}

function sameAsEarlier(ranges: readonly MeterRange[], index: number): Refusal<MeterCode> | undefined {
  const range = ranges[index];
  const same = range && ranges.slice(0, index).some((earlier) => earlier.quantity === range.quantity && fullScale(earlier) === fullScale(range));
  if (!same) return undefined;
  const which = range.upTo === undefined ? 'without a full scale' : `up to ${formatNumber(range.upTo)} ${unitById(range.unit)?.symbol ?? range.unit}`;
  const message = `There are two ranges of ${quantityLabel(range.quantity).toLowerCase()} ${which}. Change or remove one.`;
  return refusal(`ranges.${index}.upTo`, 'same-range-twice', message);
}

function refusal(input: string, code: MeterCode, message: string): Refusal<MeterCode> {
  return { input, code, message };
}
