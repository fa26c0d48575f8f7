import { chances, rectangular, verdictFrom } from '../measurement/judge.ts';
import { verdictWord } from '../measurement/sentence.ts';
import type { VerdictWord } from '../measurement/types.ts';
import type { Refusal } from '../result.ts';
import type { UnitId } from '../units/types.ts';
import { showFigure } from './show.ts';

/** The ends of a range; either may be open. */
export interface Ends {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** The four verdicts as people see them. */
export const verdictWords: Readonly<Record<VerdictWord, string>> = {
  inside: verdictWord('inside'),
  below: verdictWord('below'),
  above: verdictWord('above'),
  'too-close-to-call': verdictWord('too-close-to-call'),
};

/**
 * Where a dial reading lies when nothing is known of the gauge but how finely it was read: half a step of the last digit either
 * way, evenly spread (JCGM 100, 4.3.7). Value, step and ends are in one unit.
 */
export function verdictByResolution(value: number, resolution: number, { low, high }: Ends): VerdictWord {
  const ends = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
  const { below, inside, above } = chances(value, rectangular(resolution / 2), ends);
  return verdictFrom(below, inside, above);
}

/** Refuses limits that are the wrong way round, as `low-above-high`. */
export function refuseCrossedLimits({ low, high }: Ends, unit: UnitId): Refusal | undefined {
  if (low === undefined || high === undefined || low <= high) return undefined;
  const message = `Lower limit: ${showFigure(low, unit)} is above the upper limit of ${showFigure(high, unit)}. Change them over, or check their units.`;
  return { input: 'low', code: 'low-above-high', message };
}
