import { complaintWords, hypothesisLabel, perCent } from '../diagnosis/labels.ts';
import { verdictWord } from '../measurement/sentence.ts';
import type { SentenceOptions } from '../measurement/sentence.ts';
import type { JobBook, JobCaution } from './book.ts';
import { conditionWords, describeEvent, ignitionWords, injectionWords, readingLimits, readingWords } from './describe.ts';
import type { DerivedJob } from './reduce.ts';
import { isSearch } from './reduce.ts';
import { repairGroup } from './repairGroup.ts';
import { inventedSource, stageTitles } from './types.ts';
import type { Job, ReadingTaken } from './types.ts';

/** Faults believed at least this likely are named among what was not ruled out. */
const worthNaming = 0.02;
/** No run makes certain; above this the sheet says "over 99 %". */
const surest = 0.9999;
/** Cautions on the customer's half; more would not be read. */
const mostCautions = 4;

/** One quantity at one place, before and after the repair. */
export interface ComparedReading {
  readonly title: string;
  readonly limits: string;
  readonly source: string;
  readonly before?: { readonly reading: string; readonly verdict: string };
  readonly after?: { readonly reading: string; readonly verdict: string };
}

export interface CustomerPart {
  readonly complaint: string;
  readonly signs: readonly string[];
  readonly whatWasWrong: string;
  readonly howWeKnow: { readonly readings: readonly ComparedReading[]; readonly tests: readonly string[] };
  readonly whatWasDone: readonly string[];
  readonly proven: boolean;
  /** What was proven and how long it was run, or that it was not. */
  readonly proof: readonly string[];
  readonly notChecked: readonly string[];
  readonly watch: readonly string[];
  readonly cautions: readonly Pick<JobCaution, 'id' | 'title' | 'short'>[];
}

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
  readonly shop: { readonly rows: readonly ShopRow[]; readonly readings: readonly ShopReading[] };
}

/** The sheet of a job: one half for the customer, one for the shop. Says only what the record holds. */
export function reportOf(job: Job, derived: DerivedJob, book: JobBook, options: SentenceOptions = {}): Report {
  const { engine } = derived;
  return {
    title: job.title,
    jobId: job.id,
    createdAt: job.createdAt,
    source: job.source,
    invented: job.source.startsWith(inventedSource),
    stage: stageTitles[derived.stage],
    car: engine?.description ?? '',
    customerReference: engine?.customerReference ?? '',
    engine: engine ? `${engine.layout.title}, ${ignitionWords[engine.layout.ignition]}, ${injectionWords[engine.layout.injection]}` : '',
    customer: customerPart(derived, book, options),
    shop: { rows: shopRows(job, derived, options), readings: shopReadings(derived, options) },
  };
}

function customerPart(derived: DerivedJob, book: JobBook, options: SentenceOptions): CustomerPart {
  const { complaint, finding, proof } = derived;
  const handedOverUnproven = proof.handedOver?.unproven;
  const proven = proof.proven && handedOverUnproven === undefined;
  return {
    complaint: complaint?.text ?? '',
    signs: complaint?.signs.map((sign) => complaintWords[sign]) ?? [],
    whatWasWrong: finding ? finding.label : 'No fault was found for certain.',
    howWeKnow: { readings: comparedReadings(derived, options), tests: testLines(derived, book) },
    whatWasDone: derived.repairs.map((repair) => repair.what),
    proven,
    proof: proofLines(derived, handedOverUnproven),
    notChecked: notChecked(derived, book),
    watch: watchLines(proven, derived.repairs.length > 0),
    cautions: cautionsOf(derived, book),
  };
}

/** The last reading of each range and place on either side of the repair. */
function comparedReadings(derived: DerivedJob, options: SentenceOptions): readonly ComparedReading[] {
  const compared = new Map<string, ComparedReading>();
  for (const side of ['before', 'after'] as const) {
    const readings = side === 'before' ? derived.readingsBefore : derived.readingsAfter;
    for (const event of readings) {
      const key = `${event.range} ${event.place?.id ?? ''}`;
      const shown = { reading: readingWords(event, options), verdict: verdictWord(event.verdict) };
      compared.set(key, { ...compared.get(key), ...readingHead(event, options), [side]: shown });
    }
  }
  return [...compared.values()];
}

function readingHead(event: ReadingTaken, options: SentenceOptions): Pick<ComparedReading, 'title' | 'limits' | 'source'> {
  return {
    title: event.place ? `${event.title}, ${event.place.label}` : event.title,
    limits: readingLimits(event, options),
    source: event.limits.sourceLabel,
  };
}

/** What was looked for and found; repairs and proofs stand under their own headings. */
function testLines({ live }: DerivedJob, book: JobBook): readonly string[] {
  return live.flatMap((event) => {
    if (event.kind !== 'test-done' || !isSearch(event, book)) return [];
    const where = event.partner ? `${event.place.label} with ${event.partner.label}` : event.place.label;
    return [`${event.title}, ${where}: ${event.outcome}`];
  });
}

function proofLines({ proof, repairs }: DerivedJob, unprovenReason: string | undefined): readonly string[] {
  if (repairs.length === 0) return ['Nothing was repaired, so nothing is proven.'];
  const run = `Run for ${proof.revolutionsRun} revolutions (${Math.round(proof.minutesRun)} minutes) under the conditions of the fault without a misfire.`;
  if (proof.proven && unprovenReason === undefined) {
    return [run, `Had the fault still been there, a run this long would have shown it with a chance of ${perCent(Math.min(surest, 1 - (proof.doubt ?? 1)))}.`, 'No codes came back.'];
  }
  const reason = unprovenReason === undefined ? [] : [`Handed over without proof: ${unprovenReason}`];
  return ['The repair is not proven.', ...(proof.revolutionsRun > 0 ? [run] : []), ...reason];
}

function notChecked({ proof, repairs, beliefs, finding, live, engine }: DerivedJob, book: JobBook): readonly string[] {
  const answered = finding && engine ? repairGroup(book.diagnosis, engine.layout, finding.hypothesis) : [];
  const open = beliefs.filter(({ hypothesis: { fault, place }, probability }) => {
    const isAnswered = answered.some((one) => one.fault === fault?.id && one.place === place?.id);
    return fault !== undefined && !isAnswered && probability >= worthNaming;
  });
  return [
    ...(repairs.length > 0 ? proof.missing : []),
    ...open.slice(0, 5).map(({ hypothesis, probability }) => `Not ruled out: ${hypothesisLabel(hypothesis)} (${perCent(probability)})`),
    ...live.flatMap((event) => (event.kind === 'test-not-possible' ? [`Not possible: ${event.title}. ${event.reason}`.trim()] : [])),
  ];
}

function watchLines(proven: boolean, repaired: boolean): readonly string[] {
  return [
    'If the engine lamp flashes, ease off at once and have the car looked at: unburnt fuel overheats the catalyst, which can set light to dry grass.',
    ...(repaired && !proven ? ['The fault may come back. Bring the car in as soon as it shakes or the lamp comes on, and say when it happened.'] : []),
    ...(repaired && proven ? ['If the shaking comes back, note when (cold, hot, wet, pulling) and bring this sheet.'] : []),
  ];
}

/** Those of the part that was fitted come first, then those of the tests that were done. */
function cautionsOf({ live }: DerivedJob, book: JobBook): CustomerPart['cautions'] {
  const parts = live.flatMap((event) => (event.kind === 'part-matched' ? [event.part] : []));
  const tests = live.flatMap((event) => (event.kind === 'test-done' ? [event.test] : []));
  const ids = [
    ...book.parts.filter((part) => parts.includes(part.id)).flatMap((part) => part.cautions),
    ...book.diagnosis.tests.filter((test) => tests.includes(test.id)).flatMap((test) => test.cautions),
  ];
  const cautions = [...new Set(ids)].flatMap((id) => book.cautions.filter((caution) => caution.id === id));
  return cautions.slice(0, mostCautions).map(({ id, title, short }) => ({ id, title, short }));
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
