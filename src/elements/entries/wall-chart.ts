import { onDemand } from '../calculator/onDemand.ts';
import { showWallChart } from '../calculator/wallChart.ts';

onDemand.ignitionBenchBookWallChart = showWallChart;
