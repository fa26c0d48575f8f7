import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { addCounts, countLine } from '../../src/build/commands/counts.ts';
import { countListedTests, readTestReport } from '../../src/build/commands/testReport.ts';

const folder = mkdtempSync(join(tmpdir(), 'report-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A report in the runner's JSON form: each file with its own status and the statuses of its tests. */
function report(...files: readonly (readonly [status: string, ...tests: string[]])[]): string {
  const path = join(folder, 'report.json');
  const testResults = files.map(([status, ...tests], index) => ({
    name: `file-${index}.test.ts`,
    status,
    assertionResults: tests.map((testStatus) => ({ status: testStatus })),
  }));
  writeFileSync(path, JSON.stringify({ testResults }));
  return path;
}

// The statuses are those of the runner's JSON reporter; the rule is our own: what was not run did not pass.
describe('readTestReport', () => {
  it.each([
    { label: 'all well', files: [['passed', 'passed', 'passed']], clean: true, expected: [2, 0, 0] },
    { label: 'one failure', files: [['failed', 'passed', 'failed']], clean: false, expected: [1, 1, 0] },
    { label: 'one skipped on purpose', files: [['passed', 'passed', 'skipped']], clean: true, expected: [1, 0, 1] },
    { label: 'one still to be written', files: [['passed', 'todo']], clean: true, expected: [0, 0, 1] },
    { label: 'a file that broke before its tests', files: [['failed', 'skipped', 'skipped']], clean: false, expected: [0, 2, 0] },
    { label: 'a file that could not be read', files: [['failed'], ['passed', 'passed']], clean: false, expected: [1, 1, 0] },
    { label: 'an error outside any test', files: [['passed', 'passed']], clean: false, expected: [1, 1, 0] },
  ] as const)('$label', ({ files, clean, expected: [passed, failed, skipped] }) => {
    expect(readTestReport(report(...files), clean)).toEqual({ passed, failed, skipped });
  });

  it.each([
    { label: 'no report', content: undefined },
    { label: 'half a report', content: '{"testResults":[' },
    { label: 'another form', content: '{"results":[]}' },
    { label: 'no files at all', content: '{"testResults":[]}' },
  ])('counts one failure for $label', ({ content }) => {
    const path = join(folder, 'odd.json');
    rmSync(path, { force: true });
    if (content !== undefined) writeFileSync(path, content);
    expect(readTestReport(path, true)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});

describe('countListedTests', () => {
  it.each([
    ['[{"name":"a"},{"name":"b"}]', 2],
    ['[]', 1],
    ['not JSON', 1],
  ])('%s', (content, expected) => {
    const path = join(folder, 'list.json');
    writeFileSync(path, content);
    expect(countListedTests(path)).toBe(expected);
  });
});

describe('countLine', () => {
  it.each([
    [{ passed: 12, failed: 0, skipped: 0 }, '12 passed, 0 failed'],
    [{ passed: 1, failed: 2, skipped: 3 }, '1 passed, 2 failed, 3 skipped'],
  ])('%o', (counts, expected) => expect(countLine(counts)).toBe(expected));
  it('adds', () => {
    const sum = addCounts({ passed: 1, failed: 2, skipped: 3 }, { passed: 10, failed: 20, skipped: 30 });
    expect(sum).toEqual({ passed: 11, failed: 22, skipped: 33 });
  });
});
