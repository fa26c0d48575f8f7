/** What the device keeps, in an IndexedDB made of memory: two windows never lose each other's entries. */
import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { appendEvent } from '../../src/domain/jobs/edit.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { openJobStore } from '../../src/elements/storage/jobs.ts';
import type { JobStore } from '../../src/elements/storage/jobs.ts';
import { codes, complaint, engine, jobOf, startTime } from './jobBook.ts';

let number = 0;
const open: JobStore[] = [];
/** Two windows on one device. */
function windows(): readonly [JobStore, JobStore, string] {
  const name = `test-${(number += 1)}`;
  const pair = [openJobStore(name), openJobStore(name)] as const;
  open.push(...pair);
  return [...pair, name];
}
afterEach(() => {
  for (const store of open.splice(0)) store.close();
  vi.restoreAllMocks();
});

async function kept(store: JobStore, job: Job): Promise<Job> {
  const written = await store.write(job);
  if (!written.ok) throw new Error(written.error.message);
  return written.value.job;
}
const note = (job: Job, id: string): Job => appendEvent(job, { kind: 'note', text: id }, id, startTime);
const job = jobOf(engine, complaint, codes);

describe('writing', () => {
  it('counts revisions and gives back what is kept', async () => {
    const [store] = windows();
    const first = await kept(store, job);
    expect(first.revision).toBe(1);
    const second = await kept(store, note(first, 'a'));
    expect(second.revision).toBe(2);
    expect(await store.read(job.id)).toEqual({ ok: true, value: second });
  });

  it('a window with an old copy overwrites nothing: both entries are in', async () => {
    const [one, other] = windows();
    const start = await kept(one, job);
    await kept(one, note(start, 'from-one'));
    const written = await other.write(note(start, 'from-other'));
    expect(written).toMatchObject({ ok: true, value: { merged: true, job: { revision: 3 } } });
    const stored = await one.read(job.id);
    expect(stored.ok && stored.value?.events.map((event) => event.id)).toEqual(['e1', 'e2', 'e3', 'from-one', 'from-other']);
  });

  it('many writes at once from two windows all arrive', async () => {
    const [one, other] = windows();
    const start = await kept(one, job);
    await Promise.all(Array.from({ length: 20 }, (_, index) => (index % 2 === 0 ? one : other).write(note(start, `n${index}`))));
    const stored = await one.read(job.id);
    expect(stored.ok && stored.value?.events).toHaveLength(3 + 20);
    expect(stored.ok && stored.value?.revision).toBe(21);
  });

  it('the same revision from another device does not hide other entries', async () => {
    const [store] = windows();
    const start = await kept(store, job);
    await kept(store, note(start, 'here'));
    const fromFile = { ...note(start, 'there'), revision: 2 };
    expect(await store.write(fromFile)).toMatchObject({ ok: true, value: { merged: true } });
    const stored = await store.read(job.id);
    expect(stored.ok && stored.value?.events).toHaveLength(5);
  });

  it('a copy that disagrees about an entry is refused and what was kept stays', async () => {
    const [store] = windows();
    const start = await kept(store, note(job, 'a'));
    const forged = appendEvent(job, { kind: 'note', text: 'something else' }, 'a', startTime);
    expect(await store.write(forged)).toMatchObject({ ok: false, error: { code: 'conflict' } });
    expect(await store.read(job.id)).toEqual({ ok: true, value: start });
  });

  it('asks the disk for strict durability', async () => {
    const [store] = windows();
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await kept(store, job);
    expect(transaction).toHaveBeenCalledWith('jobs', 'readwrite', { durability: 'strict' });
  });
});

describe('the browser', () => {
  it.each([
    { label: 'is asked when a new job is kept not to clear the jobs, and may say no', persisted: false, asked: 1 },
    { label: 'is not asked again once it has promised', persisted: true, asked: 0 },
  ])('$label', async ({ persisted, asked }) => {
    const persist = vi.fn(() => Promise.reject(new Error('not allowed')));
    vi.stubGlobal('navigator', { storage: { persist, persisted: () => Promise.resolve(persisted) } });
    const [store] = windows();
    const first = await kept(store, job);
    await kept(store, note(first, 'a'));
    await vi.waitFor(() => expect(persist).toHaveBeenCalledTimes(asked));
    vi.unstubAllGlobals();
  });
});

describe('trouble', () => {
  it('what cannot be read is listed, kept, and never overwritten', async () => {
    const [store, , name] = windows();
    await kept(store, job);
    const database = await openDB(name);
    await database.put('jobs', { type: 'ignition-bench-book/job', version: 99, id: 'job-1' }, 'job-1');
    const listed = await store.list();
    expect(listed).toMatchObject({ ok: true, value: { jobs: [], unreadable: [{ id: 'job-1', message: expect.stringContaining('newer book') }] } });
    expect(await store.write(note(job, 'a'))).toMatchObject({ ok: false, error: { code: 'damaged' } });
    expect(await database.get('jobs', 'job-1')).toMatchObject({ version: 99 });
    database.close();
  });

  it('a full device is said', async () => {
    const [store] = windows();
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(await store.write(job)).toMatchObject({ ok: false, error: { code: 'full', message: expect.stringContaining('Save the job to a file') } });
    vi.restoreAllMocks();
    expect((await store.write(job)).ok).toBe(true);
  });

  it('a browser without storage is said', async () => {
    const [store] = windows();
    vi.stubGlobal('indexedDB', undefined);
    expect(await store.write(job)).toMatchObject({ ok: false, error: { code: 'unavailable' } });
    vi.unstubAllGlobals();
    expect((await store.write(job)).ok).toBe(true);
  });

  it('a dropped connection is opened again', async () => {
    const [store] = windows();
    await kept(store, job);
    let failures = 0;
    const original = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...options) {
      if ((failures += 1) === 1) throw new DOMException('closed', 'InvalidStateError');
      return original.apply(this, options);
    });
    expect((await store.write(note(job, 'a'))).ok).toBe(true);
    expect(failures).toBe(2);
  });

  it('makes way for a newer book in another window', async () => {
    const [store, , name] = windows();
    await kept(store, job);
    const newer = await openDB(name, 2);
    expect(newer.version).toBe(2);
    expect(await newer.get('jobs', 'job-1')).toMatchObject({ id: 'job-1' });
    expect(await store.read(job.id)).toMatchObject({ ok: false, error: { message: expect.stringContaining('newer book') } });
    newer.close();
  });
});

describe('reading and removing', () => {
  it('lists the job changed last first', async () => {
    const [store] = windows();
    await kept(store, { ...job, id: 'early' });
    await kept(store, { ...appendEvent(job, { kind: 'note', text: '' }, 'z', '2027-01-01T00:00:00.000Z'), id: 'late' });
    const listed = await store.list();
    expect(listed.ok && listed.value.jobs.map((one) => one.id)).toEqual(['late', 'early']);
  });

  it('removes one job and leaves the others', async () => {
    const [store] = windows();
    await kept(store, job);
    await kept(store, { ...job, id: 'other' });
    await store.remove(job.id);
    expect(await store.read(job.id)).toEqual({ ok: true, value: undefined });
    expect((await store.list()).ok && (await store.read('other')).ok).toBe(true);
  });

  it('tells the other window', async () => {
    const [one, other] = windows();
    const heard = new Promise<string>((resolve) => other.watch(resolve));
    await kept(one, job);
    expect(await heard).toBe('job-1');
  });
});
