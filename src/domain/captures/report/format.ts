import { formatNumber, MINUS, NO_BREAK_SPACE } from '../../units/format.ts';
import type { Figure } from '../numbers/figure.ts';
import type { CaptureAnswers } from './types.ts';

/** Figures in the words of one reader. */
export interface Pen {
  /** `6.21 ± 0.03`: the half width that holds 95 times in 100; from a single event the value alone. */
  readonly figure: (figure: Figure | undefined, factor?: number) => string;
  /** A plain number to three figures. */
  readonly number: (value: number | undefined, decimals?: number) => string;
  /** With its sign: trims. */
  readonly signed: (value: number | undefined) => string;
}

export const nothingTold = '–';

export function penOf({ decimalMark = '.' }: CaptureAnswers): Pen {
  const number = (value: number | undefined, decimals?: number) => {
    if (value === undefined || Number.isNaN(value)) return nothingTold;
    return formatNumber(value, decimals === undefined ? { significant: 3, decimalMark } : { decimals, decimalMark });
  };
  return {
    number,
    figure: (figure, factor = 1) => {
      if (figure === undefined) return nothingTold;
      const [value, half] = [figure.value * factor, figure.halfWidth95 * factor];
      if (!Number.isFinite(half) || half === 0) return number(value);
      const options = { uncertainty: half, decimalMark } as const;
      return `${formatNumber(value, options)}${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${formatNumber(half, options)}`;
    },
    signed: (value) => (value === undefined ? nothingTold : `${value < 0 ? MINUS : '+'}${formatNumber(Math.abs(value), { decimals: 1, decimalMark })}`),
  };
}

/** Cylinder 0 is every event where no firing order was given. */
export function cylinderWords(cylinder: number): string {
  return cylinder === 0 ? 'All events' : `Cylinder ${cylinder}`;
}

/** `2`, `2 and 3`, `1, 2 and 3`. */
export function listWords(items: readonly (string | number)[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
