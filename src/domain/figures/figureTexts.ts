import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { parseInputText } from '../units/parse.ts';
import { unitById } from '../units/table.ts';
import type { UnitId } from '../units/types.ts';
import { problemInFigure } from './problem.ts';
import { longest } from './types.ts';
import type { FigureRange, ShopFigure } from './types.ts';

/** A figure as typed. */
export interface FigureTexts {
  /** Id of the range. */
  readonly range: string;
  /** Unit of the limits where none is typed with them, and the unit the figure is kept in. */
  readonly unit: UnitId;
  readonly low: string;
  readonly high: string;
  /** Without a unit in °C. Empty: as the range of the book. */
  readonly referenceTemperature: string;
  readonly from: string;
  readonly enteredBy: string;
}

/** A figure from what was typed; a refusal names the field. */
export function readFigureTexts(texts: FigureTexts, range: FigureRange | undefined, enteredOn: string): Result<ShopFigure, Refusal> {
  if (range === undefined) return missing('range', 'Choose the range of the book that the figure is for.');
  const unit = unitById(texts.unit)?.dimension === range.dimension ? texts.unit : range.unit;
  const limit = (name: 'low' | 'high', label: string): Result<number | undefined, Refusal> =>
    readNumber(texts[name], { input: name, label, dimension: range.dimension, unit, ...(range.pressure ? { pressure: range.pressure } : {}) });
  const low = limit('low', "Maker's lowest");
  if (!low.ok) return low;
  const high = limit('high', "Maker's highest");
  if (!high.ok) return high;
  if (low.value === undefined && high.value === undefined) return missing('low', "Type the maker's lowest, the highest, or both.");
  const at = readTemperature(texts.referenceTemperature);
  if (!at.ok) return at;
  const spoken = lines(texts);
  if (!spoken.ok) return spoken;
  const figure = withoutGaps({ range: range.id, low: low.value, high: high.value, unit, referenceTemperature: at.value, ...spoken.value, enteredOn });
  const problem = problemInFigure(figure);
  return problem ? failure({ input: problem.field, code: 'wrong', message: `This ${problem.problem}.` }) : success(figure);
}

function readTemperature(text: string): Result<number | undefined, Refusal> {
  const at = readNumber(text, { input: 'referenceTemperature', label: 'The temperature it holds at', dimension: 'temperature', unit: 'C' });
  if (!at.ok || at.value === undefined || (at.value >= -40 && at.value <= 150)) return at;
  return missing('referenceTemperature', 'The temperature it holds at must lie between −40 and 150 °C.');
}

function lines(texts: FigureTexts): Result<{ readonly from: string; readonly enteredBy: string }, Refusal> {
  const [from, enteredBy] = [texts.from.trim(), texts.enteredBy.trim()];
  if (from === '') return missing('from', 'Say where the figure was read: document, edition, page.');
  if (from.length > longest.from) return missing('from', `At most ${longest.from} characters; ${from.length} were typed.`);
  if (enteredBy === '') return missing('enteredBy', 'Say who entered the figure, so that the next one knows whom to ask.');
  if (enteredBy.length > longest.enteredBy) return missing('enteredBy', `At most ${longest.enteredBy} characters; ${enteredBy.length} were typed.`);
  return success({ from, enteredBy });
}

function readNumber(text: string, expected: Parameters<typeof parseInputText>[1]): Result<number | undefined, Refusal> {
  if (text.trim() === '') return success(undefined);
  const parsed = parseInputText(text, expected);
  if (!parsed.ok) return parsed;
  return success(parsed.value.kind === 'value' ? parsed.value.value : undefined);
}

type WithGaps = { readonly [Key in keyof ShopFigure]: ShopFigure[Key] | undefined } & Omit<ShopFigure, 'low' | 'high' | 'referenceTemperature'>;

/** What was left empty is not there. */
export function withoutGaps({ low, high, referenceTemperature, ...figure }: WithGaps): ShopFigure {
  return {
    ...figure,
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    ...(referenceTemperature === undefined ? {} : { referenceTemperature }),
  };
}

function missing(input: string, message: string): Result<never, Refusal> {
  return failure({ input, code: 'missing', message });
}
