import { rankCylinders } from '../numbers/ranking.ts';
import type { Ranking, Round } from '../numbers/ranking.ts';
import type { Hump, StarterTrace } from './starterCurrent.ts';

export type CompressionFinding = 'even' | 'one-weak' | 'too-close-to-call' | 'too-short';

export interface RelativeCompression {
  readonly finding: CompressionFinding;
  /** The height of each cylinder's hump as a share of the mean of its round. 1 is the mean; no pressure follows from it. */
  readonly ranking: Ranking | undefined;
  /**
   * Whether the numbers are those of cylinders. Without a mark of one cylinder they only count the humps from the first one on: the
   * order is right, but not which is which.
   */
  readonly named: boolean;
}

/** A hump lower than the mean of the rest by less than this share is not called weak: cylinders within 10 to 15 %, common practice. */
const weakBelow = 0.1;
/** How sure one must be before a cylinder is named. */
const sureEnough = 0.95;

/** Rounds of so many humps, each beginning where the first hump began. */
function roundsOf(humps: readonly Hump[], cylinders: readonly (number | undefined)[], count: number): readonly Round[] {
  const rounds: Map<number, number>[] = [];
  humps.forEach((hump, place) => {
    const cylinder = cylinders[place];
    if (cylinder === undefined) return;
    const current = rounds.at(-1);
    if (current === undefined || current.size === count || current.has(cylinder)) rounds.push(new Map([[cylinder, hump.height]]));
    else current.set(cylinder, hump.height);
  });
  return rounds;
}

/** The share a cylinder has of the mean of the others, when it has `share` of the mean of all `count`. */
function shareOfOthers(share: number, count: number): number {
  return (share * (count - 1)) / (count - share);
}

/** How the cylinders' humps compare, which one is weak, and how sure that is. `count` is the number of cylinders. */
export function compareCompression(trace: StarterTrace, count: number): RelativeCompression {
  const byTurn = trace.humps.map((_, place) => (place % count) + 1);
  const cylinders = trace.assignment.by === 'none' ? byTurn : trace.assignment.cylinders;
  const ranking = rankCylinders(roundsOf(trace.humps, cylinders, count), 'share');
  const named = trace.assignment.by === 'trigger';
  if (ranking === undefined) return { finding: 'too-short', ranking, named };
  const weakest = ranking.cylinders.find(({ cylinder }) => cylinder === ranking.weakest)?.against;
  const below = weakest === undefined ? 0 : 1 - shareOfOthers(weakest.value, count);
  const surelyEven = weakest !== undefined && 1 - shareOfOthers(weakest.value - weakest.halfWidth95, count) < weakBelow;
  const surelyWeak = below >= weakBelow && ranking.sureness >= sureEnough;
  return { finding: surelyWeak ? 'one-weak' : surelyEven ? 'even' : 'too-close-to-call', ranking, named };
}
