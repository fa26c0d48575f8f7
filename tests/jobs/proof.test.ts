/** Proof of a repair. Run lengths are held against the Poisson law worked out by hand: ln 20 = 2.995732… (any table of logarithms). */
import { describe, expect, it } from 'vitest';
import { doubtLeft, proofState, revolutionsForProof } from '../../src/domain/jobs/proof.ts';
import type { JobEventBody } from '../../src/domain/jobs/types.ts';
import { cameBack, cameBackOther, cleared, codes, complaint, count, engine, finding, frame, handedOver, jobOf, monitorsNotYet, moved, noneBack, quietRun, repair, returned, trimsGood } from './jobBook.ts';

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

describe('the stored frame', () => {
  const proven = (run: object) => state(...toRepair, frame, cleared, { ...quietRun, ...run } as JobEventBody, noneBack);
  it.each([
    { label: 'a run inside it counts', run: { speed: 2300, load: 48 }, run_: 4000 },
    { label: 'a run without typed figures counts by the mechanic’s word', run: {}, run_: 4000 },
    { label: 'a run outside it does not count, whatever was said', run: { speed: 900, load: 48 }, run_: 0 },
    { label: 'a run whose load is not settled does not count', run: { speed: 2200, load: 65 }, run_: 0 },
  ])('$label', ({ run, run_ }) => {
    expect(proven(run)).toMatchObject({ revolutionsRun: run_, proven: run_ > 0 });
  });

  it('says where the run has to be held', () => {
    expect(proven({ speed: 900 }).missing.join(' ')).toContain('speed 1825 to 2575 rpm, load 40 to 60 %, engine warm');
  });
});

describe('trims, monitors and catalyst', () => {
  const whole = [...toRepair, cleared, quietRun, noneBack];
  const looked = (check: string, answer: string): JobEventBody => ({ kind: 'proof-check', check, state: answer, note: '' }) as JobEventBody;
  const flashed = whole.map((event) => (event === complaint ? ({ ...complaint, lamp: 'flashed-long' } as JobEventBody) : event));
  const cases: readonly { label: string; events: readonly JobEventBody[]; says?: string }[] = [
    { label: 'not looked at', events: whole },
    { label: 'trims good', events: [...whole, trimsGood] },
    { label: 'trims bad', events: [...whole, looked('trims', 'bad')], says: 'trims are not back' },
    { label: 'trims not yet', events: [...whole, looked('trims', 'not-yet')] },
    { label: 'trims bad, then good', events: [...whole, looked('trims', 'bad'), trimsGood] },
    { label: 'trims good, then bad', events: [...whole, trimsGood, looked('trims', 'bad')], says: 'trims are not back' },
    { label: 'monitors not yet', events: [...whole, monitorsNotYet] },
    { label: 'catalyst bad', events: [...whole, looked('catalyst', 'bad')], says: 'catalyst was looked at and is not in order' },
    { label: 'catalyst not needed', events: [...whole, looked('catalyst', 'not-needed')] },
    { label: 'the lamp flashed for long and nobody looked at the catalyst', events: flashed, says: 'overheat the catalyst' },
    { label: 'the lamp flashed for long and the catalyst is good', events: [...flashed, looked('catalyst', 'good')] },
    { label: 'the lamp flashed for long and it was judged not needed', events: [...flashed, looked('catalyst', 'not-needed')] },
    { label: 'the lamp flashed for long and the catalyst is bad', events: [...flashed, looked('catalyst', 'bad')], says: 'not in order' },
    { label: 'the lamp flashed now and then', events: whole.map((event) => (event === complaint ? ({ ...complaint, lamp: 'flashed' } as JobEventBody) : event)) },
    { label: 'bad before the repair only', events: [looked('trims', 'bad'), ...whole] },
  ];
  it.each(cases)('$label: $says', ({ events, says }) => {
    const proof = state(...events);
    expect(proof.proven).toBe(says === undefined);
    expect(proof.missing.join(' ')).toContain(says ?? '');
  });
});

describe('the confidence asked for', () => {
  // 30 in 1000: ln 100 / 0.03 = 153.5; ln 2 / 0.03 = 23.1; ln 1000 / 0.03 = 230.3
  it.each([
    { confidence: 0.5, needed: 24 },
    { confidence: 0.95, needed: 100 },
    { confidence: 0.99, needed: 154 },
    { confidence: 0.999, needed: 231 },
  ])('$confidence: $needed quiet revolutions', ({ confidence, needed }) => {
    expect(proofState(jobOf(...toRepair).events, confidence)).toMatchObject({ confidence, revolutionsNeeded: needed });
  });

  it.each([0, 1, Number.NaN])('%d is refused in words, and nothing is proven by it', (confidence) => {
    const proof = proofState(jobOf(...toRepair, cleared, quietRun, noneBack).events, confidence);
    expect(proof).toMatchObject({ proven: false, missing: ['The confidence must lie between 0 and 1, such as 0.95.'] });
  });
});

describe('after the hand-over', () => {
  const out = [...toRepair, cleared, quietRun, noneBack, handedOver];
  it('the proof stands until the car is back', () => {
    expect(state(...out)).toMatchObject({ proven: true, failed: false, handedOver: { to: 'owner' } });
  });

  it('the same misfire makes the repair a failed one', () => {
    const proof = state(...out, cameBack);
    expect(proof).toMatchObject({ proven: false, failed: true, otherMisfire: false });
    expect(proof.handedOver).toBeUndefined();
    expect(proof.missing.join(' ')).toContain('came back after this repair');
  });

  it('another misfire says nothing against the repair, and proves nothing either', () => {
    const proof = state(...out, cameBackOther);
    expect(proof).toMatchObject({ proven: false, failed: false, otherMisfire: true });
    expect(proof.missing.join(' ')).toContain('a second fault stands behind the first');
  });

  it('a second repair starts a proof of its own, and a second hand-over stands', () => {
    expect(state(...out, cameBack, repair)).toMatchObject({ proven: false, failed: false, revolutionsRun: 0, handedOver: undefined });
    expect(state(...out, cameBack, repair, handedOver)).toMatchObject({ handedOver: { to: 'owner' } });
  });
});

describe('another misfire behind the first', () => {
  const other = { ...returned, misfire: 'different' } as JobEventBody;
  it('is held against its own count, not that of the fault put right', () => {
    // 12 misfires in the 900 revolutions of the run: ln 20 / (12/900) = 224.7
    expect(state(...toRepair, cleared, other, repair)).toMatchObject({ rateBefore: 12 / 900, revolutionsNeeded: 225 });
  });

  it('counted by itself, both counts are taken together', () => {
    // (12 + 3) / (900 + 600) = 0.01: ln 20 / 0.01 = 299.6
    expect(state(...toRepair, cleared, other, { ...count, misfires: 3, revolutions: 600 } as JobEventBody, repair)).toMatchObject({ rateBefore: 0.01, revolutionsNeeded: 300 });
  });

  it('shown without a count, it does not thin out the count taken by itself', () => {
    // 30 in 1000: ln 20 / 0.03 = 99.9
    expect(state(...toRepair, cleared, { ...other, misfires: 0 } as JobEventBody, count, repair)).toMatchObject({ rateBefore: 0.03, revolutionsNeeded: 100 });
  });

  it('back after the hand-over without a count, no run can be called long enough', () => {
    const proof = state(...toRepair, cleared, quietRun, noneBack, handedOver, cameBackOther, repair, cleared, quietRun, noneBack);
    expect(proof).toMatchObject({ proven: false, rateBefore: undefined });
    expect(proof.missing.join(' ')).toContain('How often it misfired');
  });

  it('the frame of the first does not judge its runs', () => {
    const far = { ...quietRun, speed: 900 } as JobEventBody;
    expect(state(...toRepair, frame, cleared, returned, repair, cleared, far, noneBack)).toMatchObject({ proven: false });
    expect(state(frame, ...toRepair, cleared, other, repair, cleared, far, noneBack)).toMatchObject({ proven: true });
  });
});
