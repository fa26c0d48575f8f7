import type { Judgement } from '../measurement/types.ts';
import type { OutcomeModel, TestModel } from './types.ts';

type Verdict = NonNullable<OutcomeModel['verdict']>;

/**
 * Weights of a test's outcomes from a judged reading: the chance that the true value lies below, inside or above the limits goes
 * to the outcomes with that verdict. Sums to 1; empty when the test has no outcome that a reading decides.
 *
 * An open circuit goes to the `open` outcome, and to `above` when there is none. A side for which the test has no outcome is a
 * side it does not look at: that weight goes to `inside`. Where `inside` is missing too, what is left is shared in proportion.
 * Outcomes with the same verdict share its weight evenly.
 */
export function outcomesFromJudgement(test: TestModel, judgement: Judgement): Readonly<Record<string, number>> {
  const weights: Record<string, number> = {};
  for (const [verdict, probability] of verdictChances(judgement)) {
    const outcomes = outcomesFor(test, verdict);
    for (const outcome of outcomes) weights[outcome.id] = (weights[outcome.id] ?? 0) + probability / outcomes.length;
  }
  return sharedToOne(test, weights);
}

function verdictChances(judgement: Judgement): readonly (readonly [Verdict, number])[] {
  if (judgement.corrected === 'open') return [['open', 1]];
  return [
    ['below', judgement.probabilityBelow],
    ['inside', judgement.probabilityInside],
    ['above', judgement.probabilityAbove],
  ];
}

const standIns: Readonly<Record<Verdict, readonly Verdict[]>> = {
  open: ['open', 'above', 'inside'],
  above: ['above', 'inside'],
  below: ['below', 'inside'],
  inside: ['inside'],
};

function outcomesFor(test: TestModel, verdict: Verdict): readonly OutcomeModel[] {
  for (const word of standIns[verdict]) {
    const outcomes = test.outcomes.filter((outcome) => outcome.verdict === word);
    if (outcomes.length > 0) return outcomes;
  }
  return [];
}

/** When everything fell on a side without an outcome, the reading says nothing between those there are: they share evenly. */
function sharedToOne(test: TestModel, weights: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  const total = Object.values(weights).reduce((sum, weight) => sum + weight, 0);
  if (total > 0) return Object.fromEntries(Object.entries(weights).map(([id, weight]) => [id, weight / total]));
  const judged = test.outcomes.filter((outcome) => outcome.verdict !== undefined);
  return Object.fromEntries(judged.map((outcome) => [outcome.id, 1 / judged.length]));
}
