import { canonicalText } from '../jobs/edit.ts';
import type { Job } from '../jobs/types.ts';

/** What tells one state of a job on this device from another without reading all of it: every write counts its revision up. */
export function markOf({ revision, events }: Pick<Job, 'revision' | 'events'>): string {
  return `${revision}/${events.length}/${events.at(-1)?.id ?? ''}`;
}

/** The same job in all that people wrote? The revision only counts writes on one device and says nothing between two. */
export function sameRecord(one: Job, other: Job): boolean {
  return canonicalText({ ...one, revision: 0 }) === canonicalText({ ...other, revision: 0 });
}

/** Does a copy hold every entry of the other? */
export function holdsEveryEvent(copy: Job, of: Job): boolean {
  const ids = new Set(copy.events.map(({ id }) => id));
  return of.events.every(({ id }) => ids.has(id));
}
