/**
 * `npm run bench`: sizes and times of the built book against their budgets, as a table or with `--json`.
 * `npm run bench -- --scale [procedures,ranges]`: builds a generated book of that many entries beside a plain site; takes minutes.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { measureCaptures } from '../bench/captures.ts';
import { measureInBrowser } from '../bench/inBrowser.ts';
import { isWithin, type Measurement } from '../bench/measurement.ts';
import { measurePortable } from '../bench/portable.ts';
import { measureScale } from '../bench/scale.ts';
import type { ScaleSizes } from '../bench/generatedBook.ts';
import { measureScriptsOnDemand, measureSizes } from '../bench/sizes.ts';
import { measureAdvice, measureCalculators } from '../bench/timings.ts';
import { measureYardsticks } from '../bench/yardsticks.ts';

const folder = join(import.meta.dirname, '../../../dist/site');

/** Each group under its heading: a kind of page, or a kind of work. */
function table(measurements: readonly Measurement[]): string {
  const groups = new Map<string, Measurement[]>();
  for (const measurement of measurements) groups.set(measurement.group, [...(groups.get(measurement.group) ?? []), measurement]);
  return [...groups].map(([group, members]) => `${group}\n${members.map(line).join('\n')}`).join('\n');
}

const decimals: Readonly<Record<Measurement['unit'], number>> = { kB: 1, MB: 1, ms: 3, s: 1, 'pages/s': 1, times: 3, pages: 0, minutes: 0, parts: 2, '%': 1 };

function line(measurement: Measurement): string {
  const { name, value, unit, limit } = measurement;
  const figure = `${value.toFixed(decimals[unit]).padStart(10)} ${unit}`;
  const verdict = limit === undefined ? '' : `  of at most ${String(limit).padStart(3)} ${unit}  ${isWithin(measurement) ? 'pass' : 'FAIL'}`;
  return `  ${name.padEnd(26)}${figure}${verdict}`;
}

/** The sizes after `--scale`, or those of a book that has grown to its limits; undefined when the word is not there. */
function scaleSizes(words: readonly string[]): ScaleSizes | undefined {
  const at = words.indexOf('--scale');
  if (at === -1) return undefined;
  const next = words[at + 1] ?? '';
  const written = /^(\d+),(\d+)$/.exec(next === '' || next.startsWith('--') ? '2000,10000' : next);
  const [procedures, ranges] = [Number(written?.[1]), Number(written?.[2])];
  if (procedures >= 1) return { procedures, ranges };
  console.error(`"${next}" is no size. Give the numbers of procedures (at least 1) and ranges, as "--scale 500,2500".`);
  process.exit(64);
}

async function measureBook(): Promise<Measurement[]> {
  if (!existsSync(join(folder, 'index.html'))) {
    console.error('There is no built book to measure. Run "npm run build" first.');
    process.exit(1);
  }
  return [
    ...measureSizes(folder),
    ...measureScriptsOnDemand(folder),
    ...measureCalculators(),
    ...measureAdvice(folder),
    ...measureCaptures(),
    ...measureYardsticks(folder),
    ...(await measureInBrowser(folder)),
    ...(await measurePortable(join(folder, '../portable'))),
  ];
}

const sizes = scaleSizes(process.argv.slice(2));
const measurements = sizes ? await measureScale(sizes) : await measureBook();
const failed = measurements.filter((measurement) => !isWithin(measurement));
if (process.argv.includes('--json')) {
  console.log(JSON.stringify(measurements.map((measurement) => ({ ...measurement, pass: isWithin(measurement) })), null, 2));
} else {
  console.log(table(measurements));
  console.log(failed.length === 0 ? '\nEverything is within its budget.' : `\n${failed.length} over budget.`);
}
process.exitCode = failed.length === 0 ? 0 : 1;
