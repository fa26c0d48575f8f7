import { captureBody, offerOutcomes } from '../captures/keepCapture.ts';
import { writeIntoJob } from '../jobs/writeIntoJob.ts';
import { capturesOnDemand } from '../captures/onDemand.ts';

capturesOnDemand.ignitionBenchBookCaptures = { captureBody, offerOutcomes, writeIntoJob };
