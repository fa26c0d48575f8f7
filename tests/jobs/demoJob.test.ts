/** The invented jobs against the book as it stands: their stories must be possible, their findings carried, their proofs complete. */
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { demoJob } from '../../src/build/demoJob.ts';
import { readDemoJobs } from '../../src/checks/demoJobs.ts';
import { readBook } from '../../src/checks/readBook.ts';
import { exportJob, importJob } from '../../src/domain/jobs/file.ts';
import { deriveJob } from '../../src/domain/jobs/reduce.ts';
import { reportOf } from '../../src/domain/jobs/report.ts';
import { jobBook } from '../../src/render/jobBook.ts';

// The pages' queries are made for Astro; the book itself is read without it.
vi.mock('astro:content', () => ({ getCollection: () => Promise.resolve([]) }));

const root = join(import.meta.dirname, '../..');
const content = readBook(root).book;
const book = jobBook(content, '0.0.0');
const { stories } = readDemoJobs(root, content);

describe('the invented jobs', () => {
  it('are six that differ in kind', () => {
    expect(stories.map(({ truth }) => truth.fault).sort()).toEqual([
      'coil-insulation',
      'engine-mount-failed',
      'injector-clogged',
      'inlet-leak-one-runner',
      'plug-gap-wide',
      'valve-clearance-closed-up',
    ]);
  });
});

describe.each(stories.map((story) => [story.id, story] as const))('the invented job %s', (_id, story) => {
  const job = demoJob(story, book);
  const derived = deriveJob(job.events, book);

  it('is a sound job file', () => {
    expect(importJob(exportJob(job))).toEqual({ ok: true, value: job });
  });

  it('finds what is really wrong, proves the repair and is handed over', () => {
    expect(derived).toMatchObject({ stage: 'hand-over', finding: { hypothesis: `${story.truth.fault}@${story.truth.place}` }, proof: { proven: true } });
    expect(derived.proof.handedOver).toBeDefined();
    expect(derived.finding?.belief).toBeGreaterThanOrEqual(0.9);
  });

  it('is marked as invented wherever it is shown', () => {
    expect(reportOf(job, derived, book)).toMatchObject({ invented: true, source: expect.stringMatching(/^Invented for demonstration/) });
  });

  it('is told in the order of the clock, and every code of its memory is understood', () => {
    const times = story.story.map(({ minute }) => minute);
    expect(times).toEqual([...times].sort((one, other) => one - other));
    expect(derived.codes?.codes.filter(({ family }) => family === undefined)).toEqual([]);
  });

  it('is refused by a book that does not hold what it names', () => {
    expect(() => demoJob(story, { ...book, engines: [] })).toThrow(story.engine.id);
  });
});
