import { chancesAt } from './candidates.ts';
import type { Candidate } from './candidates.ts';
import { expectedBits } from './decision.ts';
import { atPlace, hypothesisPhrase, lowerFirst, perCent } from './labels.ts';
import type { RankedTest } from './ranking.ts';
import type { Belief, Hypothesis } from './types.ts';

/** How many of the leading beliefs are looked through for the pair that a test tells apart best. */
const pairsAmong = 12;

/** Two hypotheses told apart less than this (share of outcomes that differ) are not worth naming in a sentence. */
const leastDifference = 0.1;

/** What the test would split, in one sentence. `doubt` is the entropy of the beliefs, in bits. */
export function becauseSentence(candidate: Candidate, beliefs: readonly Belief[], doubt: number): string {
  const time = `in about ${minutesWords(candidate.minutes)}`;
  const pair = bestTold(candidate, beliefs);
  if (!pair) {
    const probabilities = beliefs.map((belief) => belief.probability);
    return `It settles ${doubtShare(expectedBits(probabilities, candidate), doubt)} of the doubt ${time}.`;
  }
  const [one, other] = pair;
  const where = commonPlace(one.hypothesis, other.hypothesis);
  const name = ({ hypothesis, probability }: Belief): string => {
    const words = where === undefined ? hypothesisPhrase(hypothesis) : lowerFirst(hypothesis.fault?.title ?? '');
    return `${words} (${perCent(probability)})`;
  };
  const place = where === undefined || where === '' ? '' : `${where} `;
  return `It tells ${name(one)} from ${name(other)} ${place}${time}.`;
}

/** Why a proposal stands behind the first one. */
export function lostToSentence(test: RankedTest, first: RankedTest, doubt: number): string {
  const own = `It settles ${doubtShare(test.bits, doubt)} of the doubt in ${minutesWords(test.candidate.minutes)}`;
  const winner = `“${first.candidate.test.title}” ${atPlace(first.candidate.site.place)}`;
  const settles = `${winner} settles ${doubtShare(first.bits, doubt)} in ${minutesWords(first.candidate.minutes)}`;
  if (test.cost === undefined || first.cost === undefined) return `${own}; ${settles}.`;
  if (test.cost < first.cost) return `${own}; ${winner} is a quick look that is expected to save nearly as much, and looks come first.`;
  const more = Math.round(test.cost - first.cost);
  return more < 1 ? `${own}; ${settles}, and is expected to save as much.` : `${own}; ${settles}, and is expected to save ${minutesWords(more)} more.`;
}

/** What would follow an outcome, in one sentence. */
export function thenSentence(
  step:
    | { readonly kind: 'finding'; readonly hypothesis: string; readonly belief: number; readonly telling: boolean }
    | { readonly kind: 'test'; readonly title: string; readonly where: string; readonly minutes: number }
    | { readonly kind: 'nothing' },
): string {
  switch (step.kind) {
    case 'finding':
      return `${step.telling ? 'Enough for a finding' : 'Nearly a finding, with a telling test to carry it'}: ${lowerFirst(step.hypothesis)} (${perCent(step.belief)}).`;
    case 'test':
      return `Next would be “${step.title}” ${step.where}, ${minutesWords(step.minutes)}.`;
    case 'nothing':
      return 'No test of this book would tell more then.';
  }
}

/** The two leading beliefs between which the outcome decides best, the likelier first. */
function bestTold(candidate: Candidate, beliefs: readonly Belief[]): readonly [Belief, Belief] | undefined {
  let best: readonly [Belief, Belief] | undefined;
  let bestScore = 0;
  const leading = beliefs.slice(0, pairsAmong);
  leading.forEach((one, index) => {
    leading.slice(index + 1).forEach((other, offset) => {
      const difference = differenceOf(candidate, index, index + 1 + offset);
      const score = difference < leastDifference ? 0 : one.probability * other.probability * difference;
      if (score <= bestScore) return;
      bestScore = score;
      best = [one, other];
    });
  });
  return best;
}

/** Share of cases in which two hypotheses come out differently (total variation distance), 0 to 1. */
function differenceOf(candidate: Candidate, one: number, other: number): number {
  const first = chancesAt(candidate, one);
  const second = chancesAt(candidate, other);
  if (!first || !second || first === second) return 0;
  return first.reduce((sum, chance, outcome) => sum + Math.abs(chance - (second[outcome] ?? 0)), 0) / 2;
}

/** Where both lie, as words for a sentence; empty for the whole engine, undefined when they lie apart. */
function commonPlace(one: Hypothesis, other: Hypothesis): string | undefined {
  const cylinders = one.place?.cylinders;
  if (!cylinders || !other.place || cylinders.join() !== other.place.cylinders.join()) return undefined;
  if (one.place.kind === 'engine' || other.place.kind === 'engine') return '';
  if (one.place.kind === other.place.kind && one.place.kind === 'bank') return `at ${one.place.label}`;
  return cylinders.length === 1 ? `at cylinder ${cylinders[0]}` : `at cylinders ${listWords(cylinders)}`;
}

function listWords(numbers: readonly number[]): string {
  return `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

function doubtShare(bits: number, doubt: number): string {
  const share = perCent(doubt > 0 ? Math.min(1, bits / doubt) : 0);
  return /^\d/.test(share) ? `about ${share}` : share;
}

function minutesWords(minutes: number): string {
  return minutes === 1 ? '1 minute' : `${minutes} minutes`;
}
