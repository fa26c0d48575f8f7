/**
 * Bayes' rule worked by hand (any textbook of probability): the arithmetic stands beside each case. Tolerance 1e-12, rounding of
 * double arithmetic, unless stated.
 */
import { describe, expect, test } from 'vitest';
import type { DiagnosisInput } from '../../src/domain/diagnosis/belief.ts';
import { believe } from '../../src/domain/diagnosis/belief.ts';
import { placeOfCode } from '../../src/domain/diagnosis/codes.ts';
import type { DiagnosisBook, Evidence, IgnitionArrangement } from '../../src/domain/diagnosis/types.ts';
import { emptyBook, fault, fourCylinders, layoutOf, oneCylinder, smallBook, testModel } from '../fixtures/diagnosisBook.ts';

function beliefIn(input: DiagnosisInput, id: string): number {
  const found = believe(input).find((belief) => belief.hypothesis.id === id);
  if (!found) throw new Error(`no hypothesis ${id}`);
  return found.probability;
}

const single = layoutOf(oneCylinder);
const plug = fault('plug', 'cylinder', { weight: 3, complaint: { 'plugs-old': 2 }, codes: { misfire: 0.8 } });
const fuel = fault('fuel', 'engine', { weight: 1, codes: { misfire: 0.4 } });
const look = testModel('look', 'cylinder', { worn: 0.1, good: 0.9 }, {
  likelihoods: [{ faults: ['plug'], here: { worn: 0.7, good: 0.3 } }],
});
const tinyBook: DiagnosisBook = {
  faults: [plug, fuel],
  codeFamilies: [{ id: 'misfire', placeKind: 'cylinder', falseRate: 0.05 }],
  tests: [look],
};
const start: DiagnosisInput = { book: tinyBook, engine: single, signs: [], evidence: [] };
const worn: Evidence = { kind: 'test', test: 'look', place: 'cylinder-1', outcomes: { worn: 1 } };

describe('prior', () => {
  // 0.95 shared 3 : 1 between plug and fuel = 0.7125 and 0.2375; 0.05 for none of these.
  test('weights share what none of these leaves', () => {
    expect(beliefIn(start, 'plug@cylinder-1')).toBeCloseTo(0.7125, 12);
    expect(beliefIn(start, 'fuel@engine')).toBeCloseTo(0.2375, 12);
    expect(beliefIn(start, 'none-of-these')).toBeCloseTo(0.05, 12);
  });

  // Four plugs of weight 3 and one pump of weight 1: 0.95 × 3/13 for each plug, 0.95 × 1/13 for the pump.
  test('the weight counts once for each place', () => {
    const input = { ...start, engine: layoutOf(fourCylinders) };
    expect(beliefIn(input, 'plug@cylinder-3')).toBeCloseTo((0.95 * 3) / 13, 12);
    expect(beliefIn(input, 'fuel@engine')).toBeCloseTo(0.95 / 13, 12);
  });

  // Plug 3 × 2 = 6 against 1: 0.95 × 6/7.
  test('a sign in the complaint multiplies the weight', () => {
    expect(beliefIn({ ...start, signs: ['plugs-old'] }, 'plug@cylinder-1')).toBeCloseTo((0.95 * 6) / 7, 12);
    expect(beliefIn({ ...start, signs: ['plugs-old', 'plugs-old'] }, 'plug@cylinder-1')).toBeCloseTo((0.95 * 6) / 7, 12);
    expect(beliefIn({ ...start, signs: ['plugs-old'] }, 'none-of-these')).toBeCloseTo(0.05, 12);
  });

  test('faults of another arrangement are left out', () => {
    const ids = (ignition: IgnitionArrangement) =>
      believe({ ...start, book: smallBook, engine: layoutOf(fourCylinders, ignition) }).map((belief) => belief.hypothesis.fault?.id);
    expect(ids('coil-per-plug')).not.toContain('coil-driver');
    expect(ids('coil-per-plug-built-in-driver')).toContain('coil-driver');
  });

  test('an empty book leaves none of these alone', () => {
    expect(believe({ ...start, book: emptyBook, signs: ['when-hot'], codes: [] })).toEqual([
      { hypothesis: { id: 'none-of-these', fault: undefined, place: undefined }, probability: 1 },
    ]);
  });
});

describe('codes', () => {
  const stored = [{ code: 'P0301', family: 'misfire', number: 1 }];

  // One cylinder. Stored: plug 3 × 0.8 = 2.4, fuel 1 × 0.4 = 0.4 → plug 0.95 × 2.4/2.8.
  test('stored', () => {
    expect(beliefIn({ ...start, codes: stored }, 'plug@cylinder-1')).toBeCloseTo((0.95 * 2.4) / 2.8, 12);
  });

  // Read, none stored: plug 3 × 0.2 = 0.6, fuel 1 × 0.6 = 0.6 → 0.475 each. Not read: as the prior.
  test('an empty memory is evidence, an unread one is not', () => {
    expect(beliefIn({ ...start, codes: [] }, 'plug@cylinder-1')).toBeCloseTo(0.475, 12);
    expect(beliefIn(start, 'plug@cylinder-1')).toBeCloseTo(0.7125, 12);
  });

  // Four cylinders, code at 3 only. plug@3: 0.8 × 0.95³ = 0.6859; plug elsewhere: 0.2 × 0.05 × 0.95² = 0.009025;
  // fuel: 0.4 × 0.6³ = 0.0864 (its place covers all four, each reckoned separately). Weights 3, 3 (three times), 1:
  // 2.0577, 3 × 0.027075 = 0.081225, 0.0864; sum 2.225325.
  test('every place of the family counts, stored or absent', () => {
    const input = { ...start, engine: layoutOf(fourCylinders), codes: [{ code: 'P0303', family: 'misfire', number: 3 }] };
    expect(beliefIn(input, 'plug@cylinder-3')).toBeCloseTo((0.95 * 2.0577) / 2.225325, 12);
    expect(beliefIn(input, 'plug@cylinder-1')).toBeCloseTo((0.95 * 0.027075) / 2.225325, 12);
    expect(beliefIn(input, 'fuel@engine')).toBeCloseTo((0.95 * 0.0864) / 2.225325, 12);
    expect(beliefIn(input, 'none-of-these')).toBeCloseTo(0.05, 12);
  });

  // Chance 1 is held at 0.999, false rate 0 at 0.001. Stored: plug 3 × 0.999, fuel (does not name it) 1 × 0.001.
  test('no code rules anything in or out', () => {
    const book = {
      ...tinyBook,
      faults: [{ ...plug, codes: { misfire: 1 } }, { ...fuel, codes: {} }],
      codeFamilies: [{ id: 'misfire', placeKind: 'cylinder', falseRate: 0 } as const],
    };
    expect(beliefIn({ ...start, book, codes: stored }, 'fuel@engine')).toBeCloseTo((0.95 * 0.001) / (3 * 0.999 + 0.001), 12);
  });

  test('families not in the book and places not on the engine are left out', () => {
    const strange = [{ code: 'P0420', family: 'catalyst', number: 1 }, { code: 'P0309', family: 'misfire', number: 9 }];
    expect(believe({ ...start, codes: strange })).toEqual(believe({ ...start, codes: [] }));
  });

  const coilFamily = { id: 'coil-circuit', placeKind: 'coil', falseRate: 0.01 } as const;
  const engineFamily = { id: 'misfire-random', placeKind: 'engine', falseRate: 0.1 } as const;
  // P0351 names coil A (SAE J2012, recalled); which cylinders it serves is the maker's choice, the first pair is common practice.
  test.each([
    { ignition: 'coil-per-plug', family: coilFamily, number: 3, expected: 'coil-3' },
    { ignition: 'wasted-spark', family: coilFamily, number: 2, expected: 'coil-2-3' },
    { ignition: 'wasted-spark', family: coilFamily, number: 4, expected: 'coil-1-4' },
    { ignition: 'distributor', family: coilFamily, number: 1, expected: 'coil' },
    { ignition: 'coil-per-plug', family: engineFamily, number: undefined, expected: 'engine' },
    { ignition: 'coil-per-plug', family: coilFamily, number: 9, expected: undefined },
  ] as const)('coil $number on $ignition is $expected', ({ ignition, family, number, expected }) => {
    expect(placeOfCode(layoutOf(fourCylinders, ignition), family, number)?.id).toBe(expected);
  });
});

describe('evidence', () => {
  // worn: plug 0.7125 × 0.7 = 0.49875; fuel 0.2375 × 0.1 = 0.02375; none 0.05 × 0.1 = 0.005; sum 0.5275.
  test('a test outcome', () => {
    const input = { ...start, evidence: [worn] };
    expect(beliefIn(input, 'plug@cylinder-1')).toBeCloseTo(0.49875 / 0.5275, 12);
    expect(beliefIn(input, 'fuel@engine')).toBeCloseTo(0.02375 / 0.5275, 12);
    expect(beliefIn(input, 'none-of-these')).toBeCloseTo(0.005 / 0.5275, 12);
  });

  // Weights 0.6 worn, 0.4 good: plug 0.6 × 0.7 + 0.4 × 0.3 = 0.54; others 0.6 × 0.1 + 0.4 × 0.9 = 0.42.
  // 0.7125 × 0.54 = 0.38475; 0.2875 × 0.42 = 0.12075; sum 0.5055.
  test('a doubtful outcome shares its weight', () => {
    const evidence: Evidence[] = [{ ...worn, outcomes: { worn: 0.6, good: 0.4 } }];
    expect(beliefIn({ ...start, evidence }, 'plug@cylinder-1')).toBeCloseTo(0.38475 / 0.5055, 12);
  });

  test('the latest outcome of the same test at the same place counts', () => {
    const good: Evidence = { ...worn, outcomes: { good: 1 } };
    expect(believe({ ...start, evidence: [worn, good] })).toEqual(believe({ ...start, evidence: [good] }));
  });

  test('a test that shows every place counts once, wherever it was noted', () => {
    const [first, second] = [worn, { ...worn, place: 'cylinder-2' }];
    const four = { ...start, engine: layoutOf(fourCylinders) };
    const book = { ...start.book, tests: start.book.tests.map((test) => ({ ...test, showsEveryPlace: true })) };
    expect(believe({ ...four, book, evidence: [first, second] })).toEqual(believe({ ...four, book, evidence: [second] }));
    expect(believe({ ...four, evidence: [first, second] })).not.toEqual(believe({ ...four, evidence: [second] }));
  });

  // 0.7125 × 0.05 = 0.035625; others 0.2875; sum 0.323125.
  test('a repair that did not help speaks against its fault', () => {
    const evidence: Evidence[] = [{ kind: 'failed-repair', fault: 'plug', place: 'cylinder-1' }];
    expect(beliefIn({ ...start, evidence }, 'plug@cylinder-1')).toBeCloseTo(0.035625 / 0.323125, 12);
  });

  // Chance 0 of `good` under the plug is held at 0.001: (1, 0.001)/1.001. good: plug 0.7125 × 0.001/1.001, others 0.2875 × 0.9.
  test('a chance of 0 does not rule out', () => {
    const sharp = { ...look, likelihoods: [{ faults: ['plug'], here: { worn: 1, good: 0 } }] };
    const evidence: Evidence[] = [{ ...worn, outcomes: { good: 1 } }];
    const own = (0.7125 * 0.001) / 1.001;
    expect(beliefIn({ ...start, book: { ...tinyBook, tests: [sharp] }, evidence }, 'plug@cylinder-1')).toBeCloseTo(own / (own + 0.25875), 12);
  });

  // Swap at 1 with partner 2; the partner's chances serve for a plug bad at 2, `elsewhere` for one at 3.
  // moved: 0.9 at 1, 0.02 at 2, 0.05 at 3 and 4, otherwise 0.1 for fuel and none. Prior: plugs 0.95 × 3/13 each, fuel 0.95/13.
  test('here, partner and elsewhere', () => {
    const swap = testModel('swap', 'cylinder', { moved: 0.1, stayed: 0.9 }, {
      needsPartner: true,
      likelihoods: [
        { faults: ['plug'], here: { moved: 0.9, stayed: 0.1 }, partner: { moved: 0.02, stayed: 0.98 }, elsewhere: { moved: 0.05, stayed: 0.95 } },
      ],
    });
    const evidence: Evidence[] = [{ kind: 'test', test: 'swap', place: 'cylinder-1', partner: 'cylinder-2', outcomes: { moved: 1 } }];
    const input = { ...start, book: { ...tinyBook, tests: [swap] }, engine: layoutOf(fourCylinders), evidence };
    const plugPrior = (0.95 * 3) / 13;
    const total = plugPrior * (0.9 + 0.02 + 0.05 + 0.05) + (0.95 / 13 + 0.05) * 0.1;
    expect(beliefIn(input, 'plug@cylinder-1')).toBeCloseTo((plugPrior * 0.9) / total, 12);
    expect(beliefIn(input, 'plug@cylinder-2')).toBeCloseTo((plugPrior * 0.02) / total, 12);
    expect(beliefIn(input, 'plug@cylinder-3')).toBeCloseTo((plugPrior * 0.05) / total, 12);
  });

  test('unknown tests, places and outcomes move nothing', () => {
    const evidence: Evidence[] = [
      { kind: 'test', test: 'no-such', place: 'cylinder-1', outcomes: { worn: 1 } },
      { ...worn, place: 'cylinder-7' },
      { ...worn, outcomes: { mystery: 1 } },
      { kind: 'failed-repair', fault: 'no-such', place: 'cylinder-1' },
    ];
    expect(believe({ ...start, evidence })).toEqual(believe(start));
  });
});
