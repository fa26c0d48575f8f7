import type { Refusal, Result } from '../../result.ts';
import { failure } from '../../result.ts';
import { valuesOf } from '../columns/match.ts';
import type { ColumnMatch } from '../columns/match.ts';
import { toothTimes } from '../crank/teeth.ts';
import type { LoggedTable } from '../table/types.ts';
import { refuseTrace } from './checks.ts';
import type { Trace } from './trace.ts';
import type { TraceRefusalCode } from './types.ts';

/** A matched column as a trace in the quantity's own unit. Nothing when the table has no time. */
export function traceFrom(table: LoggedTable, match: ColumnMatch): Trace | undefined {
  return table.time && { times: table.time.seconds, values: valuesOf(table, match) };
}

/**
 * The moments a trigger channel rises through the middle of its height, seconds: the marks that tell cylinders apart. Refuses as the
 * teeth of a crank sensor are refused, and `no-event` fewer than two rises.
 */
export function marksFrom(trace: Trace): Result<readonly number[], Refusal<TraceRefusalCode>> {
  const rises = toothTimes(trace);
  if (!rises.ok) return rises;
  if (rises.value.length < 2) {
    return failure(refuseTrace('no-event', `The trigger rises ${rises.value.length} times in the record; at least 2 are needed. Check its range, and record at least two turns of the engine.`, 'trigger'));
  }
  return { ok: true, value: [...rises.value] };
}
