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
import type { Job, JobEventBody, MeterNoted, PlaceNoted, ProofRun } from '../domain/jobs/types.ts';
import type { DemoStep, DemoStory } from '../schemas/demoJobs.ts';

/** When the invented job was opened; any fixed time will do. */
const opened = Date.UTC(2026, 2, 4, 8, 30);

/** An invented job as a record, worked out with the present book. Throws where its story does not fit the book. */
export function demoJob(told: DemoStory, book: JobBook): Job {
  const writer = new StoryWriter(told, book);
  writer.takeIn();
  for (const one of told.story) writer.write(one);
  return writer.job;
}

class StoryWriter {
  private readonly told: DemoStory;
  private readonly book: JobBook;
  private readonly layout: EngineLayout;
  job: Job;

  constructor(told: DemoStory, book: JobBook) {
    this.told = told;
    this.book = book;
    this.layout = layoutOf(told, book);
    this.job = { ...newJob(`demo-${told.id}`, timeAt(0), `${inventedSource}: ${told.garage}`, told.title), revision: 0 };
  }

  takeIn(): void {
    const { car, customerReference, makerFigures, complaint, codes, frame } = this.told;
    const figures = makerFigures.map(present);
    this.add(0, { kind: 'engine-chosen', layout: this.layout, description: car, customerReference, makerFigures: figures });
    this.add(1, { kind: 'complaint', ...complaint });
    this.add(codes.minute, { kind: 'codes-read', text: codes.text, ...noteCodes(codes.text, this.book) });
    if (frame) this.add(codes.minute, { kind: 'frame-read', ...present(frame) });
  }

  write(one: DemoStep): void {
    this.add(one.minute, this.body(one));
  }

  private body(one: DemoStep): JobEventBody {
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
      case 'proof-run':
        return proofRun(one);
      case 'check':
        return { kind: 'proof-check', check: one.check, state: one.state, note: one.note };
      case 'hand-over':
        return { kind: 'handed-over', to: one.to };
    }
  }

  private test(one: Extract<DemoStep, { kind: 'test' }>): JobEventBody {
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

  private reading(one: Extract<DemoStep, { kind: 'reading' }>): JobEventBody {
    const range = required(this.book.ranges, one.range, 'range');
    const meter: MeterNoted | undefined = this.told.meter[one.meter];
    if (!meter) throw new Error(`The invented job ${this.told.id} names a meter that it does not describe: ${one.meter}.`);
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
    if (!judged.ok) throw new Error(`A reading of the invented job ${this.told.id} is refused: ${judged.error.message}`);
    return { ...judged.value.body, meter };
  }

  private finding(hypothesis: string): JobEventBody {
    const derived = deriveJob(this.job.events, this.book);
    const belief = derived.beliefs.find((candidate) => candidate.hypothesis.id === hypothesis);
    const judged = derived.diagnosis && judgeFinding(derived.diagnosis, hypothesis);
    if (!belief || !judged) throw new Error(`The invented job ${this.told.id} finds what the book does not know: ${hypothesis}.`);
    if (!judged.allowed) throw new Error(`The finding of the invented job ${this.told.id} is not carried: ${judged.missing.join(' ')}`);
    const supportedBy = judged.supportedBy.flatMap((index) => {
      const event = derived.live.find((candidate) => candidate.id === derived.evidenceEvents[index]);
      return event ? [[describeEvent(event).title, describeEvent(event).lines[0]].join(': ')] : [];
    });
    return { kind: 'finding-made', hypothesis, label: hypothesisLabel(belief.hypothesis), belief: judged.belief, supportedBy };
  }

  private place(id: string): PlaceNoted {
    const found = placeById(this.layout, id);
    if (!found) throw new Error(`The invented job ${this.told.id} names a place that its engine has not got: ${id}.`);
    return { id, label: found.label };
  }

  private add(minutes: number, body: JobEventBody): void {
    this.job = appendEvent(this.job, body, `demo-${this.job.events.length + 1}`, timeAt(minutes));
  }
}

function layoutOf(told: DemoStory, book: JobBook): EngineLayout {
  const layout = makeLayout(required(book.engines, told.engine.id, 'engine'), told.engine.ignition, told.engine.injection);
  if (!layout.ok) throw new Error(`The engine of the invented job ${told.id} is refused: ${layout.error.message}`);
  return layout.value;
}

function proofRun({ minute: _minute, ...run }: Extract<DemoStep, { kind: 'proof-run' }>): Omit<ProofRun, 'id' | 'sequence' | 'at'> {
  return present(run);
}

/** Leaves out the fields that have no value, as the domain's types ask. */
function present<Fields extends object>(fields: Fields): Present<Fields> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Present<Fields>;
}

type Present<Fields> = { [Key in keyof Fields]: Exclude<Fields[Key], undefined> };

function timeAt(minutes: number): string {
  return new Date(opened + minutes * 60_000).toISOString();
}

function required<Item extends { readonly id: string }>(items: readonly Item[], id: string, what: string): Item {
  const found = items.find((item) => item.id === id);
  if (!found) throw new Error(`An invented job names a ${what} that the book does not hold: ${id}.`);
  return found;
}
