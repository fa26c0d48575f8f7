/** Bayes' rule and the doubt left after it, against matrices of a general numeric library (mathjs). */
import fc from 'fast-check';
import { divide, dotMultiply, log2, map, sum } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { believe } from '../../src/domain/diagnosis/belief.ts';
import { leastOutcomeChance } from '../../src/domain/diagnosis/likelihood.ts';
import { entropy } from '../../src/domain/diagnosis/information.ts';
import { opinionFactors } from '../../src/domain/diagnosis/steps.ts';
import { opinionWeights } from '../../src/domain/diagnosis/types.ts';
import type { DiagnosisBook, Evidence } from '../../src/domain/diagnosis/types.ts';
import { fault, fourCylinders, layoutOf, testModel } from '../fixtures/diagnosisBook.ts';

const engine = layoutOf(fourCylinders);
const chance = fc.integer({ min: 1, max: 99 }).map((hundredths) => hundredths / 100);

interface Drawn {
  readonly weights: readonly number[];
  /** Chance of "yes" for each fault, test by test; the last of each is that of none of these. */
  readonly yes: readonly (readonly number[])[];
  readonly seen: readonly boolean[];
}

const drawn: fc.Arbitrary<Drawn> = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 5 })).chain(([faults, tests]) =>
  fc.record({
    weights: fc.array(fc.integer({ min: 1, max: 100 }), { minLength: faults, maxLength: faults }),
    yes: fc.array(fc.array(chance, { minLength: faults + 1, maxLength: faults + 1 }), { minLength: tests, maxLength: tests }),
    seen: fc.array(fc.boolean(), { minLength: tests, maxLength: tests }),
  }),
);

function bookOf({ weights, yes }: Drawn): DiagnosisBook {
  const faults = weights.map((weight, index) => fault(`f${index}`, 'engine', { weight }));
  const tests = yes.map((chances, number) => {
    const none = chances.at(-1) ?? 0;
    const likelihoods = faults.map(({ id }, index) => ({ faults: [id], here: { yes: chances[index] ?? 0, no: 1 - (chances[index] ?? 0) } }));
    return testModel(`t${number}`, 'engine', { yes: none, no: 1 - none }, { likelihoods });
  });
  return { faults, codeFamilies: [], tests };
}

/** Prior times the likelihood of everything seen, divided by its sum. */
function byMatrices({ weights, yes, seen }: Drawn): readonly number[] {
  const prior = [...(divide(dotMultiply([...weights], 0.95), sum([...weights])) as number[]), 0.05];
  const joint = yes.reduce<number[]>((before, chances, number) => {
    const likelihood = map([...chances], (one: number) => (seen[number] === true ? one : 1 - one));
    return dotMultiply(before, likelihood) as number[];
  }, prior);
  return divide(joint, sum([...joint])) as number[];
}

describe('belief', () => {
  test('is prior times likelihoods, normalised', () => {
    // Chances of a hundredth and more, so that the book's floor for an outcome never bites.
    expect(leastOutcomeChance).toBeLessThan(0.01);
    fc.assert(
      fc.property(drawn, (one) => {
        const evidence: readonly Evidence[] = one.seen.map((yes, number) => ({ kind: 'test', test: `t${number}`, place: 'engine', outcomes: yes ? { yes: 1 } : { no: 1 } }));
        const beliefs = believe({ book: bookOf(one), engine, signs: [], evidence });
        const expected = byMatrices(one);
        const found = [...one.weights.map((_weight, index) => `f${index}@engine`), 'none-of-these'].map((id) => beliefs.find(({ hypothesis }) => hypothesis.id === id)?.probability ?? NaN);
        found.forEach((probability, index) => expect(probability).toBeCloseTo(expected[index] ?? NaN, 10));
        const bits = -sum(dotMultiply([...expected], map([...expected], (share: number) => Number(log2(share)))) as number[]);
        expect(entropy(found)).toBeCloseTo(bits, 8);
      }),
    );
  });
});

describe("the mechanic's opinion", () => {
  const book: DiagnosisBook = { faults: [fault('a', 'engine'), fault('b', 'engine')], codeFamilies: [], tests: [] };
  const beliefWith = (...evidence: readonly Evidence[]): number =>
    believe({ book, engine, signs: [], evidence }).find(({ hypothesis }) => hypothesis.id === 'a@engine')?.probability ?? NaN;

  // 0.475, 0.475, 0.05: the odds of A, 0.475 : 0.525, are multiplied by the factor.
  test.each(opinionWeights.map((weight) => ({ weight, factor: opinionFactors[weight] })))('$weight multiplies the odds by $factor', ({ weight, factor }) => {
    const odds = (0.475 / 0.525) * factor;
    expect(beliefWith({ kind: 'opinion', fault: 'a', weight })).toBeCloseTo(odds / (1 + odds), 12);
  });

  test('said again, the later one stands', () => {
    expect(beliefWith({ kind: 'opinion', fault: 'a', weight: 'much-likelier' }, { kind: 'opinion', fault: 'a', weight: 'less-likely' })).toBe(
      beliefWith({ kind: 'opinion', fault: 'a', weight: 'less-likely' }),
    );
  });
});
