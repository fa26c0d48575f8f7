import { withoutGaps } from '../domain/figures/figureTexts.ts';
import type { FigureBook, ShopEngine, ShopFigure } from '../domain/figures/types.ts';
import { unitById } from '../domain/units/table.ts';
import type { Book, Entry } from './index.ts';

/** The maker's figures of an engine of the book, as the domain has them: what is left out is not there. */
export function figuresOf(engine: Entry<'engines'>): readonly ShopFigure[] {
  return engine.makerFigures.map((figure) => withoutGaps({ low: undefined, high: undefined, referenceTemperature: undefined, ...figure }));
}

/** What the shop's figures need of the book: its ranges, its layouts, and the engines that stand in it with figures of their own. */
export function figureBook(book: Book): FigureBook {
  const ranges = [...book.ranges].flatMap(([id, { title, unit, quantity, referenceTemperature }]) => {
    const dimension = unitById(unit)?.dimension;
    const pressure = book.quantities.get(quantity)?.pressure;
    if (dimension === undefined) return [];
    return [{ id, title, unit, dimension, ...(referenceTemperature === undefined ? {} : { referenceTemperature }), ...(pressure === undefined ? {} : { pressure }) }];
  });
  const engines: ShopEngine[] = [...book.engines]
    .filter(([, { makerFigures }]) => makerFigures.length > 0)
    .map(([id, engine]) => ({ id, title: engine.title, layout: id, figures: figuresOf(engine) }));
  return { ranges, layouts: [...book.engines].map(([id, { title }]) => ({ id, title })), engines };
}
