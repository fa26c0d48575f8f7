import { chartsOf, type Calculation, type CalculatorDefinition, type ParsedInputs } from '../../domain/calculators/definition.ts';
import { presentCalculation } from '../../domain/calculators/present.ts';
import { parseInputs, runParsed } from '../../domain/calculators/run.ts';
import { chartShape } from '../../domain/drawing/chart.ts';
import type { Refusal } from '../../domain/result.ts';
import { bookAddress, element } from '../dom.ts';
import { setNote } from '../reading/fields.ts';
import { readSettings } from '../storage/settings.ts';
import { drawShape } from '../svg.ts';
import { calculatedEvent, offerKeeping, offerMeters, offerWallChart } from './onDemand.ts';

/**
 * `<calculator-form>`: the result follows the typing. Inputs live in the address, so a filled form can be kept and sent.
 * A refused input keeps what was typed, says why at its field, and the result steps back.
 */
export class CalculatorForm extends HTMLElement {
  static definitionOf: (id: string) => Promise<CalculatorDefinition | undefined> = () => Promise.resolve(undefined);
  private definition: CalculatorDefinition | undefined;

  connectedCallback(): void {
    void this.start();
  }

  private async start(): Promise<void> {
    this.definition = await CalculatorForm.definitionOf(this.dataset['calculator'] ?? '');
    if (!this.definition) return;
    this.fillFromAddress();
    this.addEventListener('input', () => this.update(true));
    this.addEventListener('submit', (event) => {
      event.preventDefault();
      this.update(true);
      this.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
    });
    for (const button of this.querySelectorAll<HTMLButtonElement>('[data-example]')) {
      button.addEventListener('click', () => this.loadExample(JSON.parse(button.dataset['example'] ?? '{}') as Record<string, string>));
    }
    document.querySelector('[data-print]')?.addEventListener('click', () => print());
    const { definition } = this;
    const calculator = { definition, texts: () => this.texts() };
    offerKeeping(calculator);
    offerWallChart(calculator);
    offerMeters(calculator);
    this.update(false);
  }

  private fields(): (HTMLInputElement | HTMLSelectElement)[] {
    return [...this.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[data-field]')];
  }

  /** Inputs from the address. A name that the calculator does not have is told and left alone. */
  private fillFromAddress(): void {
    const asked = new URLSearchParams(location.search);
    const names = new Set(this.fields().map((field) => field.dataset['field']));
    for (const field of this.fields()) {
      const text = asked.get(field.dataset['field'] ?? '');
      if (text !== null) field.value = text.slice(0, 500);
    }
    const unknown = [...asked.keys()].filter((name) => !names.has(name));
    const note = this.querySelector('[data-address-note]');
    if (note && unknown.length > 0) note.textContent = `The address names ${unknown.join(', ')}, which this calculator does not have; the rest was taken.`;
  }

  private texts(): Record<string, string> {
    const typed = this.fields().map((field) => [field.dataset['field'] ?? '', field.value.trim()] as const);
    return Object.fromEntries(typed.filter(([, text]) => text !== ''));
  }

  private loadExample(inputs: Readonly<Record<string, string>>): void {
    for (const field of this.fields()) field.value = inputs[field.dataset['field'] ?? ''] ?? '';
    this.update(true);
    this.querySelector<HTMLElement>('[data-result]')?.scrollIntoView({ block: 'nearest' });
  }

  private update(keepAddress: boolean): void {
    const { definition } = this;
    if (!definition) return;
    const texts = this.texts();
    for (const field of this.fields()) setNote(this, field.dataset['field'] ?? '', undefined);
    if (keepAddress) this.writeAddress(texts);
    const started = performance.now();
    const inputs = parseInputs(definition, texts);
    const result = inputs.ok ? runParsed(definition, inputs.value) : inputs;
    if (inputs.ok && result.ok) this.showResult(definition, result.value, inputs.value);
    else if (!result.ok) this.showRefusal(definition, result.error, texts);
    this.dataset['milliseconds'] = (performance.now() - started).toFixed(3);
    document.dispatchEvent(new CustomEvent(calculatedEvent));
  }

  private writeAddress(texts: Readonly<Record<string, string>>): void {
    if (location.protocol === 'file:') return;
    const asked = new URLSearchParams(texts).toString();
    history.replaceState(null, '', asked === '' ? location.pathname : `?${asked}`);
  }

  private showResult(definition: CalculatorDefinition, calculation: Calculation, inputs: ParsedInputs): void {
    const options = { decimalMark: readSettings().decimalMark };
    const rows = presentCalculation(definition, calculation, options).map(({ name, label, text, main }) =>
      element('div', { class: main ? 'result-row main-result' : 'result-row', 'data-output': name }, element('dt', {}, label), element('dd', {}, text)),
    );
    this.querySelector('[data-result]')?.replaceChildren(
      element('dl', {}, ...rows),
      ...(calculation.notes.length > 0 ? [element('ul', { class: 'result-notes' }, ...calculation.notes.map((note) => element('li', {}, note)))] : []),
      ...(calculation.next ? [element('ul', { class: 'links result-next' }, ...calculation.next.map(({ page, label }) => element('li', {}, element('a', { href: bookAddress(`${page}/`) }, label))))] : []),
    );
    this.querySelector('[data-chart]')?.replaceChildren(...chartsOf(definition, inputs).map((chart) => drawShape(chartShape(chart))));
  }

  /** An empty required field is not an error while nothing was typed: the result only says what it waits for. */
  private showRefusal(definition: CalculatorDefinition, refusal: Refusal, texts: Readonly<Record<string, string>>): void {
    const label = definition.inputs.find((input) => input.name === refusal.input)?.label ?? refusal.input;
    const waiting = refusal.code === 'missing' && texts[refusal.input] === undefined;
    if (!waiting) setNote(this, refusal.input, refusal.message);
    this.querySelector('[data-result]')?.replaceChildren(element('p', { class: 'result-waits' }, waiting ? `Waiting for: ${label}.` : `No result: see ${label}.`));
    // The page comes with the chart of an example; it stays until something is typed.
    if (Object.keys(texts).length > 0) this.querySelector('[data-chart]')?.replaceChildren();
  }
}
