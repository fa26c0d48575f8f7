import { noteCodes } from '../../domain/jobs/codes.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { describeEvent } from '../../domain/jobs/describe.ts';
import { lampStates } from '../../domain/jobs/types.ts';
import type { JobEventBody, LampNoted } from '../../domain/jobs/types.ts';
import { element } from '../dom.ts';
import type { Bench } from './bench.ts';
import { makeForm, missing } from './form.ts';
import { laterPart } from './laterOnDemand.ts';
import { button, fold, list, paragraph } from './parts.ts';

const lampWords: Readonly<Record<LampNoted, string>> = {
  off: 'It stayed off',
  on: 'It was lit',
  flashed: 'It flashed now and then',
  'flashed-long': 'It flashed for minutes on end',
};

/** The complaint as the customer told it, and the questions that matter. */
export function complaintForm(bench: Bench): Node[] {
  const { signs } = bench.session.book;
  const before = bench.session.derived.complaint;
  const form = makeForm(bench.memory, {
    name: 'complaint',
    submit: 'Keep the complaint',
    fields: [
      { name: 'text', label: 'What the customer says', kind: 'text', start: before?.text ?? '' },
      ...signs.map(({ id, label }) => ({
        name: `sign-${id}`,
        label,
        kind: 'tick' as const,
        start: before?.signs.includes(id) ? 'yes' : '',
      })),
      {
        name: 'lamp',
        label: 'What the engine lamp did',
        kind: 'choice',
        start: before?.lamp ?? '',
        choices: [{ value: '', label: 'Not asked' }, ...lampStates.map((state) => ({ value: state, label: lampWords[state] }))],
        hint: 'A lamp that flashes for minutes warns of a catalyst being overheated.',
      },
    ],
    take: (values) => {
      const text = values('text').trim();
      const ticked = signs.filter(({ id }) => values(`sign-${id}`) === 'yes').map(({ id }) => id);
      if (text === '' && ticked.length === 0) return missing('text', 'Write what the customer says, or tick what is known, such as “only when hot”.');
      const lamp = lampStates.find((state) => state === values('lamp'));
      return () => bench.session.add({ body: { kind: 'complaint', text, signs: ticked, ...(lamp ? { lamp } : {}) } });
    },
  });
  return [paragraph('lead', 'Ask when it started, what was done just before, and when it happens. Tick all that is true.'), form];
}

/** Codes typed or pasted in any form; what was understood is shown while typing. */
export function codesForm(bench: Bench, kind: 'codes-read' | 'codes-reread'): Node[] {
  const { book } = bench.session;
  const understood = element('div', { class: 'understood', role: 'status' });
  const first = kind === 'codes-read';
  const form = makeForm(bench.memory, {
    name: kind,
    submit: first ? 'Keep these codes' : 'Keep the codes that came back',
    fields: [{ name: 'text', label: first ? 'Codes, typed or pasted' : 'Codes that came back', kind: 'text', hint: 'Such as P0303 P0171. Any form will do.' }],
    live: (values) => understood.replaceChildren(...understoodNodes(values('text'), book)),
    extra: [understood],
    take: (values) => {
      const noted = noteCodes(values('text'), book);
      if (noted.codes.length === 0) return missing('text', 'No trouble code was found in this text. A code is a letter and four digits, such as P0303. If none is stored, use the button below.');
      return () => bench.session.add({ body: { kind, text: values('text'), ...noted } });
    },
  });
  const none: JobEventBody = { kind, text: '', codes: [], refused: [] };
  const noneButton = button(`${kind}-none`, 'second-action', first ? 'None stored' : 'None came back', () => bench.session.add({ body: none }));
  const cannot = button('codes-not-read', 'second-action', 'Cannot read codes here', () =>
    bench.session.add({ body: { kind: 'codes-read', text: '', codes: [], refused: [], notRead: 'No code reader at hand.' } }),
  );
  return [form, element('p', { class: 'actions' }, noneButton, first ? cannot : undefined)];
}

/** The conditions stored with a code, where a freeze frame is at hand. */
export function frameFold(bench: Bench): HTMLElement {
  const { frame } = bench.session.derived;
  const words = `Conditions stored with the code${frame ? `: ${describeEvent(frame).lines.join(', ')}` : ''}`;
  return fold(bench.memory, 'frame', 'frame', [words], () => laterPart(bench, 'frame'));
}

function understoodNodes(text: string, book: JobBook): Node[] {
  if (text.trim() === '') return [];
  const { codes, refused } = noteCodes(text, book);
  const refusedNode = refused.length > 0 ? [paragraph('refused', `Not a trouble code: ${refused.join(', ')}`)] : [];
  if (codes.length === 0) return [paragraph('understood-none', 'No trouble code found so far.'), ...refusedNode];
  const codeList = list('understood-codes', codes.map(({ code, title }) => `${code}: ${title}`));
  return [paragraph('understood-head', 'Understood as'), ...(codeList ? [codeList] : []), ...refusedNode];
}
