/** `npm run bench`: sizes and times of the built book against their budgets, as a table or with `--json`. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { measureInBrowser } from '../bench/inBrowser.ts';
import { isWithin, type Measurement } from '../bench/measurement.ts';
import { measureScriptsOnDemand, measureSizes } from '../bench/sizes.ts';
import { measureAdvice, measureCalculators } from '../bench/timings.ts';

const folder = join(import.meta.dirname, '../../../dist/site');

/** Each group under its heading: a kind of page, or a kind of work. */
function table(measurements: readonly Measurement[]): string {
  const groups = new Map<string, Measurement[]>();
  for (const measurement of measurements) groups.set(measurement.group, [...(groups.get(measurement.group) ?? []), measurement]);
  return [...groups].map(([group, members]) => `${group}\n${members.map(line).join('\n')}`).join('\n');
}

function line(measurement: Measurement): string {
  const { name, value, unit, limit } = measurement;
  const figure = `${value.toFixed(unit === 'ms' ? 3 : 1).padStart(10)} ${unit}`;
  const verdict = limit === undefined ? '' : `  of at most ${String(limit).padStart(3)} ${unit}  ${isWithin(measurement) ? 'pass' : 'FAIL'}`;
  return `  ${name.padEnd(26)}${figure}${verdict}`;
}

if (!existsSync(join(folder, 'index.html'))) {
  console.error('There is no built book to measure. Run "npm run build" first.');
  process.exit(1);
}
const measurements = [
  ...measureSizes(folder),
  ...measureScriptsOnDemand(folder),
  ...measureCalculators(),
  ...measureAdvice(folder),
  ...(await measureInBrowser(folder)),
];
const failed = measurements.filter((measurement) => !isWithin(measurement));
if (process.argv.includes('--json')) {
  console.log(JSON.stringify(measurements.map((measurement) => ({ ...measurement, pass: isWithin(measurement) })), null, 2));
} else {
  console.log(table(measurements));
  console.log(failed.length === 0 ? '\nEverything is within its budget.' : `\n${failed.length} over budget.`);
}
process.exitCode = failed.length === 0 ? 0 : 1;
