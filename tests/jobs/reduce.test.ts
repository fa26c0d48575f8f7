/** What a job says is worked out from its events; the expected stages are those of the trade: complaint first, proof before hand-over. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeFinding } from '../../src/domain/diagnosis/finding.ts';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import type { JobEventBody, Stage } from '../../src/domain/jobs/types.ts';
import { reportOf } from '../../src/domain/jobs/report.ts';
import { anyJob } from './anyJob.ts';
import {
  access,
  cameBack,
  cameBackOther,
  cleared,
  codes,
  complaint,
  count,
  engine,
  finding,
  frame,
  goodReading,
  handedOver,
  jobBook,
  jobOf,
  monitorsNotYet,
  moved,
  noneBack,
  opinion,
  picture,
  quietRun,
  reading,
  renamed,
  repair,
  returned,
  trimsGood,
} from './jobBook.ts';

const derive = (...bodies: readonly JobEventBody[]) => deriveJob(jobOf(...bodies).events, jobBook);
const toRepair = [engine, complaint, codes, count, moved, finding, repair];

describe('stage', () => {
  const cases: readonly { label: string; events: readonly JobEventBody[]; stage: Stage }[] = [
    { label: 'nothing yet', events: [], stage: 'complaint' },
    { label: 'engine only', events: [engine], stage: 'complaint' },
    { label: 'complaint without an engine', events: [complaint], stage: 'complaint' },
    { label: 'complaint taken', events: [engine, complaint], stage: 'codes' },
    { label: 'memory read and empty', events: [engine, complaint, { kind: 'codes-read', text: '', codes: [], refused: [] }], stage: 'tests' },
    { label: 'codes read', events: [engine, complaint, codes], stage: 'tests' },
    { label: 'a telling test carries the finding', events: [engine, complaint, codes, moved], stage: 'finding' },
    { label: 'finding made', events: [engine, complaint, codes, moved, finding], stage: 'repair' },
    { label: 'repaired', events: toRepair, stage: 'proof' },
    { label: 'run but codes not read again', events: [...toRepair, cleared, quietRun], stage: 'proof' },
    { label: 'proven', events: [...toRepair, cleared, quietRun, noneBack], stage: 'hand-over' },
    { label: 'misfire came back', events: [...toRepair, cleared, returned], stage: 'tests' },
    { label: 'another misfire, and its codes not read', events: [...toRepair, cleared, { ...returned, misfire: 'different' } as JobEventBody], stage: 'codes' },
    { label: 'another misfire, codes read', events: [...toRepair, cleared, { ...returned, misfire: 'different' } as JobEventBody, codes], stage: 'tests' },
    { label: 'handed over, proven', events: [...toRepair, cleared, quietRun, noneBack, handedOver], stage: 'hand-over' },
    { label: 'back after the hand-over', events: [...toRepair, cleared, quietRun, noneBack, handedOver, cameBack], stage: 'tests' },
    { label: 'back with another misfire', events: [...toRepair, cleared, quietRun, noneBack, handedOver, cameBackOther, codes], stage: 'tests' },
    { label: 'back, and the coming back undone', events: [...toRepair, handedOver, cameBack, { kind: 'undone', undoes: 'e9' }], stage: 'hand-over' },
    { label: 'back, repaired again', events: [...toRepair, handedOver, cameBack, finding, repair], stage: 'proof' },
    { label: 'handed over although the misfire came back', events: [...toRepair, returned, { kind: 'handed-over', to: '', unproven: 'Taken home as it is' }], stage: 'hand-over' },
    { label: 'an opinion is no new test after a failed repair', events: [...toRepair, returned, opinion], stage: 'tests' },
    { label: 'handed over without proof', events: [...toRepair, { kind: 'handed-over', to: '', unproven: 'Customer could not wait' }], stage: 'hand-over' },
  ];
  it.each(cases)('$label: $stage', ({ events, stage }) => {
    expect(derive(...events).stage).toBe(stage);
  });
});

describe('undo', () => {
  it('leaves an event out of account and in the record', () => {
    const job = jobOf(engine, complaint, codes, moved, { kind: 'undone', undoes: 'e4' });
    const derived = deriveJob(job.events, jobBook);
    expect(job.events).toHaveLength(5);
    expect(derived.undone.has('e4')).toBe(true);
    expect(derived.diagnosis?.evidence).toEqual([]);
    expect(derived.stage).toBe('tests');
  });

  it('can itself be undone', () => {
    const derived = derive(engine, complaint, codes, moved, { kind: 'undone', undoes: 'e4' }, { kind: 'undone', undoes: 'e5' });
    expect(derived.undone.has('e4')).toBe(false);
    expect(derived.diagnosis?.evidence).toHaveLength(1);
  });

  it('of a repair takes the job back to it', () => {
    expect(derive(...toRepair, { kind: 'undone', undoes: `e${toRepair.length}` }).stage).toBe('repair');
  });
});

describe('what diagnosis is given', () => {
  it('no codes read is not the same as none stored', () => {
    expect(derive(engine, complaint).diagnosis).not.toHaveProperty('codes');
    expect(derive(engine, { kind: 'codes-read', text: '', codes: [], refused: [] }).diagnosis).toHaveProperty('codes', []);
    expect(derive(engine, { kind: 'codes-read', text: '', codes: [], refused: [], notRead: 'No reader' }).diagnosis).not.toHaveProperty('codes');
  });

  it('a code that the book gives no meaning is left out of the reckoning', () => {
    const unknown: JobEventBody = { kind: 'codes-read', text: 'P1399', codes: [{ code: 'P1399', title: 'not in this book' }], refused: [] };
    expect(derive(engine, unknown).diagnosis?.codes).toEqual([]);
  });

  it('a failed proof makes the repair evidence against its own fault', () => {
    const before = derive(...toRepair);
    const after = derive(...toRepair, cleared, returned);
    const belief = (derived: typeof before) => derived.beliefs.find(({ hypothesis }) => hypothesis.id === 'coil-winding@coil-3')?.probability ?? 0;
    expect(after.diagnosis?.evidence).toContainEqual({ kind: 'failed-repair', fault: 'coil-winding', place: 'coil-3' });
    // The same part would have put right the insulation of this coil, and of no other.
    expect(after.diagnosis?.evidence.filter((piece) => piece.kind === 'failed-repair').slice(1)).toEqual([{ kind: 'failed-repair', fault: 'coil-insulation', place: 'coil-3' }]);
    expect(after.evidenceEvents.at(-1)).toBe('e9');
    expect(belief(after)).toBeLessThan(belief(before));
    expect(after.finding).toBeUndefined();
  });

  it('a test after the repair speaks of the repaired engine, until the misfire comes back', () => {
    const look: JobEventBody = {
      kind: 'test-done',
      test: 'first-look',
      title: 'Look',
      place: { id: 'engine', label: 'the whole engine' },
      outcomes: { nothing: 1 },
      outcome: 'Nothing',
      note: '',
    };
    expect(derive(...toRepair, look).diagnosis?.evidence).toHaveLength(1);
    expect(derive(...toRepair, look, returned).diagnosis?.evidence.map((piece) => piece.kind)).toEqual(['test', 'test', 'failed-repair', 'failed-repair']);
  });

  it('tests said not to be possible, at a place or anywhere', () => {
    const here: JobEventBody = { kind: 'test-not-possible', test: 'swap-plugs', title: 'Swap the plugs', reason: 'seized', place: { id: 'cylinder-3', label: 'cylinder 3' } };
    const anywhere: JobEventBody = { kind: 'test-not-possible', test: 'swap-coils', title: 'Swap the coils', reason: 'no tool' };
    expect(derive(engine, here, anywhere).notPossible).toEqual({ toolsMissing: ['swap-coils'], impossible: [{ test: 'swap-plugs', place: 'cylinder-3' }] });
  });
});

describe('readings', () => {
  it('stand before or after the repair', () => {
    const derived = derive(engine, complaint, codes, moved, reading, finding, repair, goodReading);
    expect(derived.readingsBefore.map((event) => event.text)).toEqual(['2.4']);
    expect(derived.readingsAfter.map((event) => event.text)).toEqual(['0.7']);
  });

  it("the engine maker's figure typed last comes first", () => {
    const figure = { range: 'coil-primary', low: 0.5, high: 0.8, unit: 'ohm', from: 'data sheet' };
    const chosen = { ...engine, makerFigures: [figure] } as JobEventBody;
    expect(derive(chosen).makerFigures.get('coil-primary')).toEqual(figure);
    const typed = { ...reading, limits: { low: 0.6, high: 0.9, sourceId: 'engine-maker', sourceLabel: 'as typed' } } as JobEventBody;
    expect(derive(chosen, typed).makerFigures.get('coil-primary')).toMatchObject({ low: 0.6, high: 0.9, from: 'as typed' });
  });
});

describe('opinions', () => {
  const belief = (hypothesis: string, ...bodies: readonly JobEventBody[]) =>
    derive(...bodies).beliefs.find((candidate) => candidate.hypothesis.id === hypothesis)?.probability ?? 0;

  it('move belief at their place, and stand in the evidence as opinions', () => {
    const derived = derive(engine, complaint, codes, opinion);
    expect(derived.diagnosis?.evidence).toEqual([{ kind: 'opinion', fault: 'injector-clogged', place: 'cylinder-2', weight: 'likelier' }]);
    expect(derived.evidenceEvents).toEqual(['e4']);
    expect(belief('injector-clogged@cylinder-2', engine, complaint, codes, opinion)).toBeGreaterThan(belief('injector-clogged@cylinder-2', engine, complaint, codes));
  });

  it('without a place are held of every place', () => {
    const { place: _place, ...anywhere } = opinion as Extract<JobEventBody, { kind: 'opinion' }>;
    expect(derive(engine, anywhere).diagnosis?.evidence).toEqual([{ kind: 'opinion', fault: 'injector-clogged', weight: 'likelier' }]);
  });

  it('carry no finding, however often and strongly they are held', () => {
    const strong = { ...opinion, fault: 'coil-winding', place: { id: 'coil-3', label: 'coil of cylinder 3' }, weight: 'much-likelier' } as JobEventBody;
    const derived = derive(engine, complaint, codes, strong, strong, strong);
    expect(derived.diagnosis && judgeFinding(derived.diagnosis, 'coil-winding@coil-3', 0.01)).toMatchObject({ allowed: false, supportedBy: [] });
    expect(derived.stage).toBe('tests');
  });

  it('undone, are gone', () => {
    expect(derive(engine, opinion, { kind: 'undone', undoes: 'e2' }).diagnosis?.evidence).toEqual([]);
  });
});

describe('another misfire behind the first', () => {
  const other = { ...returned, misfire: 'different' } as JobEventBody;
  const newCodes = { kind: 'codes-reread', text: 'P0302', codes: [{ code: 'P0302', title: 'Misfire, cylinder 2', family: 'misfire-cylinder', number: 2 }], refused: [] } as JobEventBody;
  const movedAtTwo = { ...moved, place: { id: 'coil-2', label: 'coil of cylinder 2' } } as JobEventBody;
  const kinds = (...bodies: readonly JobEventBody[]) => derive(...bodies).diagnosis?.evidence.map((piece) => (piece.kind === 'test' ? `test ${piece.place}` : piece.kind));

  it('lays aside what was tested and read before the repair', () => {
    const derived = derive(...toRepair, other);
    expect(derived.diagnosis?.evidence.map((piece) => piece.kind)).toEqual(['failed-repair', 'failed-repair']);
    expect(derived.diagnosis).not.toHaveProperty('codes');
    expect(derived.codes).toBeUndefined();
    // One test and one reading of the codes.
    expect(derived.setAside).toBe(2);
    expect(derived.finding).toBeUndefined();
  });

  it('the same misfire lays nothing aside', () => {
    expect(derive(...toRepair, returned)).toMatchObject({ setAside: 0, codes: { kind: 'codes-read' } });
    expect(derive(...toRepair, { ...returned, misfire: 'same' } as JobEventBody).setAside).toBe(0);
    expect(derive(...toRepair).setAside).toBe(0);
  });

  it('keeps opinions, what was tested after the repair, and that the part was renewed', () => {
    expect(kinds(engine, opinion, codes, moved, finding, repair, movedAtTwo, other)).toEqual(['opinion', 'test coil-2', 'failed-repair', 'failed-repair']);
    expect(kinds(engine, opinion, codes, moved, finding, repair, handedOver, cameBackOther, movedAtTwo)).toEqual(['opinion', 'failed-repair', 'failed-repair', 'test coil-2']);
  });

  it('takes the codes read again after the repair', () => {
    expect(derive(...toRepair, cleared, newCodes, other).diagnosis?.codes).toEqual([{ code: 'P0302', family: 'misfire-cylinder', number: 2 }]);
    expect(derive(...toRepair, cleared, other, newCodes).diagnosis?.codes).toEqual([{ code: 'P0302', family: 'misfire-cylinder', number: 2 }]);
  });

  it('a memory that could not be read was no evidence to lay aside', () => {
    const notRead = { kind: 'codes-read', text: '', codes: [], refused: [], notRead: 'No reader' } as JobEventBody;
    expect(derive(engine, complaint, notRead, moved, finding, repair, other).setAside).toBe(1);
  });

  it('undone, everything counts again', () => {
    const derived = derive(...toRepair, other, { kind: 'undone', undoes: `e${toRepair.length + 1}` });
    expect(derived).toMatchObject({ setAside: 0, stage: 'proof', codes: { kind: 'codes-read' } });
    expect(derived.diagnosis?.evidence).toHaveLength(1);
  });

  it('after it, the finding at the second place can be carried', () => {
    const derived = derive(...toRepair, cleared, other, newCodes, movedAtTwo);
    expect(derived.beliefs[0]?.hypothesis.id).toBe('coil-winding@coil-2');
    expect(derived.stage).toBe('finding');
    // With the old test and codes still held, the first coil would stand in its way.
    expect(derived.beliefs.find(({ hypothesis }) => hypothesis.id === 'coil-winding@coil-3')?.probability).toBeLessThan(0.01);
  });

  it('without a repair between, there is nothing to lay aside', () => {
    expect(derive(engine, complaint, codes, moved, handedOver, cameBackOther)).toMatchObject({ setAside: 0 });
    expect(kinds(engine, complaint, codes, moved, handedOver, cameBackOther)).toEqual(['test coil-3']);
  });

  it('behind a repair that failed before, the first part stays renewed', () => {
    const plugRepair = { ...repair, hypothesis: 'plug-worn@cylinder-3' } as JobEventBody;
    expect(derive(engine, codes, moved, repair, returned, plugRepair, other).diagnosis?.evidence).toEqual([
      { kind: 'failed-repair', fault: 'coil-winding', place: 'coil-3' },
      { kind: 'failed-repair', fault: 'coil-insulation', place: 'coil-3' },
      { kind: 'failed-repair', fault: 'plug-worn', place: 'cylinder-3' },
    ]);
  });
});

describe('what a screen needs besides', () => {
  it('the title last given', () => {
    expect(derive(engine).title).toBeUndefined();
    expect(derive(renamed, { kind: 'renamed', title: 'Red van' }).title).toBe('Red van');
    expect(derive(renamed, { kind: 'renamed', title: 'Red van' }, { kind: 'undone', undoes: 'e2' }).title).toBe('Blue hatchback');
  });

  it('how far the car is open, as last said', () => {
    expect(derive().access).toEqual([]);
    expect(derive(access).access).toEqual(['cover-off', 'plugs-out']);
    expect(derive(access, { kind: 'access', open: ['raised'] }).access).toEqual(['raised']);
  });

  it('the frame last read, and not that of a fault put right', () => {
    expect(derive(engine).frame).toBeUndefined();
    expect(derive(frame, { ...frame, speed: 900 } as JobEventBody).frame?.speed).toBe(900);
    expect(derive(frame, ...toRepair, returned).frame?.speed).toBe(2200);
    expect(derive(frame, ...toRepair, { ...returned, misfire: 'different' } as JobEventBody).frame).toBeUndefined();
  });

  it('the pictures in account', () => {
    expect(derive(picture, picture, { kind: 'undone', undoes: 'e1' }).pictures.map(({ id }) => id)).toEqual(['e2']);
  });

  it('the checks since the last repair', () => {
    expect([...derive(trimsGood).proofChecks]).toEqual([]);
    const checks = derive(...toRepair, trimsGood, monitorsNotYet, { ...monitorsNotYet, state: 'good' } as JobEventBody).proofChecks;
    expect([...checks].map(([check, { state }]) => [check, state])).toEqual([['trims', 'good'], ['monitors', 'good']]);
    expect(derive(...toRepair, trimsGood, repair).proofChecks.size).toBe(0);
  });

  it('the confidence asked for goes to the proof', () => {
    const { events } = jobOf(...toRepair);
    // 30 in 1000: ln 20 / 0.03 = 99.9, ln 100 / 0.03 = 153.5
    expect(deriveJob(events, jobBook).proof.revolutionsNeeded).toBe(100);
    expect(deriveJob(events, jobBook, { confidence: 0.99 }).proof.revolutionsNeeded).toBe(154);
  });
});

describe('minutes spent', () => {
  const bookMinutes = jobBook.diagnosis.tests.find((test) => test.id === 'swap-coils')?.minutes ?? Number.NaN;
  const timed = { ...moved, minutes: 7 } as JobEventBody;
  const cases: readonly { label: string; events: readonly JobEventBody[]; minutes: number }[] = [
    { label: 'nothing done', events: [engine, complaint, codes], minutes: 0 },
    { label: 'the time typed', events: [timed], minutes: 7 },
    { label: "the book's figure", events: [moved], minutes: bookMinutes },
    { label: 'a test the book does not know', events: [{ ...moved, test: 'not-in-the-book' } as JobEventBody], minutes: 0 },
    { label: 'tests, repair (20) and runs (2 and 1)', events: [timed, timed, repair, quietRun, returned], minutes: 7 + 7 + 20 + 2 + 1 },
    { label: 'what was undone', events: [timed, repair, { kind: 'undone', undoes: 'e1' }], minutes: 20 },
  ];
  it.each(cases)('$label: $minutes', ({ events, minutes }) => {
    expect(derive(...events).minutesSpent).toBeCloseTo(minutes, 9);
  });
});

describe('whatever a job holds', () => {
  it('every length of it can be worked out and put on paper', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (let length = 0; length <= job.events.length; length += 1) {
          const derived = deriveJob(job.events.slice(0, length), jobBook);
          reportOf({ ...job, events: job.events.slice(0, length) }, derived, jobBook);
          expect(derived.evidenceEvents).toHaveLength(derived.diagnosis?.evidence.length ?? derived.evidenceEvents.length);
          expect(derived.proof.proven && (derived.proof.failed || derived.proof.otherMisfire)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });
});
