import { existsSync, readFileSync } from 'node:fs';
import * as z from 'zod';
import { addCounts, type Counts } from './counts.ts';

/** What is read of the test runner's JSON report. */
const Report = z.object({
  testResults: z.array(
    z.object({ name: z.string(), status: z.string(), assertionResults: z.array(z.object({ status: z.string() })) }),
  ),
});

/**
 * Counts the tests in a report of the runner.
 *
 * @param clean whether the runner itself ended well; if it did not, and no test failed, something outside a test did
 */
export function readTestReport(path: string, clean: boolean): Counts {
  const report = Report.safeParse(readJson(path));
  if (!report.success || report.data.testResults.length === 0) {
    console.log(`The test runner left no report in ${path}: counted as one failure.`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const counts = report.data.testResults.map(countFile).reduce(addCounts);
  if (clean || counts.failed > 0) return counts;
  console.log('The test runner failed outside any test: counted as one failure.');
  return { ...counts, failed: 1 };
}

type FileResult = z.infer<typeof Report>['testResults'][number];

/** When a file breaks before its tests, the runner calls them skipped. They were not run, so they are failures. */
function countFile({ status, assertionResults }: FileResult): Counts {
  const passed = assertionResults.filter((result) => result.status === 'passed').length;
  const failed = assertionResults.filter((result) => result.status === 'failed').length;
  const skipped = assertionResults.length - passed - failed;
  const brokeEarly = status === 'failed' && failed === 0;
  return brokeEarly ? { passed, failed: Math.max(1, skipped), skipped: 0 } : { passed, failed, skipped };
}

/** The number of tests in a list written by the runner; at least one, so that a broken list is a failure too. */
export function countListedTests(path: string): number {
  const list = readJson(path);
  return Array.isArray(list) ? Math.max(1, list.length) : 1;
}

function readJson(path: string): unknown {
  if (!existsSync(path)) return undefined;
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return undefined;
  }
}
