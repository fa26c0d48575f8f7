/** Which events of a job are in account, and where another misfire cuts off what was known before. */
import type { CameBack, Job, JobEvent, ProofRun } from './types.ts';

/** Ids of the events taken out of account. An undoing can itself be undone, so the last word is read first. */
export function undoneIds(events: readonly JobEvent[]): ReadonlySet<string> {
  const undone = new Set<string>();
  for (const event of events.toReversed()) {
    if (event.kind === 'undone' && !undone.has(event.id)) undone.add(event.undoes);
  }
  return undone;
}

/** The title last given to the job, or the one it was opened with. */
export function titleOf(job: Job): string {
  const undone = undoneIds(job.events);
  return renamedTo(job.events.filter((event) => !undone.has(event.id))) ?? job.title;
}

/** The title last given by the events in account; undefined where the job was never renamed. */
export function renamedTo(live: readonly JobEvent[]): string | undefined {
  return live.findLast((event) => event.kind === 'renamed')?.title;
}

/** A misfire showed itself again: in a run, or after the hand-over. */
export function isReturn(event: JobEvent): event is ProofRun | CameBack {
  return event.kind === 'came-back' || (event.kind === 'proof-run' && event.result === 'returned');
}

/** Was what returned another misfire than the one of before? */
export function isOtherMisfire({ misfire }: ProofRun | CameBack): boolean {
  return misfire === 'different';
}

/**
 * Position of the repair after which another misfire last showed itself; 0 where none did. What was read and tested before it spoke of the
 * fault that was put right there, and says nothing of the one behind it.
 */
export function otherFaultFrom(live: readonly JobEvent[]): number {
  const shownAt = live.findLastIndex((event) => isReturn(event) && isOtherMisfire(event));
  return Math.max(0, live.slice(0, Math.max(0, shownAt)).findLastIndex((event) => event.kind === 'repair-done'));
}
