import type { SyncState } from './runner.ts';

/** What stands in the line, and whether it is urgent enough to be said aloud. */
export interface LineWords {
  readonly text: string;
  readonly isTrouble: boolean;
}

/** How things stand with the server. `clock` writes a time of day. */
export function lineWords({ working, notYet, triedAt, nextAt, report }: SyncState, clock: (at: number) => string): LineWords {
  const waiting = notYet === 0 ? '' : `Not yet on the shop server: ${jobs(notYet)}`;
  if (report?.fault) {
    const head = waiting === '' ? 'The shop server did not answer as it should' : waiting;
    const next = working ? 'trying again now' : `again at ${clock(nextAt ?? 0)}`;
    return { text: `${head}. Tried at ${clock(triedAt ?? 0)}: ${report.fault.message}; ${next}. Everything is kept on this device.`, isTrouble: true };
  }
  if (report && report.problems.length > 0) {
    const files = report.problems.length === 1 ? 'One file on the shop server needs' : `${report.problems.length} files on the shop server need`;
    return { text: `${files} a look; see “Jobs shared between bays” on the page of jobs.${waiting === '' ? '' : ` ${waiting}.`}`, isTrouble: true };
  }
  if (waiting !== '') return { text: `${waiting}; ${working ? 'being sent' : 'they are sent in a moment'}.`, isTrouble: false };
  return { text: triedAt === undefined ? 'Comparing with the shop server …' : `Shared with the other bays, as of ${clock(triedAt)}.`, isTrouble: false };
}

export function jobs(count: number): string {
  return `${count} ${count === 1 ? 'job' : 'jobs'}`;
}
