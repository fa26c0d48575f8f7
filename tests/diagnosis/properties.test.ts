/** What holds for any evidence whatever, by the rules of probability. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advise } from '../../src/domain/diagnosis/advice.ts';
import { believe } from '../../src/domain/diagnosis/belief.ts';
import type { DiagnosisInput } from '../../src/domain/diagnosis/belief.ts';
import { explain } from '../../src/domain/diagnosis/explain.ts';
import { placesOf } from '../../src/domain/diagnosis/places.ts';
import { opinionWeights } from '../../src/domain/diagnosis/types.ts';
import type { CodeAtPlace, ComplaintSign, EngineLayout, Evidence } from '../../src/domain/diagnosis/types.ts';
import { eightCylinders, fourCylinders, layoutOf, oneCylinder, smallBook } from '../fixtures/diagnosisBook.ts';

const engines = [
  layoutOf(fourCylinders),
  layoutOf(fourCylinders, 'wasted-spark'),
  layoutOf(fourCylinders, 'distributor'),
  layoutOf(eightCylinders, 'coil-per-plug-built-in-driver'),
  layoutOf(oneCylinder),
];
const signs: readonly ComplaintSign[] = ['plugs-old', 'when-hot', 'coolant-loss', 'after-plug-work', 'at-idle'];

function testEvidence(engine: EngineLayout): fc.Arbitrary<Evidence> {
  const tests = smallBook.tests.filter((model) => model.outcomes.length > 0);
  return fc.constantFrom(...tests).chain((model) => {
    const places = placesOf(engine, model.placeKind).map((place) => place.id);
    const weights = fc.dictionary(fc.constantFrom(...model.outcomes.map((outcome) => outcome.id)), fc.double({ min: 0, max: 1, noNaN: true }));
    return fc.record({ place: fc.constantFrom(...places), outcomes: weights }).map(({ place, outcomes }) => ({ kind: 'test' as const, test: model.id, place, outcomes }));
  });
}

function failedRepair(engine: EngineLayout): fc.Arbitrary<Evidence> {
  const ids = believe({ book: smallBook, engine, signs: [], evidence: [] }).flatMap(({ hypothesis }) =>
    hypothesis.fault && hypothesis.place ? [{ kind: 'failed-repair' as const, fault: hypothesis.fault.id, place: hypothesis.place.id }] : [],
  );
  return fc.constantFrom(...ids);
}

function opinion(engine: EngineLayout): fc.Arbitrary<Evidence> {
  const anywhere = fc.constantFrom(...smallBook.faults).map(({ id }) => ({ fault: id }));
  const somewhere = failedRepair(engine).map((repair) => (repair.kind === 'failed-repair' ? { fault: repair.fault, place: repair.place } : { fault: '' }));
  return fc.tuple(fc.oneof(anywhere, somewhere), fc.constantFrom(...opinionWeights)).map(([about, weight]) => ({ kind: 'opinion' as const, ...about, weight }));
}

const code: fc.Arbitrary<CodeAtPlace> = fc.record({
  code: fc.constant('P0000'),
  family: fc.constantFrom('misfire-cylinder', 'misfire-random', 'coil-circuit', 'mixture-lean', 'unheard-of'),
  number: fc.integer({ min: 1, max: 12 }),
});

const inputs: fc.Arbitrary<DiagnosisInput> = fc.constantFrom(...engines).chain((engine) =>
  fc
    .record({
      signs: fc.subarray([...signs]),
      codes: fc.option(fc.array(code, { maxLength: 6 }), { nil: undefined }),
      evidence: fc.array(fc.oneof({ weight: 4, arbitrary: testEvidence(engine) }, { weight: 1, arbitrary: failedRepair(engine) }, { weight: 1, arbitrary: opinion(engine) }), { maxLength: 12 }),
    })
    .map(({ codes, ...rest }) => ({ book: smallBook, engine, ...rest, ...(codes ? { codes } : {}) })),
);

function byId(input: DiagnosisInput): ReadonlyMap<string, number> {
  return new Map(believe(input).map(({ hypothesis, probability }) => [hypothesis.id, probability]));
}

/** Rounding of up to some twenty additions in the logarithm; probabilities are at most 1. */
function expectSame(one: DiagnosisInput, other: DiagnosisInput): void {
  const expected = byId(one);
  for (const [id, probability] of byId(other)) expect(Math.abs(probability - (expected.get(id) ?? NaN))).toBeLessThan(1e-9);
}

const keyOf = (evidence: Evidence): string =>
  evidence.kind === 'test' ? `${evidence.test}|${evidence.place}` : `${evidence.kind}|${evidence.fault}|${evidence.place ?? ''}`;

describe('for any evidence', () => {
  test('beliefs are above 0, none is NaN, they sum to 1 and stand highest first', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const probabilities = believe(input).map((belief) => belief.probability);
        expect(probabilities.every((probability) => probability > 0 && probability <= 1)).toBe(true);
        expect(Math.abs(probabilities.reduce((sum, probability) => sum + probability, 0) - 1)).toBeLessThan(1e-12);
        expect(probabilities).toEqual([...probabilities].sort((a, b) => b - a));
      }),
    );
  });

  test('none of these is never at 0', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        expect(byId(input).get('none-of-these')).toBeGreaterThan(0);
      }),
    );
  });

  test('the order of independent evidence does not matter', () => {
    const shuffled = inputs.chain((input) => {
      const seen = new Map(input.evidence.map((evidence) => [keyOf(evidence), evidence]));
      const evidence = [...seen.values()];
      return fc.shuffledSubarray(evidence, { minLength: evidence.length }).map((other) => [{ ...input, evidence }, { ...input, evidence: other }] as const);
    });
    fc.assert(fc.property(shuffled, ([one, other]) => expectSame(one, other)));
  });

  // A second failed repair is another part fitted in vain, and counts.
  test('saying the same test or opinion again changes nothing', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const said = input.evidence.filter(({ kind }) => kind !== 'failed-repair');
        const last = new Map(said.map((evidence) => [keyOf(evidence), evidence]));
        expectSame(input, { ...input, evidence: [...input.evidence, ...last.values()] });
      }),
    );
  });

  test('a doubtful outcome with all the weight is a certain one', () => {
    const hard = fc.constantFrom(...smallBook.tests.filter((model) => model.outcomes.length > 1)).chain((model) =>
      fc.constantFrom(...model.outcomes).map((chosen) => {
        const place = placesOf(layoutOf(fourCylinders), model.placeKind)[0]?.id ?? '';
        const spread = Object.fromEntries(model.outcomes.map((outcome) => [outcome.id, outcome === chosen ? 1 : 0]));
        const evidence = (outcomes: Record<string, number>): Evidence => ({ kind: 'test', test: model.id, place, outcomes });
        return [evidence({ [chosen.id]: 1 }), evidence(spread)] as const;
      }),
    );
    fc.assert(
      fc.property(inputs, hard, (input, [certain, spread]) => {
        const engine = layoutOf(fourCylinders);
        expectSame({ ...input, engine, evidence: [certain] }, { ...input, engine, evidence: [spread] });
      }),
    );
  });

  test('the explanation leads from the prior to the belief, each step by its factor on the odds', () => {
    fc.assert(
      fc.property(inputs, fc.nat(), (input, pick) => {
        const beliefs = believe(input);
        const chosen = beliefs[pick % beliefs.length];
        const steps = explain(input, chosen?.hypothesis.id ?? '');
        steps.forEach(({ before, after, factor }, index) => {
          // Odds form of Bayes' rule.
          expect(after).toBeCloseTo((before * factor) / (before * factor + 1 - before), 9);
          if (index > 0) expect(before).toBe(steps[index - 1]?.after);
        });
        if (steps.length > 0) expect(steps.at(-1)?.after).toBeCloseTo(chosen?.probability ?? NaN, 9);
      }),
    );
  });

  test('advice: worth is finite, chances of outcomes sum to 1, nothing done is offered again', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        for (const proposal of advise(input).proposals) {
          expect(proposal.bits).toBeGreaterThan(0);
          expect(Number.isFinite(proposal.bitsPerMinute)).toBe(true);
          expect(proposal.outcomes.reduce((sum, outcome) => sum + outcome.probability, 0)).toBeCloseTo(1, 9);
          expect(input.evidence.some((evidence) => evidence.kind === 'test' && evidence.test === proposal.test && evidence.place === proposal.place.id)).toBe(false);
          expect(proposal.because).not.toMatch(/NaN|undefined/);
        }
      }),
      { numRuns: 50 },
    );
  });
});
