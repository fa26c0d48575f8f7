import type { EngineChoice, JobBook, JobPart, JobRange } from '../domain/jobs/book.ts';
import type { ComplaintSign } from '../domain/diagnosis/types.ts';
import type { Book, Entry } from '../schemas/index.ts';
import { codePages } from './codePages.ts';
import { diagnosisBook } from '../schemas/diagnosisBook.ts';
import { required } from './queries.ts';
import { complaintLabel, sourceStatus } from './words.ts';

const estimatesNote =
  'How common a fault is, what each code and outcome says of it, and the minutes are estimates: common practice, no source.';

/** A source as a sheet prints it: its name and clause with its status, or plainly that there is none. */
function sourceLabel(source: Entry<'sources'>, place: string | undefined): string {
  const status = sourceStatus(source);
  if (source.kind === 'common-practice' || source.kind === 'memory') return status;
  return `${[source.title, place].filter(Boolean).join(', ')} (${status})`;
}

function jobRange(book: Book, id: string, range: Entry<'ranges'>): JobRange {
  const quantity = required(book.quantities, range.quantity, 'quantities');
  const source = required(book.sources, range.source.id, 'sources');
  return {
    id,
    title: range.title,
    quantity: quantity.title,
    ...(range.low === undefined ? {} : { low: range.low }),
    ...(range.high === undefined ? {} : { high: range.high }),
    unit: range.unit,
    ...(range.referenceTemperature === undefined ? {} : { referenceTemperature: range.referenceTemperature }),
    variation: quantity.variesWithTemperature,
    ...(quantity.pressure === undefined ? {} : { pressure: quantity.pressure }),
    usualMeter: quantity.usualMeter,
    leadsMatter: quantity.leadsMatter,
    sourceId: range.source.id,
    sourceLabel: sourceLabel(source, range.source.place),
    makerFirst: range.makerFirst,
    ...(range.ignition ? { ignition: range.ignition } : {}),
    ...(range.injection ? { injection: range.injection } : {}),
    inside: range.inside,
    ...(range.below ? { below: range.below.text } : {}),
    ...(range.above ? { above: range.above.text } : {}),
    ...(range.open ? { open: range.open.text } : {}),
    address: `ranges/${id}/`,
  };
}

function jobPart(id: string, part: Entry<'parts'>): JobPart {
  return {
    id,
    title: part.title,
    match: part.match,
    renewWith: part.renewWith,
    fit: part.fit.map(({ text, caution }) => (caution ? { text, caution } : { text })),
    askMaker: part.askMaker.map(({ question, fallback }) => (fallback ? { question, fallback } : { question })),
    beforeStart: part.beforeStart,
    cautions: part.cautions,
    address: `parts/${id}/`,
  };
}

function engineChoice(id: string, engine: Entry<'engines'>): EngineChoice {
  const { title, cylinders, form, banks, firingOrder, evenFire, ignition, injection, numbering } = engine;
  return { id, title, cylinders, form, banks, firingOrder, evenFire, ignition, injection, numbering };
}

/** All that the job pages need of the book, as plain JSON. */
export function jobBook(book: Book, edition: string): JobBook {
  const usedRanges = new Set(diagnosisBook(book).tests.flatMap((test) => test.ranges));
  return {
    edition,
    diagnosis: diagnosisBook(book),
    engines: [...book.engines].map(([id, engine]) => engineChoice(id, engine)).sort((a, b) => a.cylinders - b.cylinders || a.title.localeCompare(b.title)),
    ranges: [...book.ranges].filter(([id]) => usedRanges.has(id)).map(([id, range]) => jobRange(book, id, range)),
    parts: [...book.parts].map(([id, part]) => jobPart(id, part)),
    signs: Object.entries(complaintLabel).map(([id, label]) => ({ id: id as ComplaintSign, label })),
    cautions: [...book.cautions].map(([id, { title, short, severity }]) => ({ id, title, short, severity, address: `cautions/${id}/` })),
    codes: Object.fromEntries(
      codePages(book).map(({ code, number, title, familyId }) => [code, { family: familyId, ...(number === undefined ? {} : { number }), title }]),
    ),
    procedures: Object.fromEntries([...book.procedures].map(([id, { title }]) => [id, { title, address: `procedures/${id}/` }])),
    estimatesNote,
  };
}
