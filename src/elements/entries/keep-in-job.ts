import { keepInJob } from '../calculator/keepInJob.ts';
import { onDemand } from '../calculator/onDemand.ts';

onDemand.ignitionBenchBookKeepInJob = keepInJob;
