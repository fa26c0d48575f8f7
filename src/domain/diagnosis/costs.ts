import type { AccessState, FaultModel, PartCost, TestModel } from './types.ts';

/** A part's price as minutes of the shop's work that it would pay for. Estimates, common practice, no source. */
export const partCostMinutes: Readonly<Record<PartCost, number>> = { none: 0, low: 15, medium: 60, high: 180 };

/** Minutes to take an engine cover off and put it back. An estimate, common practice. */
export const coverMinutes = 5;

/** Minutes to see whether a repair cured it: codes cleared, engine run as it used to misfire, codes read again. An estimate. */
export const proofMinutes = 15;

/** Minutes charged for a fault that this book does not hold: looking on by other means. An estimate. */
export const beyondBookMinutes = 480;

/**
 * Minutes a test takes as the car stands: the cover comes off first where it must, what is open already is saved, and where the same
 * test was done at another place of this car everything is set up still. At least 1 minute.
 */
export function testMinutes(test: TestModel, open: readonly AccessState[] = [], doneElsewhere = false): number {
  const cover = test.needsCoverOff && !open.includes('cover-off') ? coverMinutes : 0;
  const saved = (['plugs-out', 'raised'] as const).reduce((sum, state) => sum + (open.includes(state) ? (test.access[state] ?? 0) : 0), 0);
  const first = test.minutes + cover - saved;
  return Math.max(1, doneElsewhere ? Math.min(first, test.minutesAgain ?? first) : first);
}

/** Cost of putting a fault right, in minutes: the work, the part at the shop's rate, and the run that shows whether it helped. */
export function repairCost(fault: FaultModel): number {
  return fault.repairMinutes + partCostMinutes[fault.partCost] + proofMinutes;
}
