/** What a job says is worked out from its events; the expected stages are those of the trade: complaint first, proof before hand-over. */
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import type { JobEventBody, Stage } from '../../src/domain/jobs/types.ts';
import { cleared, codes, complaint, count, engine, finding, goodReading, jobBook, jobOf, moved, noneBack, quietRun, reading, repair, returned } from './jobBook.ts';

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
