/** The two commands as a terminal sees them: what they print, and how they refuse. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const oldJob = join(root, 'tests/fixtures/jobs/version-2.json');

function run(command: 'advise' | 'simulate', ...words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, `src/build/commands/${command}.ts`), ...words], { encoding: 'utf8' });
  return { status, stdout, stderr };
}

describe('advise', { timeout: 60_000 }, () => {
  test('reads a job of an older version and says where it stands and what is believed', () => {
    const { status, stdout } = run('advise', oldJob, '--json');
    expect(status).toBe(0);
    const answer = JSON.parse(stdout) as { stage: string; beliefs: { probability: number }[]; proposals: { test: string; minutes: number }[] };
    expect(answer.stage).toMatch(/^(tests|finding|repair|proof|hand-over)$/);
    expect(answer.beliefs[0]?.probability).toBeGreaterThan(answer.beliefs[1]?.probability ?? 1);
    expect(answer.proposals.every(({ minutes }) => minutes >= 1)).toBe(true);
  });

  test('in words without --json', () => {
    expect(run('advise', oldJob).stdout).toMatch(/Stage: .*\n.*estimate/s);
  });

  test.each([
    { label: 'no file', words: [], status: 64, says: /npm run -s advise/ },
    { label: 'a file that is not there', words: ['/no/such/file.json'], status: 2, says: /cannot be read/ },
    { label: 'a file that is no job', words: [join(root, 'package.json')], status: 2, says: /not a job file/ },
  ])('$label is refused', ({ words, status, says }) => {
    const refused = run('advise', ...words);
    expect(refused.status).toBe(status);
    expect(refused.stderr).toMatch(says);
    expect(refused.stdout).toBe('');
  });

  test('a job of a newer book is refused and left alone', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'newer-job-')), 'job.json');
    const newer = JSON.stringify({ ...(JSON.parse(readFileSync(oldJob, 'utf8')) as object), version: 99 });
    writeFileSync(file, newer);
    expect(run('advise', file)).toMatchObject({ status: 2, stderr: expect.stringContaining('newer book') });
    expect(readFileSync(file, 'utf8')).toBe(newer);
  });
});

describe('simulate', { timeout: 60_000 }, () => {
  const keys = ['policy', 'jobs', 'seed', 'meanMinutes', 'meanMinutesInterval', 'meanNeedlessParts', 'meanNeedlessPartsInterval', 'wrongFindingShare', 'meanTests', 'meanTestsInterval'];

  test.each([
    { words: ['--policy', 'swap-parts', '--jobs', '5', '--seed', '4'], jobs: 5 },
    { words: ['--policy', 'advice', '--jobs', '3', '--seed', '4', '--engine', 'three-inline'], jobs: 3 },
    { words: ['--policy', 'optimal', '--jobs', '4', '--seed', '4'], jobs: 4 },
  ])('$words prints every figure with its interval', ({ words, jobs }) => {
    const { status, stdout } = run('simulate', ...words);
    expect(status).toBe(0);
    const printed = JSON.parse(stdout) as Readonly<Record<string, unknown>>;
    expect(Object.keys(printed)).toEqual(expect.arrayContaining(keys));
    expect(printed).toMatchObject({ jobs, seed: 4 });
  });

  test('on the same models no policy is cheaper than the optimum', () => {
    const minutes = (...words: readonly string[]): number => (JSON.parse(run('simulate', ...words, '--jobs', '6', '--seed', '9').stdout) as { meanMinutes: number }).meanMinutes;
    expect(minutes('--policy', 'advice', '--small')).toBeGreaterThanOrEqual(minutes('--policy', 'optimal') - 1e-9);
  });

  test.each([
    { label: 'an unknown policy', words: ['--policy', 'guess'], says: /no policy/ },
    { label: 'no jobs', words: ['--jobs', '0'], says: /--jobs/ },
    { label: 'an unknown engine', words: ['--engine', 'nine-in-a-ring'], says: /no engine of the book/ },
    { label: 'an unknown option', words: ['--speed', '3'], says: /--speed/ },
    { label: 'parts swapped on small models', words: ['--policy', 'swap-parts', '--small'], says: /not played on small models/ },
  ])('$label is refused', ({ words, says }) => {
    const refused = run('simulate', ...words);
    expect(refused.status).toBe(64);
    expect(refused.stderr).toMatch(says);
  });
});
