import { figureText } from '../../domain/measurement/meterTexts.ts';
import type { Limits } from '../../domain/measurement/types.ts';
import { bookAddress, element } from '../dom.ts';
import { shopFiguresOnDemand } from '../figures/onDemand.ts';
import type { ShopFigures } from '../figures/shopFigures.ts';
import { readChoice, writeChoice } from '../storage/choices.ts';
import { readSettings } from '../storage/settings.ts';
import { setNote } from './fields.ts';

const kept = 'shop-engine';
/** Says that another engine was chosen at one of the readings of the page. */
const chosenEvent = 'book-shop-engine-chosen';
/** Values of the select: no engine, the figures typed below, an engine of the shop. */
const noEngine = '';
const typed = 'typed';
const own = 'my:';
const makerFields = ['makerLow', 'makerHigh', 'makerTemperature'] as const;

interface RangeAsked {
  readonly id: string;
  readonly limits: Limits;
}

/**
 * The engine whose maker's figures a reading is judged by. The shop's figures are asked for when the reading is first touched, at once where
 * an engine was chosen before; without engines of the shop nothing shows.
 */
export class EngineChoice {
  private readonly host: HTMLElement;
  private readonly changed: () => void;
  private readonly note = element('span', { class: 'field-note', role: 'status' });
  private readonly select = element('select', { 'data-field': 'engine' });
  private figures: ShopFigures | undefined;
  private texts: readonly string[] = [];
  private range: RangeAsked | undefined;

  constructor(host: HTMLElement, changed: () => void) {
    this.host = host;
    this.changed = changed;
    const id = `${host.dataset['id'] ?? 'reading'}-engine`;
    this.select.id = id;
    this.note.id = `${id}-note`;
    this.select.setAttribute('aria-describedby', this.note.id);
  }

  start(): void {
    // The field may have been touched before this script arrived.
    const touched = this.host.contains(document.activeElement) || this.field('reading')?.value !== '';
    if (touched || readChoice(kept).startsWith(own)) this.ask();
    else this.host.addEventListener('focusin', () => this.ask(), { once: true });
    document.addEventListener(chosenEvent, () => this.take());
    this.select.addEventListener('change', (event) => {
      event.stopPropagation();
      if (this.select.value !== typed) writeChoice(kept, this.select.value);
      this.fill();
      this.changed();
      document.dispatchEvent(new Event(chosenEvent));
    });
  }

  /** The limits of the chosen engine's maker for the range, or nothing: then the book's count, or those typed. */
  limits(range: RangeAsked): Limits | undefined {
    const found = this.found(range);
    if (found === undefined) return undefined;
    const { unit, variation, referenceTemperature } = range.limits;
    const { mark: _mark, ...ends } = found;
    return { ...(referenceTemperature === undefined ? {} : { referenceTemperature }), ...ends, unit, variation };
  }

  /** Another range is judged against: its fields have just been made. */
  show(range: RangeAsked): void {
    this.range = range;
    this.texts = [];
    if (this.select.value === typed) this.select.value = noEngine;
    this.draw();
  }

  /** Whoever types a maker's figure means that one. */
  typing(name: string | undefined): void {
    if (!makerFields.some((field) => field === name)) return;
    this.texts = makerFields.map((field) => this.field(field)?.value ?? '');
    if (this.select.isConnected) this.select.value = typed;
    this.say();
  }

  private ask(): void {
    if (readChoice(kept).startsWith(own)) this.place('The shop’s figures are being fetched; until then the book’s range counts.');
    void shopFiguresOnDemand().then((figures) => {
      this.figures = figures;
      if (figures === undefined && readChoice(kept).startsWith(own)) this.place('The shop’s figures could not be fetched; the book’s range counts.');
      else this.draw();
      this.changed();
    });
  }

  /** Takes over what was chosen at another reading of the page. */
  private take(): void {
    if (this.figures === undefined) return this.ask();
    if (this.select.value === typed || this.select.value === readChoice(kept)) return;
    this.draw();
    this.changed();
  }

  private draw(): void {
    const { figures, range } = this;
    if (!figures || !range) return;
    const before = this.select.value === typed ? typed : readChoice(kept);
    const engines = figures.engines.map(({ id, title }) => new Option(figures.limitsFor(id, range.id) ? title : `${title} (no figure for this)`, own + id));
    this.select.replaceChildren(new Option('None: the range of the book', noEngine), ...engines, new Option('As typed below', typed));
    this.select.value = [...this.select.options].some(({ value }) => value === before) ? before : noEngine;
    this.place();
    this.fill();
  }

  /** Stands right below the field of the reading; nothing stands there while there is nothing to choose and nothing to tell. */
  private place(message?: string): void {
    const some = (this.figures?.engines.length ?? 0) > 0;
    const label = some ? [element('label', { for: this.select.id }, 'Which engine: its maker’s figure'), this.select] : [];
    const problems = (this.figures?.problems ?? []).map((problem) => element('span', { class: 'shop-problem', role: 'alert' }, problem));
    this.host.querySelector('.shop-engine')?.remove();
    if (!some && problems.length === 0 && message === undefined) return;
    this.host.querySelector('.main-field')?.after(element('p', { class: 'field shop-engine' }, ...label, this.note, ...problems));
    this.note.textContent = message ?? '';
  }

  /** Puts the chosen engine's figure into the maker's fields, or back what was typed there. */
  private fill(): void {
    const { range } = this;
    if (!range || !this.figures) return;
    const limits = this.limits(range);
    const { decimalMark } = readSettings();
    const written = limits && [limits.low, limits.high, limits.referenceTemperature].map((value) => (value === undefined ? '' : figureText(value, { decimalMark })));
    const usual = ['', '', figureText(range.limits.referenceTemperature ?? 20)];
    const texts = written ?? (this.select.value === typed && this.texts.length > 0 ? this.texts : usual);
    makerFields.forEach((name, index) => {
      const field = this.field(name);
      if (field) field.value = texts[index] ?? '';
      setNote(this.host, name, undefined);
    });
    this.say();
  }

  private say(): void {
    if (!this.range || !this.select.isConnected) return;
    const found = this.found(this.range);
    const chosen = this.select.value.startsWith(own);
    const missing = element('a', { href: bookAddress('my-engines/') }, 'My engines');
    if (found) this.note.textContent = `The maker’s figure comes first: ${found.mark}.`;
    else this.note.replaceChildren(...(chosen ? ['No figure of this engine’s maker is entered for this range, so the book’s counts: ', missing] : []));
  }

  private found(range: RangeAsked): ReturnType<ShopFigures['limitsFor']> {
    const { value } = this.select;
    return value.startsWith(own) ? this.figures?.limitsFor(value.slice(own.length), range.id) : undefined;
  }

  private field(name: string): HTMLInputElement | null {
    return this.host.querySelector<HTMLInputElement>(`[data-field="${name}"]`);
  }
}
