/** Jobs for property tests: any text, numbers at the ends of their ranges, any mixture of events. */
import fc from 'fast-check';
import { compareEvents, newJob } from '../../src/domain/jobs/edit.ts';
import { accessStates, opinionWeights } from '../../src/domain/diagnosis/types.ts';
import { lampStates, proofChecks, proofCheckStates } from '../../src/domain/jobs/types.ts';
import type { Job, JobEvent, JobEventBody } from '../../src/domain/jobs/types.ts';
import { calculation, codes, engine, finding, moved, noneBack, reading, startTime } from './jobBook.ts';

const text = fc.string({ unit: 'grapheme', maxLength: 60 });
const time = fc
  .date({ min: new Date('2020-01-01T00:00:00Z'), max: new Date('2060-01-01T00:00:00Z'), noInvalidDate: true })
  .map((date) => date.toISOString());
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (Object.is(value, -0) ? 0 : value));

/** One of several words. */
const word = <const Word extends string>(words: readonly Word[]): fc.Arbitrary<Word> => fc.constantFrom(...words);
const placeNoted = fc.constantFrom({ id: 'coil-3', label: 'coil of cylinder 3' }, { id: 'cylinder-2', label: 'cylinder 2' }, { id: 'nowhere', label: '' });
const minutes = fc.double({ min: 0, max: 1000, noNaN: true }).map((value) => value + 0);
const speed = fc.integer({ min: 0, max: 9000 });
const load = fc.integer({ min: 0, max: 100 });
const misfire = word(['same', 'different']);
const yesNoUnknown = word(['yes', 'no', 'unknown']);
const whole = fc.nat({ max: 1_000_000_000 });
const base64 = fc.uint8Array({ maxLength: 40 }).map((bytes) => Buffer.from([0xff, 0xd8, 0xff, ...bytes]).toString('base64'));

/** A body of every kind, with each field that may be left out now there and now not. `undone` is added with the events it needs. */
const bodies: { readonly [Kind in Exclude<JobEventBody['kind'], 'undone'>]: fc.Arbitrary<Extract<JobEventBody, { kind: Kind }>> } = {
  'engine-chosen': fc.constant(engine as Extract<JobEventBody, { kind: 'engine-chosen' }>),
  complaint: fc.record(
    { kind: fc.constant('complaint'), text, signs: fc.subarray(['when-hot', 'in-wet', 'oil-use'] as const), lamp: word(lampStates) },
    { requiredKeys: ['kind', 'text', 'signs'] },
  ),
  'codes-read': fc.constantFrom({ ...(codes as Extract<JobEventBody, { kind: 'codes-read' }>) }, { kind: 'codes-read', text: '', codes: [], refused: [], notRead: 'no reader' }),
  'codes-reread': fc.constantFrom(
    noneBack as Extract<JobEventBody, { kind: 'codes-reread' }>,
    { ...(codes as Extract<JobEventBody, { kind: 'codes-read' }>), kind: 'codes-reread' },
  ),
  'codes-cleared': fc.constant({ kind: 'codes-cleared' }),
  'test-done': minutes.chain((took) => fc.constantFrom(moved as Extract<JobEventBody, { kind: 'test-done' }>, { ...(moved as Extract<JobEventBody, { kind: 'test-done' }>), minutes: took })),
  'test-not-possible': fc.record(
    { kind: fc.constant('test-not-possible'), test: word(['swap-coils', 'swap-plugs']), title: text, reason: text, place: placeNoted },
    { requiredKeys: ['kind', 'test', 'title', 'reason'] },
  ),
  'reading-taken': number.map((value) => ({ ...(reading as Extract<JobEventBody, { kind: 'reading-taken' }>), value, corrected: value })),
  'finding-made': fc.constant(finding as Extract<JobEventBody, { kind: 'finding-made' }>),
  'part-matched': fc.record(
    {
      kind: fc.constant('part-matched'),
      part: fc.constant('coil'),
      title: text,
      ticks: fc.array(fc.record({ feature: text, matches: fc.boolean() }), { maxLength: 3 }),
      answers: fc.array(fc.record({ question: text, answer: text, from: text }), { maxLength: 3 }),
      renewedWith: fc.array(text, { maxLength: 3 }),
    },
    { requiredKeys: ['kind', 'part', 'title', 'ticks'] },
  ),
  'repair-done': fc.record({
    kind: fc.constant('repair-done'),
    what: text,
    hypothesis: word(['coil-winding@coil-3', 'plug-worn@cylinder-2', 'none-of-these']),
    minutes,
  }),
  'misfires-counted': fc.record({ kind: fc.constant('misfires-counted'), misfires: whole, revolutions: fc.integer({ min: 1, max: 1_000_000_000 }), how: text }),
  'proof-run': fc.record(
    { kind: fc.constant('proof-run'), revolutions: whole, minutes, misfires: whole, similarConditions: yesNoUnknown, result: word(['quiet', 'returned']), speed, load, misfire },
    { requiredKeys: ['kind', 'revolutions', 'minutes', 'misfires', 'similarConditions', 'result'] },
  ),
  'handed-over': fc.record({ kind: fc.constant('handed-over'), to: text, unproven: text }, { requiredKeys: ['kind', 'to'] }),
  note: fc.record({ kind: fc.constant('note'), text }),
  calculation: fc
    .record({ title: text, figures: fc.array(fc.record({ name: fc.string({ maxLength: 60 }), label: text, text }), { maxLength: 5 }), asked: text })
    .map(({ title, figures, asked }) => ({
      ...(calculation as Extract<JobEventBody, { kind: 'calculation' }>),
      title,
      inputs: figures,
      outputs: figures,
      address: `calculators/plug-gap/?gap=${encodeURIComponent(asked)}`,
    })),
  opinion: fc.record(
    { kind: fc.constant('opinion'), fault: word(['injector-clogged', 'coil-winding', 'not-in-the-book']), place: placeNoted, label: text, weight: word(opinionWeights), reason: text },
    { requiredKeys: ['kind', 'fault', 'label', 'weight', 'reason'] },
  ),
  access: fc.record({ kind: fc.constant('access'), open: fc.subarray([...accessStates]) }),
  'frame-read': fc.record(
    { kind: fc.constant('frame-read'), code: word(['', 'P0303']), speed, load, coolant: fc.integer({ min: -40, max: 150 }), warm: yesNoUnknown },
    { requiredKeys: ['kind', 'code', 'speed', 'warm'] },
  ),
  picture: fc.record({ kind: fc.constant('picture'), caption: text, width: fc.integer({ min: 1, max: 4000 }), height: fc.integer({ min: 1, max: 4000 }), jpeg: base64 }),
  'proof-check': fc.record({ kind: fc.constant('proof-check'), check: word(proofChecks), state: word(proofCheckStates), note: text }),
  'came-back': fc.record({ kind: fc.constant('came-back'), text, misfire }),
  renamed: fc.record({ kind: fc.constant('renamed'), title: text.map((title) => `Job ${title}`) }),
};

const body: fc.Arbitrary<JobEventBody> = fc.oneof(...Object.values<fc.Arbitrary<JobEventBody>>(bodies));

/** Events with distinct ids; sequences may repeat, as they do when two devices write. Some undo one that stands before them. */
const events: fc.Arbitrary<readonly JobEvent[]> = fc
  .array(fc.record({ body, at: time, sequence: fc.integer({ min: 1, max: 12 }), undoing: fc.option(fc.nat(), { freq: 6 }) }), { maxLength: 14 })
  .map((drafts) => {
    const written = drafts.map(({ body: inner, at, sequence }, index): JobEvent => ({ ...inner, id: `x${index}`, sequence, at })).sort(compareEvents);
    const undoings = drafts.flatMap(({ undoing, at }, index): JobEvent[] => {
      const undone = undoing === null ? undefined : written[undoing % written.length];
      return undone === undefined ? [] : [{ kind: 'undone', undoes: undone.id, id: `z${index}`, sequence: 20 + index, at }];
    });
    return [...written, ...undoings];
  });

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
