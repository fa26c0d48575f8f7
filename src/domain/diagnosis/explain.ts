import type { DiagnosisInput } from './belief.ts';
import { hypothesesOf, priorOf } from './prior.ts';
import type { Step } from './steps.ts';
import { normalise, stepsOf } from './steps.ts';

/** How one piece of evidence moved the belief in one hypothesis. */
export interface ExplanationStep {
  readonly label: string;
  readonly kind: Step['kind'];
  /** Position in the evidence of the input; left out for complaint and codes. */
  readonly evidenceIndex?: number;
  /** What the odds for the hypothesis were multiplied by: above 1 speaks for it, below 1 against. */
  readonly factor: number;
  /** Probability before and after. */
  readonly before: number;
  readonly after: number;
}

/** How one belief came from the prior to now, a step for each piece that counts. Empty for an unknown hypothesis. */
export function explain(input: DiagnosisInput, hypothesisId: string): readonly ExplanationStep[] {
  const hypotheses = hypothesesOf(input.book, input.engine);
  const chosen = hypotheses.findIndex((hypothesis) => hypothesis.id === hypothesisId);
  if (chosen < 0) return [];
  let logWeights: readonly number[] = priorOf(hypotheses).map((prior) => Math.log(prior));
  return stepsOf(input, hypotheses).map(({ logLikelihoods, ...step }) => {
    const before = normalise(logWeights);
    const factor = oddsFactor(before, logLikelihoods, chosen);
    logWeights = logWeights.map((weight, index) => weight + (logLikelihoods[index] ?? 0));
    return { ...step, factor, before: before[chosen] ?? 0, after: normalise(logWeights)[chosen] ?? 0 };
  });
}

/**
 * What evidence multiplies the odds of one hypothesis by, or of several taken together: their average likelihood over that of all
 * the others. 1 when there is no other.
 */
export function oddsFactor(probabilities: readonly number[], logLikelihoods: readonly number[], chosen: number | readonly number[]): number {
  const inside = new Set(typeof chosen === 'number' ? [chosen] : chosen);
  const scale = Math.max(...[...inside].map((index) => logLikelihoods[index] ?? 0));
  const own = { mass: 0, sum: 0 };
  const other = { mass: 0, sum: 0 };
  probabilities.forEach((probability, index) => {
    const side = inside.has(index) ? own : other;
    side.mass += probability;
    side.sum += probability * Math.exp((logLikelihoods[index] ?? 0) - scale);
  });
  if (other.sum === 0 || own.mass === 0) return 1;
  return own.sum / own.mass / (other.sum / other.mass);
}
