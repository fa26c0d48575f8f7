import { formatNumber } from '../units/format.ts';
import { unitById, unitsOf } from '../units/table.ts';
import type { FigureRange, ShopFigure } from './types.ts';

export interface FigureProblem {
  readonly field: 'range' | 'low' | 'high' | 'unit' | 'from' | 'enteredBy' | 'enteredOn';
  /** Says what was found and what is accepted; goes on from the name of the field. */
  readonly problem: string;
}

/** What is wrong with a figure in itself, whatever ranges there are; undefined when nothing is. */
export function problemInFigure({ low, high, from, enteredBy, enteredOn }: ShopFigure): FigureProblem | undefined {
  if (low === undefined && high === undefined) return { field: 'low', problem: 'is missing, and so is high; give at least one of them' };
  if (low !== undefined && high !== undefined && low > high) {
    return { field: 'low', problem: `is ${formatNumber(low)}, above high, ${formatNumber(high)}; put them the other way round` };
  }
  if (from.trim() === '') return { field: 'from', problem: 'is empty; say where the figure was read' };
  if (enteredBy.trim() === '') return { field: 'enteredBy', problem: 'is empty; say who entered the figure' };
  if (!isDate(enteredOn)) return { field: 'enteredOn', problem: `must be a day such as 2026-03-04; found “${enteredOn.slice(0, 40)}”` };
  return undefined;
}

/** What sets a figure at odds with the ranges of this book; undefined when it fits one. */
export function problemWithRange({ range, unit }: ShopFigure, ranges: readonly FigureRange[]): FigureProblem | undefined {
  const known = ranges.find(({ id }) => id === range);
  if (known === undefined) {
    return { field: 'range', problem: `names no range of this book: “${range}”. The id of a range stands in the address of its page, after ranges/` };
  }
  const found = unitById(unit);
  if (found?.dimension === known.dimension) return undefined;
  const accepted = unitsOf(known.dimension).map(({ id }) => id).join(', ');
  const what = found === undefined ? 'is no unit of this book' : `measures ${found.dimension}`;
  return { field: 'unit', problem: `is “${unit}”, which ${what}; ${range} takes one of ${accepted}` };
}

/** A day of the calendar, written as ISO 8601 does. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  const milliseconds = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(milliseconds) && new Date(milliseconds).toISOString().slice(0, 10) === text;
}
