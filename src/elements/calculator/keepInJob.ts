import type { CalculatorDefinition } from '../../domain/calculators/definition.ts';
import type { PresentedOutput } from '../../domain/calculators/present.ts';
import { calculationBody } from '../../domain/jobs/calculation.ts';
import { appendEvent } from '../../domain/jobs/edit.ts';
import { checkEvent } from '../../domain/jobs/eventShapes.ts';
import { newId, now } from '../jobs/identity.ts';
import { openJobStore } from '../storage/jobs.ts';

/** Writes a calculation into a job of this device; gives back what went wrong, or nothing. */
export async function keepInJob(
  id: string,
  definition: CalculatorDefinition,
  texts: Readonly<Record<string, string>>,
  outputs: readonly PresentedOutput[],
): Promise<string | undefined> {
  const store = openJobStore();
  try {
    const job = await store.read(id);
    if (!job.ok) return job.error.message;
    if (job.value === undefined) return 'Not kept: this job is no longer on this device. Open a job, then come back.';
    const changed = appendEvent(job.value, calculationBody(definition, texts, outputs), newId(), now());
    const checked = checkEvent(changed.events.at(-1), 'the calculation');
    if (!checked.ok) return `Not kept: ${checked.at} ${checked.problem}.`;
    const written = await store.write(changed);
    return written.ok ? undefined : `Not kept. ${written.error.message}`;
  } finally {
    store.close();
  }
}
