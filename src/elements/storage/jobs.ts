import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase } from 'idb';
import { mergeJobs } from '../../domain/jobs/edit.ts';
import { readJob } from '../../domain/jobs/file.ts';
import { inventedSource } from '../../domain/jobs/types.ts';
import type { Job } from '../../domain/jobs/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { isObject } from '../../domain/shape.ts';
import { holdsEveryEvent, markOf } from '../../domain/sync/record.ts';
import { failureOf } from './failures.ts';
import type { StorageFailure } from './failures.ts';
import { askToKeep } from './room.ts';
import { openSecondCopy } from './secondCopy.ts';
import type { SecondCopy } from './secondCopy.ts';

const databaseName = 'ignition-bench-book';
const databaseVersion = 1;
const channelName = 'ignition-bench-book:jobs';

export type { StorageCode, StorageFailure } from './failures.ts';

export interface StoredJobs {
  /** Last changed first. */
  readonly jobs: readonly Job[];
  /** Entries that are kept but cannot be read by this book; they are left as they are. */
  readonly unreadable: readonly { readonly id: string; readonly message: string; readonly text: string }[];
}

export interface WrittenJob {
  /** As it now stands on the device, with its new revision. */
  readonly job: Job;
  /** Another window had written entries of its own; both are in. */
  readonly merged: boolean;
}

/** A job of this device by its mark alone, not read further. */
export interface MarkedJob {
  readonly id: string;
  /** See `markOf`; empty where the job cannot be read. */
  readonly mark: string;
  readonly invented: boolean;
}

/** The jobs of this device. Every failure comes back as a value that says what to do. */
export interface JobStore {
  list(): Promise<Result<StoredJobs, StorageFailure>>;
  /** Every job by its mark: quick also where there are a thousand. */
  marks(): Promise<Result<readonly MarkedJob[], StorageFailure>>;
  read(id: string): Promise<Result<Job | undefined, StorageFailure>>;
  /** Keeps the job. Never overwrites what another window wrote: entries of both are kept. */
  write(job: Job): Promise<Result<WrittenJob, StorageFailure>>;
  remove(id: string): Promise<Result<void, StorageFailure>>;
  /** Calls back when another window wrote a job. Gives back the way to stop. */
  watch(changed: (id: string) => void): () => void;
  close(): void;
}

interface Schema extends DBSchema {
  // Whatever is stored is checked again when it is read.
  jobs: { key: string; value: unknown };
}
type Database = IDBPDatabase<Schema>;

/** The store of this device; opened when first used. Other names serve tests. */
export function openJobStore(name = databaseName): JobStore {
  const connection = new Connection(name);
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel(`${channelName}:${name}`);
  return {
    list: () => connection.use(listJobs),
    marks: () => connection.use(listMarks),
    read: async (id) => unwrap(await connection.use((database) => readStored(database, id))),
    write: async (job) => {
      const written = unwrap(await connection.use((database) => writeJob(database, job)));
      if (written.ok) channel?.postMessage(job.id);
      // The first keeping of a job: from now on there is something to lose.
      if (!written.ok) return written;
      if (written.value.job.revision === 1) void askToKeep();
      await connection.copy(job.id);
      return written;
    },
    remove: async (id) => {
      const removed = await connection.use((database) => removeJob(database, id));
      if (removed.ok) channel?.postMessage(id);
      if (removed.ok) await connection.copy(id);
      return removed;
    },
    watch: (changed) => {
      const hear = (event: MessageEvent<unknown>): void => {
        if (typeof event.data === 'string') changed(event.data);
      };
      channel?.addEventListener('message', hear);
      return () => channel?.removeEventListener('message', hear);
    },
    close: () => {
      channel?.close();
      void connection.close();
    },
  };
}

function unwrap<Value>(result: Result<Result<Value, StorageFailure>, StorageFailure>): Result<Value, StorageFailure> {
  return result.ok ? result.value : result;
}

/** One connection, opened again when the browser has dropped it (a sleeping tablet, a newer book in another window). */
class Connection {
  private readonly name: string;
  private opening: Promise<Database> | undefined;
  private secondCopy: Promise<SecondCopy | undefined> | undefined;

  constructor(name: string) {
    this.name = name;
  }

  /** Opened when it is first needed: most pages only read jobs. */
  private second(): Promise<SecondCopy | undefined> {
    return (this.secondCopy ??= openSecondCopy(this.name));
  }

  /** Brings the second copy of one job to what the database holds, one window at a time. It is a help and never a hindrance: where it fails, the database still has the job. */
  async copy(id: string): Promise<void> {
    const second = await this.second();
    if (!second) return;
    const bring = async (): Promise<void> => {
      const stored = await this.use((database) => readStored(database, id));
      if (!stored.ok || !stored.value.ok) return;
      const job = stored.value.value;
      await (job === undefined ? second.remove(id) : second.write(job));
    };
    await navigator.locks.request(`${this.name}:${id}`, bring).catch(() => undefined);
  }

  async use<Value>(work: (database: Database) => Promise<Value>): Promise<Result<Value, StorageFailure>> {
    try {
      return success(await work(await this.open()));
    } catch (error) {
      if (!isLostConnection(error)) return failure(failureOf(error));
      await this.close();
    }
    try {
      return success(await work(await this.open()));
    } catch (error) {
      return failure(failureOf(error));
    }
  }

  private open(): Promise<Database> {
    this.opening ??= this.connect().catch((error: unknown) => {
      this.opening = undefined;
      throw error;
    });
    return this.opening;
  }

  private connect(): Promise<Database> {
    if (typeof indexedDB === 'undefined') return Promise.reject(new DOMException('no indexedDB', 'NotSupportedError'));
    let isNew = false;
    const opened = new Promise<Database>((resolve, reject) => {
      openDB<Schema>(this.name, databaseVersion, {
        upgrade(database) {
          isNew = !database.objectStoreNames.contains('jobs');
          if (isNew) database.createObjectStore('jobs');
        },
        blocked: () => reject(new DOMException('another window holds it', 'BlockedError')),
        blocking: () => void this.close(),
        terminated: () => (this.opening = undefined),
      }).then(resolve, reject);
    });
    return opened.then(async (database) => {
      if (isNew) await this.restore(database);
      return database;
    });
  }

  /** A database that is new although there is a second copy was lost by the browser: its jobs are put back. */
  private async restore(database: Database): Promise<void> {
    const jobs = (await (await this.second())?.readAll().catch(() => undefined)) ?? [];
    if (jobs.length === 0) return;
    const transaction = strictTransaction(database);
    for (const job of jobs) if ((await transaction.store.get(job.id)) === undefined) await transaction.store.put(job, job.id);
    await transaction.done;
  }

  async close(): Promise<void> {
    const { opening } = this;
    this.opening = undefined;
    await opening?.then(
      (database) => database.close(),
      () => undefined,
    );
  }
}

async function listJobs(database: Database): Promise<StoredJobs> {
  const transaction = database.transaction('jobs');
  const [keys, values] = await Promise.all([transaction.store.getAllKeys(), transaction.store.getAll()]);
  const jobs: Job[] = [];
  const unreadable: StoredJobs['unreadable'][number][] = [];
  values.forEach((value, index) => {
    const job = readJob(value);
    if (job.ok) jobs.push(job.value);
    else unreadable.push({ id: String(keys[index]), message: job.error.message, text: JSON.stringify(value, undefined, 2) });
  });
  return { jobs: jobs.sort((one, other) => (lastChange(one) < lastChange(other) ? 1 : -1)), unreadable };
}

async function listMarks(database: Database): Promise<readonly MarkedJob[]> {
  const transaction = database.transaction('jobs');
  const [keys, values] = await Promise.all([transaction.store.getAllKeys(), transaction.store.getAll()]);
  return values.map((value, index) => markedJob(String(keys[index]), value));
}

function markedJob(id: string, value: unknown): MarkedJob {
  if (!isObject(value)) return { id, mark: '', invented: false };
  const { revision, events, source } = value;
  const isWhole = typeof revision === 'number' && Array.isArray(events);
  return { id, mark: isWhole ? markOf({ revision, events: events as Job['events'] }) : '', invented: String(source).startsWith(inventedSource) };
}

function lastChange(job: Job): string {
  return job.events.at(-1)?.at ?? job.createdAt;
}

async function readStored(database: Database, id: string): Promise<Result<Job | undefined, StorageFailure>> {
  return checkStored(await database.get('jobs', id));
}

function checkStored(value: unknown): Result<Job | undefined, StorageFailure> {
  if (value === undefined) return success(undefined);
  const job = readJob(value);
  return job.ok ? job : failure({ input: 'job', code: 'damaged', message: job.error.message });
}

/** A write that has reached the disk before it is called done. */
function strictTransaction(database: Database) {
  const transaction = database.transaction('jobs', 'readwrite', { durability: 'strict' });
  // A failed request is reported by its own promise; the transaction's must not be reported a second time as unhandled.
  transaction.done.catch(() => undefined);
  return transaction;
}

/** Reads, compares and writes in one transaction, so that no other window can come between. */
async function writeJob(database: Database, job: Job): Promise<Result<WrittenJob, StorageFailure>> {
  const transaction = strictTransaction(database);
  const prepared = prepareWrite(job, checkStored(await transaction.store.get(job.id)));
  if (prepared.ok) await transaction.store.put(prepared.value.job, job.id);
  await transaction.done;
  return prepared;
}

/** The same revision means that nobody else wrote since this copy was read; otherwise the entries of both go in. */
function prepareWrite(job: Job, stored: Result<Job | undefined, StorageFailure>): Result<WrittenJob, StorageFailure> {
  if (!stored.ok) return stored;
  const kept = stored.value;
  // A copy brought from another device can have the revision of the one here and yet other entries.
  if (kept === undefined || (kept.revision === job.revision && holdsEveryEvent(job, kept))) {
    return success({ job: { ...job, revision: job.revision + 1 }, merged: false });
  }
  const merged = mergeJobs(job, kept);
  if (!merged.ok) return failure({ input: 'job', code: 'conflict', message: merged.error.message });
  const revision = Math.max(job.revision, kept.revision) + 1;
  return success({ job: { ...merged.value, revision }, merged: merged.value.events.length > job.events.length });
}

async function removeJob(database: Database, id: string): Promise<void> {
  const transaction = strictTransaction(database);
  await transaction.store.delete(id);
  await transaction.done;
}

function isLostConnection(error: unknown): boolean {
  return error instanceof DOMException && ['InvalidStateError', 'UnknownError'].includes(error.name);
}
