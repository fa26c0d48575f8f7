/** Short and long trim of one bank at one running state, percent. Positive adds fuel. */
export interface TrimPair {
  readonly short: number;
  readonly long: number;
}

/** Totals of the trims, percent, at the states that were read. */
export interface BankTotals {
  readonly idle?: number;
  readonly cruise?: number;
}

/** Beyond this, plus or minus, a total is worth looking into; and so is such a difference between banks. Common practice. */
export const investigateBeyond = 10;

/** The total as it is usually reckoned in the trade: plain sum. */
export function trimSum(pair: TrimPair): number {
  return pair.short + pair.long;
}

/** The total as the control unit applies it: one factor on top of the other. */
export function trimProduct(pair: TrimPair): number {
  return pair.short + pair.long + (pair.short * pair.long) / 100;
}

export type TrimPattern =
  | 'within-usual-band'
  | 'adding-fuel'
  | 'adding-at-idle'
  | 'adding-with-load'
  | 'adding-everywhere'
  | 'removing-fuel'
  | 'removing-at-idle'
  | 'removing-with-load'
  | 'removing-everywhere'
  | 'one-bank-adding'
  | 'one-bank-removing'
  | 'banks-opposite'
  | 'banks-apart'
  | 'mixed';

/** Patterns of one bank that a second bank can share or not. */
type BankPattern = Exclude<TrimPattern, 'one-bank-adding' | 'one-bank-removing' | 'banks-opposite' | 'banks-apart'>;

function isBeyond(sum: number): boolean {
  return Math.abs(sum) > investigateBeyond;
}

/**
 * One bank. With both states read, the correction counts as seen everywhere when the smaller total is more than half the larger
 * and of the same sign; otherwise it belongs to the state with the larger.
 */
function bankPattern({ idle, cruise }: BankTotals): BankPattern {
  const sums = [idle, cruise].filter((sum) => sum !== undefined);
  if (!sums.some(isBeyond)) return 'within-usual-band';
  const largest = sums.reduce((left, right) => (Math.abs(right) > Math.abs(left) ? right : left));
  const way = largest > 0 ? 'adding' : 'removing';
  if (idle === undefined || cruise === undefined) return `${way}-fuel`;
  const other = largest === idle ? cruise : idle;
  if (isBeyond(other) && Math.sign(other) !== Math.sign(largest)) return 'mixed';
  if (other / largest > 0.5) return `${way}-everywhere`;
  return largest === idle ? `${way}-at-idle` : `${way}-with-load`;
}

function direction(pattern: BankPattern): 'adding' | 'removing' | 'mixed' | 'none' {
  if (pattern === 'within-usual-band') return 'none';
  if (pattern === 'mixed') return 'mixed';
  return pattern.startsWith('adding') ? 'adding' : 'removing';
}

function bankDifferences(bank1: BankTotals, bank2: BankTotals): readonly number[] {
  const pairs = [
    [bank1.idle, bank2.idle],
    [bank1.cruise, bank2.cruise],
  ];
  return pairs.flatMap(([one, two]) => (one === undefined || two === undefined ? [] : [Math.abs(one - two)]));
}

/** The pattern the totals make; what each points to is common practice. */
export function trimPattern(bank1: BankTotals, bank2?: BankTotals): TrimPattern {
  const first = bankPattern(bank1);
  if (bank2 === undefined) return first;
  const second = bankPattern(bank2);
  const ways = [direction(first), direction(second)];
  if (ways.every((way) => way === 'none')) return bankDifferences(bank1, bank2).some(isBeyond) ? 'banks-apart' : first;
  if (ways.includes('mixed')) return 'mixed';
  if (ways.includes('none')) return ways.includes('adding') ? 'one-bank-adding' : 'one-bank-removing';
  if (ways[0] !== ways[1]) return 'banks-opposite';
  return first === second ? first : 'mixed';
}
