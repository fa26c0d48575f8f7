import { element } from '../dom.ts';

/** A labelled field as it stands in the fine adjustments of a reading. */
export interface FieldSpec {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly unit: string;
}

/** Builds the field with its label, its unit and a place for a message. */
export function makeField(idBase: string, spec: FieldSpec): HTMLElement {
  const id = `${idBase}-${spec.name}`;
  return element(
    'p',
    { class: 'field' },
    element('label', { for: id }, spec.label),
    element(
      'span',
      { class: 'with-unit' },
      element('input', { id, type: 'text', value: spec.value, autocomplete: 'off', 'data-field': spec.name, 'aria-describedby': `${id}-unit ${id}-note` }),
      element('span', { class: 'unit', id: `${id}-unit` }, spec.unit),
    ),
    element('span', { class: 'field-note', id: `${id}-note`, 'data-note': spec.name }),
  );
}

/** A labelled choice in the same form, with what is said below it. */
export function makeChoice(
  idBase: string,
  spec: { readonly name: string; readonly label: string; readonly value: string; readonly options: readonly { readonly value: string; readonly label: string }[] },
  ...below: readonly Node[]
): HTMLElement {
  const id = `${idBase}-${spec.name}`;
  const options = spec.options.map(({ value, label }) => element('option', { value, selected: value === spec.value }, label));
  return element(
    'p',
    { class: 'field' },
    element('label', { for: id }, spec.label),
    element('select', { id, 'data-field': spec.name, 'aria-describedby': `${id}-note` }, ...options),
    ...below,
    element('span', { class: 'field-note', id: `${id}-note`, 'data-note': spec.name }),
  );
}

/** Shows or clears a message at a field and marks the field for assistive technology. The typed text stays. */
export function setNote(scope: ParentNode, name: string, message: string | undefined): void {
  const field = scope.querySelector<HTMLInputElement>(`[data-field="${name}"]`);
  const note = scope.querySelector<HTMLElement>(`[data-note="${name}"]`);
  if (note && note.textContent !== (message ?? '')) note.textContent = message ?? '';
  if (message === undefined) field?.removeAttribute('aria-invalid');
  else field?.setAttribute('aria-invalid', 'true');
}
