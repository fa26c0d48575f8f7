import { stripShape } from '../../domain/drawing/strip.ts';
import type { JobRange } from '../../domain/jobs/book.ts';
import { judgeTypedReading, limitsOfRange } from '../../domain/jobs/reading.ts';
import type { JudgedReading, ReadingPlace, ReadingTexts } from '../../domain/jobs/reading.ts';
import type { EngineLayout } from '../../domain/diagnosis/types.ts';
import { limitsText, verdictSentence, verdictWord } from '../../domain/measurement/sentence.ts';
import { stripModel } from '../../domain/measurement/strip.ts';
import type { Judgement, Limits } from '../../domain/measurement/types.ts';
import { figureText } from '../../domain/measurement/meterTexts.ts';
import { failure, success } from '../../domain/result.ts';
import type { Refusal, Result } from '../../domain/result.ts';
import { formatNumber } from '../../domain/units/format.ts';
import { parseInputText } from '../../domain/units/parse.ts';
import { unitById } from '../../domain/units/table.ts';
import { bookAddress, element } from '../dom.ts';
import { chosenFigures, keepMeterChoice, meterFields, meterOptions, typedMeter } from '../reading/meterChoice.ts';
import type { MeterAsked } from '../reading/meterChoice.ts';
import { writeSettings } from '../storage/settings.ts';
import { drawShape } from '../svg.ts';
import type { Bench } from './bench.ts';
import { makeForm } from './form.ts';
import type { FieldDefinition, FormValues } from './form.ts';

/** A list of more ranges than this is parted by what they measure. */
const longList = 5;

/** A reading typed and judged at once against a range of the book or the engine maker's own figure. */
export function readingForm(
  bench: Bench,
  name: string,
  rangeIds: readonly string[],
  where: ReadingPlace,
  submit: string,
  keep: (reading: JudgedReading) => Refusal | undefined,
): HTMLElement {
  const ranges = fittingRanges(bench.session.book.ranges, rangeIds, bench.session.derived.engine?.layout);
  const start = ranges.find((range) => range.id === bench.memory.text(`${name}.range`)) ?? ranges[0];
  if (start === undefined) return element('p', { class: 'lead' }, 'The book holds no range for this reading on this engine.');
  const view = verdictView();
  const rangeOf = (values: FormValues): JobRange => ranges.find((range) => range.id === values('range')) ?? start;
  const judgeNow = (values: FormValues): Result<JudgedReading, Refusal> => {
    const texts = textsWithMeter(values, rangeOf(values));
    return texts.ok ? judgeTypedReading(texts.value, rangeOf(values), bench.settings.temperatureUnit, where) : texts;
  };
  const form: HTMLFormElement = makeForm(bench.memory, {
    name,
    submit,
    fields: fieldsFor(bench, start, ranges),
    extra: [view.box],
    live: (values) => {
      const reading = values('reading').trim() === '' ? undefined : judgeNow(values);
      showVerdict(bench, view, rangeOf(values), reading?.ok ? reading.value : undefined);
      if (reading?.ok === false) view.sentence.textContent = reading.error.message;
    },
    take: (values) => {
      const reading = judgeNow(values);
      if (!reading.ok) return reading.error;
      keepMeter(values, reading.value, rangeOf(values));
      return () => keep(reading.value);
    },
  });
  foldAway(bench, form, name);
  followMeter(bench, form, name, start);
  form.addEventListener('change', (event) => {
    // Another range has another unit and other fields; what was typed as the reading stays.
    if (event.target instanceof HTMLSelectElement && event.target.dataset['field'] === 'range') bench.draw();
  });
  return form;
}

function fittingRanges(all: readonly JobRange[], ids: readonly string[], engine: EngineLayout | undefined): readonly JobRange[] {
  return all.filter(
    (range) =>
      ids.includes(range.id) &&
      (range.ignition === undefined || engine === undefined || range.ignition.includes(engine.ignition)) &&
      (range.injection === undefined || engine === undefined || range.injection.includes(engine.injection)),
  );
}

function textsOf(values: FormValues): ReadingTexts {
  return {
    reading: values('reading'),
    temperature: values('temperature'),
    leads: values('leads'),
    meterPercent: values('meterPercent'),
    meterCounts: values('meterCounts'),
    meterResolution: values('meterResolution'),
    makerLow: values('makerLow'),
    makerHigh: values('makerHigh'),
    makerTemperature: values('makerTemperature'),
  };
}

function meterAsked(range: JobRange): MeterAsked {
  return { dimension: unitById(range.unit)?.dimension ?? 'count', unit: range.unit, usualMeter: range.usualMeter };
}

/** The figures of the chosen meter stand for those of the fields, and its name goes into the record. */
function textsWithMeter(values: FormValues, range: JobRange): Result<ReadingTexts, Refusal> {
  const texts = textsOf(values);
  const figures = meterOf(values('meter'), texts.reading, range);
  if (figures === undefined) return success(texts);
  if (!figures.ok) return failure({ ...figures.error, input: 'reading' });
  const { name, percent, counts, resolution } = figures.value;
  return success({ ...texts, meterName: name, meterPercent: String(percent), meterCounts: String(counts), meterResolution: String(resolution ?? '') });
}

/** A reading that cannot be read yet is refused by its own words; until then the lowest range of the meter speaks. */
function meterOf(choice: string, reading: string, range: JobRange): ReturnType<typeof chosenFigures> {
  const asked = meterAsked(range);
  const parsed = parseInputText(reading, { input: 'reading', label: 'Your reading', dimension: asked.dimension, unit: asked.unit, acceptOpen: true });
  const value = parsed.ok ? (parsed.value.kind === 'value' ? parsed.value.value : parsed.value.kind) : undefined;
  return chosenFigures(choice, asked, value);
}

/** The fields show the figures of the chosen meter as the reading grows; typing into one of them means the figures typed. */
function followMeter(bench: Bench, form: HTMLFormElement, name: string, range: JobRange): void {
  const field = (one: string) => form.querySelector<HTMLInputElement | HTMLSelectElement>(`[data-field="${one}"]`);
  const write = (one: string, text: string): void => {
    const place = field(one);
    if (!place || place.value === text) return;
    place.value = text;
    bench.memory.setText(`${name}.${one}`, text);
  };
  const show = (): void => {
    const figures = meterOf(field('meter')?.value ?? typedMeter, field('reading')?.value ?? '', range);
    if (!figures?.ok) return;
    const { percent, counts, resolution } = figures.value;
    [percent, counts, resolution].forEach((figure, index) => {
      write(meterFields[index] ?? '', figure === undefined ? '' : figureText(figure, { decimalMark: bench.settings.decimalMark }));
    });
  };
  // Before the form itself hears of it, so that the verdict is given by the figures just typed.
  form.addEventListener(
    'input',
    ({ target }) => {
      if (!(target instanceof HTMLElement) || !meterFields.some((one) => one === target.dataset['field'])) return;
      write('meter', typedMeter);
      keepMeterChoice(typedMeter);
    },
    { capture: true },
  );
  form.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLSelectElement && target.dataset['field'] === 'meter') keepMeterChoice(target.value);
    show();
  });
  show();
}

function fieldsFor(bench: Bench, range: JobRange, ranges: readonly JobRange[]): readonly FieldDefinition[] {
  const { decimalMark, temperatureUnit, meter } = bench.settings;
  const symbol = unitById(range.unit)?.symbol ?? range.unit;
  const degrees = temperatureUnit === 'F' ? '°F' : '°C';
  const write = (value: number | undefined): string => (value === undefined ? '' : formatNumber(value, { decimalMark }));
  const maker = bench.session.derived.makerFigures.get(range.id);
  const copper = range.variation === 'copper';
  const line = (name: string, label: string, unit: string, start = ''): FieldDefinition => ({ name, label, kind: 'line', unit, start });
  const meters = meterOptions(meterAsked(range));
  const choices = ranges.map(({ id, title, quantity }) => ({ value: id, label: title, ...(ranges.length > longList ? { under: quantity } : {}) }));
  return [
    ...(ranges.length > 1 ? [{ name: 'range', label: 'Judged against', kind: 'choice' as const, start: range.id, choices }] : []),
    line('reading', `Your reading: ${range.quantity}`, symbol),
    ...(copper ? [{ ...line('temperature', 'Temperature of the part', degrees), hint: 'Left empty: 20 °C, known to 3 K.' }] : []),
    ...(range.leadsMatter ? [{ ...line('leads', 'Leads touched together read', symbol), hint: 'Left empty: zeroed.' }] : []),
    { name: 'meter', label: 'Meter', kind: 'choice', start: meters.start, choices: meters.options },
    line('meterPercent', 'Meter: per cent of reading', '%', write(meter?.percent ?? range.usualMeter.percent)),
    line('meterCounts', 'Meter: counts of the last digit', 'counts', write(meter?.counts ?? range.usualMeter.counts)),
    { ...line('meterResolution', 'Meter: size of one count', symbol), hint: 'Left empty: from the digits typed.' },
    line('makerLow', "Engine maker's lowest", symbol, write(maker?.low)),
    line('makerHigh', "Engine maker's highest", symbol, write(maker?.high)),
    ...(copper ? [{ ...line('makerTemperature', "Maker's figure holds at", degrees), hint: 'Left empty: as the range of the book.' }] : []),
  ];
}

/** Everything but the reading and its range is folded away, with a line that says what is assumed. */
function foldAway(bench: Bench, form: HTMLFormElement, name: string): void {
  const fine = [...form.querySelectorAll<HTMLElement>('.field')].filter((field) => {
    const inner = field.querySelector<HTMLElement>('[data-field]')?.dataset['field'];
    return inner !== 'reading' && inner !== 'range';
  });
  const key = `${name}-fine`;
  const details = element(
    'details',
    { class: 'fine', open: bench.memory.isOpen(key) },
    element('summary', { id: `${key}-summary` }, "Meter, leads, temperature, and the engine maker's own figure"),
    element('div', { class: 'fields' }, ...fine),
  );
  details.addEventListener('toggle', () => bench.memory.setOpen(key, details.open));
  form.querySelector('[type="submit"]')?.after(details);
}

interface VerdictView {
  readonly box: HTMLElement;
  readonly word: HTMLElement;
  readonly sentence: HTMLElement;
  readonly suggests: HTMLElement;
  readonly strip: HTMLElement;
  readonly source: HTMLElement;
}

function verdictView(): VerdictView {
  const word = element('p', { class: 'verdict-word' });
  const sentence = element('p', { class: 'verdict-sentence' });
  const suggests = element('p', { class: 'verdict-suggests' });
  const strip = element('div', { class: 'strip' });
  const source = element('p', { class: 'strip-source' });
  const spoken = element('div', { role: 'status' }, word, sentence, suggests);
  return { box: element('div', { class: 'verdict' }, spoken, strip, source), word, sentence, suggests, strip, source };
}

function showVerdict(bench: Bench, view: VerdictView, range: JobRange, judged: JudgedReading | undefined): void {
  const options = { decimalMark: bench.settings.decimalMark };
  const limits: Limits = judged?.limits ?? limitsOfRange(range);
  const symbol = unitById(range.unit)?.symbol ?? range.unit;
  const against = `${range.title}: ${limitsText(limits, options)}.`;
  view.box.dataset['verdictBox'] = judged?.judgement.verdict ?? '';
  view.word.textContent = judged ? verdictWord(judged.judgement.verdict) : '';
  view.sentence.textContent = judged ? verdictSentence(judged.judgement, limits, options) : against;
  view.suggests.textContent = judged ? suggestion(range, judged.judgement) : '';
  view.strip.replaceChildren(drawShape(stripShape(stripModel(limits, judged?.judgement), { symbol, title: against })));
  view.source.replaceChildren(...sourceNodes(range, judged));
}

function suggestion(range: JobRange, { corrected, verdict }: Judgement): string {
  if (corrected === 'open') return range.open ?? range.above ?? '';
  return verdict === 'too-close-to-call' ? '' : (range[verdict] ?? '');
}

function sourceNodes(range: JobRange, judged: JudgedReading | undefined): (Node | string)[] {
  if (judged && judged.body.limits.sourceId !== range.sourceId) return [`Judged by ${judged.body.limits.sourceLabel}.`];
  const maker = range.makerFirst ? " The engine maker's figure comes first." : '';
  return [element('a', { href: bookAddress(range.address) }, range.title), `: ${range.sourceLabel}.${maker}`];
}

/** The meter is remembered for the next reading once it differs from what the range assumes. */
function keepMeter(values: FormValues, { body }: JudgedReading, { usualMeter }: JobRange): void {
  const { percent, counts } = body.meter;
  const typed = values('meter') === typedMeter && (values('meterPercent').trim() !== '' || values('meterCounts').trim() !== '');
  if (typed && (percent !== usualMeter.percent || counts !== usualMeter.counts)) writeSettings({ meter: { name: 'last used', percent, counts } });
}
