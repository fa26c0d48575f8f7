import { meterQuantities } from '../../domain/measurement/meters.data.ts';
import type { UserMeter } from '../../domain/measurement/meters.ts';
import { readMeterTexts } from '../../domain/measurement/meterTexts.ts';
import type { MeterTexts, RangeTexts } from '../../domain/measurement/meterTexts.ts';
import { element } from '../dom.ts';
import { makeChoice, makeField, setNote } from '../reading/fields.ts';

export interface EditorOptions {
  readonly heading: string;
  readonly texts: MeterTexts;
  /** Keeps the meter; gives back why it could not be kept, and then everything typed stays. */
  readonly take: (meter: Omit<UserMeter, 'id'>) => string | undefined;
  /** Shuts the form without keeping. */
  readonly leave: () => void;
  /** Called whenever something was typed. */
  readonly typed: (texts: MeterTexts) => void;
}

export const emptyRange: RangeTexts = { quantity: 'resistance', upTo: '', percent: '', counts: '', resolution: '' };

/** The form of one meter: its name and a row of fields for each range of its data sheet. */
export function meterEditor(options: EditorOptions): HTMLFormElement {
  const ranges = element('div', { class: 'meter-ranges' });
  const form = element('form', { class: 'meter-editor', novalidate: true, autocomplete: 'off', 'aria-label': options.heading });
  const outcome = element('p', { class: 'field-note', role: 'status' });
  const show = (texts: readonly RangeTexts[]): void => ranges.replaceChildren(...texts.map((range, index) => rangeFields(range, index, remove)));
  const remove = (index: number): void => {
    show(textsOf(form).ranges.filter((_range, place) => place !== index));
    options.typed(textsOf(form));
    add.focus();
  };
  const add = element('button', { type: 'button', id: 'meter-add-range' }, 'Add a range');
  add.addEventListener('click', () => {
    const present = textsOf(form).ranges;
    show([...present, { ...emptyRange, quantity: present.at(-1)?.quantity ?? emptyRange.quantity }]);
    setNote(form, 'ranges', undefined);
    options.typed(textsOf(form));
    fieldOf(form, `ranges.${present.length}.quantity`)?.focus();
  });
  const leave = element('button', { type: 'button' }, 'Leave without keeping');
  leave.addEventListener('click', options.leave);
  form.append(
    element('h2', { tabindex: -1, id: 'meter-editor-heading' }, options.heading),
    makeField('meter', { name: 'name', label: 'What the meter is called', value: options.texts.name, unit: '' }),
    element('p', { class: 'hint' }, 'Copy the accuracy from its data sheet, such as ±(0.8 % + 3 counts). For a gauge stated in per cent of full scale, type 0 %, 1 count, and that share of the full scale as the size of one count.'),
    ranges,
    element('p', { class: 'field-note', 'data-note': 'ranges', role: 'status' }),
    element('p', {}, add),
    element('p', { class: 'actions' }, element('button', { type: 'submit', class: 'main-action', id: 'meter-keep' }, 'Keep the meter'), leave),
    outcome,
  );
  show(options.texts.ranges);
  form.addEventListener('input', (event) => {
    if (event.target instanceof HTMLElement) setNote(form, event.target.dataset['field'] ?? '', undefined);
    options.typed(textsOf(form));
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    outcome.textContent = submit(form, options) ?? '';
  });
  return form;
}

/** Gives back why the meter could not be kept; what is wrong with a field is said at the field. */
function submit(form: HTMLFormElement, options: EditorOptions): string | undefined {
  const texts = textsOf(form);
  for (const note of form.querySelectorAll<HTMLElement>('[data-note]')) setNote(form, note.dataset['note'] ?? '', undefined);
  const meter = readMeterTexts(texts);
  if (meter.ok) return options.take(meter.value);
  setNote(form, meter.error.input, meter.error.message);
  (fieldOf(form, meter.error.input) ?? form.querySelector<HTMLElement>('#meter-add-range'))?.focus();
  return undefined;
}

function fieldOf(form: HTMLFormElement, name: string): HTMLInputElement | HTMLSelectElement | null {
  return form.querySelector(`[data-field="${name}"]`);
}

function textsOf(form: HTMLFormElement): MeterTexts {
  const text = (name: string): string => fieldOf(form, name)?.value ?? '';
  const range = (index: number): RangeTexts => ({
    quantity: text(`ranges.${index}.quantity`),
    upTo: text(`ranges.${index}.upTo`),
    percent: text(`ranges.${index}.percent`),
    counts: text(`ranges.${index}.counts`),
    resolution: text(`ranges.${index}.resolution`),
  });
  const rows = form.querySelectorAll('.meter-range').length;
  return { name: text('name'), ranges: Array.from({ length: rows }, (_, index) => range(index)) };
}

function rangeFields(texts: RangeTexts, index: number, remove: (index: number) => void): HTMLElement {
  const field = (name: keyof RangeTexts, label: string, unit: string): HTMLElement =>
    makeField('meter', { name: `ranges.${index}.${name}`, label, value: texts[name], unit });
  const away = element('button', { type: 'button', class: 'plain' }, `Remove range ${index + 1}`);
  away.addEventListener('click', () => remove(index));
  return element(
    'fieldset',
    { class: 'meter-range' },
    element('legend', {}, `Range ${index + 1}`),
    element(
      'div',
      { class: 'fields' },
      quantityField(texts.quantity, index),
      field('upTo', 'Up to, with its unit (empty: any reading)', ''),
      field('percent', 'Per cent of the reading', '%'),
      field('counts', 'Counts of the last digit', 'counts'),
      field('resolution', 'Size of one count (empty: from the digits typed)', ''),
    ),
    element('p', {}, away),
  );
}

function quantityField(chosen: string, index: number): HTMLElement {
  const options = meterQuantities.map(({ dimension, label }) => ({ value: dimension, label }));
  return makeChoice('meter', { name: `ranges.${index}.quantity`, label: 'Measures', value: chosen, options });
}
