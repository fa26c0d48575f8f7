import type { Refusal } from '../../result.ts';
import { extremesOf } from './trace.ts';
import type { Trace } from './trace.ts';
import type { TraceRefusalCode } from './types.ts';

type Refused = Refusal<TraceRefusalCode>;

export function refuseTrace(code: TraceRefusalCode, message: string, input = 'trace'): Refused {
  return { input, code, message };
}

/** What keeps a trace from being read at all, or nothing. */
export function problemWithTrace({ times, values }: Trace, fewest: number): Refused | undefined {
  if (times.length !== values.length) {
    return refuseTrace('too-few-samples', `The trace has ${times.length} times and ${values.length} values. Give one value for each time.`);
  }
  const { lowest, highest, count } = extremesOf(values);
  if (count < fewest) {
    return refuseTrace('too-few-samples', `The trace holds ${count} readings; at least ${fewest} are needed. Record for longer, or save with more points.`);
  }
  for (let place = 1; place < times.length; place += 1) {
    if (!((times[place] ?? 0) > (times[place - 1] ?? 0))) {
      const message = `The time does not rise at reading ${place + 1} (${times[place - 1]} s, then ${times[place]} s). Check which column is the time, and its unit.`;
      return refuseTrace('times-do-not-rise', message);
    }
  }
  if (!(highest > lowest)) {
    return refuseTrace('no-signal', `Every reading is ${lowest}. Check that the clamp or probe was connected and switched on, and which column was chosen.`);
  }
  return undefined;
}
