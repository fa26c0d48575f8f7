import { readFigureTexts } from '../../domain/figures/figureTexts.ts';
import { longest } from '../../domain/figures/types.ts';
import type { FigureBook, FigureRange, ShopFigure } from '../../domain/figures/types.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';
import { unitsOf } from '../../domain/units/table.ts';
import { element } from '../dom.ts';
import { makeChoice, makeField, setNote } from '../reading/fields.ts';
import { draftFields } from './figureDraft.ts';
import type { DraftField, FigureDraft } from './figureDraft.ts';

/** An engine that may be chosen, of whatever place. */
export interface KnownEngine {
  readonly id: string;
  readonly title: string;
  readonly layout?: string;
}

/** What was typed: a figure for an engine; the engine has no id yet where it is new. */
export interface TypedFigure {
  readonly engine: { readonly id?: string; readonly title: string; readonly layout?: string };
  readonly figure: ShopFigure;
}

export interface FigureEditorOptions {
  readonly book: FigureBook;
  readonly engines: readonly KnownEngine[];
  readonly draft: FigureDraft;
  readonly today: () => string;
  /** Keeps the figure; gives back why it could not be kept, and then everything typed stays. */
  readonly take: (typed: TypedFigure) => string | undefined;
  readonly typed: (draft: FigureDraft) => void;
}

/** The form of one figure: for which engine, for which range, the limits, and where they are from. */
export function figureEditor(options: FigureEditorOptions): HTMLFormElement {
  const outcome = element('p', { class: 'field-note', role: 'status' });
  const form = element('form', { class: 'meter-editor', novalidate: true, autocomplete: 'off', 'aria-label': 'Enter a figure' });
  form.append(element('h2', {}, 'Enter a figure'), ...fieldsOf(options), element('p', { class: 'actions' }, element('button', { type: 'submit', class: 'main-action', id: 'figure-keep' }, 'Keep the figure')), outcome);
  followEngine(form, options);
  followRange(form, options);
  form.addEventListener('input', (event) => {
    if (event.target instanceof HTMLElement) setNote(form, event.target.dataset['field'] ?? '', undefined);
    options.typed(draftOf(form));
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    outcome.textContent = submit(form, options) ?? '';
  });
  return form;
}

function fieldsOf({ engines, draft, book }: FigureEditorOptions): HTMLElement[] {
  const line = (name: DraftField, label: string): HTMLElement => makeField('figure', { name, label, value: draft[name], unit: '' });
  const layouts = [{ value: '', label: 'Not said' }, ...book.layouts.map(({ id, title }) => ({ value: id, label: title }))];
  return [
    element(
      'div',
      { class: 'fields' },
      makeChoice('figure', { name: 'engine', label: 'Engine', value: draft.engine, options: [{ value: '', label: 'A new one' }, ...engines.map(({ id, title }) => ({ value: id, label: title }))] }),
      line('title', 'What the engine is called'),
      makeChoice('figure', { name: 'layout', label: 'Layout', value: draft.layout, options: layouts }),
    ),
    element(
      'div',
      { class: 'fields' },
      line('search', 'Find the range: words of its title'),
      makeChoice('figure', { name: 'range', label: 'Range of the book', value: draft.range, options: [] }),
      makeChoice('figure', { name: 'unit', label: 'Unit', value: draft.unit, options: [] }),
      line('low', "Maker's lowest"),
      line('high', "Maker's highest"),
      line('referenceTemperature', 'Holds at, °C (empty: as the range of the book)'),
      line('from', 'Read in: document, edition, page'),
      line('enteredBy', 'Entered by'),
    ),
  ];
}

function fieldOf(form: HTMLFormElement, name: string): HTMLInputElement | HTMLSelectElement | null {
  return form.querySelector(`[data-field="${name}"]`);
}

function draftOf(form: HTMLFormElement): FigureDraft {
  return Object.fromEntries(draftFields.map((name) => [name, fieldOf(form, name)?.value ?? ''])) as FigureDraft;
}

/** A known engine brings its name and layout; both may be changed. */
function followEngine(form: HTMLFormElement, { engines }: FigureEditorOptions): void {
  const select = fieldOf(form, 'engine');
  select?.addEventListener('input', () => {
    const engine = engines.find(({ id }) => id === select.value);
    for (const [name, value] of [['title', engine?.title], ['layout', engine?.layout]] as const) {
      const field = fieldOf(form, name);
      if (field) field.value = value ?? '';
      setNote(form, name, undefined);
    }
  });
}

/** The list of ranges holds those with every word of the search in their title; the units are those of the range. */
function followRange(form: HTMLFormElement, { book, draft }: FigureEditorOptions): void {
  const [search, range, unit] = [fieldOf(form, 'search'), fieldOf(form, 'range'), fieldOf(form, 'unit')];
  const offerUnits = (wanted: string): void => {
    const chosen = book.ranges.find(({ id }) => id === range?.value);
    const units = chosen ? unitsOf(chosen.dimension) : [];
    unit?.replaceChildren(...(chosen ? units.map(({ id, symbol }) => new Option(symbol, id)) : [new Option('Choose the range first', '')]));
    if (unit && chosen) unit.value = units.some(({ id }) => id === wanted) ? wanted : chosen.unit;
    const temperature = fieldOf(form, 'referenceTemperature')?.closest<HTMLElement>('.field');
    if (temperature) temperature.hidden = chosen?.referenceTemperature === undefined;
  };
  const offerRanges = (wanted: string): void => {
    const fitting = rangesWith(book.ranges, search?.value ?? '');
    const first = fitting.length === 1 ? [] : [new Option(fitting.length === 0 ? 'No title has all these words' : `Choose one of ${fitting.length}`, '')];
    range?.replaceChildren(...first, ...fitting.map(({ id, title }) => new Option(title, id)));
    if (range) range.value = fitting.some(({ id }) => id === wanted) ? wanted : (fitting.length === 1 ? (fitting[0]?.id ?? '') : '');
    offerUnits(unit?.value ?? '');
  };
  search?.addEventListener('input', () => offerRanges(range?.value ?? ''));
  range?.addEventListener('input', () => offerUnits(''));
  offerRanges(draft.range);
  offerUnits(draft.unit);
}

export function rangesWith(ranges: readonly FigureRange[], search: string): readonly FigureRange[] {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  return ranges.filter(({ title }) => words.every((word) => title.toLowerCase().includes(word)));
}

/** Gives back why the figure could not be kept; what is wrong with a field is said at the field. */
function submit(form: HTMLFormElement, options: FigureEditorOptions): string | undefined {
  for (const name of draftFields) setNote(form, name, undefined);
  const read = readForm(draftOf(form), options);
  if (read.ok) return options.take(read.value);
  setNote(form, read.error.input, read.error.message);
  fieldOf(form, read.error.input)?.focus();
  return undefined;
}

function readForm(draft: FigureDraft, { book, today }: FigureEditorOptions): Result<TypedFigure, Refusal> {
  const title = draft.title.trim();
  if (title === '') return failure({ input: 'title', code: 'missing', message: 'Say what the engine is called, such as: small van, three cylinders.' });
  if (title.length > longest.title) return failure({ input: 'title', code: 'too-long', message: `At most ${longest.title} characters; ${title.length} were typed.` });
  const range = book.ranges.find(({ id }) => id === draft.range);
  const texts = { ...draft, referenceTemperature: range?.referenceTemperature === undefined ? '' : draft.referenceTemperature };
  const figure = readFigureTexts(texts, range, today());
  if (!figure.ok) return figure;
  const engine = { title, ...(draft.engine === '' ? {} : { id: draft.engine }), ...(draft.layout === '' ? {} : { layout: draft.layout }) };
  return success({ engine, figure: figure.value });
}

