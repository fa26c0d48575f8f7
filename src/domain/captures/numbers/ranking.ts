import type { Figure } from './figure.ts';
import { deviationOf, meanFigure, meanOf } from './sample.ts';
import { studentCumulative } from './student.ts';

/** One turn of the engine: what each cylinder did in it. */
export type Round = ReadonlyMap<number, number>;

export interface Ranked {
  readonly cylinder: number;
  /** Against the mean of all cylinders of the same round: a share of it, or a difference from it. */
  readonly against: Figure;
  readonly rounds: number;
}

export interface Ranking {
  /** Cylinders in rising order of their number. */
  readonly cylinders: readonly Ranked[];
  readonly weakest: number;
  /** Chance that no other cylinder is truly weaker, at least: 1 less the chances of each other one (Bonferroni). 0 to 1. */
  readonly sureness: number;
}

/** `share` for what is only known up to a factor, `difference` for what may be zero or less. */
export type RankBy = 'share' | 'difference';

function againstMean(round: Round, by: RankBy): Round {
  const mean = meanOf([...round.values()]);
  return new Map([...round].map(([cylinder, value]) => [cylinder, by === 'share' ? value / mean : value - mean]));
}

/** Rounds that know every cylinder; a round with one missing has another mean. */
function wholeRounds(rounds: readonly Round[]): readonly Round[] {
  const most = Math.max(0, ...rounds.map((round) => round.size));
  return rounds.filter((round) => round.size === most && [...round.values()].every(Number.isFinite));
}

/**
 * Holds the cylinders of an engine against each other over several rounds. Each round is taken against its own mean, so that what
 * changes slowly (battery, oil, speed) drops out. Nothing for fewer than three whole rounds or two cylinders.
 */
export function rankCylinders(rounds: readonly Round[], by: RankBy): Ranking | undefined {
  const relative = wholeRounds(rounds).map((round) => againstMean(round, by));
  const names = [...(relative[0]?.keys() ?? [])].sort((one, other) => one - other);
  if (relative.length < 3 || names.length < 2) return undefined;
  const valuesOf = (cylinder: number) => relative.map((round) => round.get(cylinder) ?? Number.NaN);
  const cylinders = names.map((cylinder) => ({ cylinder, against: meanFigure(valuesOf(cylinder)), rounds: relative.length }));
  const weakest = cylinders.reduce((least, one) => (one.against.value < least.against.value ? one : least)).cylinder;
  const own = valuesOf(weakest);
  const doubts = names.filter((name) => name !== weakest).map((name) => doubtBetween(own, valuesOf(name)));
  return { cylinders, weakest, sureness: Math.max(0, 1 - doubts.reduce((sum, doubt) => sum + doubt, 0)) };
}

/** Chance that the first is truly not below the second: a paired comparison by Student's t. */
function doubtBetween(lower: readonly number[], higher: readonly number[]): number {
  const differences = lower.map((value, place) => (higher[place] ?? 0) - value);
  const scatter = deviationOf(differences) / Math.sqrt(differences.length);
  if (scatter === 0) return meanOf(differences) > 0 ? 0 : 0.5;
  return 1 - studentCumulative(meanOf(differences) / scatter, differences.length - 1);
}
