import { costWithRepair, repairOrder, valueTests } from '../diagnosis/decision.ts';
import type { Repairs, WeighedTest } from '../diagnosis/decision.ts';

/** A fault search small enough to be solved exactly: at most 8 hypotheses besides none-of-these, and 6 tests. Each repair answers one. */
export interface SmallModel {
  readonly probabilities: readonly number[];
  readonly repairs: Repairs;
  readonly tests: readonly WeighedTest[];
}

export type Step =
  | { readonly kind: 'test'; readonly index: number }
  | { readonly kind: 'repair'; readonly index: number }
  | { readonly kind: 'beyond' };

/** What a policy sees: belief, the tests still undone, and a number of its own for everything seen so far. */
export interface Situation {
  readonly probabilities: Float64Array;
  readonly undone: readonly number[];
  readonly key: number;
}

export type SmallPolicy = (situation: Situation) => Step;

/** What a policy is expected to cost on a model, every outcome followed to its end. */
export interface Expected {
  readonly minutes: number;
  readonly tests: number;
  readonly repairs: number;
  readonly needlessParts: number;
}

/** Weights are kept unnormalised: their sum is the chance to get to this point, so that costs simply add up. */
interface Point {
  readonly weights: Float64Array;
  readonly undone: number;
  readonly fitted: number;
  readonly key: number;
}

const nothingLeft = 1e-12;

/**
 * The policy with the least expected minutes, by dynamic programming over everything that can have been seen: each test undone or with
 * one of its outcomes, each repair fitted or not. Repairs that did not help are ruled out.
 */
export function optimalPolicy(model: SmallModel): { readonly minutes: number; readonly policy: SmallPolicy } {
  const known = new Map<number, { readonly cost: number; readonly step: Step }>();
  const least = (point: Point): number => {
    const mass = massOf(point.weights);
    if (mass < nothingLeft) return 0;
    const before = known.get(point.key);
    if (before) return before.cost;
    let best: { cost: number; step: Step } = { cost: mass * model.repairs.beyond, step: { kind: 'beyond' } };
    const offer = (cost: number, step: Step): void => {
      if (cost < best.cost) best = { cost, step };
    };
    model.repairs.costs.forEach((cost, index) => {
      if ((point.fitted & (1 << index)) === 0) offer(mass * cost + least(fit(model, point, index)), { kind: 'repair', index });
    });
    for (const index of undoneOf(model, point)) {
      const after = branches(model, point, index).reduce((sum, next) => sum + least(next), 0);
      offer(mass * (model.tests[index]?.minutes ?? 0) + after, { kind: 'test', index });
    }
    known.set(point.key, best);
    return best.cost;
  };
  return { minutes: least(startOf(model)), policy: ({ key }) => known.get(key)?.step ?? { kind: 'beyond' } };
}

/** Expected minutes, tests and needless parts of a policy on a model. */
export function followPolicy(model: SmallModel, policy: SmallPolicy): Expected {
  const sum = { minutes: 0, tests: 0, repairs: 0, needlessParts: 0 };
  const follow = (point: Point): void => {
    const mass = massOf(point.weights);
    if (mass < nothingLeft) return;
    const step = policy({ probabilities: point.weights.map((weight) => weight / mass), undone: undoneOf(model, point), key: point.key });
    if (step.kind === 'beyond') {
      sum.minutes += mass * model.repairs.beyond;
    } else if (step.kind === 'repair') {
      const next = fit(model, point, step.index);
      sum.minutes += mass * (model.repairs.costs[step.index] ?? 0);
      sum.repairs += mass;
      sum.needlessParts += massOf(next.weights);
      follow(next);
    } else {
      sum.minutes += mass * (model.tests[step.index]?.minutes ?? 0);
      sum.tests += mass;
      branches(model, point, step.index).forEach(follow);
    }
  };
  follow(startOf(model));
  return sum;
}

/** The book's own advice on such a model: the cheapest by its reckoning of one test, one repair, or handing on. */
export function advicePolicy(model: SmallModel): SmallPolicy {
  return ({ probabilities, undone }) => {
    const tests = undone.flatMap((index) => model.tests[index] ?? []);
    let best: { step: Step; cost: number } = { step: { kind: 'beyond' }, cost: model.repairs.beyond };
    const offer = (step: Step, cost: number): void => {
      if (cost < best.cost) best = { step, cost };
    };
    for (const index of repairOrder(probabilities, model.repairs)) offer({ kind: 'repair', index }, costWithRepair(probabilities, tests, model.repairs, index));
    for (const { test, cost } of valueTests(probabilities, tests, model.repairs, tests.length)) {
      if (cost !== undefined) offer({ kind: 'test', index: undone[test] ?? -1 }, cost);
    }
    return best.step;
  };
}

function startOf(model: SmallModel): Point {
  return { weights: Float64Array.from(model.probabilities), undone: 2 ** model.tests.length - 1, fitted: 0, key: 0 };
}

function massOf(weights: Float64Array): number {
  return weights.reduce((sum, weight) => sum + weight, 0);
}

function undoneOf(model: SmallModel, point: Point): readonly number[] {
  return model.tests.flatMap((_test, index) => ((point.undone & (1 << index)) === 0 ? [] : [index]));
}

function fit(model: SmallModel, point: Point, repair: number): Point {
  const weights = point.weights.map((weight, index) => (model.repairs.repairOf[index] === repair ? 0 : weight));
  return { ...point, weights, fitted: point.fitted | (1 << repair), key: point.key + 2 ** repair };
}

function branches(model: SmallModel, point: Point, index: number): readonly Point[] {
  const test = model.tests[index];
  if (!test) return [];
  return Array.from({ length: outcomesOf(test) }, (_, outcome) => ({
    weights: point.weights.map((weight, hypothesis) => weight * (test.lists[test.listOf[hypothesis] ?? 0]?.[outcome] ?? 0)),
    undone: point.undone & ~(1 << index),
    fitted: point.fitted,
    key: point.key + keyOf(model, index, outcome),
  }));
}

function outcomesOf(test: WeighedTest): number {
  return test.lists[0]?.length ?? 0;
}

/** A digit of its own for every test, above the bits of the repairs: 0 undone, otherwise the outcome counted from 1. */
function keyOf(model: SmallModel, test: number, outcome: number): number {
  const below = model.tests.slice(0, test).reduce((product, one) => product * (outcomesOf(one) + 1), 1);
  return 2 ** model.repairs.costs.length * below * (outcome + 1);
}
