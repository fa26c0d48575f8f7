import { convert } from '../units/convert.ts';
import { formatNumber } from '../units/format.ts';
import type { SentenceOptions } from '../measurement/sentence.ts';
import { limitsText } from '../measurement/sentence.ts';
import type { MakerFigure } from '../jobs/types.ts';
import { problemWithRange } from './problem.ts';
import { figurePlaces } from './types.ts';
import type { FigurePlace, FigureRange, ShopEngine, ShopFigure } from './types.ts';

/** The rule of `mergeEngines`, as pages show it. */
export const mergeRule =
  'Where one engine has several figures for one range, the one entered in this browser comes before the one on the shop’s server, and that before the one in the book. Within one of these places the later day counts. Engines are the same when their names for the file (ids) are the same.';

/** Words for a place, after “kept” and the like. */
export const placeWords: Readonly<Record<FigurePlace, string>> = { device: 'in this browser', server: 'on the shop’s server', book: 'in the book' };

/** A figure that counts, with where it is kept. */
export interface PlacedFigure extends ShopFigure {
  readonly place: FigurePlace;
}

/** An engine out of all places; one figure for each range at most. */
export interface MergedEngine {
  readonly id: string;
  readonly title: string;
  readonly layout?: string;
  readonly figures: readonly PlacedFigure[];
}

export type EnginesByPlace = Readonly<Partial<Record<FigurePlace, readonly ShopEngine[]>>>;

/**
 * All engines in one list, by title, as `mergeRule` says. Title and layout come from the first place that has them.
 * Of two figures of one place and one day, the one further down counts. Figures that fit no range of this book are left out.
 */
export function mergeEngines(places: EnginesByPlace, ranges: readonly FigureRange[]): readonly MergedEngine[] {
  const merged = new Map<string, MergedEngine>();
  for (const place of figurePlaces) {
    for (const engine of places[place] ?? []) {
      const before = merged.get(engine.id);
      const own = latestOf(engine.figures.filter((figure) => problemWithRange(figure, ranges) === undefined));
      const known = new Set(before?.figures.map(({ range }) => range));
      const figures = [...(before?.figures ?? []), ...own.filter(({ range }) => !known.has(range)).map((figure) => ({ ...figure, place }))];
      const layout = before?.layout ?? engine.layout;
      merged.set(engine.id, { id: engine.id, title: before?.title ?? engine.title, ...(layout === undefined ? {} : { layout }), figures });
    }
  }
  return [...merged.values()].toSorted((one, other) => one.title.localeCompare(other.title));
}

/** One figure for each range: that of the latest day, the last of its day. */
function latestOf(figures: readonly ShopFigure[]): readonly ShopFigure[] {
  const latest = new Map<string, ShopFigure>();
  for (const figure of figures) {
    const before = latest.get(figure.range);
    if (before === undefined || figure.enteredOn >= before.enteredOn) latest.set(figure.range, figure);
  }
  return [...latest.values()];
}

/** The limits of a figure in the unit of its range, for judging; undefined where the units are not of one kind. */
export function limitsInUnit(figure: ShopFigure, unit: string): { readonly low?: number; readonly high?: number; readonly referenceTemperature?: number } | undefined {
  const end = (name: 'low' | 'high'): Record<string, number> | undefined => {
    const value = figure[name];
    if (value === undefined) return {};
    const converted = convert(value, figure.unit, unit);
    // Twelve digits show any figure as it was given, without the noise of the arithmetic.
    return converted.ok ? { [name]: Number(converted.value.toPrecision(12)) } : undefined;
  };
  const [low, high] = [end('low'), end('high')];
  if (low === undefined || high === undefined) return undefined;
  return { ...low, ...high, ...(figure.referenceTemperature === undefined ? {} : { referenceTemperature: figure.referenceTemperature }) };
}

/** The figures of an engine as a job takes them, in the units of the ranges and each with who entered it and when. */
export function figuresForJob(engine: MergedEngine, ranges: readonly FigureRange[]): readonly MakerFigure[] {
  return engine.figures.flatMap((figure) => {
    const range = ranges.find(({ id }) => id === figure.range);
    const limits = range && limitsInUnit(figure, range.unit);
    return range && limits ? [{ range: range.id, unit: range.unit, ...limits, from: `the engine maker's figure, ${markOf(figure)}` }] : [];
  });
}

/** From where, by whom and when: what stands beside a maker's figure wherever it is used. */
export function markOf({ from, enteredBy, enteredOn }: ShopFigure): string {
  return `from ${from}; entered by ${enteredBy} on ${enteredOn}`;
}

/** A figure in words: `0.40 to 0.80 Ω at 20 °C`. */
export function figureWords(figure: ShopFigure, options: SentenceOptions = {}): string {
  const { low, high, unit, referenceTemperature } = figure;
  const limits = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), unit, variation: 'none' as const };
  const at = referenceTemperature === undefined ? '' : `, at ${formatNumber(referenceTemperature, options)} °C`;
  return `${limitsText(limits, options)}${at}`;
}
