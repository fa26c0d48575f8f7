import type { JobBook } from '../../domain/jobs/book.ts';
import { appendEvent, mergeJobs } from '../../domain/jobs/edit.ts';
import { checkEvent } from '../../domain/jobs/eventShapes.ts';
import { deriveJob } from '../../domain/jobs/reduce.ts';
import type { DerivedJob, DeriveOptions } from '../../domain/jobs/reduce.ts';
import type { Job, JobEventBody } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import type { JobStore } from '../storage/jobs.ts';
import { newId, now } from './identity.ts';

export type SaveStatus =
  | { readonly kind: 'saved'; readonly at: string; readonly merged: boolean }
  | { readonly kind: 'saving' }
  | { readonly kind: 'failed'; readonly message: string };

/** An event to be written; an id is given when another event refers to it. */
export interface NewEvent {
  readonly body: JobEventBody;
  readonly id?: string;
}

/** One open job: every change is shown at once and saved at once, one write after the other. */
export class JobSession {
  readonly book: JobBook;
  private readonly store: JobStore;
  private readonly changed: () => void;
  private readonly statusChanged: () => void;
  private readonly options: () => DeriveOptions;
  private current: Job;
  private derivedJob: DerivedJob;
  private writing: Promise<void> = Promise.resolve();
  status: SaveStatus;

  constructor(job: Job, book: JobBook, store: JobStore, listeners: { changed: () => void; statusChanged: () => void }, options: () => DeriveOptions = () => ({})) {
    this.book = book;
    this.store = store;
    this.changed = listeners.changed;
    this.statusChanged = listeners.statusChanged;
    this.options = options;
    this.current = job;
    this.derivedJob = deriveJob(job.events, book, options());
    this.status = { kind: 'saved', at: job.events.at(-1)?.at ?? job.createdAt, merged: false };
  }

  get job(): Job {
    return this.current;
  }

  get derived(): DerivedJob {
    return this.derivedJob;
  }

  /** Writes events into the job, all or none; gives back what is wrong with them where they would not make a sound record. */
  add(...events: readonly NewEvent[]): Refusal | undefined {
    const at = now();
    const job = events.reduce((before, { body, id }) => appendEvent(before, body, id ?? newId(), at), this.current);
    for (const event of job.events.slice(this.current.events.length)) {
      const checked = checkEvent(event, '');
      if (!checked.ok) return { input: checked.at.split('.').at(-1) ?? '', code: 'out-of-shape', message: `Not kept: this ${checked.problem}.` };
    }
    this.take(job);
    void this.save();
    return undefined;
  }

  /** Takes an event out of account, or back into account when it was undone before. */
  undo(eventId: string): void {
    const undoing = this.derivedJob.live.findLast((event) => event.kind === 'undone' && event.undoes === eventId);
    this.add({ body: { kind: 'undone', undoes: undoing?.id ?? eventId } });
  }

  /** Saves what is there; also called again by hand after a failure. */
  save(): Promise<void> {
    this.setStatus({ kind: 'saving' });
    this.writing = this.writing.then(() => this.write());
    return this.writing;
  }

  private async write(): Promise<void> {
    const written = await this.store.write(this.current);
    if (!written.ok) return this.setStatus({ kind: 'failed', message: written.error.message });
    const { job, merged } = written.value;
    this.absorb(job);
    this.setStatus({ kind: 'saved', at: now(), merged });
  }

  /** Another window wrote: its entries are taken in. */
  async refresh(): Promise<void> {
    const stored = await this.store.read(this.current.id);
    if (stored.ok && stored.value !== undefined) this.absorb(stored.value);
  }

  /** What is stored, together with what was added here since. */
  private absorb(stored: Job): void {
    const merged = mergeJobs(this.current, stored);
    if (!merged.ok) return this.setStatus({ kind: 'failed', message: merged.error.message });
    const isNews = merged.value.events.length > this.current.events.length;
    this.current = { ...merged.value, revision: stored.revision };
    if (isNews) this.take(this.current);
  }

  private take(job: Job): void {
    this.current = job;
    this.derive();
  }

  /** Works everything out again; also called when what was chosen for the working out has changed. */
  derive(): void {
    this.derivedJob = deriveJob(this.current.events, this.book, this.options());
    this.changed();
  }

  private setStatus(status: SaveStatus): void {
    this.status = status;
    this.statusChanged();
  }
}
