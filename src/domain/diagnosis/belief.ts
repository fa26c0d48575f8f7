import { hypothesesOf, priorOf } from './prior.ts';
import { normalise, stepsOf } from './steps.ts';
import type { Belief, CodeAtPlace, ComplaintSign, DiagnosisBook, EngineLayout, Evidence } from './types.ts';

/** Everything known about one engine in the bay. */
export interface DiagnosisInput {
  readonly book: DiagnosisBook;
  readonly engine: EngineLayout;
  readonly signs: readonly ComplaintSign[];
  /** Left out: no codes were read. An empty list: the memory was read and held none. */
  readonly codes?: readonly CodeAtPlace[];
  readonly evidence: readonly Evidence[];
}

/**
 * Belief in every hypothesis by Bayes' rule, outcomes taken as independent given the hypothesis. Sums to 1, highest first;
 * equals keep the order of the book. Weights and chances are the book's estimates, and so is the result.
 */
export function believe(input: DiagnosisInput): readonly Belief[] {
  const hypotheses = hypothesesOf(input.book, input.engine);
  const logWeights = priorOf(hypotheses).map((prior) => Math.log(prior));
  for (const step of stepsOf(input, hypotheses)) {
    step.logLikelihoods.forEach((log, index) => (logWeights[index] = (logWeights[index] ?? 0) + log));
  }
  const probabilities = normalise(logWeights);
  return hypotheses
    .map((hypothesis, index) => ({ hypothesis, probability: probabilities[index] ?? 0 }))
    .sort((one, other) => other.probability - one.probability);
}
