import { element } from '../dom.ts';
import type { TableFound } from './protocol.ts';

/** What was found in the file, and what in it could not be taken as it stands. */
export function tableWords(table: TableFound): Node[] {
  const seconds = table.time?.seconds;
  const span = seconds === undefined ? 'No column of times was found: choose it below.' : `From the first row to the last ${lengthWords(seconds)} pass.`;
  return [element('p', {}, `${table.rows} rows of ${table.columns.length} columns. ${span} The decimal mark is taken for a ${table.decimalMark === ',' ? 'comma' : 'point'}${table.decimalMarkUnsure ? '; it could be the other: look at the figures below' : ''}.`), ...problems(table)];
}

function lengthWords(seconds: number): string {
  if (seconds < 1) return `${Number((1000 * seconds).toPrecision(3))} ms`;
  return seconds < 120 ? `${Number(seconds.toPrecision(3))} s` : `${Math.round(seconds / 60)} minutes`;
}

function problems({ problems: named, problemCount }: TableFound): Node[] {
  if (problemCount === 0) return [];
  const lines = named.map(({ line, column, found, expected }) => element('li', {}, `Line ${line}${column === undefined ? '' : `, ${column}`}: found ${found}; expected ${expected}.`));
  const more = problemCount > named.length ? [element('p', {}, `And ${problemCount - named.length} more.`)] : [];
  const words = `${problemCount} ${problemCount === 1 ? 'thing' : 'things'} in the file could not be taken as written; what could be read was kept`;
  return [element('details', { class: 'fine', open: problemCount <= 5, 'data-capture-problems': true }, element('summary', {}, words), element('ul', {}, ...lines), ...more)];
}
