/** Entropy and mutual information (Shannon 1948, recalled), against matrices worked out with mathjs and cases known in closed form. */
import fc from 'fast-check';
import { add, dotMultiply, flatten, log2, map, matrix, multiply, subtract, sum, transpose } from 'mathjs';
import type { Matrix } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { expectedBits, outcomeChances } from '../../src/domain/diagnosis/decision.ts';
import type { WeighedTest } from '../../src/domain/diagnosis/decision.ts';
import { entropy } from '../../src/domain/diagnosis/information.ts';

/** H of a table of probabilities, by mathjs. */
function tableEntropy(table: Matrix): number {
  const logs = map(table, (probability: number) => (probability > 0 ? Number(log2(probability)) : 0));
  return -Number(sum(dotMultiply(table, logs)));
}

/** I = H(hypotheses) + H(outcomes) − H(both), from the joint table: another way than the code goes. */
function informationByTable(probabilities: readonly number[], chances: readonly (readonly number[])[]): number {
  const joint = matrix(chances.map((list, row) => list.map((chance) => chance * (probabilities[row] ?? 0))));
  const rows = multiply(joint, matrix(new Array((chances[0] ?? []).length).fill(1)));
  const columns = multiply(transpose(joint), matrix(new Array(chances.length).fill(1)));
  return Number(subtract(add(tableEntropy(rows), tableEntropy(columns)), tableEntropy(matrix(flatten(joint)))));
}

const shares = (length: number): fc.Arbitrary<number[]> =>
  fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: length, maxLength: length }).map((counts) => {
    const total = counts.reduce((one, other) => one + other, 0);
    return counts.map((count) => count / total);
  });

/** A test with a list of chances for each hypothesis. */
function weighed(chances: readonly (readonly number[])[]): WeighedTest {
  return { minutes: 1, lists: chances, listOf: Uint8Array.from(chances.keys()) };
}

function mutualInformation(probabilities: readonly number[], chances: readonly (readonly number[])[]): number {
  return expectedBits(probabilities, weighed(chances));
}

describe('entropy', () => {
  test.each([
    { label: 'even choice of two', probabilities: [0.5, 0.5], bits: 1 },
    { label: 'even choice of eight', probabilities: new Array<number>(8).fill(1 / 8), bits: 3 },
    { label: 'certainty', probabilities: [1, 0], bits: 0 },
    // 0.5 × 1 + 2 × 0.25 × 2 = 1.5
    { label: 'half, quarter, quarter', probabilities: [0.5, 0.25, 0.25], bits: 1.5 },
  ])('$label: $bits bit', ({ probabilities, bits }) => {
    expect(entropy(probabilities)).toBeCloseTo(bits, 12);
  });
});

describe('mutual information', () => {
  test('a perfect test of an even choice tells 1 bit, a coin toss tells nothing', () => {
    expect(mutualInformation([0.5, 0.5], [[1, 0], [0, 1]])).toBeCloseTo(1, 12);
    expect(mutualInformation([0.5, 0.5], [[0.5, 0.5], [0.5, 0.5]])).toBe(0);
  });

  // Binary symmetric channel with error 0.1: 1 − H(0.1) = 1 − 0.4689955936 = 0.5310044064 (textbook of information theory, recalled; computed).
  test('a test that errs one time in ten', () => {
    expect(mutualInformation([0.5, 0.5], [[0.9, 0.1], [0.1, 0.9]])).toBeCloseTo(0.5310044064, 9);
  });

  // 0.2 × 0.9 + 0.8 × 0.1 = 0.26
  test('outcome probabilities', () => {
    expect(outcomeChances([0.2, 0.8], weighed([[0.9, 0.1], [0.1, 0.9]]))[0]).toBeCloseTo(0.26, 12);
  });

  test('equals the joint table worked out with matrices', () => {
    const cases = fc.tuple(fc.integer({ min: 2, max: 7 }), fc.integer({ min: 2, max: 4 })).chain(([hypotheses, outcomes]) =>
      fc.tuple(shares(hypotheses), fc.array(shares(outcomes), { minLength: hypotheses, maxLength: hypotheses })),
    );
    fc.assert(
      fc.property(cases, ([probabilities, chances]) => {
        expect(mutualInformation(probabilities, chances)).toBeCloseTo(informationByTable(probabilities, chances), 9);
      }),
    );
  });
});
