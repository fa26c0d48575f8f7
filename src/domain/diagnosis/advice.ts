import type { DiagnosisInput } from './belief.ts';
import type { AdviceOptions, Candidate, NotOffered } from './candidates.ts';
import { afterOutcome, outcomeChances, repairChances, valueTests } from './decision.ts';
import { findingThreshold } from './finding.ts';
import { atPlace, hypothesisLabel } from './labels.ts';
import { rankTests } from './ranking.ts';
import type { NextStep, RankedTest, Ranking } from './ranking.ts';
import type { Place } from './types.ts';
import { becauseSentence, lostToSentence, thenSentence } from './wording.ts';

export type { AdviceOptions, NotOffered } from './candidates.ts';

/** How many hypotheses are named after each outcome. */
const leadersNamed = 3;

export interface ProposedOutcome {
  readonly id: string;
  readonly label: string;
  /** Chance that the test comes out so. */
  readonly probability: number;
  /** What would lead the beliefs then, highest first. */
  readonly leading: readonly { readonly hypothesis: string; readonly label: string; readonly probability: number }[];
  /** What would most likely come next then, in one sentence. */
  readonly then: string;
}

export interface Proposal {
  readonly test: string;
  readonly title: string;
  readonly place: Place;
  /** Where the part goes, for tests that exchange one. */
  readonly partner?: Place;
  /** As the car stands now. */
  readonly minutes: number;
  /** Expected information about the fault, bits. */
  readonly bits: number;
  readonly bitsPerMinute: number;
  /**
   * Minutes it is expected to save, its own taken off, against fitting parts from now on in the order of probability over cost. Left out
   * where it was not reckoned closely; may be below 0.
   */
  readonly worthMinutes?: number;
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
  /** Expected minutes from here to a cured engine: tests, work, and parts at the shop's rate. An estimate. */
  readonly stillToCome: number;
  readonly next: NextStep;
}

/**
 * What to do next: every look and test at its most suspected places, by the minutes still to come to a cured engine when it is done
 * next. Work already done, work that this arrangement or the tools of the shop do not allow, and tests that tell nothing are not
 * offered, with the reason.
 */
export function advise(input: DiagnosisInput, options: AdviceOptions = {}): Advice {
  const ranking = rankTests(input, options);
  const ranked = ranking.tests.slice(0, options.limit ?? ranking.tests.length);
  const first = ranked[0];
  const proposals = ranked.map((test) => propose(test, ranking, first && test !== first ? lostToSentence(test, first, ranking.doubt) : undefined));
  return { proposals, notOffered: ranking.notOffered, stillToCome: ranking.costToCome, next: ranking.next };
}

function propose(ranked: RankedTest, ranking: Ranking, lostTo: string | undefined): Proposal {
  const { candidate, bits, bitsPerMinute, cost } = ranked;
  const { test, site, minutes } = candidate;
  const { place, partner } = site;
  return {
    test: test.id,
    title: test.title,
    place,
    ...(partner ? { partner } : {}),
    minutes,
    bits,
    bitsPerMinute,
    ...(cost === undefined ? {} : { worthMinutes: ranking.costWithoutTests - cost }),
    // Most proposals are never opened, so what follows each outcome is worked out when it is asked for.
    get outcomes() {
      return proposedOutcomes(candidate, ranking);
    },
    because: becauseSentence(candidate, ranking.beliefs, ranking.doubt),
    ...(lostTo === undefined ? {} : { lostTo }),
  };
}

function proposedOutcomes(candidate: Candidate, ranking: Ranking): readonly ProposedOutcome[] {
  const overall = outcomeChances(ranking.probabilities, candidate);
  return candidate.test.outcomes.map((outcome, index) => {
    const probability = overall[index] ?? 0;
    const after = afterOutcome(ranking.probabilities, candidate, index, probability);
    return { id: outcome.id, label: outcome.label, probability, leading: leaders(after, ranking), then: whatThen(after, candidate, ranking) };
  });
}

function leaders(after: Float64Array, { beliefs }: Ranking): ProposedOutcome['leading'] {
  const order = Array.from(after.keys()).sort((one, other) => (after[other] ?? 0) - (after[one] ?? 0));
  return order.slice(0, leadersNamed).flatMap((index) => {
    const hypothesis = beliefs[index]?.hypothesis;
    return hypothesis ? [{ hypothesis: hypothesis.id, label: hypothesisLabel(hypothesis), probability: after[index] ?? 0 }] : [];
  });
}

/** Enough belief in one repair for a finding, or the test that would then be the most telling for each minute. */
function whatThen(after: Float64Array, done: Candidate, { beliefs, repairs, tests }: Ranking): string {
  const chances = repairChances(after, repairs);
  const likeliest = chances.reduce((best, chance, repair) => (chance > (chances[best] ?? 0) ? repair : best), 0);
  const belief = chances[likeliest] ?? 0;
  if (belief >= findingThreshold) {
    const members = Array.from(after.keys()).filter((index) => repairs.repairOf[index] === likeliest);
    const leading = members.reduce((best, index) => ((after[index] ?? 0) > (after[best] ?? 0) ? index : best), members[0] ?? 0);
    const hypothesis = beliefs[leading]?.hypothesis;
    return thenSentence({ kind: 'finding', belief, hypothesis: hypothesis ? hypothesisLabel(hypothesis) : '', telling: done.test.telling });
  }
  const others = tests.map(({ candidate }) => candidate).filter((candidate) => candidate !== done);
  const best = valueTests(after, others, repairs, 0).reduce((top, value) => (value.bitsPerMinute > top.bitsPerMinute ? value : top), { test: -1, bitsPerMinute: 0 });
  const next = others[best.test];
  return thenSentence(next ? { kind: 'test', title: next.test.title, where: atPlace(next.site.place), minutes: next.minutes } : { kind: 'nothing' });
}

