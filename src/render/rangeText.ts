import { formatValue } from '../domain/units/format.ts';
import type { Entry } from '../schemas/index.ts';

/** The limits in words and figures: `0.3 to 1 Ω`, `at least 75 %`, `at most 0.2 V`. */
export function limitsText(range: Pick<Entry<'ranges'>, 'low' | 'high' | 'unit'>): string {
  const { low, high, unit } = range;
  if (low !== undefined && high !== undefined) return `${formatPlain(low)} to ${formatValue(high, unit)}`;
  if (low !== undefined) return `at least ${formatValue(low, unit)}`;
  if (high !== undefined) return `at most ${formatValue(high, unit)}`;
  return '';
}

/** A limit as its author wrote it, with a true minus sign. */
function formatPlain(value: number): string {
  return String(value).replace('-', '−');
}
