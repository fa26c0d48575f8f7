import { limitsText as textOfLimits } from '../domain/measurement/sentence.ts';
import type { Entry } from '../schemas/index.ts';

/** The limits of a range in words and figures: `0.3 to 1.0 Ω`, `at least 75 %`, `at most 0.2 V`. */
export function limitsText(range: Pick<Entry<'ranges'>, 'low' | 'high' | 'unit'>): string {
  const { low, high, unit } = range;
  return textOfLimits({ ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), unit, variation: 'none' });
}
