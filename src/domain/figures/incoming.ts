import type { FigureRange, ShopEngine, ShopFigure } from './types.ts';

/** What taking figures in would do to those that are here. */
export interface IncomingFigures {
  readonly engines: readonly ShopEngine[];
  /** Engine and range of each figure that is new here, that takes the place of one here, and that is older than one here and left out. */
  readonly added: readonly string[];
  readonly replaced: readonly string[];
  readonly older: readonly string[];
}

/**
 * Both lists in one. A figure for the same engine and range takes the place of one here unless it was entered on an earlier day. An engine
 * that is here keeps its title and its layout. None here is dropped without one in its place.
 */
export function mergeIncoming(here: readonly ShopEngine[], incoming: readonly ShopEngine[], ranges: readonly FigureRange[]): IncomingFigures {
  const titles = new Map(ranges.map(({ id, title }) => [id, title]));
  const engines = new Map(here.map((engine) => [engine.id, engine]));
  const said = { added: [] as string[], replaced: [] as string[], older: [] as string[] };
  for (const { figures, ...engine } of incoming) {
    const before = engines.get(engine.id);
    engines.set(engine.id, before ? { ...engine, ...before } : { ...engine, figures: [] });
    for (const figure of figures) {
      const words = `${before?.title ?? engine.title}: ${titles.get(figure.range) ?? figure.range}`;
      const whole = engines.get(engine.id);
      if (whole === undefined || whole.figures.some((one) => sameFigure(one, figure))) continue;
      const rivals = whole.figures.filter(({ range }) => range === figure.range);
      if (rivals.some(({ enteredOn }) => enteredOn > figure.enteredOn)) said.older.push(words);
      else {
        said[rivals.length > 0 ? 'replaced' : 'added'].push(words);
        engines.set(engine.id, withFigure(whole, figure));
      }
    }
  }
  return { engines: [...engines.values()], ...said };
}

/** The engine with this figure in place of any other for its range. */
export function withFigure(engine: ShopEngine, figure: ShopFigure): ShopEngine {
  return { ...engine, figures: [...engine.figures.filter(({ range }) => range !== figure.range), figure] };
}

/** Do the two say the same in every part? */
export function sameFigure(one: ShopFigure, other: ShopFigure): boolean {
  return partsOf(one).every((part, index) => part === partsOf(other)[index]);
}

function partsOf({ range, low, high, unit, referenceTemperature, from, enteredBy, enteredOn }: ShopFigure): readonly unknown[] {
  return [range, low, high, unit, referenceTemperature, from, enteredBy, enteredOn];
}

/** An id for an engine of this title: one title gives one id on every device, so that figures from several devices meet. */
export function idOfTitle(title: string): string {
  const plain = title.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const words = plain.replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 100).replace(/-+$/, '');
  // Letters of other scripts stand by their numbers.
  return words !== '' ? words : `engine-${[...title.trim()].slice(0, 12).map((letter) => (letter.codePointAt(0) ?? 0).toString(36)).join('-')}`;
}
