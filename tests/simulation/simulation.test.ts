/** The drawn cars and the counting of what they cost: against hand-made cases, known distributions and a general statistics library. */
import { mean, standardDeviation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { repairCost, beyondBookMinutes } from '../../src/domain/diagnosis/costs.ts';
import { hypothesesOf, priorOf } from '../../src/domain/diagnosis/prior.ts';
import { placeById } from '../../src/domain/diagnosis/places.ts';
import { drawCar } from '../../src/domain/simulation/car.ts';
import type { Car } from '../../src/domain/simulation/car.ts';
import { adviceFollowed, fixedOrder, partsSwapped } from '../../src/domain/simulation/policies.ts';
import { play } from '../../src/domain/simulation/play.ts';
import type { Action } from '../../src/domain/simulation/play.ts';
import { drawFor, drawIndex } from '../../src/domain/simulation/random.ts';
import { meanOf, shareOf, simulate, summarise, withWrongWeights } from '../../src/domain/simulation/simulate.ts';
import { fourCylinders, layoutOf, smallBook } from '../fixtures/diagnosisBook.ts';

const engine = layoutOf(fourCylinders);
const start = { book: smallBook, engine, signs: [] };
const hypotheses = hypothesesOf(smallBook, engine);

function named(id: string) {
  const found = hypotheses.find((hypothesis) => hypothesis.id === id);
  if (!found) throw new Error(`The small book has no ${id}.`);
  return found;
}

const carWith = (id: string): Car => ({ ...drawCar(smallBook, engine, 1, 1), truth: named(id) });

describe('draws', () => {
  // Chi-square with 19 degrees of freedom: 43.8 is passed once in a thousand (any table).
  test('are even over 20 bins', () => {
    const bins = new Array<number>(20).fill(0);
    const count = 20_000;
    for (let number = 0; number < count; number += 1) {
      const bin = Math.floor(drawFor(7, number, 'fault') * 20);
      bins[bin] = (bins[bin] ?? 0) + 1;
    }
    const chiSquare = bins.reduce((sum, hits) => sum + (hits - count / 20) ** 2 / (count / 20), 0);
    expect(chiSquare).toBeLessThan(43.8);
  });

  test('of neighbouring words go their own ways', () => {
    const pairs = Array.from({ length: 5000 }, (_, number) => [drawFor(1, number, 'a'), drawFor(1, number, 'b')] as const);
    const product = mean(pairs.map(([one, other]) => (one - 0.5) * (other - 0.5)));
    // Standard error of the covariance of independent even draws: 1/12 / √5000 = 0.00118; four of them.
    expect(Math.abs(product)).toBeLessThan(0.0048);
  });

  test.each([
    { draw: 0, expected: 0 },
    { draw: 0.2499, expected: 0 },
    { draw: 0.25, expected: 1 },
    { draw: 0.9999, expected: 1 },
  ])('a draw of $draw from weights 1 and 3 takes number $expected', ({ draw, expected }) => {
    expect(drawIndex([1, 3], draw)).toBe(expected);
  });

  test('cars have faults as often as the weights say', () => {
    const count = 4000;
    const drawn = Array.from({ length: count }, (_, number) => drawCar(smallBook, engine, 3, number).truth.id);
    priorOf(hypotheses).forEach((chance, index) => {
      const hits = drawn.filter((id) => id === hypotheses[index]?.id).length;
      // Five standard errors of a share.
      expect(Math.abs(hits / count - chance)).toBeLessThan(5 * Math.sqrt((chance * (1 - chance)) / count));
    });
  });

  test('the same test on the same car shows the same', () => {
    const car = drawCar(smallBook, engine, 1, 12);
    const swap = smallBook.tests.find(({ id }) => id === 'swap-coils');
    const place = placeById(engine, 'coil-1');
    if (!swap || !place) throw new Error('The small book has changed.');
    expect(car.outcome(swap, { place, partner: undefined })).toBe(car.outcome(swap, { place, partner: undefined }));
  });
});

describe('a job played', () => {
  const plug = named('plug-worn@cylinder-3');
  const injector = named('injector-clogged@cylinder-3');
  const cost = (id: string): number => repairCost(named(id).fault ?? fail());

  /** Does the actions in turn. */
  const inTurn = (...actions: readonly Action[]) => {
    let at = 0;
    return (): Action => actions[at++] ?? { kind: 'beyond' };
  };

  test('a right finding costs its repair and no needless part', () => {
    const played = play(inTurn({ kind: 'repair', hypothesis: plug, finding: true }), start, carWith(plug.id));
    expect(played).toEqual({ minutes: cost(plug.id), workMinutes: cost(plug.id) - 15, needlessParts: 0, findings: 1, wrongFindings: 0, tests: 0, repaired: true });
  });

  test('a wrong finding costs both repairs and counts', () => {
    const actions = inTurn({ kind: 'repair', hypothesis: injector, finding: true }, { kind: 'repair', hypothesis: plug, finding: true });
    const played = play(actions, start, carWith(plug.id));
    expect(played).toMatchObject({ minutes: cost(plug.id) + cost(injector.id), needlessParts: 1, findings: 2, wrongFindings: 1, repaired: true });
  });

  test('nothing found costs what looking beyond the book costs', () => {
    expect(play(inTurn(), start, carWith(plug.id))).toMatchObject({ minutes: beyondBookMinutes, repaired: false });
  });

  test('a fault outside the book is never cured by a part of it', () => {
    const played = play(inTurn({ kind: 'repair', hypothesis: plug, finding: true }), start, carWith('none-of-these'));
    expect(played).toMatchObject({ wrongFindings: 1, repaired: false });
  });
});

function fail(): never {
  throw new Error('The small book has changed.');
}

describe('counting', () => {
  const figures = [12, 15, 9, 22, 17, 11];

  test('mean and interval, against a statistics library', () => {
    const { mean: found, interval } = meanOf(figures);
    // The library's deviation is that of the population: n/(n − 1) makes it that of a sample.
    const error = (standardDeviation(figures) * Math.sqrt(figures.length / (figures.length - 1))) / Math.sqrt(figures.length);
    expect(found).toBeCloseTo(mean(figures), 12);
    expect(interval[0]).toBeCloseTo(mean(figures) - 1.959964 * error, 9);
    expect(interval[1]).toBeCloseTo(mean(figures) + 1.959964 * error, 9);
  });

  // Wilson's interval for 0 of 10 at 95 %: 0 to 0.2775 (textbook value, recalled); 5 of 10: 0.2366 to 0.7634.
  test.each([
    { hits: 0, low: 0, high: 0.2775 },
    { hits: 5, low: 0.2366, high: 0.7634 },
  ])('share $hits of 10', ({ hits, low, high }) => {
    const { interval } = shareOf(hits, 10);
    expect(interval[0]).toBeCloseTo(low, 4);
    expect(interval[1]).toBeCloseTo(high, 4);
  });

  test('the share of wrong findings is of findings, not of jobs', () => {
    const job = { minutes: 1, workMinutes: 1, needlessParts: 0, tests: 1, repaired: true };
    const summary = summarise([
      { ...job, findings: 3, wrongFindings: 2 },
      { ...job, findings: 1, wrongFindings: 0 },
    ]);
    expect(summary.wrongFindingShare.mean).toBe(0.5);
  });
});

describe('policies on the small book', () => {
  const cars = { book: smallBook, engine, seed: 5, jobs: 80 };

  // With six tests in all there is little to choose between their orders; what the advice saves in minutes is measured on the whole book by the benchmark.
  test('the advice fits fewer needless parts than swapping', { timeout: 60_000 }, () => {
    const [advice, parts] = [simulate('advice', cars), simulate('swap-parts', cars)];
    expect(advice.needlessParts.mean).toBeLessThan(parts.needlessParts.mean / 5);
    expect(parts.tests.mean).toBe(0);
  });

  test('the same seed gives the same figures', () => {
    expect(simulate('swap-parts', cars)).toEqual(simulate('swap-parts', cars));
  });

  test('nobody sees the car: without a code or a test all begin with what is likeliest', () => {
    const input = { ...start, evidence: [] };
    expect(partsSwapped(input, [])).toMatchObject({ kind: 'repair', hypothesis: { fault: { id: 'plug-worn' } } });
    expect(fixedOrder(input, [])).toMatchObject({ kind: 'test', test: { id: 'first-look' } });
    expect(adviceFollowed(input, []).kind).toBe('test');
  });

  test('wrong weights are wrong by the factor, up or down', () => {
    const wrong = withWrongWeights(smallBook, 3, (fault) => fault === 'plug-worn');
    expect(wrong.faults.map(({ id, weight }) => [id, weight]).slice(0, 2)).toEqual([
      ['plug-worn', 30],
      ['coil-winding', 8 / 3],
    ]);
  });
});
