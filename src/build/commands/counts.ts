/** How many tests passed, failed and were skipped. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export function addCounts(a: Counts, b: Counts): Counts {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/** `12 passed, 0 failed`, and `, 3 skipped` only when there are any. */
export function countLine({ passed, failed, skipped }: Counts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}
