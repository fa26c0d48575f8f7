import type { Refusal, Result } from '../result.ts';
import { success } from '../result.ts';
import { describeEvent } from './describe.ts';
import { mergeJobs } from './edit.ts';
import type { MergeCode } from './edit.ts';
import type { Job } from './types.ts';

/** What taking in a copy of a job would do. */
export interface ImportPlan {
  /** `new`: not on this device yet. `same`: both hold the same entries. `older`: this device holds more. `adds`: the copy holds entries this device has not. */
  readonly kind: 'new' | 'same' | 'older' | 'adds';
  /** The entries that would come in, in their order. */
  readonly added: readonly { readonly at: string; readonly title: string }[];
  /** How many entries only this device holds; they stay. */
  readonly onlyHere: number;
  /** The job as it would be kept. */
  readonly job: Job;
}

/** Works out what an import would do, and does nothing. Refuses copies that `mergeJobs` refuses. */
export function planImport(here: Job | undefined, incoming: Job): Result<ImportPlan, Refusal<MergeCode>> {
  const added = missingFrom(here, incoming).map((event) => ({ at: event.at, title: describeEvent(event).title }));
  if (here === undefined) return success({ kind: 'new', added, onlyHere: 0, job: incoming });
  const merged = mergeJobs(here, incoming);
  if (!merged.ok) return merged;
  const onlyHere = missingFrom(incoming, here).length;
  const kind = added.length > 0 ? 'adds' : onlyHere > 0 ? 'older' : 'same';
  return success({ kind, added, onlyHere, job: merged.value });
}

function missingFrom(one: Job | undefined, other: Job): Job['events'] {
  const ids = new Set(one?.events.map((event) => event.id));
  return other.events.filter((event) => !ids.has(event.id));
}
