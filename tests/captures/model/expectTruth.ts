import { expect } from 'vitest';
import type { Tally } from './random.ts';

export interface Expected {
  /** 95 of 100 cases lie this close to the truth, and every case this close. In the unit the errors were counted in. */
  readonly usual: number;
  readonly largest: number;
  /** Fewest cases that must have been counted. */
  readonly cases: number;
}

/** The errors are within the stated tolerances and the 95 % intervals hold the truth 93 to 97 times in 100. */
export function expectTruth(tally: Tally, name: string, { usual, largest, cases }: Expected): void {
  expect(tally.errors.length, `${name}: cases`).toBeGreaterThanOrEqual(cases);
  expect(tally.usual, `${name}: 95 of 100 within`).toBeLessThan(usual);
  expect(tally.largest, `${name}: all within`).toBeLessThan(largest);
  expect(tally.coverage, `${name}: coverage`).toBeGreaterThanOrEqual(0.93);
  expect(tally.coverage, `${name}: coverage`).toBeLessThanOrEqual(0.97);
  // No lean to one side: the mean error is small beside the usual one.
  expect(Math.abs(tally.mean), `${name}: bias`).toBeLessThan(0.15 * usual);
}
