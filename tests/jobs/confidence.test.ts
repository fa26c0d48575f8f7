/** How sure a proof must be: chosen for a job, kept beside its record. */
import 'fake-indexeddb/auto';
import { describe, expect, it, vi } from 'vitest';
import { chosenConfidence, confidenceKey } from '../../src/elements/jobs/confidence.ts';
import { JobSession } from '../../src/elements/jobs/session.ts';
import { openJobStore } from '../../src/elements/storage/jobs.ts';
import { complaint, engine, jobBook, jobOf } from './jobBook.ts';

describe('chosenConfidence', () => {
  it.each([
    { label: 'nothing chosen', kept: undefined, expected: 0.95 },
    { label: '90 %', kept: '0.9', expected: 0.9 },
    { label: '99 %', kept: '0.99', expected: 0.99 },
    { label: 'a figure that is not offered', kept: '0.5', expected: 0.95 },
    { label: 'no number', kept: 'sure', expected: 0.95 },
  ])('$label', ({ kept, expected }) => {
    expect(chosenConfidence(new Map(kept === undefined ? [] : [[confidenceKey, kept]]))).toBe(expected);
  });
});

describe('JobSession.derive', () => {
  it('works the job out anew by the confidence of the moment, and writes nothing', () => {
    const store = openJobStore('confidence');
    let confidence = 0.95;
    const changed = vi.fn();
    const job = jobOf(engine, complaint);
    const session = new JobSession(job, jobBook, store, { changed, statusChanged: () => undefined }, () => ({ confidence }));
    expect(session.derived.proof.confidence).toBe(0.95);
    confidence = 0.99;
    session.derive();
    expect(session.derived.proof.confidence).toBe(0.99);
    expect(changed).toHaveBeenCalledTimes(1);
    expect(session.job).toBe(job);
    store.close();
  });
});
