import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { jobType, jobVersion } from './types.ts';
import type { Job, JobEvent, JobEventBody } from './types.ts';

/** A job with nothing in it yet. Clock and id come from outside; `revision` 0 means it was never kept. */
export function newJob(id: string, at: string, source: string, title: string): Job {
  return { type: jobType, version: jobVersion, id, revision: 0, createdAt: at, source, title, events: [] };
}

/** The job with one more event, placed after all others. `id` must be new; `at` is the present time in ISO 8601. */
export function appendEvent(job: Job, body: JobEventBody, id: string, at: string): Job {
  const last = job.events.at(-1)?.sequence ?? 0;
  return { ...job, events: [...job.events, { ...body, id, sequence: last + 1, at }] };
}

/** The order of events: by sequence, then by id, so that two devices agree whatever their clocks say. */
export function compareEvents(one: JobEvent, other: JobEvent): number {
  if (one.sequence !== other.sequence) return one.sequence - other.sequence;
  if (one.id === other.id) return 0;
  return one.id < other.id ? -1 : 1;
}

/** Pictures in one job. Each is small, but a file of hundreds could no longer be sent or opened on a telephone. */
export const mostPictures = 40;

export type MergeCode = 'different-jobs' | 'different-event' | 'too-many-pictures';

/**
 * Both copies of a job in one: every event of either, in order. Nothing is dropped.
 * The higher revision, the earlier creation and the title of the copy written last are kept.
 * Refuses copies of two jobs, copies that disagree about one event (events never change, so one of them was tampered with), and copies that
 * together hold more pictures than a job may: such a job could not be opened again.
 */
export function mergeJobs(one: Job, other: Job): Result<Job, Refusal<MergeCode>> {
  if (one.id !== other.id) {
    return failure({ input: 'id', code: 'different-jobs', message: 'These are two different jobs, not two copies of one.' });
  }
  const merged = new Map(one.events.map((event) => [event.id, event]));
  for (const event of other.events) {
    const known = merged.get(event.id);
    if (known !== undefined && canonicalText(known) !== canonicalText(event)) return failure(differentEvent(event));
    merged.set(event.id, known ?? event);
  }
  const pictures = countPictures([...merged.values()]);
  if (pictures > mostPictures) return failure(tooManyPictures(pictures));
  const head = writtenLast(one, other);
  return success({
    ...head,
    createdAt: one.createdAt < other.createdAt ? one.createdAt : other.createdAt,
    events: [...merged.values()].sort(compareEvents),
  });
}

/** All that stand in the record, the undone ones too: they take their room all the same. */
export function countPictures(events: readonly JobEvent[]): number {
  return events.filter((event) => event.kind === 'picture').length;
}

function tooManyPictures(pictures: number): Refusal<MergeCode> {
  return {
    input: 'events',
    code: 'too-many-pictures',
    message: `The two copies together hold ${pictures} pictures; a job holds at most ${mostPictures}. Keep both copies as separate jobs.`,
  };
}

function differentEvent(event: JobEvent): Refusal<MergeCode> {
  return {
    input: event.id,
    code: 'different-event',
    message:
      `The two copies disagree about the entry of ${event.at} (${event.kind}), and an entry never changes once written. ` +
      'Keep both copies as separate jobs and compare them.',
  };
}

/** The copy with the higher revision; between equals any fixed choice will do, as long as both sides make the same. */
function writtenLast(one: Job, other: Job): Job {
  if (one.revision !== other.revision) return one.revision > other.revision ? one : other;
  return `${one.title}\n${one.source}` >= `${other.title}\n${other.source}` ? one : other;
}

/** JSON with the keys of every object in order, so that equal things give equal text. */
export function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/** Do both copies hold the same events? */
export function sameEvents(one: Job, other: Job): boolean {
  return one.events.length === other.events.length && one.events.every((event, index) => event.id === other.events[index]?.id);
}
