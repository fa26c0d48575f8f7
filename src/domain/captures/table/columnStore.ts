import { clockSeconds } from './clock.ts';
import type { Sniffed } from './headings.ts';
import { isNothing, oddNumber, plainDecimal } from './number.ts';
import type { DecimalMark } from './number.ts';
import type { Heading, TableColumn } from './types.ts';

/** Where the cells of one column go. */
export interface ColumnStore {
  add(cell: string, row: number, line: number): void;
  finish(rows: number): TableColumn;
}

type Complain = (line: number, column: string, found: string, expected: string) => void;

const firstLength = 1024;
/** Longer columns are not made at the start, whatever was expected: 2 million numbers are 16 MB. */
const longestFirst = 2_000_000;
/** Cells that must be numbers for a column to count as one of numbers. */
const mostlyNumbers = 0.6;
/** More different words than this are remarks and not states. */
const mostWords = 250;

function doubled(values: Float64Array): Float64Array {
  const longer = new Float64Array(values.length * 2);
  longer.set(values);
  return longer;
}

/** A column of numbers. Cells in another form are read with care; what is none becomes NaN and is named with its line. */
function numberStore(heading: Heading, mark: DecimalMark, complain: Complain, length: number): ColumnStore {
  let values = new Float64Array(length);
  let [filled, unitText] = [0, heading.unitText];
  const careful = (cell: string, line: number): number => {
    if (isNothing(cell)) return Number.NaN;
    const clock = clockSeconds(cell);
    if (!Number.isNaN(clock)) {
      unitText ||= 's';
      return clock;
    }
    const odd = oddNumber(cell, mark);
    if (odd === undefined) complain(line, heading.heading, `"${cell.trim().slice(0, 40)}"`, 'a number');
    else if (odd.rest !== '') {
      if (unitText === '') unitText = odd.rest;
      else if (odd.rest !== unitText) {
        complain(line, heading.heading, `the unit ${odd.rest}`, `the unit ${unitText}, as before`);
        return Number.NaN;
      }
    }
    return odd?.value ?? Number.NaN;
  };
  return {
    add(cell, row, line) {
      if (row >= values.length) values = doubled(values) as Float64Array<ArrayBuffer>;
      let value = plainDecimal(cell, mark);
      // NaN alone differs from itself: the quickest test there is.
      if (value !== value) value = careful(cell, line);
      if (value === value) filled += 1;
      values[row] = value;
    },
    finish: (rows) => ({ kind: 'numbers', heading: heading.heading, unitText, values: values.subarray(0, rows), filled }),
  };
}

/** A column of words. After too many different ones the rest share a last place, "other". */
function wordStore(heading: Heading): ColumnStore {
  let codes = new Uint16Array(firstLength);
  const places = new Map<string, number>();
  return {
    add(cell, row) {
      if (row >= codes.length) {
        const longer = new Uint16Array(codes.length * 2);
        longer.set(codes);
        codes = longer;
      }
      const word = places.size < mostWords || places.has(cell) ? cell.trim() : 'other';
      const place = places.get(word) ?? places.size;
      places.set(word, place);
      codes[row] = place;
    },
    finish: (rows) => ({ kind: 'words', ...heading, words: [...places.keys()], codes: codes.subarray(0, rows) }),
  };
}

function holdsNumbers(cells: readonly string[], mark: DecimalMark): boolean {
  const filled = cells.filter((cell) => !isNothing(cell));
  const numbers = filled.filter((cell) => oddNumber(cell, mark) !== undefined || !Number.isNaN(clockSeconds(cell)));
  return numbers.length >= mostlyNumbers * filled.length;
}

/** A store for each column, of the kind its first cells ask for. With as many rows as were expected no column has to grow. */
export function columnStores({ headings, decimalMark }: Sniffed, rows: readonly (readonly string[])[], complain: Complain, expectedRows = 0): readonly ColumnStore[] {
  const length = Math.min(longestFirst, Math.max(firstLength, Math.ceil(expectedRows)));
  return headings.map((heading, column) => {
    const cells = rows.map((row) => row[column] ?? '');
    return holdsNumbers(cells, decimalMark) ? numberStore(heading, decimalMark, complain, length) : wordStore(heading);
  });
}
