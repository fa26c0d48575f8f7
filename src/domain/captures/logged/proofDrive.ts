import { compareConditions } from '../../obd/similar-conditions.ts';
import type { ConditionMissed, RunningConditions, Similarity } from '../../obd/similar-conditions.ts';
import { channel } from '../columns/match.ts';
import type { ColumnMatch } from '../columns/match.ts';
import type { LoggedTable } from '../table/types.ts';
import { misfiresIn } from './counters.ts';
import { secondsOf } from './weights.ts';

/** Coolant from which an engine counts as warm, °C. Common practice; the stored state says only warm or cold. */
export const warmFrom = 70;

export interface ProofDrive {
  /** Time and turns of the crank under similar conditions by either reading of the load rule; and by one of the two only. */
  readonly seconds: number;
  readonly revolutions: number;
  readonly unsettledSeconds: number;
  /** Longest stretch without a break, s. */
  readonly longest: number;
  /** Seconds in which only this was missed: what to drive differently. */
  readonly missedOnly: Readonly<Record<ConditionMissed, number>>;
  /** Misfires counted while the conditions were similar; nothing when no counter was logged. */
  readonly misfires: number | undefined;
  /** Enough quiet turns: nothing when no number was asked for. */
  readonly longEnough: boolean | undefined;
}

export type ProofRefusal = 'no-speed' | 'no-load' | 'no-coolant' | 'no-time';

/** Columns the comparison cannot do without; the first that is missing. */
export function missingForProof(table: LoggedTable, matches: readonly ColumnMatch[]): ProofRefusal | undefined {
  if (table.time === undefined) return 'no-time';
  if (channel(table, matches, 'engine-speed') === undefined) return 'no-speed';
  if (channel(table, matches, 'load') === undefined) return 'no-load';
  return channel(table, matches, 'coolant-temperature') === undefined ? 'no-coolant' : undefined;
}

const secondsPerMinute = 60;
/** A stalled engine meets no conditions, rpm. */
const runsFrom = 300;

interface Needed {
  readonly speed: Float64Array;
  readonly load: Float64Array;
  readonly coolant: Float64Array;
}

/** The columns a comparison needs, or nothing when one is missing. */
function neededFrom(table: LoggedTable, matches: readonly ColumnMatch[]): Needed | undefined {
  const [speed, load, coolant] = [channel(table, matches, 'engine-speed'), channel(table, matches, 'load'), channel(table, matches, 'coolant-temperature')];
  return speed && load && coolant && table.time ? { speed, load, coolant } : undefined;
}

/** How one row compares; nothing for a stalled engine or a missing reading. */
function compareRow({ speed, load, coolant }: Needed, row: number, stored: RunningConditions): Similarity | undefined {
  const [now = Number.NaN, pull = Number.NaN, heat = Number.NaN] = [speed[row], load[row], coolant[row]];
  const isKnown = now >= runsFrom && !Number.isNaN(pull) && !Number.isNaN(heat);
  return isKnown ? compareConditions(stored, { speed: now, load: pull, warm: heat >= warmFrom }) : undefined;
}

/**
 * How long the engine ran as it did when the misfire was stored (13 CCR 1968.2, recalled: speed within 375 rpm, load within 20 %, same
 * warm-up state). Rows with a reading missing count as not similar. `revolutionsWanted` is what a proof asks for. Nothing when speed,
 * load, coolant or time was not logged; `missingForProof` says which.
 */
export function readProofDrive(table: LoggedTable, matches: readonly ColumnMatch[], stored: RunningConditions, revolutionsWanted?: number): ProofDrive | undefined {
  const needed = neededFrom(table, matches);
  if (needed === undefined) return undefined;
  const steps = secondsOf(table);
  const similarRows = new Uint8Array(table.rows);
  let [seconds, revolutions, unsettledSeconds, longest, run] = [0, 0, 0, 0, 0];
  const missedOnly: Record<ConditionMissed, number> = { speed: 0, load: 0, 'warm-up state': 0 };
  steps.forEach((step, row) => {
    const found = compareRow(needed, row, stored);
    const isSimilar = found?.similar === true;
    similarRows[row] = isSimilar ? 1 : 0;
    run = isSimilar ? run + step : 0;
    longest = Math.max(longest, run);
    if (isSimilar) {
      seconds += step;
      revolutions += (step * (needed.speed[row] ?? 0)) / secondsPerMinute;
    } else if (found?.similar === 'unsettled') unsettledSeconds += step;
    const [only, another] = found?.misses ?? [];
    if (only !== undefined && another === undefined) missedOnly[only] += step;
  });
  const longEnough = revolutionsWanted === undefined ? undefined : revolutions >= revolutionsWanted;
  return { seconds, revolutions, unsettledSeconds, longest, missedOnly, misfires: misfiresIn(table, matches, similarRows), longEnough };
}
