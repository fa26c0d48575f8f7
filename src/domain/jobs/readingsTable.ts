import type { DerivedJob } from './reduce.ts';
import { titleOf } from './account.ts';
import { verdictWord } from '../measurement/sentence.ts';
import type { Job, ReadingTaken } from './types.ts';

export interface TableFormat {
  readonly decimalMark: '.' | ',';
  readonly separator: ',' | ';' | '\t';
}

/** A cell: text comes from people and is guarded; a number was checked when it was read and is written plain. */
type Cell = string | number | undefined;

interface Row {
  readonly job: string;
  readonly side: 'before' | 'after';
  readonly reading: ReadingTaken;
}

/** Numbers are in the unit of the row, temperatures in °C, times in UTC. */
const columns: readonly (readonly [string, (row: Row) => Cell])[] = [
  ['Job', ({ job }) => job],
  ['Taken at (UTC)', ({ reading }) => reading.at],
  ['Repair', ({ side }) => side],
  ['Reading', ({ reading }) => reading.title],
  ['Place', ({ reading }) => reading.place?.label],
  ['Typed', ({ reading }) => reading.text],
  ['Value', ({ reading }) => reading.value],
  ['Corrected', ({ reading }) => reading.corrected],
  ['Give or take', ({ reading }) => reading.expandedUncertainty],
  ['Unit', ({ reading }) => reading.unit],
  ['Lowest', ({ reading }) => reading.limits.low],
  ['Highest', ({ reading }) => reading.limits.high],
  ['Limits at (°C)', ({ reading }) => reading.limits.referenceTemperature],
  ['Source of the limits', ({ reading }) => reading.limits.sourceLabel],
  ['Verdict', ({ reading }) => verdictWord(reading.verdict)],
  ['Part at (°C)', ({ reading }) => reading.temperature],
  ['Leads', ({ reading }) => reading.leads],
  ['Meter', ({ reading }) => reading.meter.name],
  ['Meter, % of the reading', ({ reading }) => reading.meter.percent],
  ['Meter, digits', ({ reading }) => reading.meter.counts],
  ['Meter, size of one digit', ({ reading }) => reading.meter.resolution],
];

/**
 * The readings in account as a table for a spreadsheet: a row of heads, then one row for each, before and after the last repair.
 * RFC 4180: lines end in CRLF; a cell holding the separator, a quotation mark or a line end is quoted.
 */
export function readingsCsv(job: Job, derived: Pick<DerivedJob, 'readingsBefore' | 'readingsAfter'>, format: TableFormat): string {
  const title = titleOf(job);
  const rowsOf = (readings: readonly ReadingTaken[], side: Row['side']): readonly Row[] => readings.map((reading) => ({ job: title, side, reading }));
  const rows = [...rowsOf(derived.readingsBefore, 'before'), ...rowsOf(derived.readingsAfter, 'after')];
  const cells = [columns.map(([head]) => head), ...rows.map((row) => columns.map(([, cell]) => cell(row)))];
  return cells.map((row) => `${row.map((cell) => quoted(cellText(cell, format), format)).join(format.separator)}\r\n`).join('');
}

function cellText(cell: Cell, { decimalMark }: TableFormat): string {
  if (typeof cell === 'number') return String(cell).replace('.', decimalMark);
  return guarded(cell ?? '');
}

/** A spreadsheet takes text that begins so for a formula and runs it. The apostrophe makes it text again. */
function guarded(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function quoted(text: string, { separator }: TableFormat): string {
  return text.includes(separator) || /["\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
