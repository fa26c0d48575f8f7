/** What the line says: how many jobs the server has not got, when it was tried and when again; never alarm where all is well. */
import { expect, it } from 'vitest';
import type { RoundReport } from '../../src/elements/sync/round.ts';
import type { SyncState } from '../../src/elements/sync/runner.ts';
import { lineWords } from '../../src/elements/sync/words.ts';

const report: RoundReport = { fault: undefined, problems: [], sent: 0, fetched: 0, gone: [], removedHere: 0, strangers: 0, hasTags: true, unsettled: false };
const fault: RoundReport = { ...report, fault: { kind: 'unreachable', message: 'the server cannot be reached', endsRound: true } };
const state: SyncState = { working: false, notYet: 0, triedAt: 0, nextAt: 60_000, report };
const minute = 60_000;

it.each<[string, Partial<SyncState>, string, boolean]>([
  ['not yet looked', { triedAt: undefined, report: undefined }, 'Comparing with the shop server …', false],
  ['all is well', {}, 'Shared with the other bays, as of 0.', false],
  ['all is well and it looks again', { working: true }, 'Shared with the other bays, as of 0.', false],
  ['one to send', { notYet: 1 }, 'Not yet on the shop server: 1 job; to be sent in a moment.', false],
  ['two being sent', { notYet: 2, working: true }, 'Not yet on the shop server: 2 jobs; being sent.', false],
  ['away', { notYet: 3, report: fault, nextAt: 5 * minute }, 'Not yet on the shop server: 3 jobs. Tried at 0: the server cannot be reached; again at 5. Everything is kept on this device.', true],
  ['away just now', { notYet: 3, report: fault, nextAt: 5000 }, 'Not yet on the shop server: 3 jobs. Tried at 0: the server cannot be reached; again in a moment. Everything is kept on this device.', true],
  ['away, nothing to send', { report: fault, working: true }, 'The shop server did not answer as it should. Tried at 0: the server cannot be reached; trying again now. Everything is kept on this device.', true],
  ['a damaged file', { notYet: 1, report: { ...report, problems: [{ file: 'a.json', message: 'x' }] } }, 'One file on the shop server needs a look; see “Jobs shared between bays” on the page of jobs. Not yet on the shop server: 1 job.', true],
])('%s', (_label, change, text, isTrouble) => {
  expect(lineWords({ ...state, ...change }, (at) => String(at / minute))).toEqual({ text, isTrouble });
});
