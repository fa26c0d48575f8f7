import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { makeLayout } from '../domain/diagnosis/layout.ts';
import { placeById } from '../domain/diagnosis/places.ts';
import { hypothesisLabel } from '../domain/diagnosis/labels.ts';
import { judgeFinding } from '../domain/diagnosis/finding.ts';
import type { EngineLayout } from '../domain/diagnosis/types.ts';
import type { JobBook } from '../domain/jobs/book.ts';
import { noteCodes } from '../domain/jobs/codes.ts';
import { describeEvent } from '../domain/jobs/describe.ts';
import { appendEvent, newJob } from '../domain/jobs/edit.ts';
import { judgeTypedReading } from '../domain/jobs/reading.ts';
import { deriveJob } from '../domain/jobs/reduce.ts';
import { inventedSource } from '../domain/jobs/types.ts';
import type { Job, JobEventBody, MeterNoted, PlaceNoted } from '../domain/jobs/types.ts';
import { complaintSign, entryId, ignitionArrangement, injectionArrangement, plainText } from '../schemas/common.ts';

/** The invented job, told as a story; its top comment says what each field is. */
const demoFile = join(import.meta.dirname, '../../seeds/jobs/worn-plug-gap.yaml');

const minute = z.number().min(0);
const place = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/);
const minutesAndKind = <const Kind extends string>(kind: Kind) => ({ kind: z.literal(kind), minute });

const step = z.discriminatedUnion('kind', [
  z.strictObject({ ...minutesAndKind('test'), test: entryId, place, partner: place.optional(), outcome: entryId, note: z.string().default('') }),
  z.strictObject({
    ...minutesAndKind('reading'),
    test: entryId.optional(),
    range: entryId,
    place,
    text: plainText,
    temperature: z.number(),
    meter: z.string(),
  }),
  z.strictObject({ ...minutesAndKind('count'), misfires: z.number().int(), revolutions: z.number().int(), how: plainText }),
  z.strictObject({ ...minutesAndKind('finding'), fault: entryId, place }),
  z.strictObject({ ...minutesAndKind('match'), part: entryId, matches: z.boolean() }),
  z.strictObject({ ...minutesAndKind('repair'), fault: entryId, place, what: plainText, minutes: z.number() }),
  z.strictObject(minutesAndKind('clear')),
  z.strictObject({ ...minutesAndKind('reread'), text: z.string() }),
  z.strictObject({
    ...minutesAndKind('proof-run'),
    revolutions: z.number().int(),
    minutes: z.number(),
    misfires: z.number().int(),
    similarConditions: z.enum(['yes', 'no', 'unknown']),
    result: z.enum(['quiet', 'returned']),
  }),
  z.strictObject({ ...minutesAndKind('hand-over'), to: z.string() }),
]);

const story = z.strictObject({
  id: entryId,
  title: plainText,
  invented: z.literal(true),
  note: plainText,
  garage: plainText,
  car: plainText,
  customerReference: z.string(),
  engine: z.strictObject({ id: entryId, ignition: ignitionArrangement, injection: injectionArrangement }),
  makerFigures: z.array(
    z.strictObject({ range: entryId, low: z.number().optional(), high: z.number().optional(), unit: z.string(), from: plainText }),
  ),
  meter: z.record(z.string(), z.strictObject({ name: plainText, percent: z.number(), counts: z.number() })),
  complaint: z.strictObject({ text: plainText, signs: z.array(complaintSign) }),
  codes: z.strictObject({ minute, text: z.string() }),
  story: z.array(step).min(1),
});

type Story = z.output<typeof story>;
type Step = z.output<typeof step>;

/** When the invented job was opened; any fixed time will do. */
const opened = Date.UTC(2026, 2, 4, 8, 30);

/** The invented job as a record, worked out with the present book; undefined where its story is not there. Throws where the story does not fit the book. */
export function demoJob(book: JobBook, file = demoFile): Job | undefined {
  if (!existsSync(file)) return undefined;
  const told = story.parse(parse(readFileSync(file, 'utf8')));
  const writer = new StoryWriter(told, book);
  writer.takeIn();
  for (const one of told.story) writer.write(one);
  return writer.job;
}

class StoryWriter {
  private readonly told: Story;
  private readonly book: JobBook;
  private readonly layout: EngineLayout;
  job: Job;

  constructor(told: Story, book: JobBook) {
    this.told = told;
    this.book = book;
    this.layout = layoutOf(told, book);
    this.job = { ...newJob(`demo-${told.id}`, timeAt(0), `${inventedSource}: ${told.garage}`, told.title), revision: 0 };
  }

  takeIn(): void {
    const { car, customerReference, makerFigures, complaint, codes } = this.told;
    const figures = makerFigures.map(({ low, high, ...figure }) => ({ ...figure, ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) }));
    this.add(0, { kind: 'engine-chosen', layout: this.layout, description: car, customerReference, makerFigures: figures });
    this.add(1, { kind: 'complaint', ...complaint });
    this.add(codes.minute, { kind: 'codes-read', text: codes.text, ...noteCodes(codes.text, this.book) });
  }

  write(one: Step): void {
    this.add(one.minute, this.body(one));
  }

  private body(one: Step): JobEventBody {
    switch (one.kind) {
      case 'test':
        return this.test(one);
      case 'reading':
        return this.reading(one);
      case 'count':
        return { kind: 'misfires-counted', misfires: one.misfires, revolutions: one.revolutions, how: one.how };
      case 'finding':
        return this.finding(`${one.fault}@${one.place}`);
      case 'match': {
        const part = required(this.book.parts, one.part, 'part');
        return { kind: 'part-matched', part: part.id, title: part.title, ticks: part.match.map(({ feature }) => ({ feature, matches: one.matches })) };
      }
      case 'repair':
        return { kind: 'repair-done', what: one.what, hypothesis: `${one.fault}@${one.place}`, minutes: one.minutes };
      case 'clear':
        return { kind: 'codes-cleared' };
      case 'reread':
        return { kind: 'codes-reread', text: one.text, ...noteCodes(one.text, this.book) };
      case 'proof-run': {
        const { minute: _minute, ...run } = one;
        return run;
      }
      case 'hand-over':
        return { kind: 'handed-over', to: one.to };
    }
  }

  private test(one: Extract<Step, { kind: 'test' }>): JobEventBody {
    const test = required(this.book.diagnosis.tests, one.test, 'test');
    const outcome = required(test.outcomes, one.outcome, `outcome of ${one.test}`);
    return {
      kind: 'test-done',
      test: test.id,
      title: test.title,
      place: this.place(one.place),
      ...(one.partner === undefined ? {} : { partner: this.place(one.partner) }),
      outcomes: { [outcome.id]: 1 },
      outcome: outcome.label,
      note: one.note,
    };
  }

  private reading(one: Extract<Step, { kind: 'reading' }>): JobEventBody {
    const range = required(this.book.ranges, one.range, 'range');
    const meter: MeterNoted | undefined = this.told.meter[one.meter];
    if (!meter) throw new Error(`The invented job names a meter that it does not describe: ${one.meter}.`);
    const maker = this.told.makerFigures.find((figure) => figure.range === one.range);
    const text = (value: number | undefined): string => (value === undefined ? '' : String(value));
    const judged = judgeTypedReading(
      {
        reading: one.text,
        temperature: String(one.temperature),
        leads: '',
        meterPercent: String(meter.percent),
        meterCounts: String(meter.counts),
        makerLow: text(maker?.low),
        makerHigh: text(maker?.high),
        makerTemperature: '',
      },
      range,
      'C',
      { ...(one.test === undefined ? {} : { test: one.test }), place: this.place(one.place) },
    );
    if (!judged.ok) throw new Error(`A reading of the invented job is refused: ${judged.error.message}`);
    return { ...judged.value.body, meter };
  }

  private finding(hypothesis: string): JobEventBody {
    const derived = deriveJob(this.job.events, this.book);
    const belief = derived.beliefs.find((candidate) => candidate.hypothesis.id === hypothesis);
    const judged = derived.diagnosis && judgeFinding(derived.diagnosis, hypothesis);
    if (!belief || !judged) throw new Error(`The invented job finds what the book does not know: ${hypothesis}.`);
    if (!judged.allowed) throw new Error(`The finding of the invented job is not carried: ${judged.missing.join(' ')}`);
    const supportedBy = judged.supportedBy.flatMap((index) => {
      const event = derived.live.find((candidate) => candidate.id === derived.evidenceEvents[index]);
      return event ? [[describeEvent(event).title, describeEvent(event).lines[0]].join(': ')] : [];
    });
    return { kind: 'finding-made', hypothesis, label: hypothesisLabel(belief.hypothesis), belief: judged.belief, supportedBy };
  }

  private place(id: string): PlaceNoted {
    const found = placeById(this.layout, id);
    if (!found) throw new Error(`The invented job names a place that its engine has not got: ${id}.`);
    return { id, label: found.label };
  }

  private add(minutes: number, body: JobEventBody): void {
    this.job = appendEvent(this.job, body, `demo-${this.job.events.length + 1}`, timeAt(minutes));
  }
}

function layoutOf(told: Story, book: JobBook): EngineLayout {
  const layout = makeLayout(required(book.engines, told.engine.id, 'engine'), told.engine.ignition, told.engine.injection);
  if (!layout.ok) throw new Error(`The engine of the invented job is refused: ${layout.error.message}`);
  return layout.value;
}

function timeAt(minutes: number): string {
  return new Date(opened + minutes * 60_000).toISOString();
}

function required<Item extends { readonly id: string }>(items: readonly Item[], id: string, what: string): Item {
  const found = items.find((item) => item.id === id);
  if (!found) throw new Error(`The invented job names a ${what} that the book does not hold: ${id}.`);
  return found;
}
