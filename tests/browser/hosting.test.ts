import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { contentSecurityPolicy } from '../../src/render/contentSecurityPolicy.ts';
import { listFiles } from '../../src/build/files.ts';
import { launchBrowser } from './support/browser.ts';
import { hostBook, programOf, type HostedBook, type ServerName } from './support/servers.ts';
import { onePageOfEachKind, openPage, SITE_FOLDER } from './support/site.ts';

const servers: readonly ServerName[] = ['nginx', 'apache'];
const places = servers.flatMap((server) => ['/tools/ignition/', '/'].map((base) => ({ server, base })));
const YEAR = 'public, max-age=31536000, immutable';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** Asks as it is written: `fetch` would put the address in order, unpack the answer and follow redirects. */
function ask(url: string, headers: Readonly<Record<string, string>> = {}, method = 'GET', path?: string): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const options = { method, headers, ...(path === undefined ? {} : { path }) };
    const sent = request(url, options, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (text: string) => (body += text));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    sent.on('error', reject).end();
  });
}

// Where a server is not on this machine its tests are counted as skipped, and the last line of `npm test` says how many.
for (const { server, base } of places) {
  const isThere = programOf(server) !== undefined;
  describe.skipIf(!isThere)(`the sample for ${server} at ${base}${isThere ? '' : ` (not run: ${server} is not installed here)`}`, () => {
    let book: HostedBook;
    let browser: Browser;

    beforeAll(async () => {
      book = await hostBook(server, SITE_FOLDER, base);
      browser = await launchBrowser();
    });
    afterAll(async () => {
      await browser.close();
      await book.close();
    });

    it('sends the security headers with every answer, also with a wrong address', async () => {
      for (const path of ['', 'assets/shell.js', 'data/job-book.json', 'no/such/page/']) {
        const { headers } = await ask(book.url + path);
        expect(headers).toMatchObject({
          'content-security-policy': `${contentSecurityPolicy}; frame-ancestors 'none'`,
          'x-content-type-options': 'nosniff',
          'x-frame-options': 'DENY',
          'referrer-policy': 'no-referrer',
          'permissions-policy': 'camera=(), geolocation=(), microphone=()',
          'cross-origin-opener-policy': 'same-origin',
          'cross-origin-resource-policy': 'same-origin',
        });
      }
    });

    it.each([
      { path: '', type: /^text\/html; charset=utf-8$/i, packed: true },
      { path: 'assets/shell.js', type: /^(?:text|application)\/javascript/, packed: true },
      { path: 'data/job-book.json', type: /^application\/json/, packed: true },
      { path: 'manifest.webmanifest', type: /^application\/manifest\+json/, packed: undefined },
      { path: 'icon.svg', type: /^image\/svg\+xml/, packed: undefined },
      { path: 'pagefind/wasm.en.pagefind', type: /^(?!text)/, packed: false },
    ])('/$path has its type, and is packed where that helps', async ({ path, type, packed }) => {
      const { status, headers } = await ask(book.url + path, { 'accept-encoding': 'gzip' });
      expect(status).toBe(200);
      expect(String(headers['content-type'] ?? '')).toMatch(type);
      if (packed !== undefined) expect(headers['content-encoding']).toBe(packed ? 'gzip' : undefined);
      if (packed === true) expect(headers['vary']).toMatch(/accept-encoding/i);
    });

    it('keeps what never changes for a year and asks again for all else', async () => {
      const files = listFiles(SITE_FOLDER);
      const firstOf = (pattern: RegExp): string => files.find((path) => pattern.test(path)) ?? 'missing';
      const lasting = [firstOf(/^assets\/.+\.css$/), firstOf(/^pagefind\/index\//), firstOf(/^pagefind\/fragment\//)];
      const asked = ['', 'codes/p0303/', 'service-worker.js', 'build.json', 'assets/shell.js', 'pagefind/pagefind.js', 'pagefind/pagefind-entry.json'];
      for (const path of lasting) expect((await ask(book.url + path)).headers['cache-control']).toBe(YEAR);
      for (const path of asked) expect((await ask(book.url + path)).headers['cache-control']).toBe('no-cache');
    });

    it('answers "not changed" when asked again', async () => {
      const first = await ask(`${book.url}codes/p0303/`, { 'accept-encoding': 'gzip' });
      const again = await ask(`${book.url}codes/p0303/`, { 'accept-encoding': 'gzip', 'if-none-match': String(first.headers['etag']) });
      expect(again.status).toBe(304);
    });

    it('leads a page without its slash to the page, and shows no list of files', async () => {
      const { status, headers } = await ask(`${book.url}codes/p0303`);
      expect(status).toBe(301);
      expect(new URL(String(headers['location']), book.url).pathname).toBe(`${base}codes/p0303/`);
      expect([403, 404]).toContain((await ask(`${book.url}assets/`)).status);
    });

    it('takes nothing and gives nothing from outside the folder', async () => {
      expect([403, 405]).toContain((await ask(book.url, {}, 'POST')).status);
      for (const path of [`${base}../sample.conf`, `${base}%2e%2e/sample.conf`, `${base}..%2fsample.conf`]) {
        expect((await ask(book.url, {}, 'GET', path)).status).toBeGreaterThanOrEqual(400);
      }
    });

    it('shows the page for a wrong address, whose links lead back into the book', async () => {
      const { page } = await openPage(browser, book.url, {});
      expect((await page.goto(`${book.url}no/such/page/`))?.status()).toBe(404);
      await page.getByRole('link', { name: 'Contents' }).first().click();
      await page.waitForURL(`${book.url}contents/`);
      expect(await page.locator('h1').textContent()).toBe('Contents');
      await page.context().close();
    });

    it('opens every kind of page without a complaint, and searches', async () => {
      const { page, faults } = await openPage(browser, book.url, {});
      for (const address of onePageOfEachKind()) await page.goto(book.url + address);
      await page.goto(`${book.url}search/`);
      await page.locator('#search').fill('swap coils');
      await page.locator('.search-part a', { hasText: 'Swap coils' }).first().waitFor();
      expect(faults).toEqual([]);
      await page.context().close();
    });

    it('lets a device keep the whole book', async () => {
      const { page, faults } = await openPage(browser, book.url, { serviceWorkers: true });
      await page.goto(book.url);
      await page.locator('[data-offline-state="kept"]').first().waitFor({ state: 'attached', timeout: 45_000 });
      await page.context().setOffline(true);
      await page.goto(`${book.url}procedures/swap-coils/`);
      expect(await page.locator('h1').textContent()).toContain('Swap coils');
      expect(faults).toEqual([]);
      await page.context().close();
    });
  });
}
