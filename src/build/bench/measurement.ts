/** One measured figure and the budget it is held against. */
export interface Measurement {
  readonly group: string;
  readonly name: string;
  readonly value: number;
  readonly unit: 'kB' | 'MB' | 'ms' | 's' | 'pages/s' | 'times' | 'pages' | 'minutes' | 'parts' | '%';
  /** The most that is allowed; left out where a figure is only shown. */
  readonly limit?: number;
}

export function isWithin({ value, limit }: Measurement): boolean {
  return limit === undefined || value <= limit;
}

/** The middle value of a list that is not empty; NaN of an empty one. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  const lower = sorted[Math.ceil(sorted.length / 2) - 1] ?? Number.NaN;
  return (lower + upper) / 2;
}

/** Milliseconds that one run takes: the median of `runs`, after as many again to warm up as fit in a tenth. */
export function medianMilliseconds(run: () => void, runs: number): number {
  for (let index = 0; index < runs / 10; index += 1) run();
  return median(
    Array.from({ length: runs }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}
