import { readChoice, writeChoice } from '../storage/choices.ts';

/** `<arrangement-switch>`: shows only the steps for the engine in the bay, and remembers the choice. */
export class ArrangementSwitch extends HTMLElement {
  connectedCallback(): void {
    for (const select of this.querySelectorAll('select')) {
      const kept = readChoice(select.dataset['kind'] ?? '');
      if ([...select.options].some((option) => option.value === kept)) select.value = kept;
    }
    this.addEventListener('change', (event) => {
      if (event.target instanceof HTMLSelectElement) writeChoice(event.target.dataset['kind'] ?? '', event.target.value);
      this.apply();
    });
    this.apply();
  }

  private apply(): void {
    for (const select of this.querySelectorAll('select')) {
      const kind = select.dataset['kind'] ?? '';
      for (const step of document.querySelectorAll<HTMLElement>(`.step[data-${kind}]`)) {
        const fits = select.value === '' || (step.dataset[kind] ?? '').split(' ').includes(select.value);
        step.hidden = !fits;
      }
    }
  }
}
