import { believe } from './belief.ts';
import type { DiagnosisInput } from './belief.ts';
import { candidatesFor } from './candidates.ts';
import type { AdviceOptions, Candidate, NotOffered } from './candidates.ts';
import { costToCome, repairOnlyCost, valueTests } from './decision.ts';
import type { Repairs } from './decision.ts';
import { judgeFinding } from './finding.ts';
import { entropy } from './information.ts';
import { noneOfTheseId } from './prior.ts';
import { repairsOf } from './repairs.ts';
import type { Belief } from './types.ts';

/** A look goes before the best test when it is expected to save at least this share of what the best saves. */
export const lookShare = 0.9;

/** A test expected to tell less than this many bits tells nothing that a mechanic could notice, and is not offered. */
export const leastBits = 0.001;

/** How many of the most informative tests are looked into closely: more changes the first proposal seldom and takes the time. */
const closely = 12;

/**
 * A finding may be written down from 90 % on. Up to this belief the advice still goes for one more test where that settles much of the
 * doubt left: in play with drawn cars it brings wrong findings down from 3 in 100 to 2, for half an hour in each job.
 */
const surely = 0.985;
/** What "much of the doubt left" means. */
const muchOfTheDoubt = 0.05;

/** Once a fault outside this book is likelier than all in it, further tests from this book are time lost. */
const mostlyUnknown = 0.5;

export interface RankedTest {
  readonly candidate: Candidate;
  readonly bits: number;
  readonly bitsPerMinute: number;
  /** Expected minutes to a cured engine with this test next; undefined for tests that were not looked into closely. */
  readonly cost: number | undefined;
}

/** What comes next: a test; the finding; or nothing that this book knows. */
export type NextStep = 'test' | 'finding' | 'nothing';

export interface Ranking {
  readonly beliefs: readonly Belief[];
  readonly probabilities: readonly number[];
  readonly repairs: Repairs;
  /** Doubt about the fault, bits. */
  readonly doubt: number;
  /** Expected minutes to a cured engine when parts are fitted from now on and nothing is tested. */
  readonly costWithoutTests: number;
  /** Expected minutes to a cured engine with what comes next. */
  readonly costToCome: number;
  readonly next: NextStep;
  /** Best first. */
  readonly tests: readonly RankedTest[];
  readonly notOffered: readonly NotOffered[];
}

/** Every test that can be done now, best first, the others with the reason why not, and whether it is time for the finding. */
export function rankTests(input: DiagnosisInput, options: AdviceOptions = {}): Ranking {
  const beliefs = believe(input);
  const probabilities = beliefs.map((belief) => belief.probability);
  const repairs = repairsOf(beliefs.map((belief) => belief.hypothesis));
  const { candidates, notOffered } = candidatesFor(input, beliefs, options);
  const valued = valueTests(probabilities, candidates, repairs, closely).flatMap(({ test, ...value }) => {
    const candidate = candidates[test];
    return candidate ? [{ candidate, ...value }] : [];
  });
  const telling = valued.filter(({ bits }) => bits >= leastBits);
  const costWithoutTests = repairOnlyCost(probabilities, repairs);
  const tests = inOrder(telling, costWithoutTests);
  const doubt = entropy(probabilities);
  const next = nextStep(input, beliefs, tests, doubt);
  return {
    beliefs,
    probabilities,
    repairs,
    doubt,
    costWithoutTests,
    costToCome: Math.min(costToCome(probabilities, repairs), (next === 'test' ? tests[0]?.cost : undefined) ?? Infinity),
    next,
    tests,
    notOffered: [...notOffered, ...tellingNothing(valued, telling)],
  };
}

function tellingNothing(valued: readonly RankedTest[], telling: readonly RankedTest[]): readonly NotOffered[] {
  const offered = new Set(telling.map(({ candidate }) => candidate.test.id));
  const others = new Set(valued.map(({ candidate }) => candidate.test.id).filter((id) => !offered.has(id)));
  return [...others].map((test) => ({ test, why: 'It would tell nothing new: every fault still in question expects the same outcome.' }));
}

/** By the cost still to come; those not looked into closely follow by their information for each minute. A quick look goes before a test that saves hardly more. */
function inOrder(tests: readonly RankedTest[], costWithoutTests: number): readonly RankedTest[] {
  const sorted = [...tests].sort((one, other) => (one.cost ?? Infinity) - (other.cost ?? Infinity) || other.bitsPerMinute - one.bitsPerMinute);
  const best = sorted[0]?.cost;
  if (best === undefined || best >= costWithoutTests) return [...tests].sort((one, other) => other.bitsPerMinute - one.bitsPerMinute);
  const enough = lookShare * (costWithoutTests - best);
  const isEarlyLook = ({ candidate, cost }: RankedTest): boolean => candidate.test.kind === 'look' && cost !== undefined && costWithoutTests - cost >= enough;
  return [...sorted.filter(isEarlyLook), ...sorted.filter((test) => !isEarlyLook(test))];
}

function nextStep(input: DiagnosisInput, beliefs: readonly Belief[], tests: readonly RankedTest[], doubt: number): NextStep {
  const top = beliefs[0];
  // After a repair that did not hold, something new has to be learnt before the next part is condemned.
  if (top && input.evidence.at(-1)?.kind !== 'failed-repair') {
    const { allowed, belief } = judgeFinding(input, top.hypothesis.id);
    const confirming = tests.some(({ bits }) => bits >= muchOfTheDoubt * doubt);
    if (allowed && !(belief < surely && confirming)) return 'finding';
  }
  if (top?.hypothesis.id === noneOfTheseId && top.probability >= mostlyUnknown) return 'nothing';
  return tests.length > 0 ? 'test' : 'nothing';
}
