/** `npm test`: checks, unit tests, the build and the browser tests, each to its end, with one true count as the last line. */
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { parts } from './check.ts';
import { addCounts, countLine, type Counts } from './counts.ts';
import { countListedTests, readTestReport } from './testReport.ts';

const root = join(import.meta.dirname, '../../..');
const output = join(root, 'tests/.output');

interface PartResult extends Counts {
  readonly name: string;
  readonly seconds: number;
}

function runTool(name: string, words: readonly string[]): boolean {
  const { status, error } = spawnSync(join(root, 'node_modules/.bin', name), words, { cwd: root, stdio: 'inherit' });
  if (error !== undefined) console.log(`${name} could not be started: ${error.message}`);
  return status === 0;
}

/** A part that is in order or not, and counts as one. */
function one(passed: boolean): Counts {
  return { passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: 0 };
}

function runTests(project: string): Counts {
  const report = join(output, `${project}.json`);
  rmSync(report, { force: true });
  const clean = runTool('vitest', [
    ...['run', '--config', 'tests/vitest.config.ts', '--project', project],
    ...['--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
  ]);
  return readTestReport(report, clean);
}

/** Without a build there is nothing to open, and a test that could not be run is not a test that passed. */
function failBrowserTests(): Counts {
  const list = join(output, 'browser-list.json');
  rmSync(list, { force: true });
  runTool('vitest', ['list', '--config', 'tests/vitest.config.ts', '--project', 'browser', `--json=${list}`]);
  return { passed: 0, failed: countListedTests(list), skipped: 0 };
}

function build(): Counts {
  // An older build must not stand in for one that failed.
  rmSync(join(root, 'dist'), { recursive: true, force: true });
  return one(runTool('astro', ['build']));
}

function timed(name: string, run: () => Counts): PartResult {
  console.log(`\n== ${name}`);
  const start = performance.now();
  const counts = run();
  return { name, ...counts, seconds: (performance.now() - start) / 1000 };
}

function runAll(): readonly PartResult[] {
  const checks = parts.map(({ name, run }) => timed(name, () => one(run())));
  const unit = timed('unit tests', () => runTests('unit'));
  const built = timed('build', build);
  const browser = timed('browser tests', () => (built.failed === 0 ? runTests('browser') : failBrowserTests()));
  return [...checks, unit, built, browser];
}

function showSummary(results: readonly PartResult[]): void {
  console.log('\n== Summary');
  console.log(`${'part'.padEnd(24)}${'passed'.padStart(8)}${'failed'.padStart(8)}${'skipped'.padStart(9)}${'seconds'.padStart(9)}`);
  for (const { name, passed, failed, skipped, seconds } of results) {
    const numbers = `${String(passed).padStart(8)}${String(failed).padStart(8)}${String(skipped).padStart(9)}`;
    console.log(`${name.padEnd(24)}${numbers}${seconds.toFixed(1).padStart(9)}${failed > 0 ? '  FAILED' : ''}`);
  }
}

const results = runAll();
const total = results.reduce(addCounts, { passed: 0, failed: 0, skipped: 0 });
showSummary(results);
process.exitCode = total.failed === 0 ? 0 : 1;
console.log(`\n${countLine(total)}`);
