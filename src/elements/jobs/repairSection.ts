import { splitHypothesis } from '../../domain/jobs/repairGroup.ts';
import { placeById } from '../../domain/diagnosis/places.ts';
import type { FaultModel } from '../../domain/diagnosis/types.ts';
import type { JobPart, JobProcedure } from '../../domain/jobs/book.ts';
import type { FindingMade } from '../../domain/jobs/types.ts';
import { bookAddress, element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { isRefusal, makeForm, missing, wholeNumber } from './form.ts';
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

/** Cautions first, then what to compare and what else to renew. */
function partNodes(bench: Bench, part: JobPart): Node[] {
  const renew = list('renew-with', part.renewWith.map(({ part: name, why }) => `${name}: ${why}`));
  const ask = list('ask-maker', part.askMaker.map(({ question, fallback }) => (fallback === undefined ? question : `${question} ${fallback}`)));
  return [
    ...cautionNodes(bench.session.book, part.cautions),
    element('p', {}, element('a', { href: bookAddress(part.address) }, part.title), ': compare old and new side by side before unpacking fully.'),
    ...(renew ? [paragraph('list-head', 'Renew with it'), renew] : []),
    ...(ask ? [paragraph('list-head', "From the engine maker's data"), ask] : []),
  ];
}

function repairForm(bench: Bench, finding: FindingMade, part: JobPart | undefined, usualMinutes: number): HTMLFormElement {
  const { derived } = bench.session;
  const engine = derived.engine?.layout;
  const place = engine && placeById(engine, splitHypothesis(finding.hypothesis).place);
  const features = part?.match ?? [];
  const start = part ? `${part.title} renewed${place ? `, ${place.label}` : ''}` : '';
  const before = list('before-start', part?.beforeStart ?? []);
  return makeForm(bench.memory, {
    name: 'repair',
    submit: 'Keep the repair',
    fields: [
      ...features.map(({ feature, check }, index) => ({ name: `match-${index}`, label: `${feature}: ${check}`, kind: 'tick' as const })),
      { name: 'what', label: 'What was done', kind: 'text', start },
      { name: 'minutes', label: 'Time taken', kind: 'line', unit: 'minutes', start: String(usualMinutes), keyboard: 'numeric' },
    ],
    extra: before ? [paragraph('list-head', 'Before starting the engine'), before] : [],
    take: (values) => {
      const what = values('what').trim();
      if (what === '') return missing('what', 'Say what was done, such as “coil at cylinder 3 renewed”.');
      const minutes = wholeNumber(values('minutes'), 'minutes', 'Time taken', 0);
      if (isRefusal(minutes)) return minutes;
      const ticks = features.map(({ feature }, index) => ({ feature, matches: values(`match-${index}`) === 'yes' }));
      const events: NewEvent[] = [
        ...(part ? [{ body: { kind: 'part-matched' as const, part: part.id, title: part.title, ticks } }] : []),
        { body: { kind: 'repair-done', what, hypothesis: finding.hypothesis, minutes } },
      ];
      return () => bench.session.add(...events);
    },
  });
}
