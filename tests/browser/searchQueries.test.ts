import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openFolder, type OpenFolder } from './support/portable.ts';
import { openSite, type BookPage, type OpenSite } from './support/site.ts';
import { searchQueries, withoutAnswer } from './searchQueries.data.ts';

let site: OpenSite;
let folder: OpenFolder;
const visits = new Map<string, BookPage>();

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  folder = await openFolder();
  visits.set('site', await open(await site.newPage(), `${site.url}search/`));
  visits.set('portable edition', await open(await folder.newPage(), folder.fileOf('search/')));
});
afterAll(async () => {
  await site.close();
  await folder.close();
});

async function open(visit: BookPage, address: string): Promise<BookPage> {
  await visit.page.goto(address);
  await visit.page.locator('.search-parts').waitFor();
  return visit;
}

interface Answer {
  /** Places of the pages in the book, in the order shown. */
  readonly places: readonly string[];
  readonly notes: string;
}

/** Types a query and reads what is shown for it. */
async function ask(page: Page, query: string): Promise<Answer> {
  return await page.evaluate(async (typed) => {
    const field = document.querySelector<HTMLInputElement>('#search');
    const results = document.querySelector('[data-results]');
    if (field === null || results === null) throw new Error('The page has no search.');
    results.replaceChildren();
    const shown = new Promise((resolve) => new MutationObserver(resolve).observe(results, { childList: true }));
    field.value = typed;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    await shown;
    const root = new URL(document.documentElement.dataset['root'] ?? './', document.baseURI).href;
    const links = [...results.querySelectorAll('a')].map(({ href }) => href.slice(root.length).replace(/\/(?:index\.html)?$/, ''));
    return { places: links, notes: [...results.querySelectorAll('.search-note')].map((note) => note.textContent).join(' ') };
  }, query);
}

function visitTo(edition: string): BookPage {
  const visit = visits.get(edition);
  if (!visit) throw new Error(`The ${edition} is not open.`);
  return visit;
}

const cases = Object.entries(searchQueries).flatMap(([kind, list]) => list.map((one) => ({ kind, ...one })));

it('there are enough queries to tell', () => expect(cases.length).toBeGreaterThanOrEqual(80));

describe.each(['site', 'portable edition'])('search in the %s', (edition) => {
  it.each(cases)('$kind: "$query" finds $first first', async ({ query, first }) => {
    const { places } = await ask(visitTo(edition).page, query);
    if (first.endsWith('*')) expect(places[0]?.startsWith(first.slice(0, -1))).toBe(true);
    else expect(places[0]).toBe(first);
  });

  it.each(withoutAnswer)('"$query" has no answer, which is said, and no neighbour is shown', async ({ query, says }) => {
    const { places, notes } = await ask(visitTo(edition).page, query);
    expect(notes).toContain(says);
    expect(places).toEqual([]);
  });

  it('a slip is put right only when that is said', async () => {
    expect((await ask(visitTo(edition).page, 'cataylst')).notes).toBe('Nothing found for "cataylst". These are for "catalyst".');
    expect((await ask(visitTo(edition).page, 'catalyst')).notes).toBe('');
  });

  it('nothing went wrong on the way', () => expect(visitTo(edition).faults).toEqual([]));
});
