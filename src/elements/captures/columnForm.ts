import type { ColumnChoice, ColumnMatch } from '../../domain/captures/columns/match.ts';
import { quantities } from '../../domain/captures/columns/quantities.data.ts';
import type { CapturedQuantity } from '../../domain/captures/columns/quantities.data.ts';
import { confidenceWords } from '../../domain/captures/wording.data.ts';
import { unitById, unitsOf } from '../../domain/units/table.ts';
import { element } from '../dom.ts';
import { makeChoice } from '../reading/fields.ts';
import type { ByHand, ColumnFound, TableFound } from './protocol.ts';

/** Units that a clock of a record is written in. */
const timeUnits = ['s', 'ms', 'us', 'min'];
const mostCylinders = 16;

/** A field for each column: what it was taken for, why, and the way to say otherwise. `changed` is told what was chosen by hand. */
export function columnForm(table: TableFound, byHand: ByHand, changed: (byHand: ByHand) => void): HTMLElement {
  return element('div', { class: 'capture-columns' }, ...table.columns.map((column, place) => columnField(table, column, place, byHand, changed)));
}

function columnField(table: TableFound, column: ColumnFound, place: number, byHand: ByHand, changed: (byHand: ByHand) => void): HTMLElement {
  const match = table.matches.find((one) => one.column === place);
  const isTime = table.time?.column === place;
  const quantity = quantities.find(({ id }) => id === match?.quantity);
  const options = [{ value: 'nothing', label: 'Not used' }, { value: 'time', label: 'Time' }, ...quantities.map(({ id, label }) => ({ value: id, label }))];
  const choice = makeChoice('column', { name: `column-${place}`, label: column.heading, value: isTime ? 'time' : (match?.quantity ?? 'nothing'), options });
  const words = choice.querySelector('[data-note]');
  if (words) words.textContent = [taken(table, match, isTime), `Written there: ${column.unitText === '' ? 'no unit' : column.unitText}; ${column.first.length === 0 ? 'no readings' : column.first.join(', ')}.`].join(' ');
  choice.querySelector('select')?.addEventListener('change', (event) => {
    changed(chosen(byHand, place, (event.target as HTMLSelectElement).value));
  });
  return element('div', { class: 'capture-column', 'data-column': place }, choice, ...(quantity === undefined && !isTime ? [] : extras(table, place, byHand, quantity, match, changed)));
}

function taken({ time }: TableFound, match: ColumnMatch | undefined, isTime: boolean): string {
  if (isTime) return time?.unitAssumed === true ? 'Taken for the time, in seconds: no unit is written; check it.' : 'Taken for the time.';
  if (match === undefined) return 'Not taken for anything.';
  return `Taken ${confidenceWords[match.confidence]}.`;
}

/** Unit, and cylinder or bank where the quantity has one. */
function extras(table: TableFound, place: number, byHand: ByHand, quantity: CapturedQuantity | undefined, match: ColumnMatch | undefined, changed: (byHand: ByHand) => void): HTMLElement[] {
  const isTime = quantity === undefined;
  const units = (isTime ? timeUnits.map((id) => unitById(id)).filter((unit) => unit !== undefined) : unitsOf(quantity.dimension)).map(({ id, symbol }) => ({ value: id, label: symbol === '' ? 'plain number' : symbol }));
  const made: HTMLElement[] = [];
  if (units.length > 1) {
    const unit = makeChoice('column', { name: `unit-${place}`, label: 'Unit', value: isTime ? (byHand.time?.unit ?? guessedTimeUnit(table.columns[place])) : (match?.unit ?? quantity.unit), options: units });
    unit.querySelector('select')?.addEventListener('change', (event) => {
      const value = (event.target as HTMLSelectElement).value;
      changed(isTime ? { ...byHand, time: { column: place, unit: value } } : withChoice(byHand, choiceOf(match, place, quantity, { unit: value })));
    });
    made.push(unit);
  }
  if (quantity?.index !== undefined) made.push(indexField(place, byHand, quantity, match, changed));
  return made;
}

function guessedTimeUnit(column: ColumnFound | undefined): string {
  return timeUnits.find((id) => unitById(id)?.symbol === column?.unitText || id === column?.unitText) ?? 's';
}

function indexField(place: number, byHand: ByHand, quantity: CapturedQuantity, match: ColumnMatch | undefined, changed: (byHand: ByHand) => void): HTMLElement {
  const count = quantity.index === 'bank' ? 2 : mostCylinders;
  const options = [{ value: '', label: quantity.index === 'bank' ? 'Not said' : 'All, or not said' }, ...Array.from({ length: count }, (_, index) => ({ value: String(index + 1), label: String(index + 1) }))];
  const field = makeChoice('column', { name: `index-${place}`, label: quantity.index === 'bank' ? 'Bank' : 'Cylinder', value: match?.index === undefined ? '' : String(match.index), options });
  field.querySelector('select')?.addEventListener('change', (event) => {
    const value = (event.target as HTMLSelectElement).value;
    const { index: _index, ...choice } = choiceOf(match, place, quantity, {});
    changed(withChoice(byHand, value === '' ? choice : { ...choice, index: Number(value) }));
  });
  return field;
}

function choiceOf(match: ColumnMatch | undefined, column: number, { id, unit }: CapturedQuantity, more: Partial<ColumnChoice>): ColumnChoice {
  return { column, quantity: id, unit: match?.unit ?? unit, ...(match?.index === undefined ? {} : { index: match.index }), ...more };
}

function withChoice(byHand: ByHand, choice: ColumnChoice): ByHand {
  return { ...byHand, choices: [...byHand.choices.filter(({ column }) => column !== choice.column), choice] };
}

function chosen({ choices, time }: ByHand, column: number, value: string): ByHand {
  const others = choices.filter((choice) => choice.column !== column);
  const kept = time?.column === column ? undefined : time;
  if (value === 'time') return { choices: others, time: { column, unit: 's' } };
  const quantity = value === 'nothing' ? 'nothing' : quantities.find(({ id }) => id === value)?.id;
  return { choices: quantity === undefined ? others : [...others, { column, quantity }], ...(kept ? { time: kept } : {}) };
}
