import { codeLogLikelihood } from './codes.ts';
import type { DiagnosisInput } from './belief.ts';
import { chancesUnder, prepareTest, weighedLikelihood } from './likelihood.ts';
import { complaintWords, evidenceLabel } from './labels.ts';
import { placeById } from './places.ts';
import { complaintFactor, priorOf } from './prior.ts';
import type { Evidence, FailedRepairEvidence, Hypothesis, OpinionEvidence, OpinionWeight, TestEvidence } from './types.ts';

/**
 * Chance that a misfire comes back although the fault that was put right was the true one (a part faulty out of the box, a
 * connector not seated). An estimate of common practice.
 */
export const failedRepairLikelihood = 0.05;

/**
 * What an opinion multiplies the weight of a fault by. Estimates: a strong opinion weighs about as much as one ordinary test, so that
 * it changes what is looked at first and can never carry a finding alone.
 */
export const opinionFactors: Readonly<Record<OpinionWeight, number>> = {
  'much-likelier': 10,
  likelier: 3,
  'less-likely': 1 / 3,
  'much-less-likely': 1 / 10,
};

/** One piece of evidence as the reckoning sees it. */
export interface Step {
  readonly kind: 'complaint' | 'codes' | 'test' | 'failed-repair' | 'opinion';
  readonly label: string;
  readonly evidenceIndex?: number;
  /** Natural logarithm of the likelihood under each hypothesis, in their order. */
  readonly logLikelihoods: readonly number[];
}

/** Everything that is known, in the order it is taken into account: the complaint, the codes, then the evidence as it came. */
export function stepsOf(input: DiagnosisInput, hypotheses: readonly Hypothesis[]): readonly Step[] {
  return [...openingSteps(input, hypotheses), ...evidenceSteps(input, hypotheses)];
}

/** Complaint and codes. */
export function openingSteps(input: DiagnosisInput, hypotheses: readonly Hypothesis[]): readonly Step[] {
  const steps: Step[] = [];
  let weights = priorOf(hypotheses);
  const add = (kind: Step['kind'], label: string, logLikelihood: (hypothesis: Hypothesis) => number): void => {
    const logLikelihoods = completeWithNone(hypotheses, weights, logLikelihood);
    steps.push({ kind, label, logLikelihoods });
    weights = normalise(weights.map((weight, index) => Math.log(weight) + (logLikelihoods[index] ?? 0)));
  };
  for (const sign of new Set(input.signs)) {
    add('complaint', `Complaint: ${complaintWords[sign]}`, ({ fault }) => Math.log(fault ? complaintFactor(fault, sign) : 1));
  }
  if (input.codes) {
    const names = input.codes.map((code) => code.code).join(', ');
    add('codes', names === '' ? 'No codes stored' : `Codes: ${names}`, codeLogLikelihood(input.book, input.engine, input.codes));
  }
  return steps;
}

/**
 * Tests, failed repairs and opinions. The same test at the same place (and with the same partner) counts once, as it came out last, and one
 * that shows every place counts once wherever it was noted; so does the opinion on the same fault. Every failed repair counts. Evidence about tests or places that this book or engine does not have is left out.
 */
export function evidenceSteps(input: DiagnosisInput, hypotheses: readonly Hypothesis[]): readonly Step[] {
  const keys = input.evidence.map((evidence, index) => evidenceKey(input, evidence, index));
  const lastIndex = new Map(keys.map((key, index) => [key, index]));
  return input.evidence.flatMap((evidence, index) => {
    if (lastIndex.get(keys[index] ?? '') !== index) return [];
    const logLikelihoods = evidenceLogLikelihoods(input, hypotheses, evidence);
    if (!logLikelihoods) return [];
    const label = evidenceLabel(input.book, input.engine, evidence);
    return [{ kind: evidence.kind, label, evidenceIndex: index, logLikelihoods }];
  });
}

/** Probabilities from logarithms of weights. Sums to 1; no hypothesis falls to 0 for want of digits. */
export function normalise(logWeights: readonly number[]): readonly number[] {
  const largest = logWeights.reduce((most, value) => Math.max(most, value), -Infinity);
  const weights = logWeights.map((value) => Math.max(1e-300, Math.exp(value - largest)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/**
 * A fault outside the book has no figures of its own for complaint and codes. It is given the average of all that are in the
 * book, so that complaint and codes leave its share as it was: they tell where the fault lies, not whether the book holds it.
 */
function completeWithNone(
  hypotheses: readonly Hypothesis[],
  weights: readonly number[],
  logLikelihood: (hypothesis: Hypothesis) => number,
): readonly number[] {
  const logs = hypotheses.map((hypothesis) => (hypothesis.fault ? logLikelihood(hypothesis) : -Infinity));
  const largest = logs.reduce((most, value) => Math.max(most, value), -Infinity);
  if (largest === -Infinity) return hypotheses.map(() => 0);
  let mass = 0;
  let sum = 0;
  hypotheses.forEach((hypothesis, index) => {
    const weight = hypothesis.fault ? (weights[index] ?? 0) : 0;
    mass += weight;
    sum += weight * Math.exp((logs[index] ?? 0) - largest);
  });
  const average = largest + Math.log(sum / mass);
  return logs.map((log, index) => (hypotheses[index]?.fault ? log : average));
}

function evidenceLogLikelihoods(input: DiagnosisInput, hypotheses: readonly Hypothesis[], evidence: Evidence): readonly number[] | undefined {
  switch (evidence.kind) {
    case 'test':
      return testLogLikelihoods(input, hypotheses, evidence);
    case 'failed-repair':
      return repairLogLikelihoods(hypotheses, evidence);
    case 'opinion':
      return opinionLogLikelihoods(hypotheses, evidence);
  }
}

function testLogLikelihoods(input: DiagnosisInput, hypotheses: readonly Hypothesis[], evidence: TestEvidence) {
  const test = input.book.tests.find((candidate) => candidate.id === evidence.test);
  const place = placeById(input.engine, evidence.place);
  if (!test || !place) return undefined;
  const partner = evidence.partner === undefined ? undefined : placeById(input.engine, evidence.partner);
  const prepared = prepareTest(test);
  const likelihoods = hypotheses.map((hypothesis) =>
    weighedLikelihood(test, chancesUnder(prepared, { place, partner }, hypothesis), evidence.outcomes),
  );
  return likelihoods.map((likelihood) => (likelihood === undefined ? 0 : Math.log(likelihood)));
}

function repairLogLikelihoods(hypotheses: readonly Hypothesis[], evidence: FailedRepairEvidence): readonly number[] {
  return hypotheses.map(({ fault, place }) =>
    fault?.id === evidence.fault && place?.id === evidence.place ? Math.log(failedRepairLikelihood) : 0,
  );
}

function opinionLogLikelihoods(hypotheses: readonly Hypothesis[], opinion: OpinionEvidence): readonly number[] {
  const factor = Math.log(opinionFactors[opinion.weight]);
  return hypotheses.map(({ fault, place }) =>
    fault?.id === opinion.fault && (opinion.place === undefined || place?.id === opinion.place) ? factor : 0,
  );
}

function evidenceKey({ book }: DiagnosisInput, evidence: Evidence, index: number): string {
  switch (evidence.kind) {
    case 'test':
      if (book.tests.some(({ id, showsEveryPlace }) => id === evidence.test && showsEveryPlace)) return ['test', evidence.test].join('|');
      return ['test', evidence.test, evidence.place, evidence.partner ?? ''].join('|');
    case 'failed-repair':
      // A second part fitted at the same place in vain is news: two bad parts in a row are rarer than one.
      return ['failed-repair', index].join('|');
    case 'opinion':
      return ['opinion', evidence.fault, evidence.place ?? ''].join('|');
  }
}
