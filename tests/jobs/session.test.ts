/** The open job: saved on every change, in order, whatever another window does meanwhile. */
import 'fake-indexeddb/auto';
import { describe, expect, it, vi } from 'vitest';
import { appendEvent } from '../../src/domain/jobs/edit.ts';
import { exportJob, importJob } from '../../src/domain/jobs/file.ts';
import { failure } from '../../src/domain/result.ts';
import { JobSession } from '../../src/elements/jobs/session.ts';
import { openJobStore } from '../../src/elements/storage/jobs.ts';
import { complaint, engine, jobBook, jobOf, startTime } from './jobBook.ts';

let number = 0;
async function opened() {
  const store = openJobStore(`session-${(number += 1)}`);
  const written = await store.write(jobOf(engine, complaint));
  if (!written.ok) throw new Error(written.error.message);
  const changed = vi.fn();
  const session = new JobSession(written.value.job, jobBook, store, { changed, statusChanged: () => undefined });
  return { store, session, changed, start: written.value.job };
}
const note = (text: string) => ({ body: { kind: 'note' as const, text } });

describe('JobSession', () => {
  it('shows and saves each change', async () => {
    const { store, session, changed } = await opened();
    expect(session.add(note('one'))).toBeUndefined();
    session.add(note('two'));
    expect(changed).toHaveBeenCalledTimes(2);
    await session.save();
    expect(session.status).toMatchObject({ kind: 'saved', merged: false });
    const stored = await store.read('job-1');
    expect(stored.ok && stored.value).toEqual(session.job);
    expect(session.job.events.map((event) => event.sequence)).toEqual([1, 2, 3, 4]);
  });

  it('takes in what another window wrote', async () => {
    const { store, session, start } = await opened();
    await store.write(appendEvent(start, { kind: 'note', text: 'other window' }, 'other', startTime));
    session.add(note('here'));
    await session.save();
    expect(session.job.events.filter((event) => event.kind === 'note')).toHaveLength(2);
    expect(session.derived.live).toHaveLength(4);
  });

  it('hears of it without a change of its own', async () => {
    const { store, session, start } = await opened();
    await store.write(appendEvent(start, { kind: 'note', text: 'other window' }, 'other', startTime));
    await session.refresh();
    expect(session.job.events).toHaveLength(3);
  });

  it('refuses what would not make a sound record, and writes nothing of it', async () => {
    const { session } = await opened();
    expect(session.add(note('x'.repeat(20_001)))).toMatchObject({ input: 'text', message: expect.stringContaining('at most 20000 characters') });
    expect(session.add(note('good'), { body: { kind: 'misfires-counted', misfires: 1, revolutions: 0, how: '' } })).toMatchObject({ input: 'revolutions' });
    expect(session.job.events).toHaveLength(2);
  });

  it('undoes, and brings back', async () => {
    const { session } = await opened();
    session.undo('e2');
    expect(session.derived.complaint).toBeUndefined();
    session.undo('e2');
    expect(session.derived.complaint?.id).toBe('e2');
    session.undo('e2');
    expect(session.derived.complaint).toBeUndefined();
    expect(session.job.events).toHaveLength(5);
  });

  it('says so when saving fails, keeps the change, and saves it when asked again', async () => {
    const { store, session } = await opened();
    const write = vi.spyOn(store, 'write').mockResolvedValue(failure({ input: 'storage', code: 'full', message: 'No room.' }));
    session.add(note('kept on screen'));
    await session.save();
    expect(session.status).toEqual({ kind: 'failed', message: 'No room.' });
    expect(session.job.events).toHaveLength(3);
    write.mockRestore();
    await session.save();
    expect(session.status.kind).toBe('saved');
    const stored = await store.read('job-1');
    expect(stored.ok && stored.value?.events).toHaveLength(3);
  });

  it('a device without room loses nothing of what was typed: it stays in the job, goes into a file, and is kept once there is room', async () => {
    const { store, session, start } = await opened();
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    session.add(note('typed when full'));
    session.add(note('and one more'));
    await session.save();
    expect(session.status).toMatchObject({ kind: 'failed', message: expect.stringMatching(/no room left.*Save the job to a file now/) });
    const inFile = importJob(exportJob(session.job));
    expect(inFile.ok && inFile.value.events.slice(-2)).toMatchObject([{ text: 'typed when full' }, { text: 'and one more' }]);
    put.mockRestore();
    expect(await store.read('job-1')).toEqual({ ok: true, value: start });
    await session.save();
    expect(session.status.kind).toBe('saved');
    const stored = await store.read('job-1');
    expect(stored.ok && stored.value?.events.slice(-2)).toMatchObject([{ text: 'typed when full' }, { text: 'and one more' }]);
  });
});
