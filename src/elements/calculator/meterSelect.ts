import { figureText } from '../../domain/measurement/meterTexts.ts';
import { parseInputText } from '../../domain/units/parse.ts';
import { bookAddress, element } from '../dom.ts';
import { makeChoice, setNote } from '../reading/fields.ts';
import { chosenFigures, meterFields, meterOptions, typedMeter, usualMeter } from '../reading/meterChoice.ts';
import { readSettings } from '../storage/settings.ts';
import { calculatedEvent, type CalculatorOnPage } from './onDemand.ts';

/** Puts the select "Meter" before the meter's figures: a meter of the shop fills them by the size of the reading. */
export function showMeterSelect(fields: HTMLElement, { definition, texts }: CalculatorOnPage): void {
  const reading = definition.inputs.find(({ name }) => name === 'reading');
  const { dimension, unit, label = '' } = reading ?? {};
  if (dimension === undefined || unit === undefined) return;
  const usual = (name: string): number => Number(definition.inputs.find((input) => input.name === name)?.default ?? 0);
  const asked = { dimension, unit, usualMeter: { percent: usual('meterPercent'), counts: usual('meterCounts') } };
  const isTyped = meterFields.some((name) => texts()[name] !== undefined);
  const way = element('span', { class: 'hint' }, element('a', { href: bookAddress('meters/') }, 'My meters'));
  const { options } = meterOptions(asked);
  const field = makeChoice('calculator', { name: 'meter', label: 'Meter', value: isTyped ? typedMeter : usualMeter, options }, way);
  const select = field.querySelector('select');
  if (!select) return;
  // It is no input of the calculator, whose inputs are known by this mark.
  select.removeAttribute('data-field');
  const follow = (): void => {
    const typed = parseInputText(texts()['reading'] ?? '', { input: 'reading', label, dimension, unit, acceptOpen: true });
    const value = typed.ok ? (typed.value.kind === 'value' ? typed.value.value : typed.value.kind) : undefined;
    const figures = chosenFigures(select.value, asked, value);
    setNote(field, 'meter', figures?.ok === false ? figures.error.message : undefined);
    if (!figures?.ok) return;
    const { percent, counts, resolution } = figures.value;
    const decimalMark = readSettings().decimalMark;
    // The usual figures are those of empty fields.
    const write = (figure: number | undefined): string => (figure === undefined || select.value === usualMeter ? '' : figureText(figure, { decimalMark }));
    put(fields, [write(percent), write(counts), write(resolution)]);
  };
  fields.prepend(field);
  fields.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLInputElement && meterFields.some((name) => name === target.dataset['field'])) select.value = typedMeter;
    else follow();
  });
  document.addEventListener(calculatedEvent, follow);
}

/** Fills the figures; the form hears of it once, and only where something changed. */
function put(fields: HTMLElement, figures: readonly string[]): void {
  const changed = meterFields.filter((name, index) => {
    const input = fields.querySelector<HTMLInputElement>(`[data-field="${name}"]`);
    const text = figures[index] ?? '';
    if (!input || input.value === text) return false;
    input.value = text;
    return true;
  });
  if (changed.length > 0) fields.closest('form')?.dispatchEvent(new Event('input', { bubbles: true }));
}
