import { partCostMinutes } from '../diagnosis/costs.ts';
import { perCent } from '../diagnosis/labels.ts';
import type { JobRenewal } from './book.ts';

export interface RenewalTradeOff {
  /** Renewing it in this visit: the extra work, and the part as minutes of the shop's work. */
  readonly nowMinutes: number;
  /** Renewing it in a visit of its own: opening and closing up again, and the part. */
  readonly laterMinutes: number;
  /** Chance of needing it later above which renewing now is the cheaper; above 1, it never is. */
  readonly breakEven: number;
  readonly sentence: string;
}

/**
 * Renew a part in the same visit, or wait? Now costs `nowMinutes` for certain; waiting costs `laterMinutes` with the chance that it is needed.
 * The two are level at now / later. The figures are the book's estimates.
 */
export function renewalTradeOff(renewal: JobRenewal): RenewalTradeOff {
  const part = partCostMinutes[renewal.partCost];
  const nowMinutes = renewal.minutesNow + part;
  const laterMinutes = renewal.minutesLater + part;
  const breakEven = nowMinutes === 0 ? 0 : nowMinutes / laterMinutes;
  return { nowMinutes, laterMinutes, breakEven, sentence: sentence(nowMinutes, laterMinutes, breakEven) };
}

function sentence(now: number, later: number, breakEven: number): string {
  const costs = `Renewed now it costs about ${now} minutes, part included; in a visit of its own about ${later}.`;
  if (breakEven >= 1) return `${costs} Waiting is never the dearer: renew it now only if it is bad already.`;
  if (breakEven === 0) return `${costs} Renew it now: it costs nothing more.`;
  return `${costs} Now is the cheaper if the chance that it will be needed later is above ${perCent(breakEven)}.`;
}
