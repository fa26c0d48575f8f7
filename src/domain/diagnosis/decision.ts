import type { ChanceList } from './likelihood.ts';

/*
 * What to do next, in minutes. The reckoning knows nothing of engines: it sees hypotheses with their probabilities, tests with their
 * minutes and chances, and repairs with their cost and the hypotheses they put right.
 *
 * Fault finding by expected cost with repairs taken in the order of probability over cost: J. B. Kadane and H. A. Simon, "Optimal
 * strategies for a class of constrained sequential problems", Annals of Statistics 5 (1977); D. Heckerman, J. S. Breese and
 * K. Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM 38 (1995). Both from memory.
 */

/** A test as the reckoning sees it. Many hypotheses expect the same of it, so the chances are kept once and pointed at. */
export interface WeighedTest {
  readonly minutes: number;
  /** Chances of the outcomes; each list sums to 1. */
  readonly lists: readonly ChanceList[];
  /** Which list each hypothesis goes by. */
  readonly listOf: Uint8Array;
}

export interface Repairs {
  /** Cost of each repair in minutes: work, part and proof. */
  readonly costs: readonly number[];
  /** The repair that puts each hypothesis right; -1 where none does. */
  readonly repairOf: Int16Array;
  /** Minutes charged in the end when no repair helped. */
  readonly beyond: number;
}

/**
 * Minutes of testing that one more bit of certainty about the repair costs. An estimate: the best tests of this book give a bit in ten
 * minutes while little is known, and the last ones take hours for it. Values from 50 to 150 were tried on drawn cars and made no
 * difference that could be told from chance; below 150 the advice on small models strays further from the exact optimum.
 */
export const minutesPerBit = 150;

/**
 * Expected minutes to a cured engine when parts are fitted in the order of probability over cost and nothing is tested any more: the
 * least that repairs alone can cost, as one fault is present and each repair answers its own. Where going on would cost more than
 * `beyond`, others look on instead. `probabilities` sum to 1.
 */
export function repairOnlyCost(probabilities: ArrayLike<number>, repairs: Repairs): number {
  return leastCost(probabilities, repairs, Infinity);
}

/**
 * Expected minutes to a cured engine from a belief, as an estimate: some parts are fitted in the order of probability over cost, none or
 * all of them, whichever is cheapest; the rest is told apart by tests at `minutesPerBit` and then repaired.
 */
export function costToCome(probabilities: ArrayLike<number>, repairs: Repairs): number {
  return leastCost(probabilities, repairs, minutesPerBit);
}

/** The least over the number of parts fitted before the testing. All sums run over what is left after them. */
function leastCost(probabilities: ArrayLike<number>, repairs: Repairs, perBit: number): number {
  const chances = repairChances(probabilities, repairs);
  const order = inOrder(chances, repairs.costs);
  const none = Math.max(0, 1 - order.reduce((sum, repair) => sum + (chances[repair] ?? 0), 0));
  // Of those left: what repairing them costs, and −Σ p log2 p.
  let repairing = order.reduce((sum, repair) => sum + (chances[repair] ?? 0) * (repairs.costs[repair] ?? 0), 0);
  let doubt = order.reduce((sum, repair) => sum + bitsOf(chances[repair] ?? 0), bitsOf(none));
  let uncured = 1;
  let spent = 0;
  let least = repairs.beyond;
  const consider = (): void => {
    // Doubt among those left, weighed with the chance to get there: −Σ p log2 (p / u).
    const bits = Math.max(0, doubt - bitsOf(uncured));
    const telling = bits === 0 ? 0 : perBit * bits;
    least = Math.min(least, spent + repairing + none * repairs.beyond + telling, spent + uncured * repairs.beyond);
  };
  consider();
  for (const repair of order) {
    const chance = chances[repair] ?? 0;
    const cost = repairs.costs[repair] ?? 0;
    spent += uncured * cost;
    repairing -= chance * cost;
    doubt -= bitsOf(chance);
    uncured = Math.max(0, uncured - chance);
    consider();
  }
  return least;
}

function bitsOf(chance: number): number {
  return chance > 0 ? -chance * Math.log2(chance) : 0;
}

/** Repairs with a chance to help, the highest probability for each minute of cost first. */
export function repairOrder(probabilities: ArrayLike<number>, repairs: Repairs): readonly number[] {
  return inOrder(repairChances(probabilities, repairs), repairs.costs);
}

/** Chance of each repair to be the one that cures. */
export function repairChances(probabilities: ArrayLike<number>, repairs: Repairs): Float64Array {
  const chances = new Float64Array(repairs.costs.length);
  for (let index = 0; index < probabilities.length; index += 1) {
    const repair = repairs.repairOf[index] ?? -1;
    if (repair >= 0) chances[repair] = (chances[repair] ?? 0) + (probabilities[index] ?? 0);
  }
  return chances;
}

/** Repairs less likely than this are left to the end: together they change no decision, and sorting them takes the time. */
const negligible = 1e-7;

function inOrder(chances: Float64Array, costs: readonly number[]): readonly number[] {
  const worth = chances.map((chance, repair) => chance / Math.max(1e-9, costs[repair] ?? 0));
  const order: number[] = [];
  chances.forEach((chance, repair) => {
    if (chance > negligible) order.push(repair);
  });
  return order.sort((one, other) => (worth[other] ?? 0) - (worth[one] ?? 0));
}

/** Chance of each outcome of a test. */
export function outcomeChances(probabilities: ArrayLike<number>, test: WeighedTest): Float64Array {
  const masses = listMasses(probabilities, test);
  const totals = new Float64Array(test.lists[0]?.length ?? 0);
  test.lists.forEach((list, index) => {
    const mass = masses[index] ?? 0;
    for (let outcome = 0; outcome < totals.length; outcome += 1) totals[outcome] = (totals[outcome] ?? 0) + mass * (list[outcome] ?? 0);
  });
  return totals;
}

/** Bayes' rule for one outcome. `chance` is the outcome's overall chance, above 0. */
export function afterOutcome(probabilities: ArrayLike<number>, test: WeighedTest, outcome: number, chance: number): Float64Array {
  const after = new Float64Array(probabilities.length);
  for (let index = 0; index < after.length; index += 1) {
    const list = test.lists[test.listOf[index] ?? 0];
    after[index] = ((probabilities[index] ?? 0) * (list?.[outcome] ?? 0)) / chance;
  }
  return after;
}

/** What a test is expected to tell about the hypotheses, in bits (mutual information of outcome and hypothesis). */
export function expectedBits(probabilities: ArrayLike<number>, test: WeighedTest): number {
  const masses = listMasses(probabilities, test);
  const overall = outcomeChances(probabilities, test);
  let bits = 0;
  test.lists.forEach((list, index) => {
    const mass = masses[index] ?? 0;
    if (mass === 0) return;
    for (let outcome = 0; outcome < overall.length; outcome += 1) {
      const chance = list[outcome] ?? 0;
      const average = overall[outcome] ?? 0;
      if (chance > 0 && average > 0) bits += mass * chance * Math.log2(chance / average);
    }
  });
  return Math.max(0, bits);
}

function listMasses(probabilities: ArrayLike<number>, test: WeighedTest): Float64Array {
  const masses = new Float64Array(test.lists.length);
  for (let index = 0; index < probabilities.length; index += 1) {
    const list = test.listOf[index] ?? 0;
    masses[list] = (masses[list] ?? 0) + (probabilities[index] ?? 0);
  }
  return masses;
}

/** Minutes of the test, and what is expected to come after it; `then` values a belief in minutes. */
export function costWithTest(probabilities: ArrayLike<number>, test: WeighedTest, then: (after: Float64Array) => number): number {
  let cost = test.minutes;
  outcomeChances(probabilities, test).forEach((chance, outcome) => {
    if (chance > negligible) cost += chance * then(afterOutcome(probabilities, test, outcome, chance));
  });
  return cost;
}

export interface TestValue {
  /** Position in the tests given. */
  readonly test: number;
  readonly bits: number;
  readonly bitsPerMinute: number;
  /** Expected minutes to a cured engine with this test next; undefined where it was passed over. */
  readonly cost: number | undefined;
}

/**
 * Up to this many sums (tests × tests × hypotheses) every pair of tests is reckoned through. Beyond it that would take longer than a tap
 * may, and in play with drawn cars it gained nothing that could be told from chance.
 */
const pairsAffordable = 5000;

/** Every test with its information, and the `closely` most informative for each minute with the cost still to come when they are done next. */
export function valueTests(probabilities: ArrayLike<number>, tests: readonly WeighedTest[], repairs: Repairs, closely: number): readonly TestValue[] {
  const values = tests.map((test, index) => {
    const bits = expectedBits(probabilities, test);
    return { test: index, bits, bitsPerMinute: bits / test.minutes };
  });
  const telling = values.filter(({ bits }) => bits > 0).sort((one, other) => other.bitsPerMinute - one.bitsPerMinute);
  const close = new Set(telling.slice(0, closely).map(({ test }) => test));
  const seconds = canPair(telling.length, probabilities.length) ? telling.map(({ test }) => test) : [];
  return values.map((value) => {
    const test = tests[value.test];
    if (!test || !close.has(value.test)) return { ...value, cost: undefined };
    const others = seconds.flatMap((second) => (second === value.test ? [] : (tests[second] ?? [])));
    return { ...value, cost: costWithTest(probabilities, test, (after) => costOneTestOn(after, others, repairs)) };
  });
}

function canPair(tests: number, hypotheses: number): boolean {
  return tests * tests * hypotheses <= pairsAffordable;
}

/** The cheapest of going on at once and doing one of these tests first. */
function costOneTestOn(probabilities: Float64Array, tests: readonly WeighedTest[], repairs: Repairs): number {
  let least = costToCome(probabilities, repairs);
  for (const test of tests) {
    if (test.minutes < least) least = Math.min(least, costWithTest(probabilities, test, (after) => costToCome(after, repairs)));
  }
  return least;
}

/** What fitting the part of one repair next is expected to cost in all: the repair, and where it does not help what comes after. */
export function costWithRepair(probabilities: ArrayLike<number>, tests: readonly WeighedTest[], repairs: Repairs, repair: number): number {
  const rest = Float64Array.from(probabilities, (probability, index) => (repairs.repairOf[index] === repair ? 0 : probability));
  const uncured = rest.reduce((sum, probability) => sum + probability, 0);
  const cost = repairs.costs[repair] ?? 0;
  if (uncured < negligible) return cost;
  const seconds = canPair(tests.length, probabilities.length) ? tests : [];
  return cost + uncured * costOneTestOn(rest.map((probability) => probability / uncured), seconds, repairs);
}
