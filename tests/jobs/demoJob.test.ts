/** The invented job against the book as it stands: its story must be possible, its finding carried, its proof complete. */
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { demoJob } from '../../src/build/demoJob.ts';
import { readBook } from '../../src/checks/readBook.ts';
import { exportJob, importJob } from '../../src/domain/jobs/file.ts';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import { reportOf } from '../../src/domain/jobs/report.ts';
import { jobBook } from '../../src/render/jobBook.ts';

// The pages' queries are made for Astro; the book itself is read without it.
vi.mock('astro:content', () => ({ getCollection: () => Promise.resolve([]) }));

const book = jobBook(readBook(join(import.meta.dirname, '../..')).book, '0.0.0');
const job = demoJob(book);

describe('the invented job', () => {
  it('is a sound job file', () => {
    expect(job && importJob(exportJob(job))).toEqual({ ok: true, value: job });
  });

  it('finds the worn plug of cylinder 2, proves the repair and is handed over', () => {
    const derived = job && deriveJob(job.events, book);
    expect(derived).toMatchObject({ stage: 'hand-over', finding: { hypothesis: 'plug-gap-wide@cylinder-2' }, proof: { proven: true } });
    expect(derived?.finding?.belief).toBeGreaterThanOrEqual(0.9);
  });

  it('is marked as invented wherever it is shown', () => {
    expect(job && reportOf(job, deriveJob(job.events, book), book)).toMatchObject({ invented: true, source: expect.stringMatching(/^Invented for demonstration/) });
  });

  it('is simply not there without its story', () => {
    expect(demoJob(book, '/nowhere.yaml')).toBeUndefined();
  });

  it('a story that names what the book does not hold is refused', () => {
    expect(() => demoJob({ ...book, engines: [] })).toThrow('three-inline');
  });
});
