import { verdictWord } from '../measurement/sentence.ts';
import type { SentenceOptions } from '../measurement/sentence.ts';
import type { JobBook } from './book.ts';
import { customerPart, laidAsideSentence, readingHead } from './customerSheet.ts';
import type { CustomerPart } from './customerSheet.ts';
import { conditionWords, describeEvent, ignitionWords, injectionWords, readingWords } from './describe.ts';
import type { DerivedJob } from './reduce.ts';
import { inventedSource, stageTitles } from './types.ts';
import type { Job, OpinionGiven } from './types.ts';

export { comparedReadings } from './customerSheet.ts';
export type { ComparedReading, CustomerPart } from './customerSheet.ts';

/** One line of the shop's record. */
export interface ShopRow {
  readonly id: string;
  readonly at: string;
  readonly title: string;
  readonly lines: readonly string[];
  /** Taken out of account; printed struck through, never left out. */
  readonly undone: boolean;
}

export interface ShopReading {
  readonly title: string;
  readonly reading: string;
  readonly limits: string;
  readonly source: string;
  readonly meter: string;
  readonly verdict: string;
}

export interface ShopPicture {
  readonly caption: string;
  /** JPEG in Base64, without the `data:` head. */
  readonly jpeg: string;
  readonly width: number;
  readonly height: number;
}

export interface ShopPart {
  readonly rows: readonly ShopRow[];
  readonly readings: readonly ShopReading[];
  /** What moved belief without being measured, each called an opinion. */
  readonly opinions: readonly string[];
  readonly laidAside: string;
  readonly pictures: readonly ShopPicture[];
}

/** Everything printed on the sheet of a job, in words. */
export interface Report {
  readonly title: string;
  readonly jobId: string;
  readonly createdAt: string;
  readonly source: string;
  readonly invented: boolean;
  readonly stage: string;
  readonly car: string;
  readonly customerReference: string;
  readonly engine: string;
  readonly customer: CustomerPart;
  readonly shop: ShopPart;
}

/** The sheet of a job: one half for the customer, one for the shop. Says only what the record holds. */
export function reportOf(job: Job, derived: DerivedJob, book: JobBook, options: SentenceOptions = {}): Report {
  const { engine } = derived;
  return {
    title: derived.title ?? job.title,
    jobId: job.id,
    createdAt: job.createdAt,
    source: job.source,
    invented: job.source.startsWith(inventedSource),
    stage: stageTitles[derived.stage],
    car: engine?.description ?? '',
    customerReference: engine?.customerReference ?? '',
    engine: engine ? `${engine.layout.title}, ${ignitionWords[engine.layout.ignition]}, ${injectionWords[engine.layout.injection]}` : '',
    customer: customerPart(derived, book, options),
    shop: shopPart(job, derived, options),
  };
}

function shopPart(job: Job, derived: DerivedJob, options: SentenceOptions): ShopPart {
  return {
    rows: shopRows(job, derived, options),
    readings: shopReadings(derived, options),
    opinions: derived.live.flatMap((event) => (event.kind === 'opinion' ? [opinionLine(event, options)] : [])),
    laidAside: laidAsideSentence(derived.setAside),
    pictures: derived.pictures.map(({ caption, jpeg, width, height }) => ({ caption, jpeg, width, height })),
  };
}

/** `Opinion: Injector clogged, cylinder 2. Likelier than the book holds; no finding rests on it. Because: two of these last month`. */
function opinionLine(event: OpinionGiven, options: SentenceOptions): string {
  const { title, lines } = describeEvent(event, options);
  return [title, ...lines].join('. ');
}

function shopRows(job: Job, derived: DerivedJob, options: SentenceOptions): readonly ShopRow[] {
  return job.events
    .filter((event) => event.kind !== 'undone')
    .map((event) => ({ id: event.id, at: event.at, ...describeEvent(event, options), undone: derived.undone.has(event.id) }));
}

function shopReadings(derived: DerivedJob, options: SentenceOptions): readonly ShopReading[] {
  return [...derived.readingsBefore, ...derived.readingsAfter].map((event) => ({
    ...readingHead(event, options),
    reading: readingWords(event, options),
    meter: conditionWords(event, options),
    verdict: verdictWord(event.verdict),
  }));
}
