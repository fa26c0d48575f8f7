import { stripShape } from '../../domain/drawing/strip.ts';
import { judge } from '../../domain/measurement/judge.ts';
import { limitsText, verdictSentence, verdictWord } from '../../domain/measurement/sentence.ts';
import { stripModel } from '../../domain/measurement/strip.ts';
import { figureText } from '../../domain/measurement/meterTexts.ts';
import type { Judgement, Limits, Meter, Reading } from '../../domain/measurement/types.ts';
import type { Dimension, ParsedText, TypedValue } from '../../domain/units/types.ts';
import { formatNumber } from '../../domain/units/format.ts';
import type { PressureKind } from '../../domain/units/pressure.ts';
import { parseInputText } from '../../domain/units/parse.ts';
import { unitById } from '../../domain/units/table.ts';
import { bookAddress, element } from '../dom.ts';
import { readSettings, writeSettings } from '../storage/settings.ts';
import { drawShape } from '../svg.ts';
import { EngineChoice } from './engineChoice.ts';
import { makeChoice, makeField, setNote, type FieldSpec } from './fields.ts';
import { chosenFigures, keepMeterChoice, meterFields, meterOptions, typedMeter, usualMeter } from './meterChoice.ts';

/** A range as the page hands it over. */
interface RangeOnPage {
  readonly id: string;
  readonly title: string;
  readonly limits: Limits;
  readonly unit: string;
  readonly dimension: Dimension;
  readonly usualMeter: { readonly percent: number; readonly counts: number };
  readonly leadsMatter: boolean;
  readonly openAllowed: boolean;
  readonly pressure?: PressureKind;
}

/** Fields of this form by the input a refusal names. */
const fieldOf: Readonly<Record<string, string>> = {
  leadResistance: 'leads',
  readingTemperature: 'temperature',
  temperatureUncertainty: 'temperatureTolerance',
  referenceTemperature: 'makerTemperature',
  meterPercent: 'meterPercent',
  meterCounts: 'meterCounts',
  meterResolution: 'meterResolution',
};
const usualTemperature = 20;
const usualTemperatureTolerance = 3;

/**
 * `<reading-check>`: a reading is typed and judged at once. Meter, leads and temperature have stated defaults and can be changed;
 * the engine maker's own figure, once typed, comes before the book's. Nothing typed is ever cleared.
 */
export class ReadingCheck extends HTMLElement {
  private ranges: readonly RangeOnPage[] = [];
  private readonly engine = new EngineChoice(this, () => this.update());

  connectedCallback(): void {
    this.ranges = JSON.parse(this.dataset['ranges'] ?? '[]') as readonly RangeOnPage[];
    this.fillFields();
    this.addEventListener('input', (event) => {
      if (meterFields.some((name) => name === nameOf(event.target))) this.chooseMeter(typedMeter);
      this.engine.typing(nameOf(event.target));
      this.update();
    });
    this.addEventListener('change', (event) => {
      if (nameOf(event.target) === 'range') this.fillFields();
      if (nameOf(event.target) === 'meter') keepMeterChoice(this.text('meter'));
      this.keepMeter();
      this.update();
    });
    this.engine.start();
    this.update();
  }

  private get range(): RangeOnPage | undefined {
    const chosen = this.querySelector<HTMLSelectElement>('[data-field="range"]')?.value;
    return this.ranges.find((range) => range.id === chosen) ?? this.ranges[0];
  }

  /** The fields of the fine adjustments depend on the range: a voltage has no leads to take off and no temperature. */
  private fillFields(): void {
    const { range } = this;
    if (!range) return;
    const settings = readSettings();
    const meter = settings.meter ?? range.usualMeter;
    const symbol = unitById(range.unit)?.symbol ?? range.unit;
    const number = (value: number) => figureText(value, { decimalMark: settings.decimalMark });
    const copper = range.limits.variation === 'copper';
    const conditions: FieldSpec[] = [
      ...(copper
        ? [
            { name: 'temperature', label: 'Temperature of the part', value: `${usualTemperature}`, unit: '°C' },
            { name: 'temperatureTolerance', label: 'Known to within, plus or minus', value: `${usualTemperatureTolerance}`, unit: 'K' },
          ]
        : []),
      { name: 'meterPercent', label: 'Meter: per cent of reading', value: number(meter.percent), unit: '%' },
      { name: 'meterCounts', label: 'Meter: counts of the last digit', value: number(meter.counts), unit: 'counts' },
      { name: 'meterResolution', label: 'Meter: size of one count (empty: from the digits typed)', value: '', unit: symbol },
      ...(range.leadsMatter ? [{ name: 'leads', label: 'Leads touched together read', value: '0', unit: symbol }] : []),
    ];
    const maker: FieldSpec[] = [
      { name: 'makerLow', label: "Maker's lowest", value: '', unit: symbol },
      { name: 'makerHigh', label: "Maker's highest", value: '', unit: symbol },
      ...(copper ? [{ name: 'makerTemperature', label: 'At the temperature', value: `${range.limits.referenceTemperature ?? 20}`, unit: '°C' }] : []),
    ];
    this.fill('[data-condition-fields]', conditions);
    this.querySelector('[data-condition-fields]')?.prepend(this.meterField(range));
    this.fill('[data-maker-fields]', maker);
    const unit = this.querySelector('[data-unit]');
    if (unit) unit.textContent = symbol;
    for (const line of this.querySelectorAll<HTMLElement>('[data-for-range]')) line.hidden = line.dataset['forRange'] !== range.id;
    this.engine.show(range);
  }

  private meterField(range: RangeOnPage): HTMLElement {
    const { options, start } = meterOptions(range);
    const way = element('span', { class: 'hint' }, element('a', { href: bookAddress('meters/') }, 'My meters'));
    return makeChoice(this.dataset['id'] ?? 'reading', { name: 'meter', label: 'Meter', value: start, options }, way);
  }

  private chooseMeter(choice: string): void {
    const select = this.querySelector<HTMLSelectElement>('[data-field="meter"]');
    if (!select || select.value === choice) return;
    select.value = choice;
    keepMeterChoice(choice);
  }

  /** Puts the figures of the chosen meter into its fields; false where that meter cannot have shown this reading. */
  private takeMeter(range: RangeOnPage, reading: ParsedText | undefined): boolean {
    const value = reading?.kind === 'value' ? reading.value : reading?.kind;
    const figures = chosenFigures(this.text('meter'), range, value);
    if (figures === undefined) return true;
    if (!figures.ok) {
      setNote(this, 'reading', figures.error.message);
      return false;
    }
    const { percent, counts, resolution } = figures.value;
    [percent, counts, resolution].forEach((figure, index) => {
      const field = this.querySelector<HTMLInputElement>(`[data-field="${meterFields[index] ?? ''}"]`);
      if (field) field.value = figure === undefined ? '' : figureText(figure, { decimalMark: readSettings().decimalMark });
    });
    return true;
  }

  private fill(selector: string, specs: readonly FieldSpec[]): void {
    const id = this.dataset['id'] ?? 'reading';
    this.querySelector(selector)?.replaceChildren(...specs.map((spec) => makeField(id, spec)));
  }

  private text(name: string): string {
    return this.querySelector<HTMLInputElement>(`[data-field="${name}"]`)?.value.trim() ?? '';
  }

  /** Reads one field; a refusal is shown at the field and counts as nothing typed. An empty field with a default takes it. */
  private parse(name: string, label: string, dimension: Dimension, unit: string, whenEmpty?: number): ParsedText | undefined {
    const text = this.text(name);
    if (text === '') {
      setNote(this, name, undefined);
      return whenEmpty === undefined ? undefined : { kind: 'value', value: whenEmpty, resolution: 0, unit, typedUnit: unit };
    }
    const open = name === 'reading' && (this.range?.openAllowed ?? false);
    const parsed = parseInputText(text, { input: name, label, dimension, unit, acceptOpen: open, ...(this.range?.pressure ? { pressure: this.range.pressure } : {}) });
    setNote(this, name, parsed.ok ? undefined : parsed.error.message);
    return parsed.ok ? parsed.value : undefined;
  }

  private number(name: string, label: string, dimension: Dimension, unit: string, whenEmpty?: number): number | undefined {
    const parsed = this.parse(name, label, dimension, unit, whenEmpty);
    return parsed?.kind === 'value' ? parsed.value : undefined;
  }

  private meter(range: RangeOnPage): Meter | undefined {
    const percent = this.number('meterPercent', 'Per cent of reading', 'ratio', '%', range.usualMeter.percent);
    const counts = this.number('meterCounts', 'Counts of the last digit', 'count', 'count', range.usualMeter.counts);
    const resolution = this.number('meterResolution', 'Size of one count', range.dimension, range.unit);
    if (percent === undefined || counts === undefined || (resolution === undefined && this.text('meterResolution') !== '')) return undefined;
    return resolution === undefined ? { name: 'meter', percent, counts } : { name: 'meter', percent, counts, resolution };
  }

  /** The limits of the chosen engine's maker, those typed once either is, otherwise the book's. */
  private limits(range: RangeOnPage): { readonly limits: Limits; readonly fromMaker: boolean } {
    const own = this.engine.limits(range);
    if (own) return { limits: own, fromMaker: true };
    const low = this.number('makerLow', "Maker's lowest", range.dimension, range.unit);
    const high = this.number('makerHigh', "Maker's highest", range.dimension, range.unit);
    const at = this.number('makerTemperature', 'At the temperature', 'temperature', 'C', range.limits.referenceTemperature);
    if (low === undefined && high === undefined) return { limits: range.limits, fromMaker: false };
    if (low !== undefined && high !== undefined && low > high) {
      setNote(this, 'makerHigh', `The highest, ${formatNumber(high)}, is below the lowest, ${formatNumber(low)}. Type them the other way round.`);
      return { limits: range.limits, fromMaker: false };
    }
    return {
      fromMaker: true,
      limits: {
        ...(low === undefined ? {} : { low }),
        ...(high === undefined ? {} : { high }),
        unit: range.unit,
        variation: range.limits.variation,
        ...(at === undefined ? {} : { referenceTemperature: at }),
      },
    };
  }

  private update(): void {
    const { range } = this;
    if (!range) return;
    const { limits, fromMaker } = this.limits(range);
    const reading = this.parse('reading', 'Your reading', range.dimension, range.unit);
    const fits = this.takeMeter(range, reading);
    const conditions = this.conditions(range);
    this.showConditions(range);
    if (!reading || !fits || !conditions) {
      this.show(range, limits, fromMaker, undefined);
      return;
    }
    const typed: TypedValue | undefined = reading.kind === 'value' ? reading : undefined;
    const judged = judge({ value: typed ? typed.value : 'open', resolution: typed?.resolution ?? 0, ...conditions }, limits);
    if (!judged.ok) setNote(this, fieldOf[judged.error.input] ?? 'reading', judged.error.message);
    else if (typed) this.echo(typed);
    this.show(range, limits, fromMaker, judged.ok ? judged.value : undefined);
  }

  /** How the reading was taken; nothing while one of the fields cannot be read. */
  private conditions(range: RangeOnPage): Omit<Reading, 'value' | 'resolution'> | undefined {
    const meter = this.meter(range);
    const leads = this.number('leads', 'Leads', range.dimension, range.unit, 0);
    const temperature = this.number('temperature', 'Temperature of the part', 'temperature', 'C', usualTemperature);
    const temperatureTolerance = this.number('temperatureTolerance', 'Known to within', 'temperature-difference', 'Kdiff', usualTemperatureTolerance);
    if (!meter || leads === undefined || temperature === undefined || temperatureTolerance === undefined) return undefined;
    return { leads, temperature, temperatureTolerance, meter };
  }

  /** Says what was understood, so that a comma or a k taken the wrong way is seen. */
  private echo(typed: TypedValue): void {
    const note = this.querySelector<HTMLElement>('[data-note="reading"]');
    const symbol = unitById(typed.unit)?.symbol ?? typed.unit;
    const decimals = Math.max(0, Math.min(6, -Math.floor(Math.log10(typed.resolution || 1) + 1e-9)));
    if (note) note.textContent = `Read as ${formatNumber(typed.value, { decimals, decimalMark: readSettings().decimalMark })} ${symbol}`;
  }

  private showConditions(range: RangeOnPage): void {
    const summary = this.querySelector('[data-conditions]');
    const parts = [
      ...(range.limits.variation === 'copper' ? [`Part at ${this.text('temperature') || usualTemperature} °C`] : []),
      `meter ${this.meterName()}±${this.text('meterPercent') || range.usualMeter.percent} % ±${this.text('meterCounts') || range.usualMeter.counts} digits`,
      ...(range.leadsMatter ? [`leads ${this.text('leads') || '0'}`] : []),
    ];
    const text = `${parts.join(', ')}: change`;
    if (summary && summary.textContent !== text) summary.textContent = text.charAt(0).toUpperCase() + text.slice(1);
  }

  /** Empty for the usual meter and for figures typed by hand. */
  private meterName(): string {
    const select = this.querySelector<HTMLSelectElement>('[data-field="meter"]');
    if (!select || select.value === usualMeter || select.value === typedMeter) return '';
    return `${select.selectedOptions[0]?.textContent ?? ''} `;
  }

  private show(range: RangeOnPage, limits: Limits, fromMaker: boolean, judgement: Judgement | undefined): void {
    const options = { decimalMark: readSettings().decimalMark };
    const symbol = unitById(range.unit)?.symbol ?? range.unit;
    const against = `${fromMaker ? "The maker's figure" : range.title}: ${limitsText(limits, options)}.`;
    this.setText('[data-verdict-word]', judgement ? verdictWord(judgement.verdict) : '');
    this.setText('[data-verdict-sentence]', judgement ? `${verdictSentence(judgement, limits, options)}${fromMaker ? " Judged by the maker's figure." : ''}` : against);
    const box = this.querySelector<HTMLElement>('[data-verdict-box]');
    if (box) box.dataset['verdictBox'] = judgement?.verdict ?? '';
    this.querySelector('[data-strip]')?.replaceChildren(drawShape(stripShape(stripModel(limits, judgement, options), { symbol, title: against })));
    this.mark(judgement);
  }

  private setText(selector: string, text: string): void {
    const target = this.querySelector(selector);
    if (target && target.textContent !== text) target.textContent = text;
  }

  /** Marks what the page says about this verdict: the end of the range, or the outcome it decides. */
  private mark(judgement: Judgement | undefined): void {
    const wanted = judgement?.corrected === 'open' ? ['open', 'above'] : judgement ? [judgement.verdict] : [];
    const present = wanted.find((verdict) => document.querySelector(`main [data-verdict="${verdict}"]`));
    for (const place of document.querySelectorAll<HTMLElement>('main [data-verdict]')) {
      place.classList.toggle('is-verdict', place.dataset['verdict'] === present);
    }
  }

  private keepMeter(): void {
    const { range } = this;
    if (this.text('meter') !== typedMeter) return;
    const meter = range && this.meter(range);
    const usual = range?.usualMeter;
    if (meter && usual && (meter.percent !== usual.percent || meter.counts !== usual.counts)) writeSettings({ meter: { name: 'last used', percent: meter.percent, counts: meter.counts } });
  }
}

function nameOf(target: EventTarget | null): string | undefined {
  return target instanceof HTMLElement ? target.dataset['field'] : undefined;
}
