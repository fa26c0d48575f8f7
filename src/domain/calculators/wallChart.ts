import type { Refusal, Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { formatValue, shortestDecimals } from '../units/format.ts';
import type { UnitId } from '../units/types.ts';
import type { Calculation, CalculatorDefinition, Chart, InputDefinition, OutputDefinition } from './definition.ts';
import { inputWords } from './inputWords.ts';
import type { InputWords } from './inputWords.ts';
import { parseField } from './parse-field.ts';
import { presentCalculation } from './present.ts';
import type { PresentOptions } from './present.ts';
import { parseInputs, runCalculator } from './run.ts';

export const fewestRows = 3;
export const mostRows = 40;

/** What a wall chart is asked for: one input runs over a span, the others stay as they were typed. */
export interface WallChartTexts {
  /** Name of the input that varies; one of `variableInputs`. */
  readonly varied: string;
  readonly from: string;
  readonly to: string;
  /** Rows, 3 to 40. */
  readonly rows: string;
  /** The texts of the form; that of the varied input does not count. */
  readonly fixed: Readonly<Record<string, string>>;
}

/** One value of the varied input: a cell for each column, or the refusal in words. */
export type WallChartRow =
  | { readonly kind: 'worked'; readonly value: string; readonly cells: readonly string[] }
  | { readonly kind: 'refused'; readonly value: string; readonly why: string };

export interface WallChart {
  readonly title: string;
  /** Label of the varied input, heading of the first column. */
  readonly varied: string;
  readonly fixed: readonly InputWords[];
  /** Labels of the outputs that any row has, in the order of the calculator. */
  readonly columns: readonly string[];
  readonly rows: readonly WallChartRow[];
  /** The main figure, or the first one that is worked out, drawn over the varied input; none where fewer than two rows have it. */
  readonly chart?: Chart;
}

/** The inputs that can run over a span. */
export function variableInputs(definition: CalculatorDefinition): readonly InputDefinition[] {
  return definition.inputs.filter((input) => input.kind === 'quantity');
}

/**
 * A table over evenly spaced values of one input, each row worked out as the form would, and the chart of it.
 * Refuses, naming `varied`, `from`, `to` or `rows`, a span that cannot be read or has no length and a number of rows that is not
 * 3 to 40; and, naming the input of the calculator, a fixed input that cannot be read. A row that the calculator refuses says why.
 */
export function wallChartOf(definition: CalculatorDefinition, texts: WallChartTexts, options: PresentOptions = {}): Result<WallChart, Refusal> {
  const input = variableInputs(definition).find(({ name }) => name === texts.varied);
  if (input === undefined) return failure({ input: 'varied', code: 'not-a-choice', message: 'Choose which input runs over the rows.' });
  const span = readSpan(input, texts);
  if (!span.ok) return span;
  const problem = problemWithFixed(definition, input, texts);
  if (problem) return failure(problem);
  const unit = input.unit ?? 'count';
  const { values, decimals } = span.value;
  const rows = values.map((value) => {
    const worked = runCalculator(definition, { ...texts.fixed, [input.name]: value.toFixed(decimals) });
    return { value, shown: formatValue(value, unit, { ...options, decimals }), worked };
  });
  return success(chartOfRows(definition, input, texts, rows, options));
}

interface Row {
  readonly value: number;
  readonly shown: string;
  readonly worked: Result<Calculation, Refusal>;
}

function chartOfRows(definition: CalculatorDefinition, input: InputDefinition, texts: WallChartTexts, rows: readonly Row[], options: PresentOptions): WallChart {
  const present = rows.flatMap(({ worked }) => (worked.ok ? Object.keys(worked.value.outputs) : []));
  const columns = definition.outputs.filter(({ name }) => present.includes(name));
  const chart = chartOf(definition, input, rows);
  return {
    title: `${definition.title}: ${inSentence(input.label)} from ${rows[0]?.shown ?? ''} to ${rows.at(-1)?.shown ?? ''}`,
    varied: input.label,
    fixed: inputWords(definition, texts.fixed).filter(({ name }) => name !== input.name),
    columns: columns.map(({ label }) => label),
    rows: rows.map((row) => presentRow(definition, columns, row, options)),
    ...(chart === undefined ? {} : { chart }),
  };
}

function presentRow(definition: CalculatorDefinition, columns: readonly OutputDefinition[], { shown, worked }: Row, options: PresentOptions): WallChartRow {
  if (!worked.ok) return { kind: 'refused', value: shown, why: worked.error.message };
  const texts = new Map(presentCalculation(definition, worked.value, options).map(({ name, text }) => [name, text]));
  return { kind: 'worked', value: shown, cells: columns.map(({ name }) => texts.get(name) ?? '–') };
}

/** The longest unbroken run of rows that have the figure, so that no line is drawn over what was refused. */
function chartOf(definition: CalculatorDefinition, input: InputDefinition, rows: readonly Row[]): Chart | undefined {
  const figures = definition.outputs.filter(({ name, kind }) => kind === 'quantity' && rows.some((row) => figureOf(row, name) !== undefined));
  // What only gives the varied input back draws nothing worth looking at.
  const telling = figures.filter(({ name }) => name !== input.name);
  const output = telling.find(({ main }) => main) ?? telling[0] ?? figures[0];
  if (output === undefined) return undefined;
  let run: { x: number; y: number }[] = [];
  let longest = run;
  for (const row of rows) {
    const y = figureOf(row, output.name);
    if (y === undefined) run = [];
    else run.push({ x: row.value, y });
    if (run.length > longest.length) longest = run;
  }
  if (longest.length < 2) return undefined;
  return {
    title: `${output.label} against ${inSentence(input.label)}`,
    x: { label: input.label, unit: input.unit ?? 'count' },
    y: { label: output.label, unit: output.unit ?? unitOf(rows, output.name) },
    series: [{ name: output.label, kind: 'line', points: longest }],
    marks: [],
  };
}

function figureOf({ worked }: Row, name: string): number | undefined {
  const output = worked.ok ? worked.value.outputs[name] : undefined;
  return typeof output === 'object' && 'value' in output ? output.value : undefined;
}

function unitOf(rows: readonly Row[], name: string): UnitId {
  const outputs = rows.flatMap(({ worked }) => (worked.ok ? [worked.value.outputs[name]] : []));
  const quantity = outputs.find((output) => typeof output === 'object' && 'unit' in output);
  return typeof quantity === 'object' && 'unit' in quantity ? quantity.unit : '1';
}

/** A label inside a sentence: `Plug gap` becomes `plug gap`, `CO` stays. */
function inSentence(label: string): string {
  return /^[A-Z](?![A-Z])/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}

interface Span {
  readonly values: readonly number[];
  /** Every value is written with as many, so that all stand for the same number of digits read. */
  readonly decimals: number;
}

function readSpan(input: InputDefinition, texts: WallChartTexts): Result<Span, Refusal> {
  const from = readEnd(input, texts.from, 'from', 'From');
  if (!from.ok) return from;
  const to = readEnd(input, texts.to, 'to', 'To');
  if (!to.ok) return to;
  const rows = readRows(texts.rows);
  if (!rows.ok) return rows;
  if (from.value === to.value) {
    return failure({ input: 'to', code: 'no-span', message: 'To is the same as from, so every row would be the same. Type where the rows end.' });
  }
  return success(spaced(from.value, to.value, rows.value, input.wholeNumber ?? false));
}

function readEnd(input: InputDefinition, text: string, name: 'from' | 'to', label: string): Result<number, Refusal> {
  if (text.trim() === '') return failure({ input: name, code: 'missing', message: `${label}: nothing was typed. Type the ${name === 'from' ? 'first' : 'last'} value of the rows.` });
  const parsed = parseField({ ...input, label: `${label}, ${inSentence(input.label)}` }, text);
  if (!parsed.ok) return failure({ ...parsed.error, input: name });
  if (parsed.value.kind === 'value') return success(parsed.value.value);
  return failure({ input: name, code: 'not-a-number', message: `${label}: an open circuit is no end of a span. Type a figure.` });
}

function readRows(text: string): Result<number, Refusal> {
  const count = Number(text.trim());
  if (/^\d{1,3}$/.test(text.trim()) && count >= fewestRows && count <= mostRows) return success(count);
  const found = text.trim() === '' ? 'Nothing was typed' : `“${text.trim()}” was typed`;
  return failure({ input: 'rows', code: 'out-of-range', message: `${found}. Type a whole number of rows from ${fewestRows} to ${mostRows}.` });
}

/** Digits kept of a step that does not end: one more than tells the rows apart. */
const digitsOfStep = 2;

/** Evenly spaced values, both ends as typed; where only whole numbers make sense they are rounded and none stands twice. */
function spaced(from: number, to: number, rows: number, whole: boolean): Span {
  const step = (to - from) / (rows - 1);
  const exact = Array.from({ length: rows }, (_, index) => (index === rows - 1 ? to : from + index * step));
  if (whole) return { values: [...new Set(exact.map(Math.round))], decimals: 0 };
  const enough = digitsOfStep - 1 - Math.floor(Math.log10(Math.abs(step)));
  const between = Math.min(Math.max(...exact.map(shortestDecimals)), Math.max(0, enough));
  const decimals = Math.min(Math.max(between, shortestDecimals(from), shortestDecimals(to)), 100);
  return { values: exact.map((value) => Number(value.toFixed(decimals))), decimals };
}

/** A fixed input that is missing or cannot be read would fail every row alike, so it is told once. */
function problemWithFixed(definition: CalculatorDefinition, input: InputDefinition, texts: WallChartTexts): Refusal | undefined {
  const parsed = parseInputs(definition, { ...texts.fixed, [input.name]: texts.from });
  return parsed.ok ? undefined : parsed.error;
}

/** A span to start from: that of the table printed on the page, where one of its inputs varies. */
export function usualSpan(definition: CalculatorDefinition): Pick<WallChartTexts, 'varied' | 'from' | 'to'> {
  const { rows } = definition.table;
  const first = rows[0] ?? {};
  const last = rows.at(-1) ?? {};
  const varied = variableInputs(definition).find(({ name }) => first[name] !== undefined && last[name] !== undefined && first[name] !== last[name]);
  return { varied: (varied ?? variableInputs(definition)[0])?.name ?? '', from: first[varied?.name ?? ''] ?? '', to: last[varied?.name ?? ''] ?? '' };
}
