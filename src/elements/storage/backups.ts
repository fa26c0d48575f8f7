import { isObject, isTime } from '../../domain/shape.ts';
import { inventedSource } from '../../domain/jobs/types.ts';
import type { Job } from '../../domain/jobs/types.ts';

const prefix = 'ignition-bench-book:saved-to-file:';
const dayInMilliseconds = 24 * 60 * 60 * 1000;

/** A job that has changed is to be saved to a file again after so many days, or sooner after so many entries. */
export const daysUntilDue = 7;
export const entriesUntilDue = 30;

/** When a job was last handed to the browser as a file, and how many entries it had then. */
export interface SavedToFile {
  /** ISO 8601. */
  readonly at: string;
  readonly entries: number;
}

/** Undefined where the job was never saved to a file from this device. */
export function readSavedToFile(job: string): SavedToFile | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(prefix + job) ?? 'null');
    if (!isObject(kept)) return undefined;
    const { at, entries } = kept;
    return isTime(at) && Number.isSafeInteger(entries) ? { at, entries: Number(entries) } : undefined;
  } catch {
    // Damaged or switched off: the reminder comes once too often.
    return undefined;
  }
}

export function writeSavedToFile(job: Job, at: string): void {
  try {
    localStorage.setItem(prefix + job.id, JSON.stringify({ at, entries: job.events.length } satisfies SavedToFile));
  } catch {
    // The reminder comes once too often.
  }
}

export function forgetSavedToFile(job: string): void {
  try {
    localStorage.removeItem(prefix + job);
  } catch {
    // Nothing was kept.
  }
}

/**
 * What to say when a job should be saved to a file, in a sentence; undefined while it need not. A job without entries since the last
 * file needs none, nor does one that was made up to show the book. `now` is ISO 8601.
 */
export function backupReminder(job: Job, saved: SavedToFile | undefined, now: string): string | undefined {
  const entries = job.events.length - (saved?.entries ?? 0);
  if (entries <= 0 || job.source.startsWith(inventedSource)) return undefined;
  const days = Math.floor((Date.parse(now) - Date.parse(saved?.at ?? job.createdAt)) / dayInMilliseconds);
  if (days < daysUntilDue && entries < entriesUntilDue) return undefined;
  const came = `${entries} ${entries === 1 ? 'entry' : 'entries'}`;
  return saved === undefined
    ? `This job was never saved to a file: ${came} ${entries === 1 ? 'is' : 'are'} on this device only. Save it to a file.`
    : `Since this job was last saved to a file ${dayWords(days)} ago, ${came} came in. Save it to a file again.`;
}

function dayWords(days: number): string {
  return days < 1 ? 'less than a day' : days === 1 ? 'a day' : `${days} days`;
}
