import type { SyncState } from './runner.ts';

/** What stands in the line, and whether it is urgent enough to be said aloud. */
export interface LineWords {
  readonly text: string;
  readonly isTrouble: boolean;
}

type Clock = (at: number) => string;

/** How things stand with the server. `clock` writes a time of day. */
export function lineWords(state: SyncState, clock: Clock): LineWords {
  const { working, notYet, triedAt, report } = state;
  const waiting = notYet === 0 ? '' : `Not yet on the shop server: ${jobs(notYet)}`;
  if (report?.fault) return { text: faultWords(state, waiting, report.fault.message, clock), isTrouble: true };
  if (report && report.problems.length > 0) return { text: problemWords(report.problems.length, waiting), isTrouble: true };
  if (waiting !== '') return { text: `${waiting}; ${working ? 'being sent' : 'to be sent in a moment'}.`, isTrouble: false };
  return { text: triedAt === undefined ? 'Comparing with the shop server …' : `Shared with the other bays, as of ${clock(triedAt)}.`, isTrouble: false };
}

function faultWords({ working, triedAt = 0, nextAt = 0 }: SyncState, waiting: string, fault: string, clock: Clock): string {
  const head = waiting === '' ? 'The shop server did not answer as it should' : waiting;
  const later = nextAt - triedAt < 60_000 ? 'again in a moment' : `again at ${clock(nextAt)}`;
  return `${head}. Tried at ${clock(triedAt)}: ${fault}; ${working ? 'trying again now' : later}. Everything is kept on this device.`;
}

function problemWords(count: number, waiting: string): string {
  const files = count === 1 ? 'One file on the shop server needs' : `${count} files on the shop server need`;
  return `${files} a look; see “Jobs shared between bays” on the page of jobs.${waiting === '' ? '' : ` ${waiting}.`}`;
}

export function jobs(count: number): string {
  return `${count} ${count === 1 ? 'job' : 'jobs'}`;
}
