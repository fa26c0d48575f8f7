import { describe, expect, test } from 'vitest';
import { advise } from '../../src/domain/diagnosis/advice.ts';
import { believe } from '../../src/domain/diagnosis/belief.ts';
import type { DiagnosisInput } from '../../src/domain/diagnosis/belief.ts';
import type { DiagnosisBook, EngineLayout, Evidence, OutcomeLikelihood, TestModel } from '../../src/domain/diagnosis/types.ts';
import { eightCylinders, fault, fourCylinders, layoutOf, oneCylinder, smallBook, testModel } from '../fixtures/diagnosisBook.ts';

const engine = layoutOf(fourCylinders);
const misfireAt3 = [{ code: 'P0303', family: 'misfire-cylinder', number: 3 }];
const input: DiagnosisInput = { book: smallBook, engine, signs: [], codes: misfireAt3, evidence: [] };

function whyNot(of: DiagnosisInput, id: string, options = {}): string | undefined {
  return advise(of, options).notOffered.find((entry) => entry.test === id)?.why;
}

describe('worth', () => {
  // Two faults of equal weight, one place: 0.475, 0.475 and 0.05 for none of these. The test tells A from the rest with an error of 0.1.
  // P(yes) = 0.475 × 0.9 + 0.525 × 0.1 = 0.48. I = 0.475 [0.9 log2(0.9/0.48) + 0.1 log2(0.1/0.52)] + 0.525 [0.1 log2(0.1/0.48) + 0.9 log2(0.9/0.52)]
  // = 0.475 (0.816202 − 0.237851) + 0.525 (−0.226303 + 0.712272) = 0.274717 + 0.255134 = 0.529850 bit; in 10 minutes 0.052985.
  const likelihoods: readonly OutcomeLikelihood[] = [{ faults: ['a'], here: { yes: 0.9, no: 0.1 } }];
  const tiny = (kind: TestModel['kind'], minutes: number): TestModel =>
    testModel(`${kind}-${minutes}`, 'engine', { yes: 0.1, no: 0.9 }, { kind, minutes, likelihoods, title: `Try ${minutes}` });
  const book = (...tests: TestModel[]): DiagnosisBook => ({
    faults: [fault('a', 'engine', { title: 'Fault A' }), fault('b', 'engine', { title: 'Fault B' })],
    codeFamilies: [],
    tests,
  });
  const adviseOn = (...tests: TestModel[]) => advise({ book: book(...tests), engine, signs: [], evidence: [] });

  test('bits and bits for each minute by hand', () => {
    const [proposal] = adviseOn(tiny('test', 10)).proposals;
    expect(proposal?.bits).toBeCloseTo(0.52985, 5);
    expect(proposal?.bitsPerMinute).toBeCloseTo(0.052985, 6);
  });

  test('outcomes with their chance and what they would lead to', () => {
    const outcomes = adviseOn(tiny('test', 10)).proposals[0]?.outcomes;
    expect(outcomes?.map((outcome) => outcome.probability)).toEqual([expect.closeTo(0.48, 12), expect.closeTo(0.52, 12)]);
    // yes: A 0.475 × 0.9 / 0.48 = 0.890625; no: B 0.475 × 0.9 / 0.52 = 0.822115.
    expect(outcomes?.[0]?.leading[0]).toEqual({ hypothesis: 'a@engine', label: 'Fault A', probability: expect.closeTo(0.890625, 9) });
    expect(outcomes?.[1]?.leading[0]).toEqual({ hypothesis: 'b@engine', label: 'Fault B', probability: expect.closeTo(0.822115, 6) });
  });

  test('says what it splits', () => {
    expect(adviseOn(tiny('test', 10)).proposals[0]?.because).toBe('It tells fault A (48 %) from fault B (48 %) in about 10 minutes.');
  });

  // Same information: the quicker is worth more for each minute.
  test('the quicker of two like tests comes first and the other says why it lost', () => {
    const { proposals } = adviseOn(tiny('test', 20), tiny('test', 10));
    expect(proposals.map((proposal) => proposal.test)).toEqual(['test-10', 'test-20']);
    expect(proposals[0]?.lostTo).toBeUndefined();
    expect(proposals[1]?.lostTo).toMatch(/^It settles about \d+ % of the doubt in 20 minutes; “Try 10” on the whole engine settles about \d+ % in 10 minutes, and is expected to save 10 minutes more\.$/);
  });

  // Each repair costs 30 minutes of work, 15 for the part and 15 of proof: 60. Fitting A, then B, then looking beyond the book:
  // 60 + 0.525 × 60 + 0.05 × 480 = 115.5. After "yes" (0.48): A 0.890625, none 0.010417: 60 + 0.109375 × 60 + 0.010417 × 480 = 71.5625.
  // After "no" (0.52): B 0.822115, none 0.086538: 60 + 0.177885 × 60 + 0.086538 × 480 = 112.2115. Together 0.48 × 71.5625 + 0.52 × 112.2115 = 92.7.
  // So the test saves 115.5 − 92.7 = 22.8 minutes less its own.
  test('minutes saved and still to come by hand', () => {
    const advice = adviseOn(tiny('test', 4));
    expect(advice.proposals[0]?.worthMinutes).toBeCloseTo(18.8, 9);
    expect(advice.stillToCome).toBeCloseTo(96.7, 9);
    expect(advice.next).toBe('test');
  });

  // A look of 5 minutes saves 17.8, above nine tenths of the 18.8 of the test; one of 9 minutes saves 13.8, below it.
  test.each([
    { minutes: 5, first: 'look-5' },
    { minutes: 9, first: 'test-4' },
  ])('a look of $minutes minutes beside a like test of 4: first is $first', ({ minutes, first }) => {
    expect(adviseOn(tiny('test', 4), tiny('look', minutes)).proposals[0]?.test).toBe(first);
  });

  test('a better test behind a look says that looks come first', () => {
    expect(adviseOn(tiny('test', 4), tiny('look', 5)).proposals[1]?.lostTo).toMatch(/“Try 5” on the whole engine is a quick look .* looks come first\.$/);
  });

  // The test below splits off a fault of a hundredth of the weight: far less than half of one per cent of the doubt.
  test('a share below one per cent is not rounded to nothing', () => {
    const faults = [fault('a', 'engine', { weight: 0.001 }), fault('b', 'engine'), fault('c', 'engine')];
    const dull = testModel('dull', 'engine', { yes: 0.1, no: 0.9 }, { likelihoods });
    const { proposals } = advise({ book: { faults, codeFamilies: [], tests: [dull] }, engine, signs: [], evidence: [] });
    expect(proposals[0]?.because).toMatch(/under 1 %/);
  });

  test('a test that tells nothing is not offered, and says so', () => {
    const idle = testModel('idle', 'engine', { yes: 0.5, no: 0.5 });
    expect(adviseOn(idle)).toMatchObject({ next: 'nothing', proposals: [], notOffered: [{ test: 'idle', why: expect.stringContaining('tell nothing new') }] });
  });
});

describe('what the shop has and how the car stands', () => {
  const needing = { ...smallBook, tests: smallBook.tests.map((test) => (test.id === 'compression' ? { ...test, needs: ['compression-gauge' as const], needsCoverOff: true, access: { 'plugs-out': 12 } } : test)) };
  const minutes = (options: Parameters<typeof advise>[1]): number | undefined => advise({ ...input, book: needing }, options).proposals.find(({ test }) => test === 'compression')?.minutes;

  test('a tool the shop has not got takes its tests off the list, with the reason', () => {
    expect(minutes({ toolsNotHad: ['compression-gauge'] })).toBeUndefined();
    expect(whyNot({ ...input, book: needing }, 'compression', { toolsNotHad: ['compression-gauge'] })).toBe('It needs a tool that this shop has not got.');
  });

  // 40 minutes in the book; 5 for the cover; 12 of them for taking the plugs out.
  test.each([
    { open: [] as const, expected: 45 },
    { open: ['cover-off'] as const, expected: 40 },
    { open: ['cover-off', 'plugs-out'] as const, expected: 28 },
  ])('minutes with $open: $expected', ({ open, expected }) => {
    expect(minutes({ open })).toBe(expected);
  });

  test('a test that shows every place is not offered a second time', () => {
    const book = { ...smallBook, tests: smallBook.tests.map((test) => ({ ...test, showsEveryPlace: test.id === 'compression' })) };
    const evidence: readonly Evidence[] = [{ kind: 'test', test: 'compression', place: 'cylinder-1', outcomes: { even: 1 } }];
    expect(whyNot({ ...input, book, evidence }, 'compression')).toMatch(/one run shows every place/);
    expect(whyNot({ ...input, evidence }, 'compression')).toBeUndefined();
  });

  test('what would come next after each outcome is said without doing anything', () => {
    const swap = advise(input).proposals.find(({ test }) => test === 'swap-coils');
    const then = new Map(swap?.outcomes.map((outcome) => [outcome.id, outcome.then]));
    expect(then.get('stayed')).toMatch(/^Next would be “Swap the plugs” at cylinder 3, \d+ minutes\.$/);
    expect(then.get('moved')).toMatch(/^(Next would be|Enough for a finding)/);
  });
});

describe('where and with what', () => {
  test('the most suspected place, the least suspected partner', () => {
    const swap = advise(input).proposals.find((proposal) => proposal.test === 'swap-coils');
    expect(swap?.place.id).toBe('coil-3');
    // 1 and 4 have fewer suspected neighbours than 2, which shares a gasket with 3; 1 lies farthest from it.
    expect(['coil-1', 'coil-4']).toContain(swap?.partner?.id);
    const suspicion = new Map<string, number>();
    for (const { hypothesis, probability } of believe(input)) {
      for (const cylinder of hypothesis.place?.cylinders ?? []) suspicion.set(`coil-${cylinder}`, (suspicion.get(`coil-${cylinder}`) ?? 0) + probability);
    }
    expect(suspicion.get(swap?.partner?.id ?? '')).toBe(Math.min(...suspicion.values()));
  });

  test('the sentence names the place that the two share', () => {
    const swap = advise(input).proposals.find((proposal) => proposal.test === 'swap-coils');
    expect(swap?.because).toMatch(
      /^It tells (spark plug gap worn wide|coil winding open or shorted) \(\d+ %\) from (spark plug gap worn wide|coil winding open or shorted) \(\d+ %\) at cylinder 3 in about 10 minutes\.$/,
    );
  });

  test('no test is weighed at more than three places', () => {
    const at = advise({ ...input, engine: layoutOf(eightCylinders) }).proposals.filter((proposal) => proposal.test === 'compression');
    expect(at.length).toBeGreaterThan(0);
    expect(at.length).toBeLessThanOrEqual(3);
  });

  // On wasted spark the companion fires from the same coil: exchanging plugs with it says nothing about the coil (common practice).
  test('plugs are not exchanged with the companion on the same coil', () => {
    const paired = { ...input, engine: layoutOf(fourCylinders, 'wasted-spark') };
    const swaps = advise(paired).proposals.filter((proposal) => proposal.test === 'swap-plugs');
    expect(swaps.length).toBeGreaterThan(0);
    for (const { place, partner } of swaps) {
      expect([...place.cylinders, ...(partner?.cylinders ?? [])].sort()).not.toEqual([1, 4]);
      expect([...place.cylinders, ...(partner?.cylinders ?? [])].sort()).not.toEqual([2, 3]);
    }
  });

  test('the limit', () => {
    expect(advise(input, { limit: 2 }).proposals).toHaveLength(2);
    expect(advise(input, { limit: 2 }).proposals).toEqual(advise(input).proposals.slice(0, 2));
  });
});

describe('not offered', () => {
  const swapped: Evidence = { kind: 'test', test: 'swap-coils', place: 'coil-3', partner: 'coil-1', outcomes: { stayed: 1 } };

  test('repairs are no proposals and need no reason', () => {
    const { proposals, notOffered } = advise(input);
    expect([...proposals, ...notOffered].some((entry) => entry.test === 'fit-plugs')).toBe(false);
  });

  // Common practice: with one coil for all there is nothing to swap; a built-in driver hides the primary winding.
  test('the wrong arrangement, in the words of the procedure', () => {
    expect(whyNot({ ...input, engine: layoutOf(fourCylinders, 'distributor') }, 'swap-coils')).toMatch(/^One coil serves all/);
    expect(whyNot({ ...input, engine: layoutOf(fourCylinders, 'coil-per-plug-built-in-driver') }, 'coil-resistance')).toMatch(/^The driver in the coil/);
    expect(whyNot(input, 'swap-coils')).toBeUndefined();
  });

  test('no second cylinder', () => {
    expect(whyNot({ ...input, engine: layoutOf(oneCylinder), codes: [] }, 'swap-plugs')).toMatch(/second cylinder/);
  });

  test('done at one place, still offered at others; done everywhere, not at all', () => {
    const once = advise({ ...input, evidence: [swapped] });
    expect(once.proposals.some((proposal) => proposal.test === 'swap-coils' && proposal.place.id === 'coil-3')).toBe(false);
    const everywhere = [1, 2, 3, 4].map((cylinder): Evidence => ({ ...swapped, place: `coil-${cylinder}` }));
    expect(whyNot({ ...input, evidence: everywhere }, 'swap-coils')).toBe('Already done.');
    const pressure: Evidence = { kind: 'test', test: 'fuel-pressure', place: 'engine', outcomes: { right: 1 } };
    expect(whyNot({ ...input, evidence: [pressure] }, 'fuel-pressure')).toBe('Already done.');
  });

  // Coil 3 put on 1 and the coil of 1 on 3 is one and the same exchange.
  test('an exchange done one way round is not offered the other way round', () => {
    const two: EngineLayout = layoutOf({ ...fourCylinders, cylinders: 2, banks: [[1, 2]], firingOrder: [1, 2] });
    const evidence: readonly Evidence[] = [{ ...swapped, place: 'coil-1', partner: 'coil-2' }];
    expect(whyNot({ ...input, engine: two, codes: [], evidence }, 'swap-coils')).toBe('Already done.');
  });

  test('a tool that is missing, a place that cannot be reached', () => {
    expect(whyNot(input, 'compression', { toolsMissing: ['compression'] })).toMatch(/tool/);
    const { proposals } = advise(input, { impossible: [{ test: 'compression', place: 'cylinder-3' }] });
    expect(proposals.some((proposal) => proposal.test === 'compression' && proposal.place.id === 'cylinder-3')).toBe(false);
    const impossible = [1, 2, 3, 4].map((cylinder) => ({ test: 'compression', place: `cylinder-${cylinder}` }));
    expect(whyNot(input, 'compression', { impossible })).toMatch(/not possible/);
  });
});
