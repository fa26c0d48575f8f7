import type { JobBook } from '../../domain/jobs/book.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { readBookData } from '../bookData.ts';

const noBook =
  'The part of the book that jobs need could not be loaded. Check that the whole book is on this device or the shop server is on, then load the page again.';

/** The book as the job pages need it. */
export async function loadBook(): Promise<Result<JobBook, string>> {
  try {
    return success(await readBookData<JobBook>('job-book'));
  } catch {
    return failure(noBook);
  }
}

/** The invented job, as it stands in its file; checked like any other file when it is opened. */
export async function loadDemoJob(): Promise<unknown> {
  return readBookData<unknown>('demo-job').catch(() => undefined);
}
