import type { writeIntoJob } from '../jobs/writeIntoJob.ts';
import type { captureBody, offerOutcomes } from './keepCapture.ts';

/** Where the script that is fetched when a result is kept leaves its functions. */
export interface KeepingFunctions {
  readonly captureBody: typeof captureBody;
  readonly offerOutcomes: typeof offerOutcomes;
  readonly writeIntoJob: typeof writeIntoJob;
}

export const capturesOnDemand = globalThis as { ignitionBenchBookCaptures?: KeepingFunctions };
