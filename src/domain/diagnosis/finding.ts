import type { DiagnosisInput } from './belief.ts';
import { oddsFactor } from './explain.ts';
import { atPlace, hypothesisLabel, perCent } from './labels.ts';
import { placeById, sharesCylinder } from './places.ts';
import { hypothesesOf, noneOfTheseId, priorOf } from './prior.ts';
import { repairName } from './repairs.ts';
import { evidenceSteps, normalise, openingSteps } from './steps.ts';
import type { Step } from './steps.ts';
import type { Hypothesis } from './types.ts';

/** Belief a finding needs, unless the shop sets another. An estimate: at most one wrong part in ten. */
export const findingThreshold = 0.9;

/**
 * A test supports a hypothesis when it multiplies its odds by at least this much: less is what a handful of ordinary chances
 * can do. Jeffreys' scale of evidence, recalled from memory, draws its first line at about the same place.
 */
export const supportFactor = 3;

export interface FindingJudgement {
  readonly allowed: boolean;
  /** Belief in the hypothesis together with those that the same part at the same place puts right. */
  readonly belief: number;
  /** Those others, in words, likeliest first: renewing the part answers them too. */
  readonly together: readonly string[];
  /** Positions, in the evidence of the input, of the telling tests that support it. */
  readonly supportedBy: readonly number[];
  /** What is still lacking, in sentences. Empty when the finding is allowed. */
  readonly missing: readonly string[];
}

/**
 * May this hypothesis be written down as the finding? Faults that one and the same part at one place puts right stand together: to
 * renew a coil it need not be known whether its winding or its insulation failed. Together they need the belief and one telling test,
 * at a place that shares a cylinder with them, that speaks for them. Each test is weighed by itself against complaint and codes, so that the order of the work cannot
 * change the answer. `none-of-these` is never a finding.
 */
export function judgeFinding(
  input: DiagnosisInput,
  hypothesisId: string,
  threshold: number = findingThreshold,
): FindingJudgement {
  const hypotheses = hypothesesOf(input.book, input.engine);
  const chosen = hypotheses.findIndex((hypothesis) => hypothesis.id === hypothesisId);
  const hypothesis = hypotheses[chosen];
  if (!hypothesis) {
    return { allowed: false, belief: 0, together: [], supportedBy: [], missing: ['This engine has no such fault at such a place.'] };
  }
  const tests = evidenceSteps(input, hypotheses);
  const opening = logSum(hypotheses, openingSteps(input, hypotheses));
  const beliefs = normalise(addSteps(opening, tests));
  const group = sameRepair(hypotheses, hypothesis);
  const belief = group.reduce((sum, index) => sum + (beliefs[index] ?? 0), 0);
  const start = normalise(opening);
  const supportedBy = tests
    .filter((step) => tellsAt(input, step, hypothesis) && oddsFactor(start, step.logLikelihoods, group) >= supportFactor)
    .flatMap((step) => (step.evidenceIndex === undefined ? [] : [step.evidenceIndex]));
  const missing = whatIsMissing(hypothesis, belief, threshold, supportedBy.length > 0);
  const together = group
    .filter((index) => index !== chosen)
    .sort((one, other) => (beliefs[other] ?? 0) - (beliefs[one] ?? 0))
    .flatMap((index) => hypotheses[index] ?? [])
    .map(hypothesisLabel);
  return { allowed: missing.length === 0, belief, together, supportedBy, missing };
}

/** Positions of the hypotheses that the same repair puts right, itself among them. */
function sameRepair(hypotheses: readonly Hypothesis[], chosen: Hypothesis): readonly number[] {
  const wanted = repairName(chosen);
  return hypotheses.flatMap((hypothesis, index) => (hypothesis === chosen || (wanted !== undefined && repairName(hypothesis) === wanted) ? [index] : []));
}

function tellsAt(input: DiagnosisInput, step: Step, hypothesis: Hypothesis): boolean {
  const evidence = step.evidenceIndex === undefined ? undefined : input.evidence[step.evidenceIndex];
  if (evidence?.kind !== 'test' || !hypothesis.place) return false;
  const test = input.book.tests.find((candidate) => candidate.id === evidence.test);
  const place = placeById(input.engine, evidence.place);
  return test?.telling === true && place !== undefined && sharesCylinder(hypothesis.place, place);
}

function whatIsMissing(hypothesis: Hypothesis, belief: number, threshold: number, supported: boolean): readonly string[] {
  if (hypothesis.id === noneOfTheseId || !hypothesis.place) {
    return ['“None of these” names no part, so it cannot be a finding: look further.'];
  }
  const missing: string[] = [];
  if (belief < threshold) missing.push(`Belief stands at ${perCent(belief)}; a finding needs ${perCent(threshold)}.`);
  if (!supported) {
    missing.push(`No telling test ${atPlace(hypothesis.place)} speaks for it yet; codes and looks alone condemn no part.`);
  }
  return missing;
}

function logSum(hypotheses: readonly Hypothesis[], steps: readonly Step[]): readonly number[] {
  return addSteps(
    priorOf(hypotheses).map((prior) => Math.log(prior)),
    steps,
  );
}

function addSteps(logWeights: readonly number[], steps: readonly Step[]): readonly number[] {
  return logWeights.map((weight, index) => steps.reduce((sum, step) => sum + (step.logLikelihoods[index] ?? 0), weight));
}
