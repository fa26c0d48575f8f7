import type { LoggedTable } from '../table/types.ts';

/** A pause longer than this is no running: the record was stopped in between, s. */
const longestStep = 10;

/**
 * How long each row stands for, seconds: the time to the next one. A step back or a pause of more than 10 s counts as nothing. Without
 * a time column every row counts as one, and what is called seconds counts rows.
 */
export function secondsOf(table: LoggedTable): Float64Array {
  const times = table.time?.seconds;
  if (times === undefined) return new Float64Array(table.rows).fill(1);
  return times.map((time, row) => {
    const step = (times[row + 1] ?? Number.NaN) - time;
    return step > 0 && step <= longestStep ? step : 0;
  });
}
