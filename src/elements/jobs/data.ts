import type { JobBook } from '../../domain/jobs/book.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';

declare global {
  /** Set by a plain script in the edition that is opened from a folder, where nothing can be fetched. */
  var ignitionBenchBookData: JobBook | undefined;
  var ignitionBenchBookDemoJob: unknown;
}

const noBook =
  'The part of the book that jobs need could not be loaded. Check that the whole book is on this device or the shop server is on, then load the page again.';

/** The book as the job pages need it: from the page's own script where there is one, otherwise from `data-book`. */
export async function loadBook(element: HTMLElement): Promise<Result<JobBook, string>> {
  if (globalThis.ignitionBenchBookData !== undefined) return success(globalThis.ignitionBenchBookData);
  const book = await fetchJson(element.dataset['book']);
  // Generated with the pages and checked then; what is fetched here is the same edition.
  return book === undefined ? failure(noBook) : success(book as JobBook);
}

/** The invented job, as it stands in its file; checked like any other file when it is opened. */
export async function loadDemoJob(element: HTMLElement): Promise<unknown> {
  return globalThis.ignitionBenchBookDemoJob ?? (await fetchJson(element.dataset['demo']));
}

async function fetchJson(address: string | undefined): Promise<unknown> {
  if (address === undefined) return undefined;
  try {
    const answer = await fetch(new URL(address, document.baseURI));
    return answer.ok ? ((await answer.json()) as unknown) : undefined;
  } catch {
    return undefined;
  }
}
