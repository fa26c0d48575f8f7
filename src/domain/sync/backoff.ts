const first = 5;
const longest = 300;

/** Seconds until the next try after so many failures in a row: 5, 10, 20 … at most five minutes. */
export function secondsUntilNext(failures: number): number {
  return Math.min(longest, first * 2 ** Math.max(0, Math.min(failures, 20) - 1));
}
