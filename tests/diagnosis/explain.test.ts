import { describe, expect, test } from 'vitest';
import type { DiagnosisInput } from '../../src/domain/diagnosis/belief.ts';
import { explain } from '../../src/domain/diagnosis/explain.ts';
import type { DiagnosisBook } from '../../src/domain/diagnosis/types.ts';
import { fault, layoutOf, oneCylinder, testModel } from '../fixtures/diagnosisBook.ts';

const book: DiagnosisBook = {
  faults: [
    fault('plug', 'cylinder', { title: 'Plug worn', weight: 3, complaint: { 'plugs-old': 2 }, codes: { misfire: 0.8 } }),
    fault('fuel', 'engine', { title: 'Fuel weak', weight: 1, codes: { misfire: 0.4 } }),
  ],
  codeFamilies: [{ id: 'misfire', placeKind: 'cylinder', falseRate: 0.05 }],
  tests: [testModel('look', 'cylinder', { worn: 0.1, good: 0.9 }, { likelihoods: [{ faults: ['plug'], here: { worn: 0.7, good: 0.3 } }] })],
};

const input: DiagnosisInput = {
  book,
  engine: layoutOf(oneCylinder),
  signs: ['plugs-old'],
  codes: [{ code: 'P0301', family: 'misfire', number: 1 }],
  evidence: [
    { kind: 'test', test: 'look', place: 'cylinder-1', outcomes: { good: 1 } },
    { kind: 'failed-repair', fault: 'fuel', place: 'engine' },
    { kind: 'test', test: 'look', place: 'cylinder-1', outcomes: { worn: 1 } },
  ],
};

describe('explain', () => {
  const steps = explain(input, 'plug@cylinder-1');

  test('one step for each piece that counts, in the order it is taken in; the outcome that was replaced is left out', () => {
    expect(steps.map((step) => [step.kind, step.evidenceIndex])).toEqual([
      ['complaint', undefined],
      ['codes', undefined],
      ['failed-repair', 1],
      ['test', 2],
    ]);
    expect(steps.map((step) => step.label)).toEqual([
      'Complaint: plugs are old',
      'Codes: P0301',
      'Repaired, and the misfire came back: Fuel weak',
      'Test look, cylinder 1: worn',
    ]);
  });

  // By hand. Prior 0.7125 (3/4 of 0.95). Complaint: 6/7 of 0.95 = 0.814285714. Code: 6 × 0.8 = 4.8 against 0.4: 12/13 of 0.95 = 0.876923077.
  // Fuel then 0.073076923 × 0.05 = 0.003653846, none 0.05: 0.876923077/0.930576923 = 0.942343459.
  // Worn: plug × 0.7, others × 0.1: factor on the odds 7; odds 0.942343459/0.057656541 = 16.344086 × 7 = 114.408602 → 0.991335.
  test('probabilities and factors by hand', () => {
    expect(steps.map((step) => step.before)).toEqual(expectClose([0.7125, 0.814285714, 0.876923077, 0.942343459]));
    expect(steps.map((step) => step.after)).toEqual(expectClose([0.814285714, 0.876923077, 0.942343459, 0.991335]));
    expect(steps.at(-1)?.factor).toBeCloseTo(7, 9);
  });

  test('an unknown hypothesis has no explanation', () => {
    expect(explain(input, 'plug@cylinder-9')).toEqual([]);
  });
});

/** To six decimals, as far as the hand reckoning is carried. */
function expectClose(values: readonly number[]): unknown[] {
  return values.map((value) => expect.closeTo(value, 6));
}
