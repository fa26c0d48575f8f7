import { figuresFileName, largestFiguresFile, readFigures, writeFigures } from '../../domain/figures/figuresFile.ts';
import { mergeIncoming } from '../../domain/figures/incoming.ts';
import type { FigureRange, ShopEngine } from '../../domain/figures/types.ts';
import { element } from '../dom.ts';
import { downloadText } from '../downloadText.ts';
import { keptEngines } from '../storage/shopEngines.ts';

/** Figures out to a file and in from one: what a file would do is said first, and done only then. */
export function figureFiles(ranges: readonly FigureRange[], changed: () => void): HTMLElement {
  const note = element('p', { class: 'field-note', id: 'figures-file-note', role: 'status' });
  const ask = element('div', { class: 'figures-ask' });
  const save = element('button', { type: 'button', id: 'figures-to-file' }, 'Save the figures to a file');
  save.addEventListener('click', () => {
    const engines = keptEngines.read();
    if (engines.ok) downloadText(writeFigures(engines.value), figuresFileName);
    note.textContent = engines.ok ? `${count(engines.value.length, 'engine')} saved to ${figuresFileName}.` : engines.error.message;
  });
  const input = element('input', { id: 'figures-file', type: 'file', accept: '.json,application/json', 'aria-describedby': note.id });
  const tell = (message: string, ok: boolean): void => {
    note.textContent = message;
    input.setAttribute('aria-invalid', String(!ok));
    ask.replaceChildren();
  };
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (!file) return;
    void readFile(file, ranges).then((read) => {
      if (typeof read === 'string') return tell(read, false);
      tell(`${dryWords(read, ranges)} Nothing is changed yet.`, true);
      ask.replaceChildren(...decisions(read, ranges, tell, changed));
    });
    // The same file can be chosen again once it has been mended.
    input.value = '';
  });
  return element(
    'section',
    { 'aria-labelledby': 'figures-file-heading' },
    element('h2', { id: 'figures-file-heading' }, 'As a file'),
    element('p', {}, 'Whoever clears the browser’s data clears the figures: save them to a file. The same file is taken in on other devices, or put on the shop’s server for all of them.'),
    element('p', { class: 'actions' }, save),
    element('p', { class: 'field' }, element('label', { for: 'figures-file' }, 'Take figures in from a file'), input),
    note,
    ask,
  );
}

type Tell = (message: string, ok: boolean) => void;

function decisions(incoming: readonly ShopEngine[], ranges: readonly FigureRange[], tell: Tell, changed: () => void): HTMLElement[] {
  const take = element('button', { type: 'button', class: 'main-action', id: 'figures-take' }, 'Take them in');
  take.addEventListener('click', () => {
    const before = keptEngines.read();
    const kept = keptEngines.change((here) => mergeIncoming(here, incoming, ranges).engines);
    tell(kept.ok ? `Done: ${before.ok ? count(kept.value.flatMap(({ figures }) => figures).length, 'figure') : ''} kept in this browser now.` : kept.error.message, kept.ok);
    changed();
  });
  const leave = element('button', { type: 'button' }, 'Leave it');
  leave.addEventListener('click', () => tell('Nothing was changed.', true));
  return [element('p', { class: 'actions' }, take, leave)];
}

async function readFile(file: File, ranges: readonly FigureRange[]): Promise<readonly ShopEngine[] | string> {
  if (file.size > largestFiguresFile) return 'This file is larger than 1 MB. A file of figures is far smaller; choose the right file.';
  const text = await file.text().catch(() => undefined);
  if (text === undefined) return 'The file could not be read. Copy it onto this device and choose it again.';
  const engines = readFigures(text, ranges);
  return engines.ok ? engines.value : `Nothing was taken in. ${engines.error.message}`;
}

function dryWords(incoming: readonly ShopEngine[], ranges: readonly FigureRange[]): string {
  const here = keptEngines.read();
  if (!here.ok) return here.error.message;
  const { added, replaced, older } = mergeIncoming(here.value, incoming, ranges);
  const part = (words: string, which: readonly string[]): string[] => (which.length === 0 ? [] : [`${words}: ${which.join('; ')}.`]);
  const parts = [...part('The file would add', added), ...part('It would replace', replaced), ...part('Left out, because a later figure is here', older)];
  return parts.length > 0 ? parts.join(' ') : 'Every figure of the file is here already.';
}

function count(number: number, word: string): string {
  return `${number} ${word}${number === 1 ? '' : 's'}`;
}
