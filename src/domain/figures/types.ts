import type { PressureKind } from '../units/pressure.ts';
import type { Dimension, UnitId } from '../units/types.ts';

/** The engine maker's limits for one range of the book, as the shop entered them. One end may be open. */
export interface ShopFigure {
  /** Id of a range of the book. */
  readonly range: string;
  readonly low?: number;
  readonly high?: number;
  /** Unit of the limits; of the same kind as that of the range. */
  readonly unit: UnitId;
  /** The temperature the limits hold at, °C. Left out: as the range of the book. */
  readonly referenceTemperature?: number;
  /** Where the figure was read: document, edition, page. */
  readonly from: string;
  readonly enteredBy: string;
  /** ISO 8601 date, `2026-03-04`. */
  readonly enteredOn: string;
}

/** An engine the shop meets, in the shop's own words, with the figures of its maker. */
export interface ShopEngine {
  readonly id: string;
  readonly title: string;
  /** Id of an engine layout of the book. */
  readonly layout?: string;
  readonly figures: readonly ShopFigure[];
}

/** What must be known of a range to check figures for it and to offer it. */
export interface FigureRange {
  readonly id: string;
  readonly title: string;
  readonly unit: UnitId;
  readonly dimension: Dimension;
  /** °C. Present where the quantity varies with temperature. */
  readonly referenceTemperature?: number;
  /** Gauge or absolute, where it is a pressure; figures are taken as the same. */
  readonly pressure?: PressureKind;
}

/** What the book tells the reader of figures: published as `data/figure-book.json`. */
export interface FigureBook {
  readonly ranges: readonly FigureRange[];
  readonly layouts: readonly { readonly id: string; readonly title: string }[];
  /** The engines with figures that stand in the book itself. */
  readonly engines: readonly ShopEngine[];
}

/** Where figures are kept, the one that comes first standing first. */
export const figurePlaces = ['device', 'server', 'book'] as const;
export type FigurePlace = (typeof figurePlaces)[number];

/** Longest texts, in characters. Where a figure is from and who entered it must fit one line of a job's record together. */
export const longest = { title: 120, from: 200, enteredBy: 80 } as const;
/** A job takes as many figures with its engine. */
export const mostFigures = 200;
export const mostEngines = 500;
