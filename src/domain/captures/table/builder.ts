import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { columnStores } from './columnStore.ts';
import type { ColumnStore } from './columnStore.ts';
import { sniffedRows, sniffTable } from './headings.ts';
import type { Sniffed } from './headings.ts';
import type { DecimalMark } from './number.ts';
import { findTime } from './time.ts';
import type { LoggedTable, TableProblem, TableRefusalCode } from './types.ts';

export interface TableWish {
  /** Set by hand when what the reader found is wrong. */
  readonly decimalMark?: DecimalMark;
  /** Rows to keep at most; 2 000 000 when left out, fewer in a very wide table. */
  readonly mostRows?: number;
  /** About how many rows will come; it only saves work. A wide table starts small whatever is said. */
  readonly expectedRows?: number;
}

/** Most cells that are kept: 24 million numbers are 192 MB. */
const mostCells = 24_000_000;
export const mostRows = 2_000_000;
const mostProblems = 50;

export interface TableBuilder {
  /** Takes the next row of the file; `line` where it stands, counted by the builder when left out. False once no more rows are kept. */
  add(row: readonly string[], line?: number): boolean;
  finish(): Result<LoggedTable, Refusal<TableRefusalCode>>;
}

/** What is being put together. */
interface Work {
  sniffed: Sniffed | undefined;
  stores: readonly ColumnStore[];
  rows: number;
  lines: number;
  limit: number;
  /** How far the line of the file ran ahead of the last row. */
  ahead: number;
  /** Rows from which on it runs ahead by another distance than before. */
  readonly jumps: { readonly row: number; readonly ahead: number }[];
  readonly waiting: { readonly row: readonly string[]; readonly line: number }[];
  readonly problems: TableProblem[];
  problemCount: number;
}

/**
 * Puts a table together row by row, however long it is, in bounded memory. The first 200 rows decide on headings, units, decimal mark
 * and which columns hold numbers; then each cell goes straight into its column. A row or cell that does not fit is named with its line
 * and what was expected, and the rest is kept.
 */
export function tableBuilder(wish: TableWish = {}): TableBuilder {
  const work: Work = { sniffed: undefined, stores: [], rows: 0, lines: 0, limit: mostRows, ahead: Number.NaN, jumps: [], waiting: [], problems: [], problemCount: 0 };
  return {
    add(row, line = work.lines + 1) {
      work.lines = line;
      if (work.sniffed !== undefined) return keep(work, row, line);
      work.waiting.push({ row, line });
      if (work.waiting.length >= sniffedRows) begin(work, wish);
      return true;
    },
    finish() {
      if (work.sniffed === undefined) begin(work, wish);
      return finish(work);
    },
  };
}

/** The table in rows that are at hand one by one. */
export function readTable(rows: Iterable<readonly string[]>, wish: TableWish = {}): Result<LoggedTable, Refusal<TableRefusalCode>> {
  const builder = tableBuilder(wish);
  for (const row of rows) if (!builder.add(row)) break;
  return builder.finish();
}

function note(work: Work, problem: TableProblem): void {
  work.problemCount += 1;
  if (work.problems.length < mostProblems) work.problems.push(problem);
}

/** Decides what the table looks like and files the rows that waited for that. */
function begin(work: Work, wish: TableWish): void {
  const rows = work.waiting.map(({ row }) => row);
  const sniffed = sniffTable(rows, wish.decimalMark);
  if (sniffed === undefined) return;
  work.sniffed = sniffed;
  work.stores = columnStores(sniffed, rows.slice(sniffed.firstRow), (line, column, found, expected) => note(work, { line, column, found, expected }), expectedLength(wish, sniffed.width));
  work.limit = Math.min(wish.mostRows ?? mostRows, Math.floor(mostCells / sniffed.width));
  for (const { row, line } of work.waiting.splice(0).slice(sniffed.firstRow)) keep(work, row, line);
}

/** Cells that may be made room for at the start: 4 million are 32 MB. */
const firstCells = 4_000_000;

function expectedLength({ expectedRows = 0 }: TableWish, width: number): number {
  return Math.min(expectedRows, firstCells / width);
}

function keep(work: Work, row: readonly string[], line: number): boolean {
  const { stores } = work;
  if (row.length !== stores.length && !fits(work, row, line)) return true;
  if (work.rows >= work.limit) {
    note(work, { line, column: undefined, found: 'more rows', expected: `at most ${work.limit} rows; what comes later is left out` });
    return false;
  }
  if (line - work.rows !== work.ahead) {
    work.ahead = line - work.rows;
    work.jumps.push({ row: work.rows, ahead: work.ahead });
  }
  for (let column = 0; column < stores.length; column += 1) stores[column]?.add(row[column] ?? '', work.rows, line);
  work.rows += 1;
  return true;
}

/** Whether a row of another length holds anything; a blank line is passed over, and empty cells at the end do no harm. */
function fits(work: Work, row: readonly string[], line: number): boolean {
  const width = row.findLastIndex((cell) => cell.trim() !== '') + 1;
  if (width === 0) return false;
  if (width > work.stores.length || row.length < work.stores.length) {
    const expected = `${work.stores.length} cells as in the rows above; what is there was kept`;
    note(work, { line, column: undefined, found: `${Math.max(width, row.length)} cells`, expected });
  }
  return true;
}

function refuse(code: TableRefusalCode, message: string): Result<LoggedTable, Refusal<TableRefusalCode>> {
  return failure({ input: 'file', code, message });
}

function finish(work: Work): Result<LoggedTable, Refusal<TableRefusalCode>> {
  if (work.sniffed === undefined && work.waiting.every(({ row }) => row.every((cell) => cell.trim() === ''))) return refuse('empty', 'The file is empty. Choose a table saved as text, with one reading on each line.');
  if (work.sniffed === undefined) {
    const first = work.waiting.find(({ row }) => row.some((cell) => cell.trim() !== ''))?.row.join(' ').slice(0, 60) ?? '';
    return refuse('no-numbers', `No line with readings was found; the first begins "${first}". Expected is a table saved as text: headings, then numbers parted by tabs, commas or semicolons.`);
  }
  if (work.rows < 2) return refuse('too-few-rows', `The table holds ${work.rows} rows of readings; at least 2 are needed. Save more of the record.`);
  const columns = work.stores.map((store) => store.finish(work.rows));
  const lineOf = (row: number) => row + (work.jumps.findLast((jump) => jump.row <= row)?.ahead ?? 1);
  const time = findTime(columns, lineOf, (problem) => note(work, problem));
  const { decimalMark, decimalMarkUnsure } = work.sniffed;
  return success({ columns, rows: work.rows, decimalMark, decimalMarkUnsure, time, problems: work.problems, problemCount: work.problemCount });
}

