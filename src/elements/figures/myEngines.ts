import { figuresFileName } from '../../domain/figures/figuresFile.ts';
import { idOfTitle, withFigure } from '../../domain/figures/incoming.ts';
import type { FigureBook, ShopEngine } from '../../domain/figures/types.ts';
import { element } from '../dom.ts';
import { downloadText } from '../downloadText.ts';
import { keptEngines } from '../storage/shopEngines.ts';
import { readSettings } from '../storage/settings.ts';
import { engineList } from './engineList.ts';
import { readFigureDraft, writeFigureDraft } from './figureDraft.ts';
import { figureEditor } from './figureEditor.ts';
import type { TypedFigure } from './figureEditor.ts';
import { figureFiles } from './figureFiles.ts';
import { shopFigures } from './shopFigures.ts';
import type { ShopFigures } from './shopFigures.ts';

/** `<my-engines>`: the engines the shop meets with their makers' figures; kept on this device, taken out and in as a file. */
export class MyEngines extends HTMLElement {
  private readonly list = element('section', { 'aria-label': 'Engines and their figures' });
  private readonly editor = element('div', { class: 'meter-editor-place' });
  private readonly note = element('p', { class: 'meter-note', role: 'status' });
  private stopWatching: (() => void) | undefined;

  connectedCallback(): void {
    void this.start();
  }

  disconnectedCallback(): void {
    this.stopWatching?.();
  }

  private async start(): Promise<void> {
    const figures = await shopFigures().catch(() => undefined);
    if (!figures) {
      const message = 'The list of ranges could not be loaded. Check that the whole book is on this device or the shop server is on, then load the page again.';
      return this.replaceChildren(element('p', { class: 'job-problem', role: 'alert' }, message));
    }
    this.replaceChildren(this.list, this.note, this.editor, figureFiles(figures.book.ranges, () => void this.draw()));
    this.drawList(figures);
    this.drawEditor(figures);
    this.stopWatching = keptEngines.watch(() => void this.draw());
  }

  /** Shows the figures as they are now; the form keeps what is typed. */
  private async draw(): Promise<void> {
    const figures = await shopFigures();
    this.drawList(figures);
    this.drawEditor(figures);
  }

  private drawList(figures: ShopFigures): void {
    const problems = figures.problems.map((problem) => element('p', { class: 'job-problem', role: 'alert' }, problem));
    const { decimalMark } = readSettings();
    const kept = engineList(figures, { decimalMark }, (engine, words, left) => this.removeFigures(engine, words, left));
    this.list.replaceChildren(...problems, ...this.damagedActions(), kept);
  }

  /** What cannot be read is saved to a file as it is before anything new can be kept. */
  private damagedActions(): HTMLElement[] {
    const here = keptEngines.read();
    if (here.ok || here.error.code !== 'damaged') return [];
    const save = element('button', { type: 'button' }, 'Save it to a file as it is');
    save.addEventListener('click', () => {
      const text = keptEngines.text();
      if (text.ok) downloadText(text.value ?? '', figuresFileName);
    });
    const afresh = element('button', { type: 'button' }, 'Remove it and start afresh');
    afresh.addEventListener('click', () => {
      const gone = keptEngines.forget();
      this.note.textContent = gone.ok ? 'Removed. No figures are kept in this browser now.' : gone.error.message;
      void this.draw();
    });
    return [element('p', { class: 'actions' }, save, afresh)];
  }

  private drawEditor({ book, places, engines }: ShopFigures): void {
    const known = new Map<string, ShopEngine>([...engines.map((engine) => [engine.id, engine] as const), ...(places.device ?? []).map((engine) => [engine.id, engine] as const)]);
    const form = figureEditor({
      book,
      engines: [...known.values()],
      draft: readFigureDraft(),
      today: () => localDay(new Date()),
      take: (typed) => this.keep(typed, book),
      typed: writeFigureDraft,
    });
    this.editor.replaceChildren(form);
  }

  private keep({ engine, figure }: TypedFigure, book: FigureBook): string | undefined {
    const id = engine.id ?? idOfTitle(engine.title);
    const kept = keptEngines.change((engines) => {
      const before = engines.find((one) => one.id === id);
      const after = withFigure({ figures: before?.figures ?? [], ...engine, id }, figure);
      return before ? engines.map((one) => (one === before ? after : one)) : [...engines, after];
    });
    if (!kept.ok) return kept.error.message;
    // The next figure of the same data sheet differs in its range and limits alone.
    const draft = readFigureDraft();
    writeFigureDraft({ ...draft, engine: id, title: engine.title, layout: engine.layout ?? '', from: figure.from, enteredBy: figure.enteredBy, search: '', range: '', unit: '', low: '', high: '', referenceTemperature: '' });
    this.note.textContent = `Kept for “${engine.title}”: ${book.ranges.find((range) => range.id === figure.range)?.title ?? figure.range}.`;
    void this.draw().then(() => this.editor.querySelector<HTMLElement>('[data-field="search"]')?.focus());
    return undefined;
  }

  /** Takes an engine or one of its figures away; `left` is what stays of it. */
  private removeFigures(engine: ShopEngine, words: string, left: ShopEngine | undefined): void {
    const kept = keptEngines.change((engines) => engines.flatMap((one) => (one.id === engine.id ? (left ?? []) : one)));
    if (!kept.ok) {
      this.note.textContent = kept.error.message;
      return;
    }
    const back = element('button', { type: 'button', class: 'plain' }, 'Bring it back');
    back.addEventListener('click', () => this.bringBack(engine, words));
    this.note.replaceChildren(`${words} was removed. `, back);
    void this.draw().then(() => back.focus());
  }

  /** What was entered meanwhile stays; what was removed stands beside it again. */
  private bringBack(engine: ShopEngine, words: string): void {
    const again = keptEngines.change((engines) => {
      const now = engines.find(({ id }) => id === engine.id);
      if (!now) return [...engines, engine];
      const gone = engine.figures.filter(({ range }) => !now.figures.some((figure) => figure.range === range));
      return engines.map((one) => (one === now ? { ...now, figures: [...now.figures, ...gone] } : one));
    });
    this.note.textContent = again.ok ? `${words} is back.` : again.error.message;
    void this.draw();
  }
}

/** The day on the wall of the shop, not that of Greenwich. */
function localDay(now: Date): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
