import type { Limits } from '../domain/measurement/types.ts';
import type { Dimension } from '../domain/units/types.ts';
import type { PressureKind } from '../domain/units/pressure.ts';
import { unitById } from '../domain/units/table.ts';
import type { Entry } from '../schemas/index.ts';

/** What a reading field on a page needs to know of a range. */
export interface ReadingRange {
  readonly id: string;
  readonly title: string;
  readonly limits: Limits;
  readonly unit: string;
  readonly dimension: Dimension;
  readonly usualMeter: { readonly percent: number; readonly counts: number };
  readonly leadsMatter: boolean;
  readonly openAllowed: boolean;
  /** Gauge or absolute, where it is a pressure. */
  readonly pressure?: PressureKind;
}

export function limitsOf(range: Entry<'ranges'>, quantity: Entry<'quantities'>): Limits {
  return {
    ...(range.low === undefined ? {} : { low: range.low }),
    ...(range.high === undefined ? {} : { high: range.high }),
    unit: range.unit,
    variation: quantity.variesWithTemperature,
    ...(range.referenceTemperature === undefined ? {} : { referenceTemperature: range.referenceTemperature }),
  };
}

export function readingRange(id: string, range: Entry<'ranges'>, quantity: Entry<'quantities'>): ReadingRange {
  const dimension = unitById(range.unit)?.dimension;
  if (!dimension) throw new Error(`The range ${id} has a unit that is not in the table: ${range.unit}.`);
  return {
    id,
    title: range.title,
    limits: limitsOf(range, quantity),
    unit: range.unit,
    dimension,
    usualMeter: quantity.usualMeter,
    leadsMatter: quantity.leadsMatter,
    openAllowed: dimension === 'resistance',
    ...(quantity.pressure === undefined ? {} : { pressure: quantity.pressure }),
  };
}
