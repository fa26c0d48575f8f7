import { appendEvent } from '../../domain/jobs/edit.ts';
import { checkEvent } from '../../domain/jobs/eventShapes.ts';
import type { JobEventBody } from '../../domain/jobs/types.ts';
import { openJobStore } from '../storage/jobs.ts';
import { newId, now } from './identity.ts';

/** Writes an entry into a job of this device from another page than its bench; gives back what went wrong, or nothing. `what` names the entry in that. */
export async function writeIntoJob(id: string, body: JobEventBody, what = 'the entry'): Promise<string | undefined> {
  const store = openJobStore();
  try {
    const job = await store.read(id);
    if (!job.ok) return job.error.message;
    if (job.value === undefined) return 'Not kept: this job is no longer on this device. Open a job, then come back.';
    const changed = appendEvent(job.value, body, newId(), now());
    const checked = checkEvent(changed.events.at(-1), what);
    if (!checked.ok) return `Not kept: ${checked.at} ${checked.problem}.`;
    const written = await store.write(changed);
    return written.ok ? undefined : `Not kept. ${written.error.message}`;
  } finally {
    store.close();
  }
}
