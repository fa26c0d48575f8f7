import { relation } from './places.ts';
import type { Hypothesis, OutcomeChances, Place, TestModel } from './types.ts';

/** No outcome is held rarer than this under any hypothesis, so that no test alone rules anything out. */
export const leastOutcomeChance = 0.001;

/** Chance of each outcome, in the order of the test's outcomes. Sums to 1. */
export type ChanceList = readonly number[];

/** Chances for a fault that the test names, by where the fault lies. */
interface NamedChances {
  readonly here: ChanceList;
  readonly partner: ChanceList;
  readonly elsewhere: ChanceList;
}

/** A test with its chances laid out for reckoning. */
export interface PreparedTest {
  readonly test: TestModel;
  readonly otherwise: ChanceList;
  readonly byFault: ReadonlyMap<string, NamedChances>;
}

/** Where a test was done and, for a swap, where the part went. */
export interface TestSite {
  readonly place: Place;
  readonly partner: Place | undefined;
}

export function prepareTest(test: TestModel): PreparedTest {
  const toList = (chances: OutcomeChances): ChanceList => chanceList(test, chances);
  const otherwise = toList(test.otherwise);
  const byFault = new Map<string, NamedChances>();
  for (const likelihood of test.likelihoods) {
    const elsewhere = likelihood.elsewhere ? toList(likelihood.elsewhere) : otherwise;
    const partner = likelihood.partner ? toList(likelihood.partner) : elsewhere;
    const entry = { here: toList(likelihood.here), partner, elsewhere };
    for (const fault of likelihood.faults) byFault.set(fault, entry);
  }
  return { test, otherwise, byFault };
}

/**
 * Chances of the outcomes when the hypothesis is true. `none-of-these` and every fault the test does not name behave as the
 * test's `otherwise` says.
 */
export function chancesUnder(prepared: PreparedTest, site: TestSite, hypothesis: Hypothesis): ChanceList {
  if (!hypothesis.fault || !hypothesis.place) return prepared.otherwise;
  const entry = prepared.byFault.get(hypothesis.fault.id);
  return entry ? entry[relation(hypothesis.place, site.place, site.partner)] : prepared.otherwise;
}

/**
 * Likelihood of what was found: the chances of the outcomes, weighed. Weights need not sum to 1; outcomes the test does not have
 * count for nothing. Undefined when no weight is left, that is when nothing was found.
 */
export function weighedLikelihood(
  test: TestModel,
  chances: ChanceList,
  outcomes: Readonly<Record<string, number>>,
): number | undefined {
  const weights = test.outcomes.map((outcome) => {
    const weight = outcomes[outcome.id] ?? 0;
    return Number.isFinite(weight) && weight > 0 ? weight : 0;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (total === 0) return undefined;
  return weights.reduce((sum, weight, index) => sum + (weight / total) * (chances[index] ?? 0), 0);
}

function chanceList(test: TestModel, chances: OutcomeChances): ChanceList {
  const held = test.outcomes.map((outcome) => Math.max(leastOutcomeChance, chances[outcome.id] ?? 0));
  const total = held.reduce((sum, chance) => sum + chance, 0);
  return held.map((chance) => chance / total);
}
