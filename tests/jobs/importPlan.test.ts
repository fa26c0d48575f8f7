/** What an import would do, said before anything is done. Nothing is ever lost by it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planImport } from '../../src/domain/jobs/importPlan.ts';
import type { ImportPlan } from '../../src/domain/jobs/importPlan.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { shared } from './anyJob.ts';
import { codes, complaint, engine, jobOf, moved, picture } from './jobBook.ts';

const short = jobOf(engine, complaint);
const long = jobOf(engine, complaint, codes, moved);
const elsewhere: Job = { ...short, events: [...short.events, { kind: 'note', text: 'x', id: 'y1', sequence: 3, at: short.createdAt }] };

function plan(here: Job | undefined, incoming: Job): ImportPlan {
  const planned = planImport(here, incoming);
  if (!planned.ok) throw new Error(planned.error.message);
  return planned.value;
}

describe('planImport', () => {
  it.each([
    { label: 'not here yet', here: undefined, incoming: short, kind: 'new', added: ['Engine: Four in line', 'Complaint'], onlyHere: 0, kept: 2 },
    { label: 'the same', here: short, incoming: short, kind: 'same', added: [], onlyHere: 0, kept: 2 },
    { label: 'an older copy', here: long, incoming: short, kind: 'older', added: [], onlyHere: 2, kept: 4 },
    { label: 'a newer copy', here: short, incoming: long, kind: 'adds', added: ['Codes read', 'Swap the coils, coil of cylinder 3 with coil of cylinder 1'], onlyHere: 0, kept: 4 },
    { label: 'both went on', here: long, incoming: elsewhere, kind: 'adds', added: ['Note'], onlyHere: 2, kept: 5 },
  ])('$label: $kind', ({ here, incoming, kind, added, onlyHere, kept }) => {
    const planned = plan(here, incoming);
    expect(planned).toMatchObject({ kind, onlyHere });
    expect(planned.added.map(({ title }) => title)).toEqual(added);
    expect(planned.job.events).toHaveLength(kept);
  });

  it('gives the time of what would come in', () => {
    expect(plan(short, long).added[0]?.at).toBe(long.events[2]?.at);
  });

  it('refuses another job, and a copy in which an entry was changed', () => {
    expect(planImport(short, { ...long, id: 'other' })).toMatchObject({ ok: false, error: { code: 'different-jobs' } });
    const forged = { ...long, events: long.events.map((event) => (event.kind === 'complaint' ? { ...event, text: 'Never shook' } : event)) };
    expect(planImport(short, forged)).toMatchObject({ ok: false, error: { code: 'different-event', input: 'e2' } });
  });

  it('refuses what would hold too many pictures', () => {
    const many = (letter: string): Job => ({ ...short, events: Array.from({ length: 30 }, (_, index) => ({ ...picture, id: `${letter}${index}`, sequence: index + 1, at: short.createdAt }) as Job['events'][number]) });
    expect(planImport(many('a'), many('b'))).toMatchObject({ ok: false, error: { code: 'too-many-pictures' } });
  });

  it('loses no entry, and counts what it says', () => {
    fc.assert(
      fc.property(shared, ([here, incoming]) => {
        const { job, added, onlyHere, kind } = plan(here, incoming);
        const ids = job.events.map(({ id }) => id);
        const either = new Set([...here.events, ...incoming.events].map(({ id }) => id));
        expect(new Set(ids)).toEqual(either);
        expect(ids).toHaveLength(either.size);
        expect(added).toHaveLength(either.size - here.events.length);
        expect(onlyHere).toBe(either.size - incoming.events.length);
        expect(kind).toBe(added.length > 0 ? 'adds' : onlyHere > 0 ? 'older' : 'same');
      }),
    );
  });

  it('planned twice, adds nothing the second time', () => {
    fc.assert(fc.property(shared, ([here, incoming]) => void expect(plan(plan(here, incoming).job, incoming).added).toEqual([])));
  });
});
