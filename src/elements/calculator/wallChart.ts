import type { CalculatorDefinition } from '../../domain/calculators/definition.ts';
import { usualSpan, variableInputs, wallChartOf } from '../../domain/calculators/wallChart.ts';
import type { WallChart, WallChartRow } from '../../domain/calculators/wallChart.ts';
import { chartShape } from '../../domain/drawing/chart.ts';
import type { Refusal } from '../../domain/result.ts';
import { unitById } from '../../domain/units/table.ts';
import { bookAddress, element } from '../dom.ts';
import { makeChoice, makeField, setNote } from '../reading/fields.ts';
import { readSettings } from '../storage/settings.ts';
import { drawShape } from '../svg.ts';
import { calculatedEvent, type CalculatorOnPage } from './onDemand.ts';

/** While it stands on the body, only the sheet of the wall chart is printed. */
export const printingClass = 'printing-wall-chart';
const usualRows = '10';
/** More rows than this are printed smaller, so that table and chart stay on one sheet of A4. */
const rowsInLargePrint = 20;
const ownFields = ['varied', 'from', 'to', 'rows'];

/** Fills the fold of the wall chart: one input runs over a span, the others come from the form above; table and chart follow the typing. */
export function showWallChart(place: HTMLElement, calculator: CalculatorOnPage): void {
  const { definition } = calculator;
  const start = usualSpan(definition);
  const note = element('p', { class: 'field-note', role: 'status', 'data-wall-note': true });
  const sheet = element('section', { class: 'wall-chart-sheet', 'aria-label': 'Wall chart' });
  const printButton = element('button', { type: 'button', class: 'main-action', hidden: true }, 'Print the wall chart');
  const form = element(
    'div',
    { class: 'fields' },
    variedField(definition, start.varied),
    makeField('wall', { name: 'from', label: 'From', value: start.from, unit: '' }),
    makeField('wall', { name: 'to', label: 'To', value: start.to, unit: '' }),
    makeField('wall', { name: 'rows', label: 'Rows, 3 to 40', value: usualRows, unit: 'rows' }),
  );
  const spans = new Map([[start.varied, { from: start.from, to: start.to }]]);
  const field = (name: string) => form.querySelector<HTMLInputElement | HTMLSelectElement>(`[data-field="${name}"]`);
  const text = (name: string) => field(name)?.value ?? '';
  const update = (): void => {
    spans.set(text('varied'), { from: text('from'), to: text('to') });
    showUnits(form, definition, text('varied'));
    for (const name of ownFields) setNote(form, name, undefined);
    const texts = { varied: text('varied'), from: text('from'), to: text('to'), rows: text('rows'), fixed: calculator.texts() };
    const chart = wallChartOf(definition, texts, { decimalMark: readSettings().decimalMark });
    printButton.hidden = !chart.ok;
    sheet.classList.toggle('is-long', chart.ok && chart.value.rows.length > rowsInLargePrint);
    sheet.replaceChildren(...(chart.ok ? sheetNodes(definition, chart.value) : []));
    note.textContent = chart.ok ? workedWords(chart.value) : refusedWords(form, chart.error);
  };
  form.addEventListener('input', (event) => {
    if (event.target instanceof HTMLSelectElement) takeSpan(spans.get(event.target.value), field);
    update();
  });
  document.addEventListener(calculatedEvent, update);
  printButton.addEventListener('click', printSheet);
  const hint = element('p', {}, 'The other inputs are taken from the form above. A row that cannot be worked out says why.');
  place.replaceChildren(hint, form, note, element('p', { class: 'actions' }, printButton), sheet);
  update();
}

function variedField(definition: CalculatorDefinition, start: string): HTMLElement {
  const options = variableInputs(definition).map(({ name, label }) => ({ value: name, label }));
  return makeChoice('wall', { name: 'varied', label: 'Runs over the rows', value: start, options });
}

/** Another input has a span of its own; what was typed for it before comes back. */
function takeSpan(span: { readonly from: string; readonly to: string } | undefined, field: (name: string) => HTMLInputElement | HTMLSelectElement | null): void {
  for (const name of ['from', 'to'] as const) {
    const input = field(name);
    if (input) input.value = span?.[name] ?? '';
  }
}

function showUnits(form: HTMLElement, definition: CalculatorDefinition, varied: string): void {
  const unit = definition.inputs.find(({ name }) => name === varied)?.unit ?? '';
  const symbol = unitById(unit)?.symbol ?? unit;
  for (const name of ['from', 'to']) {
    const place = form.querySelector(`#wall-${name}-unit`);
    if (place instanceof HTMLElement) {
      place.textContent = symbol;
      place.hidden = symbol === '';
    }
  }
}

/** A refusal of a field here stands at that field; one of the form above is told with its own words. An empty end only waits. */
function refusedWords(form: HTMLElement, refusal: Refusal): string {
  if (!ownFields.includes(refusal.input)) return `In the form above: ${refusal.message}`;
  if (refusal.code === 'missing') return refusal.message;
  setNote(form, refusal.input, refusal.message);
  return 'No wall chart yet.';
}

function workedWords({ rows }: WallChart): string {
  const refused = rows.filter(({ kind }) => kind === 'refused').length;
  return refused === 0 ? `${rows.length} rows worked out.` : `${rows.length} rows, ${refused} of them refused with the reason.`;
}

function sheetNodes(definition: CalculatorDefinition, chart: WallChart): Node[] {
  const conditions = chart.fixed.flatMap(({ label, text }) => [element('dt', {}, label), element('dd', {}, text)]);
  return [
    element('h2', {}, chart.title),
    ...(conditions.length > 0 ? [element('dl', { class: 'wall-conditions' }, ...conditions)] : []),
    element('div', { class: 'table-scroll', tabindex: 0, role: 'region', 'aria-label': 'Table of the wall chart' }, tableOf(chart)),
    ...(chart.chart ? [drawShape(chartShape(chart.chart))] : []),
    ...definition.formulas.map(({ plain }) => element('p', { class: 'quiet' }, `Formula: ${plain}`)),
    element('p', { class: 'quiet' }, `Ignition Bench Book, ${definition.title}: ${bookAddress(`calculators/${definition.id}/`)}`),
  ];
}

function tableOf({ varied, columns, rows }: WallChart): HTMLElement {
  const heads = [varied, ...columns].map((label) => element('th', { scope: 'col' }, label));
  return element(
    'table',
    { class: 'wall-table' },
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...rows.map((row) => rowOf(row, columns.length))),
  );
}

function rowOf(row: WallChartRow, columns: number): HTMLElement {
  const cells =
    row.kind === 'worked'
      ? row.cells.map((cell) => element('td', {}, cell))
      : [element('td', { class: 'wall-refused', colspan: Math.max(columns, 1) }, row.why)];
  return element('tr', {}, element('th', { scope: 'row' }, row.value), ...cells);
}

/** Everything but the sheet is left off the paper until the print dialog has gone. */
function printSheet(): void {
  document.body.classList.add(printingClass);
  addEventListener('afterprint', () => document.body.classList.remove(printingClass), { once: true });
  print();
}
