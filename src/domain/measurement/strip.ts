import { formatNumber } from '../units/format.ts';
import type { Judgement, Limits } from './types.ts';

/**
 * A range drawn as a strip. Positions are fractions of the strip, 0 (left end) to 1 (right end); `from` and `to` are the ends
 * of the scale in the unit of the limits. The scale hangs on the limits alone, so the strip does not jump when a reading comes.
 */
export interface StripModel {
  readonly from: number;
  readonly to: number;
  /** Where the limits stand; absent for an open end. */
  readonly low?: number;
  readonly high?: number;
  /** Where the corrected reading stands, held at the end of the strip when it lies past it. */
  readonly value?: number;
  /** Which end of the scale the reading lies past. An open circuit is past the right end. */
  readonly beyond?: 'left' | 'right';
  /** The reading less and plus its expanded uncertainty, cut off at the ends; absent when both lie past one end. */
  readonly spread?: { readonly from: number; readonly to: number };
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
}

export interface StripOptions {
  readonly decimalMark?: '.' | ',';
}

const WANTED_TICKS = 5;

/** The strip for these limits, with the reading on it where there is one. The limits must be finite and in order, as `judge` asks. */
export function stripModel(limits: Limits, judgement?: Judgement, options: StripOptions = {}): StripModel {
  const { from, to } = scaleFor(limits);
  const position = (value: number): number => (value - from) / (to - from);
  return {
    from,
    to,
    ...(limits.low === undefined ? {} : { low: position(limits.low) }),
    ...(limits.high === undefined ? {} : { high: position(limits.high) }),
    ...(judgement ? readingOn(position, judgement) : {}),
    ticks: ticksBetween(from, to, options).map(({ value, label }) => ({ at: position(value), label })),
  };
}

/** Half a range of room on each side; a one-ended range takes the size of its limit. It does not go below 0 where the limits do not. */
function scaleFor(limits: Limits): { readonly from: number; readonly to: number } {
  const low = limits.low ?? Math.min(0, limits.high ?? 0);
  const high = limits.high ?? Math.max(0, low);
  const size = high > low ? high - low : Math.abs(high) || 1;
  const room = size / 2;
  const bottom = low - room;
  return { from: low >= 0 && bottom < size * 1e-9 ? 0 : bottom, to: high + room };
}

function readingOn(position: (value: number) => number, judgement: Judgement): Pick<StripModel, 'value' | 'beyond' | 'spread'> {
  const { corrected, expandedUncertainty } = judgement;
  if (corrected === 'open') return { value: 1, beyond: 'right' };
  const at = position(corrected);
  const spread = { from: held(position(corrected - expandedUncertainty)), to: held(position(corrected + expandedUncertainty)) };
  return {
    value: held(at),
    ...(at < 0 ? { beyond: 'left' as const } : {}),
    ...(at > 1 ? { beyond: 'right' as const } : {}),
    ...(spread.to > spread.from ? { spread } : {}),
  };
}

function held(fraction: number): number {
  return Math.min(1, Math.max(0, fraction));
}

/** Round figures inside the scale, 1, 2 or 5 times a power of ten apart. */
function ticksBetween(from: number, to: number, options: StripOptions): readonly { readonly value: number; readonly label: string }[] {
  const step = roundStep((to - from) / WANTED_TICKS);
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => {
    const value = (first + index) * step;
    return { value, label: formatNumber(value, { ...options, decimals }) };
  });
}

/** The next of 1, 2, 5, 10 times a power of ten at or above `least`. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const multiple = [1, 2, 5, 10].find((candidate) => candidate * power >= least * (1 - 1e-9)) ?? 10;
  return multiple * power;
}
