/** The joined weights against the mean of a Dirichlet distribution, worked out in exact fractions by mathjs. */
import { all, create } from 'mathjs';
import type { Fraction, MathJsInstance } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { priorStrength, withExperience } from '../../src/domain/experience/withExperience.ts';
import { hypothesesOf, noneOfTheseShare, priorOf } from '../../src/domain/diagnosis/prior.ts';
import { fault, fourCylinders, layoutOf, smallBook } from '../fixtures/diagnosisBook.ts';

const math: MathJsInstance = create(all ?? {}, { number: 'Fraction' });
const fraction = (text: string): Fraction => math.evaluate(text) as Fraction;

const book = (weights: readonly number[]) => ({ ...smallBook, faults: weights.map((weight, index) => fault(`f${index}`, 'engine', { weight })) });
const weightsOf = (joined: { faults: readonly { weight: number }[] }): readonly number[] => joined.faults.map(({ weight }) => weight);

/**
 * Mean of a Dirichlet distribution with parameters a and counts n: (a + n) / (sum of a + sum of n), times the sum of the weights.
 * Gelman et al., Bayesian Data Analysis, multinomial model with its conjugate prior; recalled from memory.
 */
const cases = [
  // 10 · (50 · 6/10 + 10) / 60 = 10 · 40/60, and so on: parameters 30, 15, 5.
  { label: 'ten jobs on one fault', weights: [6, 3, 1], counts: [10, 0, 0], expected: ['400/60', '150/60', '50/60'] },
  // As many jobs as the prior stands for: book and shop say equally much. 4 · (25 + 0)/100 and 4 · (25 + 50)/100.
  { label: 'as many jobs as the book stands for', weights: [2, 2], counts: [0, 50], expected: ['1', '3'] },
  { label: 'counts spread as the book has it change nothing', weights: [1, 3, 6], counts: [2, 6, 12], expected: ['1', '3', '6'] },
  { label: 'weights that do not add up to a round number', weights: [0.5, 0.25], counts: [1, 2], expected: ['3/4 * (50 * 2/3 + 1) / 53', '3/4 * (50 / 3 + 2) / 53'] },
  { label: 'a rare fault found often', weights: [99, 1], counts: [0, 5], expected: ['100 * 49.5 / 55', '100 * 5.5 / 55'] },
];

describe('a shop’s counts joined to the book’s weights', () => {
  it('the book stands for 50 jobs', () => expect(priorStrength).toBe(50));

  it.each(cases)('$label', ({ weights, counts, expected }) => {
    const joined = withExperience(book(weights), new Map(counts.map((count, index) => [`f${index}`, count])));
    weightsOf(joined).forEach((weight, index) => expect(weight).toBeCloseTo(Number(fraction(expected[index] ?? '')), 12));
  });

  it('no count gives the same book back', () => {
    const before = book([3, 1]);
    expect(withExperience(before, new Map())).toBe(before);
    expect(withExperience(before, new Map([['f0', 0]]))).toBe(before);
  });

  it.each([
    ['a fault the book does not hold', new Map([['gone', 40]])],
    ['a count below 0', new Map([['f0', -3]])],
    ['a count that is no number', new Map([['f0', Number.NaN]])],
    ['an endless count', new Map([['f0', Number.POSITIVE_INFINITY]])],
  ])('%s is left out', (_label, counts) => {
    const before = book([3, 1]);
    expect(withExperience(before, counts)).toBe(before);
    const alone = withExperience(before, new Map([['f1', 4]]));
    expect(withExperience(before, new Map([['f1', 4], ...counts]))).toEqual(alone);
  });

  it('the weights still add up to what they did, and the share of none of these is untouched', () => {
    const engine = layoutOf(fourCylinders);
    const joined = withExperience(smallBook, new Map(smallBook.faults.map(({ id }, index) => [id, index * 3])));
    const total = (weights: readonly number[]): number => weights.reduce((sum, weight) => sum + weight, 0);
    expect(total(weightsOf(joined))).toBeCloseTo(total(weightsOf(smallBook)), 12);
    const prior = priorOf(hypothesesOf(joined, engine));
    expect(prior.at(-1)).toBe(noneOfTheseShare);
    expect(total(prior)).toBeCloseTo(1, 12);
  });

  it('changes nothing but the weights, and not the book it was given', () => {
    const before = structuredClone(smallBook);
    const joined = withExperience(smallBook, new Map([[smallBook.faults[0]?.id ?? '', 5]]));
    expect(smallBook).toEqual(before);
    expect({ ...joined, faults: joined.faults.map((one, index) => ({ ...one, weight: before.faults[index]?.weight })) }).toEqual(before);
  });
});
