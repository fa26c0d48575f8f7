import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import type { CodesReread, HandedOver, JobEvent, MisfiresCounted, ProofRun } from './types.ts';

/** How sure a proof must be: the doubt left when a misfire as frequent as before stays away this long is 5 %. */
export const proofConfidence = 0.95;

/**
 * Quiet revolutions after which a misfire that came `rate` times per revolution would have shown itself with chance `confidence`.
 * −ln(1 − c) / rate, misfires taken as independent (Poisson). Rounded up to whole revolutions.
 * Refuses a rate not above 0 and a confidence outside 0 to 1.
 */
export function revolutionsForProof(rate: number, confidence = proofConfidence): Result<number, Refusal> {
  if (!(rate > 0) || !Number.isFinite(rate)) {
    return failure({
      input: 'misfires',
      code: 'no-rate',
      message: 'With no misfire counted before the repair, no number of quiet revolutions can be worked out. Give at least one misfire.',
    });
  }
  if (!(confidence > 0 && confidence < 1)) {
    return failure({ input: 'confidence', code: 'out-of-range', message: 'The confidence must lie between 0 and 1, such as 0.95.' });
  }
  return success(Math.ceil(-Math.log1p(-confidence) / rate));
}

/** The chance that a misfire as frequent as before just did not show in so many revolutions: e^(−rate × revolutions). */
export function doubtLeft(rate: number, revolutions: number): number {
  return Math.exp(-rate * revolutions);
}

export interface ProofState {
  /** Misfires per revolution before the repair. */
  readonly rateBefore: number | undefined;
  /** Quiet revolutions needed; unknown without a rate. */
  readonly revolutionsNeeded: number | undefined;
  /** Quiet revolutions run since the repair under similar conditions. */
  readonly revolutionsRun: number;
  readonly minutesRun: number;
  /** Doubt left by the run, 0 to 1. */
  readonly doubt: number | undefined;
  /** What proof still lacks, in sentences. Empty when the repair is proven. */
  readonly missing: readonly string[];
  readonly proven: boolean;
  /** The misfire came back after the last repair. */
  readonly failed: boolean;
  readonly handedOver: HandedOver | undefined;
}

/**
 * How far the last repair is proven. `events` are those in account, in order.
 * Only what was run after the last repair counts; a misfire that went away because something was disturbed proves nothing.
 */
export function proofState(events: readonly JobEvent[], confidence = proofConfidence): ProofState {
  const repairAt = events.findLastIndex((event) => event.kind === 'repair-done');
  const after = repairAt < 0 ? [] : events.slice(repairAt + 1);
  const rateBefore = rateOf(events);
  const runs = after.filter((event) => event.kind === 'proof-run');
  const counted = countedRuns(runs);
  const revolutionsRun = sum(counted.map((run) => run.revolutions));
  const needed = rateBefore === undefined ? undefined : revolutionsForProof(rateBefore, confidence);
  const revolutionsNeeded = needed?.ok ? needed.value : undefined;
  const failed = runs.some((run) => run.result === 'returned');
  const missing = missingForProof({ events, after, repairAt, runs, revolutionsRun, revolutionsNeeded });
  return {
    rateBefore,
    revolutionsNeeded,
    revolutionsRun,
    minutesRun: sum(counted.map((run) => run.minutes)),
    doubt: rateBefore === undefined ? undefined : doubtLeft(rateBefore, revolutionsRun),
    missing,
    proven: missing.length === 0,
    failed,
    handedOver: after.findLast((event) => event.kind === 'handed-over') ?? events.findLast((event) => event.kind === 'handed-over'),
  };
}

/** The runs that speak for the repair: quiet, under similar conditions, and after the last one in which a counter moved. */
function countedRuns(runs: readonly ProofRun[]): readonly ProofRun[] {
  const noisyAt = runs.findLastIndex((run) => run.misfires > 0);
  return runs.slice(noisyAt + 1).filter((run) => run.result === 'quiet' && run.similarConditions === 'yes');
}

/** Misfires per revolution over all counts taken while the fault was there. */
function rateOf(events: readonly JobEvent[]): number | undefined {
  const counts = events.filter((event): event is MisfiresCounted => event.kind === 'misfires-counted');
  const revolutions = sum(counts.map((count) => count.revolutions));
  const misfires = sum(counts.map((count) => count.misfires));
  return revolutions > 0 && misfires > 0 ? misfires / revolutions : undefined;
}

interface ProofSoFar {
  readonly events: readonly JobEvent[];
  readonly after: readonly JobEvent[];
  readonly repairAt: number;
  readonly runs: readonly ProofRun[];
  readonly revolutionsRun: number;
  readonly revolutionsNeeded: number | undefined;
}

function missingForProof(so: ProofSoFar): string[] {
  if (so.repairAt < 0) return [...disturbanceWarning(so.events), 'No repair is recorded yet.'];
  if (so.runs.some((run) => run.result === 'returned')) {
    return ['The misfire came back after this repair. The repair counts as a test now: go on with the next one proposed.'];
  }
  return [...missingCodes(so), ...missingRun(so)];
}

/** "Gone" after plugging something in again speaks for a contact, or for luck. */
function disturbanceWarning(events: readonly JobEvent[]): string[] {
  const last = events.findLast((event) => event.kind === 'test-done');
  const gone = last?.kind === 'test-done' && (last.outcomes['gone'] ?? 0) > 0;
  return gone ? ['The misfire went away when something was disturbed. That is no proof: it may come back as it went.'] : [];
}

function missingCodes({ after, runs }: ProofSoFar): string[] {
  const clearedAt = after.findIndex((event) => event.kind === 'codes-cleared');
  if (clearedAt < 0) return ['The codes have not been cleared since the repair.'];
  const lastRun = runs.at(-1);
  const rereadFrom = lastRun === undefined ? clearedAt : Math.max(clearedAt, after.indexOf(lastRun));
  const reread = after.slice(rereadFrom).findLast((event): event is CodesReread => event.kind === 'codes-reread');
  if (reread === undefined) return ['The codes have not been read again after the run.'];
  if (reread.refused.length > 0) return [`Not all of the codes read after the run could be understood: ${reread.refused.join(', ')}.`];
  if (reread.codes.length === 0) return [];
  return [`Codes came back after the repair: ${reread.codes.map((code) => code.code).join(', ')}.`];
}

function missingRun({ runs, revolutionsRun, revolutionsNeeded }: ProofSoFar): string[] {
  if (revolutionsNeeded === undefined) {
    return ['How often it misfired before the repair is not recorded, so no length of run can be called long enough.'];
  }
  if (revolutionsRun >= revolutionsNeeded) return [];
  const missing = [`${revolutionsNeeded - revolutionsRun} more quiet revolutions are needed (${revolutionsRun} of ${revolutionsNeeded} run).`];
  if (runs.some((run) => run.misfires > 0)) missing.push('The counters moved during a run; only what is run after it, at zero, counts.');
  if (runs.some((run) => run.similarConditions !== 'yes')) {
    missing.push('A run not known to meet the speed, load and warmth at which it misfired does not count.');
  }
  return missing;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, value) => total + value, 0);
}
