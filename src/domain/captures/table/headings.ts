import { findUnits } from '../../units/table.ts';
import { clockSeconds } from './clock.ts';
import { isNothing, oddNumber } from './number.ts';
import type { DecimalMark } from './number.ts';
import type { Heading } from './types.ts';

/** Rows looked at before anything is decided. */
export const sniffedRows = 200;

export interface Sniffed {
  /** Cells in a row. */
  readonly width: number;
  readonly decimalMark: DecimalMark;
  readonly decimalMarkUnsure: boolean;
  readonly headings: readonly Heading[];
  /** Place of the first row of readings among the rows looked at. */
  readonly firstRow: number;
}

type Rows = readonly (readonly string[])[];

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === '');
}

/** The commonest count of cells; of those as common the larger. Empty cells at the end of a row do not count. */
function usualWidth(rows: Rows): number {
  const counts = new Map<number, number>();
  for (const row of rows) {
    if (isBlank(row)) continue;
    const width = row.findLastIndex((cell) => cell.trim() !== '') + 1;
    counts.set(width, (counts.get(width) ?? 0) + 1);
  }
  return [...counts].sort((one, other) => other[1] - one[1] || other[0] - one[0])[0]?.[0] ?? 0;
}

const withComma = /^[+-]?\d+,\d+$/;
const withPoint = /^[+-]?\d*\.\d+$/;
const likeThousand = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/** Comma or point, whichever more cells use alone. A comma that may part thousands everywhere leaves it unsure. */
function markOf(rows: Rows): Pick<Sniffed, 'decimalMark' | 'decimalMarkUnsure'> {
  const cells = rows.flat().map((cell) => cell.trim());
  const commas = cells.filter((cell) => withComma.test(cell));
  const points = cells.filter((cell) => withPoint.test(cell));
  const thousands = commas.filter((cell) => likeThousand.test(cell)).length;
  if (commas.length === 0) return { decimalMark: '.', decimalMarkUnsure: false };
  if (points.length > 0 && thousands === commas.length) return { decimalMark: '.', decimalMarkUnsure: false };
  return { decimalMark: commas.length >= points.length ? ',' : '.', decimalMarkUnsure: thousands === commas.length };
}

/** A reading, or the sign that none was taken. */
function isReading(cell: string, mark: DecimalMark): boolean {
  return oddNumber(cell, mark) !== undefined || !Number.isNaN(clockSeconds(cell));
}

/** At least a third of the cells that hold something are readings, and there is one at all. */
function isRowOfReadings(row: readonly string[], mark: DecimalMark): boolean {
  const cells = row.filter((cell) => !isNothing(cell));
  const readings = cells.filter((cell) => isReading(cell, mark)).length;
  return readings > 0 && 3 * readings >= cells.length;
}

/** The first row from which on rows are readings: two in a row, so that a number among remarks does not count. */
function firstRowOfReadings(rows: Rows, width: number, mark: DecimalMark): number {
  const fits = (row: readonly string[] | undefined) => row !== undefined && row.length * 2 >= width && isRowOfReadings(row, mark);
  const last = rows.length - 1;
  return rows.findIndex((row, place) => fits(row) && (place === last || fits(rows[place + 1]) || fits(rows[place + 2])));
}

/** A unit in brackets at the end, or behind a comma, stroke or underscore when the book knows it as one. */
const bracketed = /^(.*?)\s*[[({]\s*([^\])}]*?)\s*[\])}]\s*$/;
const behindSign = /^(.+?)\s*[,/_:]\s*([^,/_:]+|[^,_:]+)$/;

export function splitHeading(text: string): Heading {
  const trimmed = text.trim();
  const inBrackets = partsOf(bracketed, trimmed);
  if (inBrackets !== undefined && isKnownUnit(inBrackets.unitText)) return inBrackets;
  const behind = partsOf(behindSign, trimmed);
  if (behind !== undefined && isKnownUnit(behind.unitText)) return behind;
  // A short word in brackets is a unit, even one the book does not know; a remark is longer.
  return inBrackets !== undefined && /^[^\d]{1,6}$/.test(inBrackets.unitText) ? inBrackets : { heading: trimmed, unitText: '' };
}

function partsOf(pattern: RegExp, text: string): Heading | undefined {
  const [, heading = '', unitText = ''] = pattern.exec(text) ?? [];
  return heading === '' || unitText === '' ? undefined : { heading, unitText };
}

/** A bare number is a plain ratio to the book, but no unit in a heading. */
function isKnownUnit(text: string): boolean {
  return findUnits(text).length > 0 && !/^\d+$/.test(text);
}

function unbracketed(text: string): string {
  return text.trim().replace(/^[[({]\s*|\s*[\])}]$/g, '');
}

/** Most of its cells are units, or empty. */
function isRowOfUnits(row: readonly string[]): boolean {
  const cells = row.map(unbracketed).filter((cell) => cell !== '' && cell !== '-');
  const units = cells.filter((cell) => findUnits(cell).length > 0).length;
  return cells.length > 0 && 3 * units >= 2 * cells.length;
}

/** The row or rows above the readings. A second row that holds units gives them; without any row columns are counted. */
function headingsFrom(above: Rows, width: number): readonly Heading[] {
  const filled = above.filter((row) => !isBlank(row) && 2 * row.length >= width);
  const last = filled.at(-1);
  const units = last !== undefined && isRowOfUnits(last) && filled.length > 1 ? last : undefined;
  const names = units === undefined ? last : filled.at(-2);
  return Array.from({ length: width }, (_, column) => {
    const name = names?.[column]?.trim() ?? '';
    const unit = unbracketed(units?.[column] ?? '');
    if (name === '') return { heading: `Column ${column + 1}`, unitText: unit };
    return unit === '' || unit === '-' ? splitHeading(name) : { heading: name, unitText: unit };
  });
}

/** Width, decimal mark, headings, units and the first row of readings, from the first rows of a table. Nothing when no row holds readings. */
export function sniffTable(rows: Rows, given?: DecimalMark): Sniffed | undefined {
  const mark = given === undefined ? markOf(rows) : { decimalMark: given, decimalMarkUnsure: false };
  const firstRow = firstRowOfReadings(rows, usualWidth(rows), mark.decimalMark);
  if (firstRow < 0) return undefined;
  const width = Math.max(usualWidth(rows.slice(firstRow)), 1);
  return { width, ...mark, headings: headingsFrom(rows.slice(0, firstRow), width), firstRow };
}

const delimiters = ['\t', ';', ',', '|'] as const;
export type Delimiter = (typeof delimiters)[number];

/**
 * What parts the cells of a text: the sign that parts most of its lines into the same number of cells, two or more. Quoted parts are
 * left aside. A tab or semicolon goes before a comma, which may be the decimal mark. A comma when nothing parts anything.
 */
export function sniffDelimiter(text: string): Delimiter {
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '').slice(0, sniffedRows);
  const scores = delimiters.map((delimiter) => {
    const counts = lines.map((line) => line.replace(/"[^"]*"/g, '').split(delimiter).length - 1);
    const usual = counts.toSorted((one, other) => one - other)[Math.floor(counts.length / 2)] ?? 0;
    return usual === 0 ? 0 : counts.filter((count) => count === usual).length / lines.length;
  });
  if (scores.every((score) => score === 0)) return ',';
  const best = scores.findIndex((score) => score >= 0.8);
  const highest = scores.indexOf(Math.max(...scores));
  return delimiters[best >= 0 ? best : highest] ?? ',';
}
