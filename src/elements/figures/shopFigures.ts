import { figuresForJob, limitsInUnit, markOf, mergeEngines, placeWords } from '../../domain/figures/merge.ts';
import type { EnginesByPlace, MergedEngine } from '../../domain/figures/merge.ts';
import type { FigureBook } from '../../domain/figures/types.ts';
import type { MakerFigure } from '../../domain/jobs/types.ts';
import { readBookData } from '../bookData.ts';
import { keptEngines } from '../storage/shopEngines.ts';
import { serverEngines } from './serverFigures.ts';

/** A maker's figure in the unit of its range, with the words that stand beside it. */
export interface MarkedLimits {
  readonly low?: number;
  readonly high?: number;
  readonly referenceTemperature?: number;
  readonly mark: string;
}

/** The shop's own figures out of all places, and what could not be read. */
export interface ShopFigures {
  readonly book: FigureBook;
  readonly places: EnginesByPlace;
  readonly engines: readonly MergedEngine[];
  readonly problems: readonly string[];
  limitsFor(engine: string, range: string): MarkedLimits | undefined;
  figuresForJob(engine: string): readonly MakerFigure[];
}

/** Gathers the shop's figures: those in this browser, those on the server, those of the book. A place that cannot be read adds nothing. */
export async function shopFigures(): Promise<ShopFigures> {
  const book = await readBookData<FigureBook>('figure-book');
  const device = keptEngines.read();
  const server = await serverEngines(book.ranges);
  const places: EnginesByPlace = { device: device.ok ? device.value : [], server: server.ok ? server.value : [], book: book.engines };
  const engines = mergeEngines(places, book.ranges);
  const engineOf = (id: string): MergedEngine | undefined => engines.find((engine) => engine.id === id);
  return {
    book,
    places,
    engines,
    problems: [...(device.ok ? [] : [device.error.message]), ...(server.ok ? [] : [server.error])],
    limitsFor: (id, rangeId) => {
      const figure = engineOf(id)?.figures.find(({ range }) => range === rangeId);
      const limits = figure && limitsInUnit(figure, book.ranges.find((range) => range.id === rangeId)?.unit ?? '');
      return figure && limits && { ...limits, mark: `${markOf(figure)}, kept ${placeWords[figure.place]}` };
    },
    figuresForJob: (id) => {
      const engine = engineOf(id);
      return engine ? figuresForJob(engine, book.ranges) : [];
    },
  };
}
