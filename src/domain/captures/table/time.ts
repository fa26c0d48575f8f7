import { findUnit, unitById } from '../../units/table.ts';
import type { LoggedTable, NumberColumn, TableColumn, TableProblem } from './types.ts';

/** Words that stand over a column of times. */
const timeWord = /\b(time|elapsed|timestamp|seconds?|millis(?:econds)?|sec|clock)\b|^t$/i;

const halfDay = 43_200;
const day = 86_400;
const mostNamed = 5;

function isNumbers(column: TableColumn): column is NumberColumn {
  return column.kind === 'numbers';
}

/** Of a longer column every so many-th row tells as much as all of them. */
const mostLookedAt = 100_000;

/** Rows at which the values do not go back, of all rows looked at. */
function risingShare({ values }: NumberColumn): number {
  const stride = Math.max(1, Math.floor(values.length / mostLookedAt));
  let [rising, seen] = [0, 0];
  for (let row = 1; row < values.length; row += stride) {
    seen += 1;
    if ((values[row] ?? Number.NaN) >= (values[row - 1] ?? Number.NaN)) rising += 1;
  }
  return rising / Math.max(1, seen);
}

/** It goes up for certain and does not stay where it is. */
function couldBeTime(column: NumberColumn): boolean {
  const { values } = column;
  return risingShare(column) > 0.98 && (values.at(-1) ?? 0) > (values[0] ?? 0) && column.filled > 0.98 * values.length;
}

/** A column that is called a time may go back now and then: the record was stopped. It must rise more often than not. */
const namedRises = 0.5;

function isCalledTime(column: TableColumn): boolean {
  return isNumbers(column) && timeWord.test(column.heading) && risingShare(column) >= namedRises;
}

/** In seconds or the like, and rising: a pulse width is in milliseconds too, but does not rise all through. */
function isInTime(column: TableColumn): boolean {
  return isNumbers(column) && findUnit(column.unitText, 'time') !== undefined && couldBeTime(column);
}

/** The time column: by its heading first, then by its unit, then the first column if it rises all through. */
function placeOfTimeColumn(columns: readonly TableColumn[]): number {
  const called = columns.findIndex(isCalledTime);
  if (called >= 0) return called;
  const written = columns.findIndex(isInTime);
  if (written >= 0) return written;
  const [first] = columns;
  return first !== undefined && isNumbers(first) && couldBeTime(first) ? 0 : -1;
}

/** Milliseconds of the unit table are its base of time. */
function secondsPer(column: NumberColumn): number | undefined {
  const word = /millis|\bms\b/i.test(column.heading) ? 'ms' : column.unitText;
  const [unit, second] = [findUnit(word, 'time'), unitById('s')];
  return unit && second ? unit.factor / second.factor : undefined;
}

/**
 * Time of each row in seconds. A clock that passes midnight goes on; a time that goes back otherwise is named, for the record was
 * stopped and begun again there. Without a unit, seconds are assumed and said to be.
 */
export function findTime(columns: readonly TableColumn[], lineOf: (row: number) => number, note: (problem: TableProblem) => void): LoggedTable['time'] {
  const place = placeOfTimeColumn(columns);
  const column = columns[place];
  if (column === undefined || !isNumbers(column)) return undefined;
  const factor = secondsPer(column);
  let seconds = factor === undefined || factor === 1 ? column.values : column.values.map((value) => value * factor);
  let [shift, before, named] = [0, Number.NaN, 0];
  for (let row = 0; row < seconds.length; row += 1) {
    const now = (seconds[row] ?? Number.NaN) + shift;
    if (before - now > halfDay && before - now < day) {
      // The column itself stays as it was written.
      if (seconds === column.values) seconds = seconds.slice();
      shift += day;
    } else if (now < before && named < mostNamed) {
      named += 1;
      note({ line: lineOf(row), column: column.heading, found: 'a time before the one above', expected: 'a time that rises; what comes after is taken as a second record' });
    }
    before = (seconds[row] ?? Number.NaN) + shift;
    if (shift !== 0) seconds[row] = before;
  }
  return { column: place, seconds, unitAssumed: factor === undefined };
}
