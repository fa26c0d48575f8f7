/** Proof of a repair. Run lengths are held against the Poisson law worked out by hand: ln 20 = 2.995732… (any table of logarithms). */
import { describe, expect, it } from 'vitest';
import { doubtLeft, proofState, revolutionsForProof } from '../../src/domain/jobs/proof.ts';
import type { JobEventBody } from '../../src/domain/jobs/types.ts';
import { cleared, codes, complaint, count, engine, finding, jobOf, moved, noneBack, quietRun, repair, returned } from './jobBook.ts';

const state = (...bodies: readonly JobEventBody[]) => proofState(jobOf(...bodies).events);
const toRepair = [engine, complaint, codes, count, moved, finding, repair];

describe('revolutionsForProof', () => {
  it.each([
    // label, misfires per revolution, confidence, −ln(1 − c) / rate rounded up, source
    { label: '30 in 1000, 95 %', rate: 0.03, confidence: 0.95, expected: 100, source: 'ln 20 / 0.03 = 99.86' },
    { label: '1 in 1000, 95 %', rate: 0.001, confidence: 0.95, expected: 2996, source: 'ln 20 / 0.001 = 2995.7' },
    { label: '1 in 1000, 99 %', rate: 0.001, confidence: 0.99, expected: 4606, source: 'ln 100 / 0.001 = 4605.2' },
    { label: '1 in 1, 50 %', rate: 1, confidence: 0.5, expected: 1, source: 'ln 2 = 0.693' },
  ])('$label: $source', ({ rate, confidence, expected }) => {
    expect(revolutionsForProof(rate, confidence)).toEqual({ ok: true, value: expected });
  });

  it.each([
    { label: 'no misfire', rate: 0, confidence: 0.95, code: 'no-rate' },
    { label: 'negative', rate: -1, confidence: 0.95, code: 'no-rate' },
    { label: 'not a number', rate: Number.NaN, confidence: 0.95, code: 'no-rate' },
    { label: 'certainty asked', rate: 0.1, confidence: 1, code: 'out-of-range' },
    { label: 'no confidence', rate: 0.1, confidence: 0, code: 'out-of-range' },
  ])('refuses: $label', ({ rate, confidence, code }) => {
    expect(revolutionsForProof(rate, confidence)).toMatchObject({ ok: false, error: { code } });
  });

  it('the run it asks for leaves the doubt it promises', () => {
    // e^(−0.001 × 2996) = 0.04999
    expect(doubtLeft(0.001, 2996)).toBeCloseTo(0.05, 4);
  });
});

describe('proofState', () => {
  it('is proven when codes stay away after a long enough quiet run under the conditions of the fault', () => {
    expect(state(...toRepair, cleared, quietRun, noneBack)).toMatchObject({ proven: true, missing: [], rateBefore: 0.03, revolutionsNeeded: 100, revolutionsRun: 4000 });
  });

  const short = { ...quietRun, revolutions: 40 } as JobEventBody;
  it.each([
    { label: 'no repair', events: [engine, complaint, codes, moved], says: 'No repair is recorded yet' },
    { label: 'codes not cleared', events: [...toRepair, quietRun, noneBack], says: 'have not been cleared' },
    { label: 'codes not read again', events: [...toRepair, cleared, quietRun], says: 'not been read again' },
    { label: 'codes read before the run only', events: [...toRepair, cleared, noneBack, quietRun], says: 'not been read again' },
    { label: 'codes came back', events: [...toRepair, cleared, quietRun, { ...noneBack, codes: [{ code: 'P0303', title: 'Misfire' }] }], says: 'P0303' },
    { label: 'a piece not understood', events: [...toRepair, cleared, quietRun, { ...noneBack, refused: ['P03G3'] }], says: 'P03G3' },
    { label: 'run too short', events: [...toRepair, cleared, short, noneBack], says: '60 more quiet revolutions' },
    { label: 'conditions not known', events: [...toRepair, cleared, { ...quietRun, similarConditions: 'unknown' }, noneBack], says: 'speed, load and warmth' },
    { label: 'a counter moved', events: [...toRepair, cleared, { ...quietRun, misfires: 1 }, noneBack], says: 'counters moved' },
    { label: 'no rate from before', events: [...toRepair.filter((event) => event !== count), cleared, quietRun, noneBack], says: 'How often it misfired' },
    { label: 'came back', events: [...toRepair, cleared, quietRun, noneBack, returned], says: 'came back after this repair' },
  ] as readonly { label: string; events: readonly JobEventBody[]; says: string }[])('is not proven: $label', ({ events, says }) => {
    const proof = state(...events);
    expect(proof.proven).toBe(false);
    expect(proof.missing.join(' ')).toContain(says);
  });

  it('adds up quiet runs', () => {
    expect(state(...toRepair, cleared, short, short, short, noneBack)).toMatchObject({ proven: true, revolutionsRun: 120 });
  });

  it('counts only what was run after a counter moved', () => {
    expect(state(...toRepair, cleared, quietRun, { ...quietRun, misfires: 2 } as JobEventBody, short, noneBack)).toMatchObject({ proven: false, revolutionsRun: 40 });
  });

  it('a misfire gone after a disturbance proves nothing', () => {
    const gone = { ...moved, outcomes: { gone: 1 }, outcome: 'Gone' } as JobEventBody;
    const proof = state(engine, complaint, codes, count, gone, cleared, quietRun, noneBack);
    expect(proof.proven).toBe(false);
    expect(proof.missing.join(' ')).toContain('no proof');
    expect(proof.revolutionsRun).toBe(0);
  });

  it('starts again with a new repair', () => {
    expect(state(...toRepair, cleared, quietRun, noneBack, repair)).toMatchObject({ proven: false, revolutionsRun: 0 });
  });
});
