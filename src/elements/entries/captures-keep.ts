import { captureBody, offerOutcomes, writeIntoJob } from '../captures/keepCapture.ts';
import { capturesOnDemand } from '../captures/onDemand.ts';

capturesOnDemand.ignitionBenchBookCaptures = { captureBody, offerOutcomes, writeIntoJob };
