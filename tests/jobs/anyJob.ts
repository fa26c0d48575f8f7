/** Jobs for property tests: any text, numbers at the ends of their ranges, any mixture of events. */
import fc from 'fast-check';
import { compareEvents, newJob } from '../../src/domain/jobs/edit.ts';
import type { Job, JobEvent, JobEventBody } from '../../src/domain/jobs/types.ts';
import { calculation, codes, engine, finding, moved, reading, startTime } from './jobBook.ts';

const text = fc.string({ unit: 'grapheme', maxLength: 60 });
const time = fc
  .date({ min: new Date('2020-01-01T00:00:00Z'), max: new Date('2060-01-01T00:00:00Z'), noInvalidDate: true })
  .map((date) => date.toISOString());
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (Object.is(value, -0) ? 0 : value));

const body: fc.Arbitrary<JobEventBody> = fc.oneof(
  fc.constantFrom<JobEventBody>(engine, codes, finding, moved, { kind: 'codes-cleared' }),
  fc.record({ kind: fc.constant('note' as const), text }),
  fc
    .record({ title: text, figures: fc.array(fc.record({ name: fc.string({ maxLength: 60 }), label: text, text }), { maxLength: 5 }), asked: text })
    .map(({ title, figures, asked }): JobEventBody => ({
      ...(calculation as Extract<JobEventBody, { kind: 'calculation' }>),
      title,
      inputs: figures,
      outputs: figures,
      address: `calculators/plug-gap/?gap=${encodeURIComponent(asked)}`,
    })),
  fc.record({ kind: fc.constant('complaint' as const), text, signs: fc.subarray(['when-hot', 'in-wet', 'oil-use'] as const) }),
  fc.record({ kind: fc.constant('handed-over' as const), to: text }, { requiredKeys: ['kind', 'to'] }),
  number.map((value): JobEventBody => ({ ...(reading as Extract<JobEventBody, { kind: 'reading-taken' }>), value, corrected: value })),
  fc.record({
    kind: fc.constant('proof-run' as const),
    revolutions: fc.nat({ max: 1_000_000_000 }),
    minutes: fc.nat({ max: 1000 }),
    misfires: fc.nat({ max: 1_000_000_000 }),
    similarConditions: fc.constantFrom('yes' as const, 'no' as const, 'unknown' as const),
    result: fc.constantFrom('quiet' as const, 'returned' as const),
  }),
);

/** Events with distinct ids; sequences may repeat, as they do when two devices write. */
const events: fc.Arbitrary<readonly JobEvent[]> = fc
  .array(fc.record({ body, at: time, sequence: fc.integer({ min: 1, max: 12 }) }), { maxLength: 12 })
  .map((drafts) => drafts.map(({ body: inner, at, sequence }, index): JobEvent => ({ ...inner, id: `x${index}`, sequence, at })).sort(compareEvents));

const head = fc.record({ title: text, source: text, revision: fc.nat(), createdAt: time });

export const anyJob: fc.Arbitrary<Job> = fc
  .record({ events, head })
  .map(({ events: list, head: own }) => ({ ...newJob('job-1', startTime, '', ''), ...own, events: list }));

/** Three copies of one job, each holding some of its events under a head of its own. */
export const shared: fc.Arbitrary<readonly [Job, Job, Job]> = events.chain((list) => {
  const copy = fc
    .record({ kept: fc.subarray([...list]), head })
    .map(({ kept, head: own }): Job => ({ ...newJob('job-1', startTime, '', ''), ...own, events: kept }));
  return fc.tuple(copy, copy, copy);
});
