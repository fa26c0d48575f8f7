import { showMeterSelect } from '../calculator/meterSelect.ts';
import { onDemand } from '../calculator/onDemand.ts';

onDemand.ignitionBenchBookMeterSelect = showMeterSelect;
