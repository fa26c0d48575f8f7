/** The rule: no part is condemned on a code or a look alone, nor below the belief the shop asks for. */
import { describe, expect, test } from 'vitest';
import type { DiagnosisInput } from '../../src/domain/diagnosis/belief.ts';
import { findingThreshold, judgeFinding, supportFactor } from '../../src/domain/diagnosis/finding.ts';
import type { DiagnosisBook, Evidence } from '../../src/domain/diagnosis/types.ts';
import { fault, fourCylinders, layoutOf, smallBook, testModel } from '../fixtures/diagnosisBook.ts';

const engine = layoutOf(fourCylinders);
const codes = [{ code: 'P0303', family: 'misfire-cylinder', number: 3 }, { code: 'P0353', family: 'coil-circuit', number: 3 }];
const input: DiagnosisInput = { book: smallBook, engine, signs: [], codes, evidence: [] };
const moved: Evidence = { kind: 'test', test: 'swap-coils', place: 'coil-3', partner: 'coil-1', outcomes: { moved: 1 } };
const stayed: Evidence = { ...moved, outcomes: { stayed: 1 } };
const look: Evidence = { kind: 'test', test: 'first-look', place: 'engine', outcomes: { nothing: 1 } };
const coil = 'coil-winding@coil-3';

describe('judgeFinding', () => {
  test('coil swapped and misfire moved: allowed, supported by that test', () => {
    const judged = judgeFinding({ ...input, evidence: [look, moved] }, coil);
    expect(judged).toMatchObject({ allowed: true, supportedBy: [1], missing: [] });
    expect(judged.belief).toBeGreaterThanOrEqual(findingThreshold);
  });

  test('codes alone, however sure: a telling test is missing', () => {
    const sure: DiagnosisBook = { ...smallBook, faults: [fault('coil-winding', 'coil', { codes: { 'misfire-cylinder': 0.99, 'coil-circuit': 0.99 } })] };
    const judged = judgeFinding({ ...input, book: sure }, coil);
    expect(judged.belief).toBeGreaterThan(findingThreshold);
    expect(judged.allowed).toBe(false);
    expect(judged.missing).toEqual([expect.stringContaining('No telling test at the coil of cylinder 3')]);
  });

  test('a test that speaks against it supports nothing', () => {
    const judged = judgeFinding({ ...input, evidence: [stayed] }, coil);
    expect(judged).toMatchObject({ allowed: false, supportedBy: [] });
    expect(judged.missing).toHaveLength(2);
  });

  // Renewing the coil answers both; belief split evenly between two faults of one part, 0.46 each, is 0.92 in that part.
  test('faults that one part at one place puts right stand together', () => {
    const both = { 'misfire-cylinder': 0.9 };
    const book: DiagnosisBook = {
      ...smallBook,
      faults: [
        fault('coil-winding', 'coil', { codes: both, part: 'coil' }),
        fault('coil-other-winding', 'coil', { codes: both, part: 'coil' }),
        fault('plug-worn', 'cylinder', { codes: both, part: 'plug', weight: 0.001 }),
      ],
      tests: [testModel('swap-coils', 'coil', { yes: 0.1, no: 0.9 }, { likelihoods: [{ faults: ['coil-winding', 'coil-other-winding'], here: { yes: 0.9, no: 0.1 } }] })],
    };
    const evidence: Evidence[] = [{ kind: 'test', test: 'swap-coils', place: 'coil-3', outcomes: { yes: 1 } }];
    const judged = judgeFinding({ ...input, book, codes: codes.slice(0, 1), evidence }, coil);
    expect(judged.together).toHaveLength(1);
    expect(judged.supportedBy).toEqual([0]);
    expect(judged.allowed).toBe(true);
    const apart = { ...book, faults: book.faults.map((one) => (one.id === 'coil-other-winding' ? { ...one, part: 'another' } : one)) };
    const alone = judgeFinding({ ...input, book: apart, codes: codes.slice(0, 1), evidence }, coil);
    expect(alone.together).toEqual([]);
    expect(alone.belief).toBeLessThan(0.5);
    expect(judged.belief).toBeCloseTo(2 * alone.belief, 12);
  });

  test('the shop may ask for more', () => {
    const judged = judgeFinding({ ...input, evidence: [moved] }, coil, 0.9999);
    expect(judged.allowed).toBe(false);
    expect(judged.missing).toEqual([expect.stringMatching(/^Belief stands at .* %; a finding needs/)]);
  });

  test('a replaced outcome supports no more', () => {
    expect(judgeFinding({ ...input, evidence: [moved, stayed] }, coil).supportedBy).toEqual([]);
  });

  test('a test at another place supports nothing here', () => {
    const elsewhere: Evidence = { ...moved, place: 'coil-2' };
    expect(judgeFinding({ ...input, evidence: [elsewhere] }, coil).supportedBy).toEqual([]);
  });

  test('none of these and unknown hypotheses are never findings', () => {
    expect(judgeFinding({ ...input, evidence: [moved] }, 'none-of-these', 0)).toMatchObject({ allowed: false });
    expect(judgeFinding(input, 'coil-winding@coil-9', 0)).toMatchObject({ allowed: false, belief: 0 });
  });

  // One fault at one place against none of these; every other likelihood is `otherwise`, so the factor is P(yes | fault) / P(yes | otherwise).
  test.each([
    { chance: 0.29, supported: false },
    { chance: 0.31, supported: true },
  ])('a look and a telling test with a factor of $chance / 0.1 on the odds', ({ chance, supported }) => {
    expect(supportFactor).toBe(3);
    const yes: Evidence = { kind: 'test', test: 'probe', place: 'engine', outcomes: { yes: 1 } };
    const probe = (telling: boolean): DiagnosisBook => ({
      faults: [fault('pump', 'engine')],
      codeFamilies: [],
      tests: [testModel('probe', 'engine', { yes: 0.1, no: 0.9 }, { telling, likelihoods: [{ faults: ['pump'], here: { yes: chance, no: 1 - chance } }] })],
    });
    const judge = (telling: boolean) => judgeFinding({ book: probe(telling), engine, signs: [], evidence: [yes] }, 'pump@engine');
    expect(judge(true)).toMatchObject({ allowed: supported, supportedBy: supported ? [0] : [] });
    expect(judge(false).allowed).toBe(false);
  });
});
