import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import type { EngineLayout, IgnitionArrangement, InjectionArrangement } from './types.ts';

/** A layout as the book or a shop writes it down, before an ignition and an injection arrangement are chosen. */
export interface EngineDescription {
  readonly id: string;
  readonly title: string;
  readonly cylinders: number;
  readonly form: EngineLayout['form'];
  readonly banks: readonly (readonly number[])[];
  readonly firingOrder: readonly number[];
  /** True when the cylinders fire at equal distances; only then do companions follow from the order. */
  readonly evenFire: boolean;
}

export type LayoutRefusal =
  | 'cylinders-out-of-range'
  | 'order-wrong'
  | 'banks-wrong'
  | 'wasted-spark-odd'
  | 'wasted-spark-uneven';

/** Crank degrees from one ignition to the next of an even-fire four-stroke: two turns shared by the cylinders. */
export function firingInterval(cylinders: number): number {
  return 720 / cylinders;
}

/**
 * Cylinders whose pistons reach the top together, one turn of the crank apart in the cycle: half the order further on.
 * Holds for even firing only. Lower number first in each pair, pairs by their lower number; empty for an odd count.
 */
export function companions(firingOrder: readonly number[]): readonly (readonly [number, number])[] {
  const half = firingOrder.length / 2;
  if (!Number.isInteger(half)) return [];
  const pairs: (readonly [number, number])[] = [];
  firingOrder.slice(0, half).forEach((first, position) => {
    const second = firingOrder[position + half];
    if (second !== undefined) pairs.push(first < second ? [first, second] : [second, first]);
  });
  return pairs.sort((one, other) => one[0] - other[0]);
}

/**
 * An engine with its arrangements, checked. Refuses a count outside 1 to 16, a firing order or banks that do not name each
 * cylinder once, and wasted spark where no companions can be known: odd counts and uneven firing.
 */
export function makeLayout(
  description: EngineDescription,
  ignition: IgnitionArrangement,
  injection: InjectionArrangement,
): Result<EngineLayout, Refusal<LayoutRefusal>> {
  const refusal = refuseNumbering(description) ?? (ignition === 'wasted-spark' ? refuseWastedSpark(description) : undefined);
  if (refusal) return failure(refusal);
  const { id, title, cylinders, form, banks, firingOrder } = description;
  const coilPairs = ignition === 'wasted-spark' ? companions(firingOrder) : [];
  return success({ id, title, cylinders, firingOrder, banks, form, ignition, injection, coilPairs });
}

function refuseNumbering(description: EngineDescription): Refusal<LayoutRefusal> | undefined {
  const { cylinders, firingOrder, banks } = description;
  if (!Number.isInteger(cylinders) || cylinders < 1 || cylinders > 16) {
    return {
      input: 'cylinders',
      code: 'cylinders-out-of-range',
      message: `${cylinders} cylinders were given. Accepted is a whole number from 1 to 16.`,
    };
  }
  if (!namesEachOnce(firingOrder, cylinders)) {
    return {
      input: 'firingOrder',
      code: 'order-wrong',
      message:
        `The firing order ${firingOrder.join('-')} does not name each of the cylinders 1 to ${cylinders} once. ` +
        'Write it as 1-3-4-2.',
    };
  }
  if (!namesEachOnce(banks.flat(), cylinders)) {
    const found = banks.map((bank) => bank.join(', ')).join(' and ');
    return {
      input: 'banks',
      code: 'banks-wrong',
      message: `The banks ${found} do not name each of the cylinders 1 to ${cylinders} once. List every cylinder in one bank.`,
    };
  }
  return undefined;
}

function refuseWastedSpark(description: EngineDescription): Refusal<LayoutRefusal> | undefined {
  if (description.cylinders % 2 === 1) {
    return {
      input: 'ignition',
      code: 'wasted-spark-odd',
      message:
        `Wasted spark needs cylinders in pairs; this engine has ${description.cylinders}. ` +
        'Choose coil per plug or distributor.',
    };
  }
  if (!description.evenFire) {
    return {
      input: 'ignition',
      code: 'wasted-spark-uneven',
      message:
        'This engine fires at uneven distances, so the firing order does not tell which cylinders could share a coil. ' +
        'Choose coil per plug or distributor.',
    };
  }
  return undefined;
}

function namesEachOnce(numbers: readonly number[], cylinders: number): boolean {
  const named = new Set(numbers);
  if (numbers.length !== cylinders || named.size !== cylinders) return false;
  return numbers.every((number) => Number.isInteger(number) && number >= 1 && number <= cylinders);
}
