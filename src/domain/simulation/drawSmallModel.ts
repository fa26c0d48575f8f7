import { beyondBookMinutes } from '../diagnosis/costs.ts';
import { noneOfTheseShare } from '../diagnosis/prior.ts';
import { drawFor } from './random.ts';
import type { SmallModel } from './smallModel.ts';

/** How large the models may be that are solved exactly. */
const mostFaults = 7;
const mostTests = 6;

/**
 * A fault search of 3 to 7 faults and none-of-these with 2 to 6 tests, invented by draw: weights over a factor of 20, repairs of 45 to 330
 * minutes, tests of 3 to 43 minutes with two or three outcomes, each telling of some of the faults.
 */
export function drawSmallModel(seed: number, number: number): SmallModel {
  const draw = (...words: readonly (string | number)[]): number => drawFor(seed, number, ...words);
  const faults = 3 + Math.floor(draw('faults') * (mostFaults - 2));
  const tests = 2 + Math.floor(draw('tests') * (mostTests - 1));
  const names = Array.from({ length: faults }, (_, fault) => fault);
  const weights = shares(names.map((fault) => Math.exp(3 * draw('weight', fault))));
  return {
    probabilities: [...weights.map((weight) => weight * (1 - noneOfTheseShare)), noneOfTheseShare],
    repairs: {
      costs: names.map((fault) => Math.round(30 + 15 * Math.exp(3 * draw('cost', fault)))),
      repairOf: Int16Array.from([...names, -1]),
      beyond: beyondBookMinutes,
    },
    tests: Array.from({ length: tests }, (_, test) => {
      const outcomes = draw('outcomes', test) < 0.4 ? 3 : 2;
      const each = (weight: (outcome: number) => number): readonly number[] => shares(Array.from({ length: outcomes }, (_outcome, outcome) => weight(outcome)));
      const otherwise = each((outcome) => (outcome === 0 ? 5 : 0.3 + 0.3 * draw('otherwise', test, outcome)));
      const lists = [otherwise];
      const listOf = Uint8Array.from([...names, -1], (fault) => {
        if (fault < 0 || draw('told', test, fault) >= 0.4) return 0;
        return lists.push(each((outcome) => (outcome === 0 ? 0.05 + draw('chance', test, fault, 0) : 6 * draw('chance', test, fault, outcome) ** 2))) - 1;
      });
      return { minutes: Math.round(3 + 40 * draw('minutes', test)), lists, listOf };
    }),
  };
}

function shares(weights: readonly number[]): readonly number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
