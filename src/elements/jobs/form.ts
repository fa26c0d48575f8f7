import type { Refusal } from '../../domain/result.ts';
import { element } from '../dom.ts';
import { setNote } from '../reading/fields.ts';
import { filledFold } from './parts.ts';
import type { ScreenMemory } from './parts.ts';

export interface FieldChoice {
  readonly value: string;
  readonly label: string;
  /** Heading it stands under in a long list. */
  readonly under?: string;
}

export interface FieldDefinition {
  readonly name: string;
  readonly label: string;
  readonly kind: 'line' | 'text' | 'choice' | 'tick';
  /** What stands in it at first. A tick starts set with `yes`. */
  readonly start?: string;
  readonly unit?: string;
  readonly hint?: string;
  readonly choices?: readonly FieldChoice[];
  readonly keyboard?: 'numeric' | 'decimal' | 'text';
  /** Fields one after the other with the same heading stand together under it. */
  readonly under?: string;
  /** The heading is folded until it is opened; for what many leave empty. */
  readonly folded?: boolean;
  /** Asked only while this holds. */
  readonly when?: (values: FormValues) => boolean;
}

export interface FormDefinition {
  /** Unique on the page; the ids of the fields begin with it. */
  readonly name: string;
  readonly fields: readonly FieldDefinition[];
  readonly submit: string;
  /** Checks the values; gives back what is wrong with which field, or what is to be done with them, which may still refuse. */
  readonly take: (values: FormValues) => Refusal | (() => Refusal | undefined);
  /** Called while typing and once at the start, for what is shown live. */
  readonly live?: (values: FormValues) => void;
  /** Put between the fields and the button. */
  readonly extra?: readonly (Node | undefined)[];
}

export type FormValues = (name: string) => string;

/** A form whose fields keep what was typed, on any error and across drawings of the screen. */
export function makeForm(memory: ScreenMemory, definition: FormDefinition): HTMLFormElement {
  const values: FormValues = (name) =>
    memory.text(`${definition.name}.${name}`) ?? definition.fields.find((field) => field.name === name)?.start ?? '';
  const form = element('form', { class: 'job-form', id: definition.name, novalidate: true, autocomplete: 'off' });
  const asked = definition.fields.map((field) => ({ field, node: makeFormField(definition.name, field, values(field.name)) }));
  const answer = (): void => {
    for (const { field, node } of asked) node.hidden = field.when?.(values) === false;
    definition.live?.(values);
  };
  form.append(
    ...gathered(memory, definition.name, asked),
    ...(definition.extra ?? []).filter((node) => node !== undefined),
    element('button', { id: `${definition.name}-submit`, type: 'submit', class: 'main-action' }, definition.submit),
  );
  form.addEventListener('input', (event) => {
    const name = keep(memory, definition.name, event.target);
    if (name !== undefined) setNote(form, name, undefined);
    answer();
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    submit(memory, form, definition, values);
  });
  answer();
  return form;
}

interface AskedField {
  readonly field: FieldDefinition;
  readonly node: HTMLElement;
}

/** The fields in order, those under one heading together. */
function gathered(memory: ScreenMemory, form: string, asked: readonly AskedField[]): Node[] {
  const nodes: Node[] = [];
  asked.forEach(({ field, node }, index) => {
    const { under, folded } = field;
    if (under === undefined) nodes.push(node);
    if (under === undefined || asked[index - 1]?.field.under === under) return;
    const end = asked.findIndex((other, at) => at > index && other.field.under !== under);
    const inside = asked.slice(index, end < 0 ? undefined : end).map((one) => one.node);
    nodes.push(folded === true ? filledFold(memory, `${form}-${field.name}-group`, 'form-group', under, inside) : element('fieldset', {}, element('legend', {}, under), ...inside));
  });
  return nodes;
}

function keep(memory: ScreenMemory, form: string, target: EventTarget | null): string | undefined {
  if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement)) return undefined;
  const name = target.dataset['field'];
  if (name === undefined) return undefined;
  const value = target instanceof HTMLInputElement && target.type === 'checkbox' ? (target.checked ? 'yes' : '') : target.value;
  memory.setText(`${form}.${name}`, value);
  return name;
}

function submit(memory: ScreenMemory, form: HTMLFormElement, definition: FormDefinition, values: FormValues): void {
  for (const field of definition.fields) setNote(form, field.name, undefined);
  const taken = definition.take(values);
  if (typeof taken !== 'function') return showRefusal(form, definition, taken);
  // What is done draws the screen again, so the words must be forgotten before, and remembered if they are refused after all.
  const remember = memory.forget(definition.name);
  const refused = taken();
  if (refused === undefined) return;
  remember();
  showRefusal(form, definition, refused);
}

function showRefusal(form: HTMLFormElement, definition: FormDefinition, refusal: Refusal): void {
  const known = definition.fields.find((candidate) => candidate.name === refusal.input) ?? definition.fields[0];
  const name = known?.name ?? '';
  setNote(form, name, refusal.message);
  const field = form.querySelector<HTMLElement>(`[data-field="${name}"]`);
  // A folded field cannot take the focus.
  field?.closest('details')?.setAttribute('open', '');
  field?.focus();
}

function makeFormField(form: string, field: FieldDefinition, value: string): HTMLElement {
  const id = `${form}-${field.name}`;
  const note = element('span', { class: 'field-note', id: `${id}-note`, 'data-note': field.name, role: 'status' });
  const hint = field.hint === undefined ? undefined : element('span', { class: 'field-hint', id: `${id}-hint` }, field.hint);
  const described = [field.unit === undefined ? '' : `${id}-unit`, hint ? `${id}-hint` : '', `${id}-note`].filter(Boolean).join(' ');
  const control = makeControl({ id, 'data-field': field.name, 'aria-describedby': described }, field, value);
  const label = element('label', { for: id }, field.label);
  if (field.kind === 'tick') return element('p', { class: 'field tick' }, control, label, hint, note);
  const unit = field.unit === undefined ? undefined : element('span', { class: 'unit', id: `${id}-unit` }, field.unit);
  const box = unit ? element('span', { class: 'with-unit' }, control, unit) : control;
  return element('p', { class: 'field' }, label, hint, box, note);
}

function makeControl(attributes: Record<string, string>, field: FieldDefinition, value: string): HTMLElement {
  switch (field.kind) {
    case 'tick':
      return element('input', { ...attributes, type: 'checkbox', checked: value === 'yes' });
    case 'text':
      return element('textarea', { ...attributes, rows: 3 }, value);
    case 'choice':
      return element('select', attributes, ...optionNodes(field.choices ?? [], value));
    case 'line':
      return element('input', { ...attributes, type: 'text', value, inputmode: field.keyboard ?? 'text', autocapitalize: 'none' });
  }
}

/** Choices without a heading first, then those under each heading, in the order the headings are first met. */
function optionNodes(choices: readonly FieldChoice[], chosen: string): Node[] {
  const headings = [...new Set(choices.map(({ under }) => under))].toSorted((one, other) => Number(one !== undefined) - Number(other !== undefined));
  return headings.flatMap((heading) => {
    const options = choices
      .filter(({ under }) => under === heading)
      .map(({ value, label }) => element('option', { value, selected: value === chosen }, label));
    return heading === undefined ? options : [element('optgroup', { label: heading }, ...options)];
  });
}

/** A field that must not be empty. */
export function missing(input: string, message: string): Refusal {
  return { input, code: 'missing', message };
}

/** A whole number from `least`, as people type it; thin and plain spaces between digits do no harm. */
export function wholeNumber(text: string, input: string, label: string, least: number): number | Refusal {
  const digits = text.replace(/[\s\u00A0\u202F]/g, '');
  const value = Number(digits);
  if (/^\d{1,9}$/.test(digits) && value >= least) return value;
  const found = text.trim() === '' ? 'Nothing was typed' : `“${text.trim()}” was typed`;
  return { input, code: 'not-whole', message: `${label} must be a whole number from ${least}, such as ${Math.max(least, 20)}. ${found}.` };
}

/** A number within limits, as people type it, with a point or a comma; undefined where the field was left empty. */
export function numberWithin(text: string, input: string, label: string, least: number, most: number): number | undefined | Refusal {
  const typed = text.trim();
  if (typed === '') return undefined;
  const value = Number(typed.replace(',', '.'));
  if (/^-?\d{1,6}([.,]\d{1,4})?$/.test(typed) && value >= least && value <= most) return value;
  return { input, code: 'out-of-range', message: `${label} must be a number from ${least} to ${most}, or left empty. “${typed}” was typed.` };
}

export function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'message' in value && 'input' in value;
}
