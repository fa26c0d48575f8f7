/** The half of a job's sheet that the customer gets: plain words, and nothing that the record does not hold. */
import { complaintWords, hypothesisLabel, perCent } from '../diagnosis/labels.ts';
import { verdictWord } from '../measurement/sentence.ts';
import type { SentenceOptions } from '../measurement/sentence.ts';
import { isOtherMisfire, isReturn } from './account.ts';
import type { JobBook, JobCaution } from './book.ts';
import { checkSentence, lampWords, readingLimits, readingWords } from './describe.ts';
import { durationWords } from './minutes.ts';
import type { DerivedJob } from './reduce.ts';
import { repairGroup } from './repairGroup.ts';
import { isSearch } from './searched.ts';
import type { JobEvent, ProofChecked, ReadingTaken, RepairDone } from './types.ts';

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
  /** That earlier findings were laid aside, and why; empty where none were. */
  readonly laidAside: string;
  /** Repairs, with what came of those that did not hold, and what was renewed with them. */
  readonly whatWasDone: readonly string[];
  /** Such as `1 h 05 min`; empty where no time is recorded. */
  readonly timeSpent: string;
  readonly proven: boolean;
  /** What was proven and how long it was run, or that it was not. */
  readonly proof: readonly string[];
  readonly notChecked: readonly string[];
  readonly watch: readonly string[];
  readonly cautions: readonly Pick<JobCaution, 'id' | 'title' | 'short'>[];
}

export function customerPart(derived: DerivedJob, book: JobBook, options: SentenceOptions): CustomerPart {
  const { complaint, finding, proof } = derived;
  const proven = proof.proven && proof.handedOver?.unproven === undefined;
  return {
    complaint: complaint?.text ?? '',
    signs: [...(complaint?.signs.map((sign) => complaintWords[sign]) ?? []), ...(complaint?.lamp ? [lampWords[complaint.lamp]] : [])],
    whatWasWrong: finding ? finding.label : 'No fault was found for certain.',
    howWeKnow: { readings: comparedReadings(derived, options), tests: testLines(derived, book) },
    laidAside: laidAsideSentence(derived.setAside),
    whatWasDone: [...derived.repairs.map((repair) => repairLine(repair, derived.live)), ...renewedLines(derived.live)],
    timeSpent: derived.minutesSpent > 0 ? durationWords(derived.minutesSpent) : '',
    proven,
    proof: proofLines(derived, proven),
    notChecked: notChecked(derived, book),
    watch: watchLines(derived, proven),
    cautions: cautionsOf(derived, book),
  };
}

/** The last reading of each range and place on either side of the repair. */
export function comparedReadings(derived: DerivedJob, options: SentenceOptions): readonly ComparedReading[] {
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

export function readingHead(event: ReadingTaken, options: SentenceOptions): Pick<ComparedReading, 'title' | 'limits' | 'source'> {
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

/** Said wherever another misfire made what was found before say nothing any more. */
export function laidAsideSentence(setAside: number): string {
  if (setAside === 0) return '';
  const pieces = setAside === 1 ? 'One piece' : `${setAside} pieces`;
  return `${pieces} of what was found before a repair ${setAside === 1 ? 'was' : 'were'} laid aside, because another misfire showed itself after it.`;
}

function repairLine(repair: RepairDone, live: readonly JobEvent[]): string {
  const after = live.slice(live.indexOf(repair) + 1);
  const nextRepair = after.findIndex((event) => event.kind === 'repair-done');
  const back = (nextRepair < 0 ? after : after.slice(0, nextRepair)).findLast(isReturn);
  if (back === undefined) return repair.what;
  return `${repair.what}. ${isOtherMisfire(back) ? 'Another misfire showed itself afterwards' : 'The misfire came back'}.`;
}

function renewedLines(live: readonly JobEvent[]): readonly string[] {
  return live.flatMap((event) =>
    event.kind === 'part-matched' && event.renewedWith !== undefined && event.renewedWith.length > 0
      ? [`Renewed in the same visit (${event.title}): ${event.renewedWith.join(', ')}`]
      : [],
  );
}

function proofLines(derived: DerivedJob, proven: boolean): readonly string[] {
  const { proof, repairs } = derived;
  const unproven = proof.handedOver?.unproven;
  const reason = unproven === undefined ? [] : [`Handed over without proof: ${unproven}`];
  if (repairs.length === 0) return ['Nothing was repaired, so nothing is proven.', ...reason];
  const run = `Run for ${proof.revolutionsRun} revolutions (${Math.round(proof.minutesRun)} minutes) under the conditions of the fault without a misfire.`;
  const good = checksIn(derived, ['good']).map(sentenceWithNote);
  if (proven) {
    return [run, `Had the fault still been there, a run this long would have shown it with a chance of ${perCent(Math.min(surest, 1 - (proof.doubt ?? 1)))}.`, 'No codes came back.', ...good];
  }
  const back = proof.otherMisfire ? ['Another misfire showed itself after the last repair.'] : proof.failed ? ['The misfire came back after the last repair.'] : [];
  return ['The repair is not proven.', ...back, ...(proof.revolutionsRun > 0 ? [run] : []), ...good, ...reason];
}

function checksIn({ proofChecks }: DerivedJob, states: readonly ProofChecked['state'][]): readonly ProofChecked[] {
  return [...proofChecks.values()].filter(({ state }) => states.includes(state));
}

function sentenceWithNote(check: ProofChecked): string {
  return `${checkSentence(check)}.${check.note === '' ? '' : ` ${check.note}`}`;
}

function notChecked(derived: DerivedJob, book: JobBook): readonly string[] {
  const { proof, repairs, beliefs, finding, live, engine } = derived;
  const answered = finding && engine ? repairGroup(book.diagnosis, engine.layout, finding.hypothesis) : [];
  const open = beliefs.filter(({ hypothesis: { fault, place }, probability }) => {
    const isAnswered = answered.some((one) => one.fault === fault?.id && one.place === place?.id);
    return fault !== undefined && !isAnswered && probability >= worthNaming;
  });
  return [
    ...(repairs.length > 0 ? proof.missing : []),
    ...checksIn(derived, ['bad', 'not-yet']).map(sentenceWithNote),
    ...open.slice(0, 5).map(({ hypothesis, probability }) => `Not ruled out: ${hypothesisLabel(hypothesis)} (${perCent(probability)})`),
    ...live.flatMap((event) => (event.kind === 'test-not-possible' ? [`Not possible: ${event.title}. ${event.reason}`.trim()] : [])),
  ];
}

function watchLines(derived: DerivedJob, proven: boolean): readonly string[] {
  const repaired = derived.repairs.length > 0;
  const notYet = checksIn(derived, ['not-yet']).some(({ check }) => check === 'monitors');
  return [
    'If the engine lamp flashes, ease off at once and have the car looked at: unburnt fuel overheats the catalyst, which can set light to dry grass.',
    ...(notYet ? ['The car has not finished checking itself, which takes some days of ordinary driving. If the engine lamp comes on in that time, bring the car back.'] : []),
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
