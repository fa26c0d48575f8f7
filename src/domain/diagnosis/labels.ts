import { placeById } from './places.ts';
import type {
  ComplaintSign,
  DiagnosisBook,
  EngineLayout,
  Evidence,
  FailedRepairEvidence,
  Hypothesis,
  OpinionEvidence,
  OpinionWeight,
  Place,
  TestEvidence,
} from './types.ts';

/** The signs of a complaint as a customer would say them. */
export const complaintWords: Readonly<Record<ComplaintSign, string>> = {
  'when-cold': 'when cold',
  'when-hot': 'when hot',
  'in-wet': 'in the wet',
  'under-load': 'under load',
  'at-idle': 'at idle',
  'after-plug-work': 'after work on the plugs',
  'after-engine-wash': 'after an engine wash',
  'oil-in-plug-wells': 'oil in the plug wells',
  'plugs-old': 'plugs are old',
  'after-refuelling': 'after refuelling',
  'coolant-loss': 'loses coolant',
  'oil-use': 'uses oil',
};

/** Such as `Spark plug gap worn wide at cylinder 3` or `Coil winding open or shorted, coil for 1 and 4`. */
export function hypothesisLabel(hypothesis: Hypothesis): string {
  const { fault, place } = hypothesis;
  if (!fault || !place) return 'None of these';
  if (place.kind === 'engine' || place.id === 'coil') return fault.title;
  const joint = place.kind === 'cylinder' || place.kind === 'bank' ? ' at ' : ', ';
  return `${fault.title}${joint}${place.label}`;
}

/** The same inside a sentence. */
export function hypothesisPhrase(hypothesis: Hypothesis): string {
  return hypothesis.fault ? lowerFirst(hypothesisLabel(hypothesis)) : 'a fault not in this book';
}

/** The place inside a sentence: `at cylinder 3`, `at the coil for 1 and 4`, `on the whole engine`. */
export function atPlace(place: Place): string {
  if (place.kind === 'engine') return `on ${place.label}`;
  return place.kind === 'coil' && place.id !== 'coil' ? `at the ${place.label}` : `at ${place.label}`;
}

/** Lower-cases the first letter unless the word is an abbreviation. */
export function lowerFirst(text: string): string {
  return /^[A-Z][A-Z0-9]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);
}

/** Whole per cent, as far as that is honest. */
export function perCent(probability: number): string {
  if (probability > 0 && probability < 0.005) return 'under 1 %';
  if (probability < 1 && probability >= 0.995) return 'over 99 %';
  return `${Math.round(probability * 100)} %`;
}

/** What was done, where and what came out: `Swap the coils, coil of cylinder 3 with coil of cylinder 1: The misfire moved`. */
export function evidenceLabel(book: DiagnosisBook, engine: EngineLayout, evidence: Evidence): string {
  switch (evidence.kind) {
    case 'test':
      return testLabel(book, engine, evidence);
    case 'failed-repair':
      return repairLabel(book, engine, evidence);
    case 'opinion':
      return opinionLabel(book, engine, evidence);
  }
}

/** How strong an opinion is, in words. */
export const opinionWords: Readonly<Record<OpinionWeight, string>> = {
  'much-likelier': 'much likelier than the book holds',
  likelier: 'likelier than the book holds',
  'less-likely': 'less likely than the book holds',
  'much-less-likely': 'much less likely than the book holds',
};

function opinionLabel(book: DiagnosisBook, engine: EngineLayout, { fault: id, place, weight }: OpinionEvidence): string {
  const fault = book.faults.find((candidate) => candidate.id === id)?.title ?? id;
  const where = place === undefined ? '' : `, ${placeLabel(engine, place)}`;
  return `The mechanic's opinion: ${fault}${where} is ${opinionWords[weight]}`;
}

function testLabel(book: DiagnosisBook, engine: EngineLayout, evidence: TestEvidence): string {
  const test = book.tests.find((candidate) => candidate.id === evidence.test);
  const partner = evidence.partner === undefined ? '' : ` with ${placeLabel(engine, evidence.partner)}`;
  const found = (test?.outcomes ?? []).filter((outcome) => (evidence.outcomes[outcome.id] ?? 0) > 0);
  const words = found.map((outcome) => {
    const weight = evidence.outcomes[outcome.id] ?? 0;
    return found.length === 1 ? outcome.label : `${outcome.label} (${perCent(weight)})`;
  });
  return `${test?.title ?? evidence.test}, ${placeLabel(engine, evidence.place)}${partner}: ${words.join(' or ')}`;
}

function repairLabel(book: DiagnosisBook, engine: EngineLayout, evidence: FailedRepairEvidence): string {
  const fault = book.faults.find((candidate) => candidate.id === evidence.fault);
  const place = placeById(engine, evidence.place);
  const what = place && fault ? hypothesisLabel({ id: '', fault, place }) : evidence.fault;
  return `Repaired, and the misfire came back: ${what}`;
}

function placeLabel(engine: EngineLayout, id: string): string {
  return placeById(engine, id)?.label ?? id;
}
