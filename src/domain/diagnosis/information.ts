import type { ChanceList } from './likelihood.ts';

/** Doubt left in a set of probabilities, in bits (Shannon's entropy): 1 bit is an even choice between two. */
export function entropy(probabilities: readonly number[]): number {
  return probabilities.reduce((sum, probability) => (probability > 0 ? sum - probability * Math.log2(probability) : sum), 0);
}

/** Chance of each outcome over all hypotheses: their chances, weighed with the belief in each. */
export function outcomeProbabilities(probabilities: readonly number[], chances: readonly ChanceList[]): readonly number[] {
  const totals = new Array<number>(chances[0]?.length ?? 0).fill(0);
  for (const [list, mass] of massByList(probabilities, chances)) {
    list.forEach((chance, outcome) => (totals[outcome] = (totals[outcome] ?? 0) + mass * chance));
  }
  return totals;
}

/**
 * What the outcome of a test is expected to tell about the hypotheses, in bits (mutual information). 0 when every hypothesis
 * expects the same, at most the doubt there is. `chances` holds the outcome chances under each hypothesis, in the same order.
 */
export function mutualInformation(probabilities: readonly number[], chances: readonly ChanceList[]): number {
  const overall = outcomeProbabilities(probabilities, chances);
  let bits = 0;
  for (const [list, mass] of massByList(probabilities, chances)) {
    list.forEach((chance, outcome) => {
      const average = overall[outcome] ?? 0;
      if (chance > 0 && average > 0) bits += mass * chance * Math.log2(chance / average);
    });
  }
  return Math.max(0, bits);
}

/** Hypotheses that share one list of chances act as one: a test has only a handful of lists, an engine hundreds of hypotheses. */
function massByList(probabilities: readonly number[], chances: readonly ChanceList[]): ReadonlyMap<ChanceList, number> {
  const masses = new Map<ChanceList, number>();
  chances.forEach((list, index) => masses.set(list, (masses.get(list) ?? 0) + (probabilities[index] ?? 0)));
  return masses;
}
