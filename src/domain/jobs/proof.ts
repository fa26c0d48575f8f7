import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { isOtherMisfire, isReturn, otherFaultFrom } from './account.ts';
import { runIsSimilar, windowOfFrame, windowWords } from './similarRun.ts';
import type { CodesReread, FrameRead, HandedOver, JobEvent, ProofCheck, ProofChecked, ProofRun } from './types.ts';

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
  /** How sure the proof must be, 0 to 1. */
  readonly confidence: number;
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
  /** Another misfire showed itself after the last repair. */
  readonly otherMisfire: boolean;
  /** The last hand-over, unless a misfire has come back since. */
  readonly handedOver: HandedOver | undefined;
}

/**
 * How far the last repair is proven. `events` are those in account, in order; `confidence`, between 0 and 1, is how sure the run must make.
 * Only what was run after the last repair counts; a misfire that went away because something was disturbed proves nothing.
 */
export function proofState(events: readonly JobEvent[], confidence = proofConfidence): ProofState {
  const so = gather(events, confidence);
  const returns = so.after.filter(isReturn);
  const missing = missingForProof(so);
  return {
    confidence,
    rateBefore: so.rateBefore,
    revolutionsNeeded: so.needed?.ok ? so.needed.value : undefined,
    revolutionsRun: so.revolutionsRun,
    minutesRun: sum(so.counted.map((run) => run.minutes)),
    doubt: so.rateBefore === undefined ? undefined : doubtLeft(so.rateBefore, so.revolutionsRun),
    missing,
    proven: missing.length === 0,
    failed: returns.some((event) => !isOtherMisfire(event)),
    otherMisfire: returns.some(isOtherMisfire),
    handedOver: events.slice(events.findLastIndex(isReturn) + 1).findLast((event) => event.kind === 'handed-over'),
  };
}

/** The last answer to each look that belongs to the proof, since the last repair. Empty where nothing was repaired. */
export function checksAfterRepair(events: readonly JobEvent[]): ReadonlyMap<ProofCheck, ProofChecked> {
  return new Map(afterRepair(events).flatMap((event) => (event.kind === 'proof-check' ? [[event.check, event] as const] : [])));
}

interface ProofSoFar {
  readonly events: readonly JobEvent[];
  readonly repaired: boolean;
  readonly after: readonly JobEvent[];
  readonly frame: FrameRead | undefined;
  readonly runs: readonly ProofRun[];
  readonly counted: readonly ProofRun[];
  readonly rateBefore: number | undefined;
  readonly needed: Result<number, Refusal> | undefined;
  readonly revolutionsRun: number;
}

/** Counts and frames of a misfire whose cause was put right say nothing of the one behind it. */
function gather(events: readonly JobEvent[], confidence: number): ProofSoFar {
  const after = afterRepair(events);
  const ofThisFault = events.slice(otherFaultFrom(events));
  const frame = ofThisFault.findLast((event) => event.kind === 'frame-read');
  const runs = after.filter((event) => event.kind === 'proof-run');
  const counted = countedRuns(runs, frame);
  const rateBefore = rateOf(ofThisFault);
  return {
    events,
    repaired: events.some((event) => event.kind === 'repair-done'),
    after,
    frame,
    runs,
    counted,
    rateBefore,
    needed: rateBefore === undefined ? undefined : revolutionsForProof(rateBefore, confidence),
    revolutionsRun: sum(counted.map((run) => run.revolutions)),
  };
}

function afterRepair(events: readonly JobEvent[]): readonly JobEvent[] {
  const repairAt = events.findLastIndex((event) => event.kind === 'repair-done');
  return repairAt < 0 ? [] : events.slice(repairAt + 1);
}

/** The runs that speak for the repair: quiet, under similar conditions, and after the last one in which a counter moved. */
function countedRuns(runs: readonly ProofRun[], frame: FrameRead | undefined): readonly ProofRun[] {
  const noisyAt = runs.findLastIndex((run) => run.misfires > 0);
  return runs.slice(noisyAt + 1).filter((run) => run.result === 'quiet' && runIsSimilar(run, frame) === 'yes');
}

/** Misfires per revolution over all counts taken while the fault was there; a run in which another misfire showed itself counted that one. */
function rateOf(events: readonly JobEvent[]): number | undefined {
  const counts = events.flatMap((event) => (event.kind === 'misfires-counted' || isNoisyOther(event) ? [event] : []));
  const revolutions = sum(counts.map((count) => count.revolutions));
  const misfires = sum(counts.map((count) => count.misfires));
  return revolutions > 0 && misfires > 0 ? misfires / revolutions : undefined;
}

function isNoisyOther(event: JobEvent): event is ProofRun {
  return event.kind === 'proof-run' && isReturn(event) && isOtherMisfire(event) && event.misfires > 0;
}

function missingForProof(so: ProofSoFar): string[] {
  if (!so.repaired) return [...disturbanceWarning(so.events), 'No repair is recorded yet.'];
  const back = so.after.findLast(isReturn);
  if (back === undefined) return [...missingCodes(so), ...missingRun(so), ...missingChecks(so)];
  if (isOtherMisfire(back)) {
    return ['Another misfire showed itself after this repair: a second fault stands behind the first. What was found before the repair is laid aside; read the codes and go on testing.'];
  }
  return ['The misfire came back after this repair. The repair counts as a test now: go on with the next one proposed.'];
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

function missingRun({ runs, frame, revolutionsRun, needed }: ProofSoFar): string[] {
  if (needed === undefined) {
    return ['How often it misfired before the repair is not recorded, so no length of run can be called long enough.'];
  }
  if (!needed.ok) return [needed.error.message];
  if (revolutionsRun >= needed.value) return [];
  const missing = [`${needed.value - revolutionsRun} more quiet revolutions are needed (${revolutionsRun} of ${needed.value} run).`];
  if (runs.some((run) => run.misfires > 0)) missing.push('The counters moved during a run; only what is run after it, at zero, counts.');
  if (runs.some((run) => runIsSimilar(run, frame) !== 'yes')) {
    const window = frame === undefined ? '' : ` The stored frame asks for ${windowWords(windowOfFrame(frame))}.`;
    missing.push(`A run not known to meet the speed, load and warmth at which it misfired does not count.${window}`);
  }
  return missing;
}

/** Looked at and found bad holds the proof up; not complete yet does not, it is printed. */
function missingChecks({ events }: ProofSoFar): string[] {
  const checks = checksAfterRepair(events);
  const lamp = events.findLast((event) => event.kind === 'complaint')?.lamp;
  const missing: string[] = [];
  if (checks.get('trims')?.state === 'bad') missing.push('The fuel trims are not back in their band.');
  if (checks.get('catalyst')?.state === 'bad') missing.push('The catalyst was looked at and is not in order.');
  if (lamp === 'flashed-long' && !checks.has('catalyst')) {
    missing.push('The lamp flashed for minutes on end, which can overheat the catalyst: look at it, and note what was found.');
  }
  return missing;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, value) => total + value, 0);
}
