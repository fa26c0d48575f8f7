import { splitHypothesis } from '../../domain/jobs/repairGroup.ts';
import { renewalTradeOff } from '../../domain/jobs/renewal.ts';
import { placeById } from '../../domain/diagnosis/places.ts';
import type { FaultModel } from '../../domain/diagnosis/types.ts';
import type { JobPart, JobProcedure } from '../../domain/jobs/book.ts';
import type { FindingMade, PartMatched } from '../../domain/jobs/types.ts';
import type { Refusal } from '../../domain/result.ts';
import { bookAddress, element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { isRefusal, makeForm, missing, wholeNumber } from './form.ts';
import type { FieldDefinition, FormValues } from './form.ts';
import type { NewEvent } from './session.ts';
import { list, paragraph } from './parts.ts';
import { cautionNodes } from './shared.ts';

/** The repair of the finding: compare old and new part, then say what was done. */
export function repairSection(bench: Bench): Node[] {
  const { finding } = bench.session.derived;
  if (!finding) return [];
  const { fault, part, procedure } = whatIsNeeded(bench, splitHypothesis(finding.hypothesis).fault);
  return [
    element('p', { class: 'finding-words' }, 'Finding: ', element('strong', {}, finding.label)),
    ...(part ? partNodes(bench, part) : []),
    ...(procedure ? [element('p', { class: 'actions' }, element('a', { class: 'second-action', href: bookAddress(procedure.address) }, procedure.title))] : []),
    repairForm(bench, finding, part, fault?.repairMinutes ?? 30),
  ];
}

interface Needed {
  readonly fault: FaultModel | undefined;
  readonly part: JobPart | undefined;
  readonly procedure: JobProcedure | undefined;
}

/** The part and the procedure of a repair, as far as they fit the ignition of this engine. */
function whatIsNeeded({ session: { derived, book } }: Bench, faultId: string): Needed {
  const fault = book.diagnosis.faults.find((candidate) => candidate.id === faultId);
  const ignition = derived.engine?.layout.ignition;
  const partId = (ignition && fault?.partByIgnition?.[ignition]) ?? fault?.part;
  const repair = book.diagnosis.tests.find(({ id }) => id === fault?.repairProcedure);
  return {
    fault,
    part: book.parts.find((candidate) => candidate.id === partId),
    procedure: repair?.ignition.some((one) => one === ignition) ? book.procedures[repair.id] : undefined,
  };
}

/** Cautions first, then what to compare. */
function partNodes(bench: Bench, part: JobPart): Node[] {
  return [
    ...cautionNodes(bench.session.book, part.cautions),
    element('p', {}, element('a', { href: bookAddress(part.address) }, part.title), ': compare old and new side by side before unpacking fully.'),
  ];
}

function repairForm(bench: Bench, finding: FindingMade, part: JobPart | undefined, usualMinutes: number): HTMLFormElement {
  const engine = bench.session.derived.engine?.layout;
  const place = engine && placeById(engine, splitHypothesis(finding.hypothesis).place);
  const start = part ? `${part.title} renewed${place ? `, ${place.label}` : ''}` : '';
  const before = list('before-start', part?.beforeStart ?? []);
  return makeForm(bench.memory, {
    name: 'repair',
    submit: 'Keep the repair',
    fields: [
      ...(part ? partFields(part) : []),
      { name: 'what', label: 'What was done', kind: 'text', start },
      { name: 'minutes', label: 'Time taken', kind: 'line', unit: 'minutes', start: String(usualMinutes), keyboard: 'numeric' },
    ],
    extra: before ? [paragraph('list-head', 'Before starting the engine'), before] : [],
    take: (values) => {
      const what = values('what').trim();
      if (what === '') return missing('what', 'Say what was done, such as “coil at cylinder 3 renewed”.');
      const minutes = wholeNumber(values('minutes'), 'minutes', 'Time taken', 0);
      if (isRefusal(minutes)) return minutes;
      const matched = part && readMatched(part, values);
      if (isRefusal(matched)) return matched;
      const events: NewEvent[] = [
        ...(matched ? [{ body: matched }] : []),
        { body: { kind: 'repair-done', what, hypothesis: finding.hypothesis, minutes } },
      ];
      return () => bench.session.add(...events);
    },
  });
}

/** What to compare and what else to renew as ticks; the engine maker's figures, the torque among them, as answers. */
function partFields({ match, renewWith, askMaker }: JobPart): readonly FieldDefinition[] {
  const asked = { under: `From the engine maker's data: ${askMaker.length} ${askMaker.length === 1 ? 'figure' : 'figures'}`, folded: true } as const;
  return [
    ...match.map(({ feature, check }, index) => ({ name: `match-${index}`, label: `${feature}: ${check}`, kind: 'tick' as const, under: 'Old and new compared' })),
    ...renewWith.map((renewal, index) => ({
      name: `renew-${index}`,
      label: `${renewal.part}: ${renewal.why}`,
      kind: 'tick' as const,
      hint: renewalTradeOff(renewal).sentence,
      under: 'Renewed with it (estimates)',
    })),
    ...askMaker.map(({ question, fallback }, index) => ({
      name: `answer-${index}`,
      label: question,
      kind: 'line' as const,
      ...asked,
      ...(fallback === undefined ? {} : { hint: fallback }),
    })),
    ...(askMaker.length > 0 ? [{ name: 'from', label: 'Read in', kind: 'line' as const, hint: "Such as: engine maker's repair data, page or edition.", ...asked }] : []),
  ];
}

function readMatched(part: JobPart, values: FormValues): Omit<PartMatched, 'id' | 'sequence' | 'at'> | Refusal {
  const from = values('from').trim();
  const answers = part.askMaker
    .map(({ question }, index) => ({ question, answer: values(`answer-${index}`).trim(), from }))
    .filter(({ answer }) => answer !== '');
  if (answers.length > 0 && from === '') return missing('from', 'Say where the figures were read, so that they can be looked up again.');
  const renewedWith = part.renewWith.filter((_renewal, index) => values(`renew-${index}`) === 'yes').map((renewal) => renewal.part);
  return {
    kind: 'part-matched',
    part: part.id,
    title: part.title,
    ticks: part.match.map(({ feature }, index) => ({ feature, matches: values(`match-${index}`) === 'yes' })),
    ...(answers.length > 0 ? { answers } : {}),
    ...(renewedWith.length > 0 ? { renewedWith } : {}),
  };
}
