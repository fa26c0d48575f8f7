import { describe, expect, test } from 'vitest';
import { outcomesFromJudgement } from '../../src/domain/diagnosis/evidence.ts';
import type { OutcomeModel } from '../../src/domain/diagnosis/types.ts';
import type { Judgement } from '../../src/domain/measurement/types.ts';
import { testModel } from '../fixtures/diagnosisBook.ts';

function judged(below: number, inside: number, above: number, open = false): Judgement {
  return {
    corrected: open ? 'open' : 1,
    standardUncertainty: 0.1,
    expandedUncertainty: 0.2,
    probabilityBelow: below,
    probabilityInside: inside,
    probabilityAbove: above,
    verdict: 'too-close-to-call',
    contributions: [],
  };
}

/** Outcomes named after their verdict, with a number where a verdict comes twice. */
function withOutcomes(...ids: string[]) {
  const outcomes = ids.map((id): OutcomeModel => {
    const word = id.replace(/\d/, '');
    const verdict = word === 'below' || word === 'inside' || word === 'above' || word === 'open' ? word : undefined;
    return { id, label: id, meaning: id, next: [], ...(verdict ? { verdict } : {}) };
  });
  return testModel('reading', 'coil', {}, { outcomes });
}

// By hand from the rule: each chance to its own side; a side the test does not look at is inside; open is above.
const rows: readonly { label: string; outcomes: string[]; judgement: Judgement; expected: Record<string, number> }[] = [
  { label: 'three sides', outcomes: ['below', 'inside', 'above'], judgement: judged(0.1, 0.7, 0.2), expected: { below: 0.1, inside: 0.7, above: 0.2 } },
  { label: 'no outcome below', outcomes: ['inside', 'above'], judgement: judged(0.1, 0.7, 0.2), expected: { inside: 0.8, above: 0.2 } },
  { label: 'no outcome above', outcomes: ['below', 'inside'], judgement: judged(0.1, 0.7, 0.2), expected: { below: 0.1, inside: 0.9 } },
  { label: 'open has its own outcome', outcomes: ['below', 'inside', 'above', 'open'], judgement: judged(0, 0, 1, true), expected: { open: 1 } },
  { label: 'open counts as above', outcomes: ['below', 'inside', 'above'], judgement: judged(0, 0, 1, true), expected: { above: 1 } },
  { label: 'not open leaves the open outcome alone', outcomes: ['inside', 'above', 'open'], judgement: judged(0, 0.5, 0.5), expected: { inside: 0.5, above: 0.5 } },
  { label: 'one verdict twice', outcomes: ['below1', 'below2', 'inside'], judgement: judged(0.4, 0.6, 0), expected: { below1: 0.2, below2: 0.2, inside: 0.6 } },
  { label: 'no inside: in proportion', outcomes: ['below', 'above'], judgement: judged(0.1, 0.6, 0.3), expected: { below: 0.25, above: 0.75 } },
  { label: 'no inside and nothing outside: even', outcomes: ['below', 'above'], judgement: judged(0, 1, 0), expected: { below: 0.5, above: 0.5 } },
  { label: 'outcomes that no reading decides', outcomes: ['moved', 'stayed'], judgement: judged(0, 1, 0), expected: {} },
];

describe('outcomesFromJudgement', () => {
  test.each(rows)('$label', ({ outcomes, judgement, expected }) => {
    const weights = outcomesFromJudgement(withOutcomes(...outcomes), judgement);
    const positive = Object.entries(weights).filter(([, weight]) => weight > 0);
    expect(positive.map(([id]) => id).sort()).toEqual(Object.keys(expected).sort());
    for (const [id, weight] of positive) expect(weight).toBeCloseTo(expected[id] ?? NaN, 12);
  });
});
