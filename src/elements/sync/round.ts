import { largestFile } from '../../domain/jobs/file.ts';
import { jobFile, readListing } from '../../domain/sync/listing.ts';
import { planSync } from '../../domain/sync/plan.ts';
import type { LocalEntry, RemoteEntry, Step } from '../../domain/sync/types.ts';
import type { JobStore, MarkedJob } from '../storage/jobs.ts';
import type { AgreedStore } from '../storage/sharedJobs.ts';
import { exchange } from './exchange.ts';
import type { ExchangeOf, Outcome } from './exchange.ts';
import type { Fault } from './server.ts';

export interface RoundOf extends Omit<ExchangeOf, 'store'> {
  readonly store: Pick<JobStore, 'marks' | 'read' | 'write'>;
  readonly agreed: AgreedStore;
  readonly folderPath: string;
  /** Jobs that met a fault in an earlier round; they come last, so that one of them never holds up the others. */
  readonly failedBefore: Set<string>;
  /** How many jobs are still to be settled in this round. */
  readonly progress: (left: number) => void;
}

export interface RoundReport {
  readonly fault: Fault | undefined;
  readonly problems: readonly { readonly file: string; readonly message: string }[];
  readonly sent: number;
  readonly fetched: number;
  /** Jobs here that were on the server once and are no longer. */
  readonly gone: readonly string[];
  /** Jobs on the server that were removed from this device. */
  readonly removedHere: number;
  readonly strangers: number;
  readonly hasTags: boolean;
  /** Something is to be looked at once more, some seconds later. */
  readonly unsettled: boolean;
}

const atOnce = 4;
/** So many files in a row that the server does not take or give are no matter of the files. */
const mostProblemsInARow = 5;

/** One look at the folder, and everything done that follows from it. A listing that is not whole and sound decides nothing. */
export async function syncRound(of: RoundOf): Promise<RoundReport> {
  const listed = await of.server.list();
  if (!listed.ok) return emptyReport(listed.error);
  const marks = await of.store.marks();
  if (!marks.ok) return emptyReport({ kind: 'refused', message: `the jobs of this device could not be read: ${marks.error.message}`, endsRound: true });
  const listing = readListing(listed.value, of.folderPath);
  const plan = planSync(localEntries(marks.value, of.agreed), listing.entries);
  const todo = plan.filter(({ action }) => action !== 'nothing' && action !== 'leave');
  const done = await new Work(of, todo, listing.entries).run();
  const there = new Set(listing.entries.map(({ id }) => id));
  return {
    ...done,
    gone: plan.filter(({ because }) => because === 'gone-from-server').map(({ id }) => id),
    removedHere: plan.filter(({ id, because }) => because === 'removed-here' && there.has(id)).length,
    strangers: listing.strangers,
    hasTags: listing.hasTags,
  };
}

function emptyReport(fault: Fault): RoundReport {
  return { fault, problems: [], sent: 0, fetched: 0, gone: [], removedHere: 0, strangers: 0, hasTags: true, unsettled: false };
}

/** The jobs of this device, and those it once agreed on and has no longer. */
export function localEntries(marks: readonly MarkedJob[], agreed: AgreedStore): readonly LocalEntry[] {
  const here = new Set(marks.map(({ id }) => id));
  const removed = agreed.ids().filter((id) => !here.has(id)).map((id) => ({ id, mark: undefined, invented: false }));
  return [...marks, ...removed].map((entry) => ({ ...entry, agreed: agreed.read(entry.id) }));
}

/** The steps of one round, a few at a time. */
class Work {
  private readonly of: RoundOf;
  private readonly queue: Step[];
  private readonly lengths: ReadonlyMap<string, number | undefined>;
  private readonly problems: { file: string; message: string }[] = [];
  private fault: Fault | undefined;
  private sent = 0;
  private fetched = 0;
  private running = 0;
  private inARow = 0;
  private unsettled = false;

  constructor(of: RoundOf, steps: readonly Step[], remote: readonly RemoteEntry[]) {
    this.of = of;
    this.queue = [...steps].sort((one, other) => Number(of.failedBefore.has(one.id)) - Number(of.failedBefore.has(other.id)));
    this.lengths = new Map(remote.map(({ id, length }) => [id, length]));
  }

  async run(): Promise<Pick<RoundReport, 'fault' | 'problems' | 'sent' | 'fetched' | 'unsettled'>> {
    await Promise.all(Array.from({ length: atOnce }, () => this.lane()));
    const { fault, problems, sent, fetched, unsettled } = this;
    return { fault, problems, sent, fetched, unsettled };
  }

  private async lane(): Promise<void> {
    for (let step = this.queue.shift(); step !== undefined && this.fault === undefined; step = this.queue.shift()) {
      this.running += 1;
      this.note(step, await this.settle(step));
      this.running -= 1;
      this.of.progress(this.queue.length + this.running);
    }
  }

  private async settle(step: Step): Promise<Outcome> {
    if ((this.lengths.get(step.id) ?? 0) > largestFile) return { kind: 'problem', message: 'it is larger than 10 MB; a job file is far smaller. It was not fetched' };
    return exchange(this.of, step, this.of.agreed.read(step.id));
  }

  private note({ id }: Step, outcome: Outcome): void {
    if (outcome.kind === 'agreed') {
      this.of.agreed.write(id, outcome.agreed);
      this.of.failedBefore.delete(id);
      this.inARow = 0;
      if (outcome.sent) this.sent += 1;
      if (outcome.fetched) this.fetched += 1;
      if (!outcome.agreed.confirmed) this.unsettled = true;
      return;
    }
    this.of.failedBefore.add(id);
    this.inARow += 1;
    const message = outcome.kind === 'problem' ? outcome.message : outcome.fault.message;
    this.problems.push({ file: jobFile(id), message });
    if (outcome.kind === 'fault' && (outcome.fault.endsRound || this.inARow >= mostProblemsInARow)) this.fault ??= outcome.fault;
  }
}
