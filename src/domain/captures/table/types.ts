import type { DecimalMark } from './number.ts';

/** One thing in a file that could not be taken as it stands. What could be read is kept. */
export interface TableProblem {
  /** Line of the file, from 1. */
  readonly line: number;
  /** Heading of the column, where one is meant. */
  readonly column: string | undefined;
  readonly found: string;
  readonly expected: string;
}

export interface Heading {
  /** As it stands in the file, without the unit. */
  readonly heading: string;
  /** The unit as it stands in the file; empty where none does. */
  readonly unitText: string;
}

export interface NumberColumn extends Heading {
  readonly kind: 'numbers';
  /** One for each row; NaN where the cell held no number. */
  readonly values: Float64Array;
  /** How many are numbers. */
  readonly filled: number;
}

/** A column of words, such as on and off: for each row the place of its word in `words`. */
export interface WordColumn extends Heading {
  readonly kind: 'words';
  readonly words: readonly string[];
  readonly codes: Uint16Array;
}

export type TableColumn = NumberColumn | WordColumn;

export interface LoggedTable {
  readonly columns: readonly TableColumn[];
  readonly rows: number;
  readonly decimalMark: DecimalMark;
  /** Every comma in a number may as well part thousands; the reader of the file must be asked. */
  readonly decimalMarkUnsure: boolean;
  /** Place of the column that holds the time, and the time of each row in seconds. Nothing where no column rises like a time. */
  readonly time: { readonly column: number; readonly seconds: Float64Array; readonly unitAssumed: boolean } | undefined;
  /** The first ones, in order of the file. */
  readonly problems: readonly TableProblem[];
  /** All of them. */
  readonly problemCount: number;
}

export type TableRefusalCode = 'empty' | 'no-numbers' | 'too-few-rows';
