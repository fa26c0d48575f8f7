import { beyondBookMinutes, repairCost } from './costs.ts';
import type { Repairs } from './decision.ts';
import type { Hypothesis } from './types.ts';

/**
 * What one repair answers goes by one name: the part and the cylinders it serves, so that a new coil answers its winding and its
 * insulation alike. A fault without a part is a repair of its own. Undefined for `none-of-these`.
 */
export function repairName({ id, fault, place }: Hypothesis): string | undefined {
  if (!fault || !place) return undefined;
  return fault.part === undefined ? id : `${fault.part} ${place.cylinders.join('-')}`;
}

/** The repairs that the hypotheses call for, in the order in which they are first named. The dearest of what a repair answers sets its cost. */
export function repairsOf(hypotheses: readonly Hypothesis[]): Repairs {
  const numbers = new Map<string, number>();
  const costs: number[] = [];
  const repairOf = new Int16Array(hypotheses.length).fill(-1);
  hypotheses.forEach((hypothesis, index) => {
    const name = repairName(hypothesis);
    if (name === undefined || !hypothesis.fault) return;
    const number = numbers.get(name) ?? numbers.size;
    numbers.set(name, number);
    costs[number] = Math.max(costs[number] ?? 0, repairCost(hypothesis.fault));
    repairOf[index] = number;
  });
  return { costs, repairOf, beyond: beyondBookMinutes };
}
