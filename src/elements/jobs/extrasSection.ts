import type { Bench } from './bench.ts';
import { element } from '../dom.ts';
import { makeForm, missing } from './form.ts';
import { fold } from './parts.ts';
import { laterPart } from './laterOnDemand.ts';
import { readingFormOnDemand } from './readingOnDemand.ts';
import { codesForm, complaintForm, frameFold } from './takeInForms.ts';

/** What may be added at any time, whatever the stage. */
export function extrasSection(bench: Bench): Node[] {
  const { stage, proof, engine } = bench.session.derived;
  const extra = (key: string, title: string, content: () => readonly Node[]): Node => fold(bench.memory, `extra-${key}`, 'extra', [title], content);
  return [
    ...(engine ? [extra('reading', 'A reading', () => [anyReading(bench)])] : []),
    ...(stage === 'proof' && proof.rateBefore === undefined ? [] : [extra('count', 'Misfires counted', () => laterPart(bench, 'count'))]),
    extra('note', 'A note', () => [noteForm(bench)]),
    extra('picture', 'A picture', () => laterPart(bench, 'picture')),
    ...(stage === 'complaint' ? [] : [extra('complaint', 'More of the complaint', () => complaintForm(bench))]),
    ...(stage === 'complaint' || stage === 'codes' ? [] : [extra('codes', 'Codes, again', () => codesForm(bench, 'codes-read'))]),
    extra('rename', 'Another title for the job', () => laterPart(bench, 'rename')),
    ...(stage === 'complaint' || stage === 'codes' || stage === 'proof' ? [] : [frameFold(bench)]),
    ...(engine ? [extra('engine', 'Another engine layout', () => laterPart(bench, 'engine'))] : []),
  ];
}

function noteForm(bench: Bench): HTMLFormElement {
  return makeForm(bench.memory, {
    name: 'note',
    submit: 'Keep the note',
    fields: [{ name: 'text', label: 'Note', kind: 'text' }],
    take: (values) => {
      const text = values('text').trim();
      return text === '' ? missing('text', 'Write the note first.') : () => bench.session.add({ body: { kind: 'note', text } });
    },
  });
}

/** Any reading of the book, outside a test; after the repair it stands on the sheet beside the one from before. */
function anyReading(bench: Bench): HTMLElement {
  const ranges = bench.session.book.ranges.map((range) => range.id);
  const form = readingFormOnDemand(bench, 'any-reading', ranges, {}, 'Keep this reading', ({ body }) => bench.session.add({ body }));
  return element('div', { class: 'any-reading' }, form);
}
