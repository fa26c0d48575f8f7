import { readNumber } from '../../units/number.ts';
import { findUnits } from '../../units/table.ts';

export type DecimalMark = '.' | ',';

const [zero, nine, minus, plus] = [48, 57, 45, 43];
/** Up to 15 digits and 10²² are exact in a double, so one division rounds once and the result is the nearest double. */
const mostDigits = 15;
const powers = Float64Array.from({ length: 23 }, (_, exponent) => 10 ** exponent);

function powerOfTen(exponent: number): number {
  return powers[exponent] ?? 1;
}

/**
 * A plain decimal such as `-12.50`, digit by digit: the way almost every cell of a log is written, many times faster than a general
 * reader. NaN for anything else, an empty text included.
 */
export function plainDecimal(text: string, mark: DecimalMark): number {
  const first = text.charCodeAt(0);
  const isSigned = first === minus || first === plus;
  const length = text.length;
  const decimal = mark === '.' ? 46 : 44;
  if (length > mostDigits + 2) return Number.NaN;
  let [whole, digits, after] = [0, 0, -1];
  for (let place = isSigned ? 1 : 0; place < length; place += 1) {
    const code = text.charCodeAt(place);
    if (code >= zero && code <= nine) {
      whole = whole * 10 + code - zero;
      digits += 1;
    } else if (code === decimal && after < 0) after = digits;
    else return Number.NaN;
  }
  if (digits === 0 || digits > mostDigits) return Number.NaN;
  const value = after < 0 ? whole : whole / powerOfTen(digits - after);
  return first === minus ? -value : value;
}

/** What a cell may hold in place of a number that was not taken. */
const nothing = new Set(['', '-', '--', '---', 'n/a', 'na', 'nan', 'null', 'none', '?', 'n.a.', '#n/a', '*', 'inf', '-inf', 'infinity']);

export function isNothing(text: string): boolean {
  return nothing.has(text.trim().toLowerCase());
}

export interface OddNumber {
  readonly value: number;
  /** What follows the number: a unit, or nothing. */
  readonly rest: string;
}

/** Exponents as programs write them, which the reader for typed text may take otherwise. */
const scientific = /^[+-]?\d*[.,]?\d+[eE][+-]?\d{1,3}$/;

/** The odd forms: spaces, thousands, exponents, other minus signs, a unit behind. Nothing for what is no number. */
export function oddNumber(text: string, mark: DecimalMark): OddNumber | undefined {
  const trimmed = text.replace(/[\u2212\u2010-\u2014]/gu, '-').replace(/\s+/gu, ' ').trim();
  const quick = plainDecimal(trimmed, mark);
  if (!Number.isNaN(quick)) return { value: quick, rest: '' };
  if (scientific.test(trimmed)) return { value: Number(trimmed.replace(',', '.')), rest: '' };
  const read = readNumber(mark === ',' ? swapMarks(trimmed) : trimmed);
  if (read.kind === 'number') return read.letterUnit === undefined && isUnit(read.rest) ? { value: read.value, rest: read.rest } : undefined;
  // `1,234` may be a decimal to a person who types; in a table whose mark is known it is the other thing.
  if (read.kind === 'ambiguous') return { value: Number(read.whole), rest: '' };
  return undefined;
}

/** What follows a number must be a unit: `1/min` is one, and not the number 1. */
function isUnit(rest: string): boolean {
  return rest === '' || findUnits(rest).length > 0;
}

/** Points for commas and the other way round, so that one reader serves both. */
function swapMarks(text: string): string {
  return text.replace(/[.,]/g, (sign) => (sign === '.' ? ',' : '.'));
}
