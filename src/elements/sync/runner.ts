import { secondsUntilNext } from '../../domain/sync/backoff.ts';
import type { JobStore } from '../storage/jobs.ts';
import type { AgreedStore } from '../storage/sharedJobs.ts';
import { localEntries, syncRound } from './round.ts';
import type { RoundReport } from './round.ts';
import type { FolderServer } from './server.ts';

export interface SyncState {
  readonly working: boolean;
  /** Jobs of this device that the server has not got as they are here. */
  readonly notYet: number;
  /** Milliseconds since 1970 by this device's clock, to be shown and never compared with the server's. */
  readonly triedAt: number | undefined;
  readonly nextAt: number | undefined;
  readonly report: RoundReport | undefined;
}

export interface RunnerOf {
  readonly server: FolderServer;
  readonly folderPath: string;
  readonly checks: boolean;
  readonly store: JobStore;
  readonly agreed: AgreedStore;
  readonly changed: (state: SyncState) => void;
}

const afterChange = 2;
const usual = 60;
/** A copy just sent is looked at again after its second has passed. */
const lookAgain = 3;

/** Decides when the next round runs. Rounds never overlap, here or in another window. */
export class SyncRunner {
  private readonly of: RunnerOf;
  private readonly damaged = new Map<string, string>();
  private readonly failedBefore = new Set<string>();
  private state: SyncState = { working: false, notYet: 0, triedAt: undefined, nextAt: undefined, report: undefined };
  private timer: ReturnType<typeof setTimeout> | undefined;
  private failures = 0;
  private wanted = false;
  private stopped = false;
  private readonly stopWatching: () => void;

  constructor(of: RunnerOf) {
    this.of = of;
    this.stopWatching = of.store.watch(() => this.jobChanged());
    addEventListener('online', this.tryNow);
    document.addEventListener('visibilitychange', this.shown);
    void this.countNotYet().then(() => this.run());
  }

  stop(): void {
    this.stopped = true;
    clearTimeout(this.timer);
    this.stopWatching();
    removeEventListener('online', this.tryNow);
    document.removeEventListener('visibilitychange', this.shown);
  }

  readonly tryNow = (): void => {
    this.failures = 0;
    void this.run();
  };

  private readonly shown = (): void => {
    if (document.visibilityState === 'visible' && this.failures === 0) void this.run();
  };

  private jobChanged(): void {
    if (this.state.working) return void (this.wanted = true);
    // A server that was away a moment ago is not asked again sooner because somebody types.
    if (this.failures === 0) this.runIn(afterChange);
    void this.countNotYet();
  }

  private runIn(seconds: number): void {
    clearTimeout(this.timer);
    if (this.stopped) return;
    this.show({ nextAt: Date.now() + seconds * 1000 });
    this.timer = setTimeout(() => void (seconds < usual || document.visibilityState === 'visible' ? this.run() : this.runIn(usual)), seconds * 1000);
  }

  private async run(): Promise<void> {
    if (this.stopped) return;
    if (this.state.working) return void (this.wanted = true);
    clearTimeout(this.timer);
    this.show({ working: true });
    const report = await alone(() => this.round()).catch(() => undefined);
    this.show({ working: false });
    await this.countNotYet();
    this.next(report);
  }

  private round(): Promise<RoundReport> {
    const { server, store, agreed, checks, folderPath } = this.of;
    const wait = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));
    return syncRound({ server, store, agreed, checks, folderPath, damaged: this.damaged, failedBefore: this.failedBefore, wait, progress: (notYet) => this.show({ notYet }) });
  }

  /** Undefined: another window is at it, and its work counts for this one too. */
  private next(report: RoundReport | undefined): void {
    if (report) this.show({ report, triedAt: Date.now() });
    this.failures = report?.fault ? this.failures + 1 : 0;
    const again = this.wanted || report?.unsettled === true || (report !== undefined && report.problems.length === 0 && this.state.notYet > 0);
    this.wanted = false;
    this.runIn(this.failures > 0 ? secondsUntilNext(this.failures) : again ? lookAgain : usual);
  }

  private async countNotYet(): Promise<void> {
    const marks = await this.of.store.marks();
    if (!marks.ok) return;
    const gone = new Set(this.state.report?.gone);
    const behind = localEntries(marks.value, this.of.agreed).filter(({ id, mark, invented, agreed }) => mark !== undefined && !invented && mark !== agreed?.mark && !gone.has(id));
    this.show({ notYet: behind.length });
  }

  private show(change: Partial<SyncState>): void {
    this.state = { ...this.state, ...change };
    if (!this.stopped) this.of.changed(this.state);
  }
}

/** One window at a time where the browser has locks; elsewhere the server's check, or the second look, keeps two windows apart. */
async function alone<Value>(work: () => Promise<Value>): Promise<Value | undefined> {
  const locks = (navigator as { locks?: LockManager }).locks;
  if (!locks) return work();
  return (await locks.request('ignition-bench-book:shared-jobs', { ifAvailable: true }, async (lock): Promise<Value | undefined> => (lock ? work() : undefined))) as Value | undefined;
}
