import { shopExperience } from '../../domain/experience/experience.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { readBookData } from '../bookData.ts';
import { openJobStore } from '../storage/jobs.ts';
import { readSettings } from '../storage/settings.ts';

const noBook =
  'The part of the book that jobs need could not be loaded. Check that the whole book is on this device or the shop server is on, then load the page again.';

/** The book as the job pages need it, with what this shop has found where that is switched on. */
export async function loadBook(): Promise<Result<JobBook, string>> {
  const book = await loadPlainBook();
  const { on, since } = readSettings().experience;
  if (!book.ok || !on) return book;
  const store = openJobStore();
  const stored = await store.list();
  store.close();
  return stored.ok ? success(shopExperience(book.value, stored.value.jobs, since).book) : book;
}

/** As it was written. */
export async function loadPlainBook(): Promise<Result<JobBook, string>> {
  try {
    return success(await readBookData<JobBook>('job-book'));
  } catch {
    return failure(noBook);
  }
}

/** An invented job as the list offers it. */
export interface DemoJobEntry {
  readonly id: string;
  readonly title: string;
  /** What it shows, in one sentence. */
  readonly sentence: string;
}

/** The invented jobs of this edition; none where there is no list of them. */
export async function loadDemoList(): Promise<readonly DemoJobEntry[]> {
  return readBookData<{ readonly items: readonly DemoJobEntry[] }>('demo-jobs/index').then(
    ({ items }) => items,
    () => [],
  );
}

/** An invented job, as it stands in its file; checked like any other file when it is opened. */
export async function loadDemoJob(id: string): Promise<unknown> {
  return readBookData<unknown>(`demo-jobs/${id}`).catch(() => undefined);
}
