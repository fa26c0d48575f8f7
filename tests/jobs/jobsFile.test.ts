/** Several jobs in one file: each keeps its own checksum, and a bad one does not take the others with it. */
import { describe, expect, it } from 'vitest';
import { exportJob } from '../../src/domain/jobs/file.ts';
import { exportJobs, importJobs, jobsFileName } from '../../src/elements/storage/jobsFile.ts';
import { codes, complaint, engine, jobOf } from './jobBook.ts';

const one = jobOf(engine, complaint);
const other = { ...jobOf(engine, complaint, codes), id: 'job-2', title: 'Stalls when warm' };
const parsed = () => JSON.parse(exportJobs([one, other])) as { version: number; jobs: Record<string, unknown>[] };

describe('a file of jobs', () => {
  it('gives back what went in', () => {
    expect(importJobs(exportJobs([one, other]))).toEqual({ ok: true, value: [{ ok: true, value: one }, { ok: true, value: other }] });
  });

  it('is plain JSON with a type, a version and the jobs as their own files hold them', () => {
    expect(parsed()).toEqual({ type: 'ignition-bench-book/jobs', version: 1, jobs: [JSON.parse(exportJob(one)), JSON.parse(exportJob(other))] });
    expect(parsed().jobs.map(({ checksum }) => checksum)).toEqual([expect.stringMatching(/^crc32:[0-9a-f]{8}$/), expect.stringMatching(/^crc32:[0-9a-f]{8}$/)]);
    expect(jobsFileName('2026-03-04T09:00:00.000Z')).toBe('jobs-2026-03-04.json');
  });

  it('a file of one job is taken too', () => expect(importJobs(exportJob(one))).toEqual({ ok: true, value: [{ ok: true, value: one }] }));

  it('a changed job is refused by its name, the others stand', () => {
    const file = parsed();
    const [first] = file.jobs;
    if (first) first['title'] = 'Changed by hand';
    const read = importJobs(JSON.stringify(file));
    expect(read).toMatchObject({ ok: true, value: [{ ok: false, error: { title: '“Changed by hand”', message: expect.stringContaining('checksum') } }, { ok: true, value: other }] });
  });

  it.each([
    ['a newer version', { type: 'ignition-bench-book/jobs', version: 2, jobs: [] }, 'newer-version', 'newer book'],
    ['no version', { type: 'ignition-bench-book/jobs', jobs: [] }, 'wrong-field', 'version must be 1'],
    ['a stranger', { type: 'ignition-bench-book/jobs', version: 1, jobs: [], more: 1 }, 'wrong-field', 'more is not part'],
    ['no list', { type: 'ignition-bench-book/jobs', version: 1, jobs: {} }, 'wrong-field', 'jobs must be a list'],
    ['another type', { type: 'something', version: 1 }, 'not-a-job', 'not a job file'],
  ])('%s is refused', (_label, file, code, words) => {
    expect(importJobs(JSON.stringify(file))).toMatchObject({ ok: false, error: { code, message: expect.stringContaining(words) } });
  });

  it.each([
    ['beside the jobs', '{"type":"ignition-bench-book/jobs","version":1,"jobs":[],"__proto__":{"polluted":1}}'],
    ['in a job', `{"type":"ignition-bench-book/jobs","version":1,"jobs":[{"type":"ignition-bench-book/job","version":3,"__proto__":{"polluted":1}}]}`],
  ])('a poisoned key %s is refused and reaches nothing', (_label, text) => {
    const read = importJobs(text);
    const message = read.ok ? read.value.map((job) => (job.ok ? '' : job.error.message)).join() : read.error.message;
    expect(message).toContain('__proto__');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });

  it('what is not JSON, or no object, is refused', () => {
    for (const text of ['', 'hello', '[]', 'null', '{"type":"ignition-bench-book/jobs"']) expect(importJobs(text).ok).toBe(false);
    expect(importJobs('{"type":"ignition-bench-book/jobs","version":1,"jobs":[null,3]}')).toMatchObject({ ok: true, value: [{ ok: false, error: { title: 'Job 1 of the file' } }, { ok: false }] });
  });
});
