import { appendEvent, mergeJobs, newJob } from '../../src/domain/jobs/edit.ts';
import { inventedSource } from '../../src/domain/jobs/types.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { failure, success } from '../../src/domain/result.ts';
import { markOf } from '../../src/domain/sync/record.ts';
import type { Agreed } from '../../src/domain/sync/types.ts';
import { syncRound, type RoundReport } from '../../src/elements/sync/round.ts';
import type { JobStore } from '../../src/elements/storage/jobs.ts';
import type { AgreedStore } from '../../src/elements/storage/sharedJobs.ts';
import type { FakeServer } from './fakeServer.ts';

export const at = '2026-03-04T09:30:00.000Z';

export function jobOf(id: string, ...notes: readonly string[]): Job {
  return notes.reduce((job, note) => appendEvent(job, { kind: 'note', text: note }, note, at), newJob(id, at, 'Ignition Bench Book test', `Job ${id}`));
}

type SyncStore = Pick<JobStore, 'marks' | 'read' | 'write'>;

/** A bay: its jobs, what it agreed on with the server, and its rounds. Its store joins as the device's own does. */
export class Device {
  readonly jobs = new Map<string, Job>();
  readonly agreements = new Map<string, Agreed>();
  readonly failedBefore = new Set<string>();
  readonly damaged = new Map<string, string>();
  private readonly server: FakeServer;
  private readonly checks: boolean;

  constructor(server: FakeServer, checks = server.kind !== 'coarse-unchecked') {
    this.server = server;
    this.checks = checks;
  }

  readonly store: SyncStore = {
    marks: async () => success([...this.jobs.values()].map((job) => ({ id: job.id, mark: markOf(job), invented: job.source.startsWith(inventedSource) }))),
    read: async (id) => success(this.jobs.get(id)),
    write: async (job) => {
      const kept = this.jobs.get(job.id);
      const merged = kept === undefined ? success(job) : mergeJobs(job, kept);
      if (!merged.ok) return failure({ input: 'job', code: 'conflict', message: merged.error.message });
      const written = { ...merged.value, revision: Math.max(job.revision, kept?.revision ?? 0) + 1 };
      this.jobs.set(job.id, written);
      return success({ job: written, merged: false });
    },
  };

  readonly agreed: AgreedStore = {
    ids: () => [...this.agreements.keys()],
    read: (id) => this.agreements.get(id),
    write: (id, agreed) => void this.agreements.set(id, agreed),
    forget: (id) => void this.agreements.delete(id),
  };

  /** As a person adds an entry. */
  note(id: string, text: string): void {
    const job = this.jobs.get(id) ?? jobOf(id);
    this.jobs.set(id, { ...appendEvent(job, { kind: 'note', text }, text, at), revision: job.revision + 1 });
  }

  notes(id: string): readonly string[] {
    return this.jobs.get(id)?.events.map((event) => event.id).sort() ?? [];
  }

  round(patience = 40): Promise<RoundReport> {
    const { store, agreed, checks, damaged, failedBefore } = this;
    const wait = (): Promise<void> => Promise.resolve();
    return syncRound({ server: this.server.folder(patience), store, agreed, checks, damaged, failedBefore, folderPath: '/shared-jobs/', wait, progress: () => undefined });
  }
}
