import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { crc32 } from '../checksum.ts';
import { titleOf } from './account.ts';
import { canonicalText, compareEvents, countPictures, mostPictures } from './edit.ts';
import { checkEvent } from './eventShapes.ts';
import { findForbiddenKey, isObject, isTime } from '../shape.ts';
import type { Checked } from '../shape.ts';
import { jobType, jobVersion } from './types.ts';
import type { Job, JobEvent } from './types.ts';

/** Files above this are refused unread: a job is some tens of kilobytes. */
export const largestFile = 10 * 1024 * 1024;
/** More events than a job can sensibly have. */
export const mostEvents = 10_000;
/** Deeper nesting than any part of a job has. */
const deepest = 12;

export type JobFileCode =
  | 'too-large'
  | 'not-json'
  | 'not-a-job'
  | 'newer-version'
  | 'unknown-version'
  | 'forbidden-key'
  | 'too-deep'
  | 'checksum'
  | 'wrong-field';

/** The job as the text of a file, with a checksum that shows whether it was changed on its way. */
export function exportJob(job: Job): string {
  return `${JSON.stringify({ ...job, checksum: checksumOf(job) }, undefined, 2)}\n`;
}

/** Over what the job says, whatever the order of keys and the spaces between them. */
function checksumOf(job: unknown): string {
  return `crc32:${crc32(canonicalText(job))}`;
}

/** A file name that says what is in it: `job-2026-03-04-rough-when-hot.json`. */
export function jobFileName(job: Job): string {
  const words = titleOf(job).toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 40);
  return ['job', job.createdAt.slice(0, 10), words].filter((piece) => piece !== '').join('-') + '.json';
}

/**
 * A job from the text of a file, all of it checked before any of it is used.
 * Refuses what is not a job, what a newer book wrote, what was changed since it was written, and anything out of shape, naming the place.
 */
export function importJob(text: string): Result<Job, Refusal<JobFileCode>> {
  // A character takes at least one byte, so text longer than the limit is certainly too large.
  if (text.length > largestFile) return refuse('file', 'too-large', 'This file is larger than 10 MB. A job file is far smaller; choose the right file.');
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  return readJob(parsed.value);
}

/** The same for a value already parsed, such as one out of the device's storage. */
export function readJob(value: unknown): Result<Job, Refusal<JobFileCode>> {
  if (!isObject(value) || value['type'] !== jobType) {
    return refuse('type', 'not-a-job', `This is not a job file of this book: "type" must be "${jobType}".`);
  }
  const found = findForbiddenKey(value, deepest, 'the job');
  if (found !== undefined) return refuse(found.at, found.code, `This job file is damaged or hostile: ${found.at} ${found.problem}. Nothing was taken from it.`);
  const known = checkVersion(value['version']);
  if (!known.ok) return known;
  const whole = checkChecksum(value);
  return whole.ok ? checkJob(migrate(whole.value, known.value)) : whole;
}

/** The job without its checksum. A file without one is taken: versions 1 and 2 had none, and a file may be made by hand. */
function checkChecksum(value: Readonly<Record<string, unknown>>): Result<Readonly<Record<string, unknown>>, Refusal<JobFileCode>> {
  if (!Object.hasOwn(value, 'checksum')) return success(value);
  const { checksum, ...job } = value;
  if (checksum === checksumOf(job)) return success(job);
  return refuse(
    'checksum',
    'checksum',
    'This job file was changed or damaged since it was written: its checksum does not fit. Nothing was taken from it. ' +
      'Fetch the file again from where it was saved. If it was changed on purpose, take out the line "checksum" and open it once more.',
  );
}

function parseJson(text: string): Result<unknown, Refusal<JobFileCode>> {
  try {
    return success(JSON.parse(text.replace(/^\uFEFF/, '')) as unknown);
  } catch (error) {
    const why = error instanceof Error ? ` (${error.message})` : '';
    return refuse('file', 'not-json', `This file is not a job file, or it was cut short: it cannot be read as JSON${why}.`);
  }
}

type Migration = (old: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/** Version 2 only adds: what a file of version 1 holds means the same. */
const toVersion2: Migration = (old) => ({ ...old, version: 2 });

/** Version 3 only adds as well. */
const toVersion3: Migration = (old) => ({ ...old, version: 3 });

/** One step per version: `migrations[0]` turns version 1 into version 2, and so on. */
const migrations: readonly Migration[] = [toVersion2, toVersion3];

function migrate(value: Readonly<Record<string, unknown>>, version: number): Readonly<Record<string, unknown>> {
  return migrations.slice(version - 1).reduce((old, step) => step(old), value);
}

function checkVersion(version: unknown): Result<number, Refusal<JobFileCode>> {
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refuse('version', 'unknown-version', `"version" must be a whole number from 1 to ${jobVersion}; found ${JSON.stringify(version) ?? 'nothing'}.`);
  }
  if (version <= jobVersion) return success(version);
  return refuse(
    'version',
    'newer-version',
    `This job was written by a newer book (version ${version}; this book reads up to ${jobVersion}). Nothing was changed: update the book, then open it again.`,
  );
}

const jobKeys = ['type', 'version', 'id', 'revision', 'createdAt', 'source', 'title', 'events'];

function checkJob(value: Readonly<Record<string, unknown>>): Result<Job, Refusal<JobFileCode>> {
  const unknown = Object.keys(value).find((key) => !jobKeys.includes(key));
  if (unknown !== undefined) return wrongField(unknown, 'is not part of a job');
  const { id, revision, createdAt, source, title, events } = value;
  if (typeof id !== 'string' || !/^[A-Za-z0-9-]{1,64}$/.test(id)) return wrongField('id', 'must be letters, digits and hyphens, at most 64');
  if (typeof revision !== 'number' || !Number.isSafeInteger(revision) || revision < 0) return wrongField('revision', 'must be a whole number from 0');
  if (!isTime(createdAt)) return wrongField('createdAt', 'must be a date and time such as 2026-03-04T09:30:00.000Z');
  if (typeof source !== 'string' || source.length > 300) return wrongField('source', 'must be text of at most 300 characters');
  if (typeof title !== 'string' || title.length > 300) return wrongField('title', 'must be text of at most 300 characters');
  const checked = checkEvents(events);
  if (!checked.ok) return wrongField(checked.at, checked.problem);
  return success({ type: jobType, version: jobVersion, id, revision, createdAt, source, title, events: checked.value });
}

function checkEvents(value: unknown): Checked<readonly JobEvent[]> {
  if (!Array.isArray(value)) return { ok: false, at: 'events', problem: 'must be a list' };
  if (value.length > mostEvents) return { ok: false, at: 'events', problem: `must hold at most ${mostEvents} entries` };
  const events: JobEvent[] = [];
  const ids = new Set<string>();
  for (const [index, item] of value.entries()) {
    const checked = checkEvent(item, `events[${index}]`);
    if (!checked.ok) return checked;
    if (ids.has(checked.value.id)) return { ok: false, at: `events[${index}].id`, problem: 'stands twice in the job' };
    ids.add(checked.value.id);
    events.push(checked.value);
  }
  if (countPictures(events) > mostPictures) return { ok: false, at: 'events', problem: `must hold at most ${mostPictures} pictures` };
  events.sort(compareEvents);
  const stray = events.find((event, index) => event.kind === 'undone' && !events.slice(0, index).some((earlier) => earlier.id === event.undoes));
  if (stray !== undefined) return { ok: false, at: `the entry ${stray.id}`, problem: 'undoes an entry that does not stand before it' };
  return { ok: true, value: events };
}

function wrongField(at: string, problem: string): Result<never, Refusal<JobFileCode>> {
  return refuse(at, 'wrong-field', `This job file is damaged or was changed by hand: ${at} ${problem}. Nothing was taken from it.`);
}

function refuse(input: string, code: JobFileCode, message: string): Result<never, Refusal<JobFileCode>> {
  return failure({ input, code, message });
}
