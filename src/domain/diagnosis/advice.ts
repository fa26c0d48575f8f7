import { believe } from './belief.ts';
import type { DiagnosisInput } from './belief.ts';
import { weighCandidates } from './candidates.ts';
import type { AdviceOptions, Candidate, NotOffered } from './candidates.ts';
import { entropy, outcomeProbabilities } from './information.ts';
import { hypothesisLabel } from './labels.ts';
import type { Belief, Place } from './types.ts';
import { becauseSentence, lostToSentence } from './wording.ts';

export type { AdviceOptions, NotOffered } from './candidates.ts';

/** A look goes before the best test when its worth for each minute is at least this share of the best. */
export const lookShare = 0.9;

/** How many hypotheses are named after each outcome. */
const leadersNamed = 3;

export interface ProposedOutcome {
  readonly id: string;
  readonly label: string;
  /** Chance that the test comes out so. */
  readonly probability: number;
  /** What would lead the beliefs then, highest first. */
  readonly leading: readonly { readonly hypothesis: string; readonly label: string; readonly probability: number }[];
}

export interface Proposal {
  readonly test: string;
  readonly title: string;
  readonly place: Place;
  /** Where the part goes, for tests that exchange one. */
  readonly partner?: Place;
  readonly minutes: number;
  /** Expected information about the fault, bits. */
  readonly bits: number;
  readonly bitsPerMinute: number;
  readonly outcomes: readonly ProposedOutcome[];
  /** What it would split, in one sentence. */
  readonly because: string;
  /** Why it stands behind the first proposal; left out on the first. */
  readonly lostTo?: string;
}

export interface Advice {
  /** Best first. */
  readonly proposals: readonly Proposal[];
  readonly notOffered: readonly NotOffered[];
}

/**
 * What to do next: every look and test at its most suspected places, ranked by the information it is expected to give about the
 * fault for each minute of work. A quick look within a tenth of the best comes first. Work already done is not offered again.
 */
export function advise(input: DiagnosisInput, options: AdviceOptions = {}): Advice {
  const beliefs = believe(input);
  const { candidates, notOffered } = weighCandidates(input, beliefs, options);
  const ranked = rank(candidates).slice(0, options.limit ?? candidates.length);
  const doubt = entropy(beliefs.map((belief) => belief.probability));
  const first = ranked[0];
  const proposals = ranked.map((candidate) => {
    const proposal = propose(candidate, beliefs, doubt);
    return first && candidate !== first ? { ...proposal, lostTo: lostToSentence(candidate, first, doubt) } : proposal;
  });
  return { proposals, notOffered };
}

function rank(candidates: readonly Candidate[]): readonly Candidate[] {
  const sorted = [...candidates].sort((one, other) => other.bitsPerMinute - one.bitsPerMinute);
  const enough = lookShare * (sorted[0]?.bitsPerMinute ?? 0);
  const isEarlyLook = (candidate: Candidate): boolean =>
    candidate.prepared.test.kind === 'look' && candidate.bitsPerMinute >= enough;
  return [...sorted.filter(isEarlyLook), ...sorted.filter((candidate) => !isEarlyLook(candidate))];
}

function propose(candidate: Candidate, beliefs: readonly Belief[], doubt: number): Proposal {
  const { test } = candidate.prepared;
  const { place, partner } = candidate.site;
  return {
    test: test.id,
    title: test.title,
    place,
    ...(partner ? { partner } : {}),
    minutes: test.minutes,
    bits: candidate.bits,
    bitsPerMinute: candidate.bitsPerMinute,
    outcomes: proposedOutcomes(candidate, beliefs),
    because: becauseSentence(candidate, beliefs, doubt),
  };
}

function proposedOutcomes(candidate: Candidate, beliefs: readonly Belief[]): readonly ProposedOutcome[] {
  const overall = outcomeProbabilities(
    beliefs.map((belief) => belief.probability),
    candidate.chances,
  );
  return candidate.prepared.test.outcomes.map((outcome, index) => {
    const probability = overall[index] ?? 0;
    return { id: outcome.id, label: outcome.label, probability, leading: leadersAfter(candidate, beliefs, index, probability) };
  });
}

/** Bayes' rule for one outcome; only the few highest are kept, so no full sort is needed. */
function leadersAfter(
  candidate: Candidate,
  beliefs: readonly Belief[],
  outcome: number,
  probability: number,
): ProposedOutcome['leading'] {
  const best: { belief: Belief; after: number }[] = [];
  beliefs.forEach((belief, index) => {
    const after = (belief.probability * (candidate.chances[index]?.[outcome] ?? 0)) / probability;
    const lowest = best[leadersNamed - 1];
    if (lowest && after <= lowest.after) return;
    best.push({ belief, after });
    best.sort((one, other) => other.after - one.after);
    best.length = Math.min(best.length, leadersNamed);
  });
  return best.map(({ belief, after }) => ({
    hypothesis: belief.hypothesis.id,
    label: hypothesisLabel(belief.hypothesis),
    probability: after,
  }));
}
