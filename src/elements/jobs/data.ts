import { shopExperience } from '../../domain/experience/experience.ts';
import type { JobBook } from '../../domain/jobs/book.ts';
import { failure, success } from '../../domain/result.ts';
import type { Result } from '../../domain/result.ts';
import { openJobStore } from '../storage/jobs.ts';
import { readSettings } from '../storage/settings.ts';

declare global {
  /** Set by a plain script in the edition that is opened from a folder, where nothing can be fetched. */
  var ignitionBenchBookData: JobBook | undefined;
}

const noBook =
  'The part of the book that jobs need could not be loaded. Check that the whole book is on this device or the shop server is on, then load the page again.';

/** The book as the job pages need it, with what this shop has found where that is switched on. */
export async function loadBook(element: HTMLElement): Promise<Result<JobBook, string>> {
  const book = await loadPlainBook(element);
  const { on, since } = readSettings().experience;
  if (!book.ok || !on) return book;
  const store = openJobStore();
  const stored = await store.list();
  store.close();
  return stored.ok ? success(shopExperience(book.value, stored.value.jobs, since).book) : book;
}

/** As it was written: from the page's own script where there is one, otherwise from `data-book`. */
export async function loadPlainBook(element: HTMLElement): Promise<Result<JobBook, string>> {
  if (globalThis.ignitionBenchBookData !== undefined) return success(globalThis.ignitionBenchBookData);
  const book = await fetchJson(element.dataset['book']);
  // Generated with the pages and checked then; what is fetched here is the same edition.
  return book === undefined ? failure(noBook) : success(book as JobBook);
}

/** An invented job as the list offers it. */
export interface DemoJobEntry {
  readonly id: string;
  readonly title: string;
  /** What it shows, in one sentence. */
  readonly sentence: string;
}

/** The invented jobs of this edition, from the list that `data-demo` names; none where there is no such list. */
export async function loadDemoList(element: HTMLElement): Promise<readonly DemoJobEntry[]> {
  // Generated with the pages and checked then, like the book itself.
  const list = (await fetchJson(element.dataset['demo'])) as { readonly items: readonly DemoJobEntry[] } | undefined;
  return list?.items ?? [];
}

/** An invented job, as it stands in its file beside the list; checked like any other file when it is opened. */
export async function loadDemoJob(element: HTMLElement, id: string): Promise<unknown> {
  const list = element.dataset['demo'];
  return list === undefined ? undefined : fetchJson(new URL(`${id}.json`, new URL(list, document.baseURI)).href);
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
