import { median } from '../numbers/sample.ts';
import { placeOfTime } from './trace.ts';
import type { Assignment } from './types.ts';

export interface AssignmentWish {
  /** Each cylinder once, in the order they fire. */
  readonly firingOrder: readonly number[];
  /** Times at which one cylinder is known to fire, seconds, rising: the edges of a second channel. */
  readonly marks?: readonly number[];
  /** The cylinder the marks belong to, or that of the first event. The first of the order when left out. */
  readonly markedCylinder?: number;
}

/** The turn of each event among those of a cycle, counted from the marked cylinder; NaN where no mark stands before and after. */
function placesByMarks(times: readonly number[], marks: readonly number[], slots: number): readonly number[] {
  const rising = Float64Array.from(marks);
  const usual = median(rising.subarray(1).map((mark, place) => mark - (rising[place] ?? 0)));
  return times.map((time) => {
    // An event just before its mark, by the time a coil takes to charge, belongs to it: half a slot is the border.
    const after = placeOfTime(rising, time);
    const [before, next] = [rising[after - 1], rising[after]];
    if (before === undefined && next === undefined) return Number.NaN;
    const known = before !== undefined && next !== undefined && next - before < 1.5 * usual;
    const cycle = known ? next - before : usual;
    if (Number.isNaN(cycle)) return Number.NaN;
    const share = before === undefined ? 1 - ((next ?? 0) - time) / cycle : (time - before) / cycle;
    return ((Math.round(share * slots) % slots) + slots) % slots;
  });
}

/** Counted from the first event; where the distance to the next is about twice as long as usual, one was left out. */
function placesByCounting(times: readonly number[], slots: number): readonly number[] {
  const steps = times.slice(1).map((time, place) => time - (times[place] ?? 0));
  const places = [0];
  steps.forEach((step, place) => {
    // The speed changes slowly: the neighbours tell the usual distance better than the whole record.
    const usual = median(steps.slice(Math.max(0, place - slots), place + slots + 1));
    places.push((places[place] ?? 0) + Math.max(1, Math.round(step / usual)));
  });
  return places;
}

/** How often each slot is passed without an event, between the first event and the last. */
function countMissing(places: readonly number[], cylinderAt: (place: number) => number, slots: number): ReadonlyMap<number, number> {
  const missing = new Map<number, number>();
  for (let index = 1; index < places.length; index += 1) {
    const [before = 0, now = 0] = [places[index - 1], places[index]];
    const steps = (((now - before) % slots) + slots) % slots;
    for (let skipped = 1; skipped < steps; skipped += 1) {
      const cylinder = cylinderAt(before + skipped);
      missing.set(cylinder, (missing.get(cylinder) ?? 0) + 1);
    }
  }
  return missing;
}

/**
 * Gives each event its cylinder. With marks of one cylinder (a trigger channel) the place between two marks decides; without, the
 * first event is taken as the marked cylinder and the rest is counted, stepping over gaps. Without an order nothing is assigned.
 */
export function assignCylinders(times: readonly number[], wish: AssignmentWish | undefined): Assignment {
  if (wish === undefined || wish.firingOrder.length === 0) return { cylinders: times.map(() => undefined), by: 'none', missing: new Map() };
  const { firingOrder, marks = [] } = wish;
  const slots = firingOrder.length;
  const first = Math.max(0, firingOrder.indexOf(wish.markedCylinder ?? firingOrder[0] ?? 1));
  const cylinderAt = (place: number) => firingOrder[(((first + place) % slots) + slots) % slots] ?? 0;
  const byMarks = marks.length >= 2;
  const places = byMarks ? placesByMarks(times, marks, slots) : placesByCounting(times, slots);
  const known = places.filter((place) => !Number.isNaN(place));
  return {
    cylinders: places.map((place) => (Number.isNaN(place) ? undefined : cylinderAt(place))),
    by: byMarks ? 'trigger' : 'counting',
    missing: countMissing(known, cylinderAt, slots),
  };
}

/** The events of each cylinder, cylinders in rising order; those without a cylinder stand under 0. */
export function byCylinder<Event>(events: readonly Event[], cylinders: readonly (number | undefined)[]): readonly (readonly [cylinder: number, events: readonly Event[]])[] {
  const groups = new Map<number, Event[]>();
  events.forEach((event, place) => {
    const cylinder = cylinders[place] ?? 0;
    groups.set(cylinder, [...(groups.get(cylinder) ?? []), event]);
  });
  return [...groups].sort(([one], [other]) => one - other);
}
