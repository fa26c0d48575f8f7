import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeSearchIndex } from '../../src/build/searchIndex.ts';
import { openSite, type BookPage, type OpenSite } from './support/site.ts';

/** Three small pages whose figures differ only in a point or a minus: an index that drops those takes them for one. */
const PAGES: Readonly<Record<string, string>> = {
  'point-inside': 'The gap is 4.5 mm below -40 degrees. See the coil-on-plug unit (or coil/plug).',
  whole: 'The gap is 45 mm at 40 degrees.',
  'point-first': 'The gap is 0.45 mm. Check for pre-ignition.',
};

let folder = '';
let site: OpenSite;
let visit: BookPage;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'numbers-'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><html lang="en"><body><h1>Start</h1></body></html>');
  for (const [name, text] of Object.entries(PAGES)) {
    mkdirSync(join(folder, name));
    const html = `<!doctype html><html lang="en"><body><main data-pagefind-body><h1>Page</h1><p>${text}</p></main></body></html>`;
    writeFileSync(join(folder, name, 'index.html'), html);
  }
  await writeSearchIndex(folder);
  site = await openSite({ folder, base: '/tools/ignition/' });
  visit = await site.newPage();
  await visit.page.goto(site.url);
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

/** Runs in the page. It is text because the test runner would put a loader of its own in place of `import`. */
const SEARCH = `async (words) => {
  const index = await import(new URL('pagefind/pagefind.js', document.baseURI).href);
  await index.options({ noWorker: true });
  const { results } = await index.search(words);
  return await Promise.all(results.map(async (result) => (await result.data()).url));
}`;

async function search(query: string): Promise<string[]> {
  const urls: string[] = await visit.page.evaluate(`(${SEARCH})(${JSON.stringify(query)})`);
  return urls.map((url) => url.replace('/tools/ignition/', '').replace('/', ''));
}

// Expected: the pages above that hold the figure as it is written, read off by eye. A minus asked for must be there; a
// figure without one may find both.
describe('figures in the search index', () => {
  it.each([
    { query: '4.5', expected: ['point-inside'] },
    { query: '0.45', expected: ['point-first'] },
    { query: '-40', expected: ['point-inside'] },
    { query: 'coil', expected: ['point-inside'] },
    { query: 'plug', expected: ['point-inside'] },
    { query: 'ignition', expected: ['point-first'] },
    { query: 'mm', expected: ['point-first', 'point-inside', 'whole'] },
    { query: 'degrees', expected: ['point-inside', 'whole'] },
  ])('"$query" finds $expected', async ({ query, expected }) => expect((await search(query)).sort()).toEqual(expected));

  // The parts of a compound are words too, as in coil-on-plug, and the index takes 0.45 for one; the book's search leaves
  // out a page that has not the figure itself.
  it('"45" finds 45, it may be 0.45, and never 4.5', async () => expect((await search('45')).sort()).toEqual(['point-first', 'whole']));

  it('asks for nothing that is missing', () => expect(visit.faults).toEqual([]));
});
