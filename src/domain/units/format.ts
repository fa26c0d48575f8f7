import { customaryDecimals } from './table.data.ts';
import { unitById } from './table.ts';
import type { UnitId } from './types.ts';

/** How to round and write a number. Where several are given, `decimals` goes before `uncertainty`, that before `significant`. */
export interface FormatOptions {
  /** Digits after the decimal mark, 0 to 100; negative rounds to tens, hundreds … */
  readonly decimals?: number;
  /** An uncertainty in the same unit: it is rounded to two significant digits and the value to the same place. */
  readonly uncertainty?: number;
  /** Significant digits, 1 to 15. */
  readonly significant?: number;
  readonly decimalMark?: '.' | ',';
}

/** Stands between a number and its unit, so that a line never breaks there. */
export const NO_BREAK_SPACE = '\u00a0';
/** Parts long numbers into threes (NIST SP 811, 10.5.3): never a comma or a point, which may be taken for the decimal mark. */
export const NARROW_NO_BREAK_SPACE = '\u202f';
export const MINUS = '\u2212';

/** Enough to show any figure as it was given, too few to show the noise of arithmetic. */
const DIGITS_OF_A_GIVEN_FIGURE = 12;
/** As many as `toFixed` takes. */
const MOST_DECIMALS = 100;

/**
 * A number as people read it: never in powers of ten, never "-0", thousands parted by narrow gaps from 10 000 on.
 * Without options it is shown as it is, to 12 significant digits without closing noughts.
 */
export function formatNumber(value: number, options: FormatOptions = {}): string {
  if (Number.isNaN(value)) return '—';
  if (!Number.isFinite(value)) return value > 0 ? '∞' : `${MINUS}∞`;
  return written(value, decimalsFrom(value, options) ?? shortestDecimals(value), options.decimalMark ?? '.');
}

/** A number with its unit's symbol. Without options it is rounded as the trade does for that unit. */
export function formatValue(value: number, unit: UnitId, options: FormatOptions = {}): string {
  const decimals = decimalsFrom(value, options) ?? customary(value, unit);
  const number = formatNumber(value, { ...options, decimals });
  const symbol = unitById(unit)?.symbol ?? unit;
  if (symbol === '') return number;
  return symbol === '°' ? `${number}${symbol}` : `${number}${NO_BREAK_SPACE}${symbol}`;
}

/** Decimals that show a figure as it was given: 2 for 0.25. Never negative. */
export function shortestDecimals(value: number): number {
  if (!Number.isFinite(value) || value === 0) return 0;
  const [digits = '', exponent = '0'] = Number(value.toPrecision(DIGITS_OF_A_GIVEN_FIGURE)).toExponential().split('e');
  const after = digits.split('.')[1]?.length ?? 0;
  return Math.max(0, after - Number(exponent));
}

/** Decimals at which two significant digits of an uncertainty end; negative when it is rounded to tens or more. */
export function decimalsOfUncertainty(uncertainty: number): number {
  return 1 - magnitude(uncertainty, 2);
}

function decimalsFrom(value: number, options: FormatOptions): number | undefined {
  if (options.decimals !== undefined) return options.decimals;
  if (options.uncertainty !== undefined && options.uncertainty > 0 && Number.isFinite(options.uncertainty)) {
    return decimalsOfUncertainty(options.uncertainty);
  }
  return options.significant === undefined ? undefined : significantDecimals(value, options.significant);
}

function significantDecimals(value: number, significant: number): number {
  return value === 0 ? 0 : significant - 1 - magnitude(value, significant);
}

/** The unit's custom, or three significant digits; but a small value is never rounded away to nothing. */
function customary(value: number, unit: UnitId): number {
  if (!Number.isFinite(value)) return 0;
  const custom = customaryDecimals[unit];
  if (custom === undefined) return Math.max(0, significantDecimals(value, 3));
  return Math.max(custom, significantDecimals(value, 1));
}

/** The power of ten of the first digit once rounded to so many digits: 2 for 250, −2 for 0.025, 1 for 9.96 at two digits. */
function magnitude(value: number, digits: number): number {
  return Number(value.toExponential(digits - 1).split('e')[1]);
}

/** Rounds at `decimals` (to tens and hundreds when negative) and writes the digits out. */
function written(value: number, decimals: number, decimalMark: string): string {
  const digits = plainDigits(Math.abs(value), decimals);
  const [whole = '0', fraction] = digits.split('.');
  const sign = value < 0 && /[1-9]/u.test(digits) ? MINUS : '';
  return sign + inThrees(whole) + (fraction === undefined ? '' : decimalMark + fraction);
}

/** `toFixed` turns to powers of ten from 10²¹ on; whole numbers of any size are written out through BigInt. */
function plainDigits(size: number, decimals: number): string {
  if (decimals >= 0 && size < 1e21) return size.toFixed(Math.min(decimals, MOST_DECIMALS));
  const step = 10 ** Math.max(0, -decimals);
  const rounded = Math.round(size / step) * step;
  return BigInt(Number.isFinite(rounded) ? rounded : size).toString();
}

/** A number of four digits is left whole, as the style guide allows. */
function inThrees(whole: string): string {
  return whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/gu, NARROW_NO_BREAK_SPACE);
}
