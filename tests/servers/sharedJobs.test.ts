/** Jobs shared through a folder on a real server: two bays at once, a server that goes away and comes back, a thousand jobs. */
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync, chmodSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appendEvent, newJob } from '../../src/domain/jobs/edit.ts';
import { exportJob, importJob } from '../../src/domain/jobs/file.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { axeFindings, sidewaysOverflow, smallTargets } from '../browser/support/accessibility.ts';
import { launchBrowser } from '../browser/support/browser.ts';
import { bundleForPage } from '../browser/support/inPage.ts';
import { canShare, hostBook, type HostedBook, type ServerName } from './servers.ts';
import { openPage, screenshot, SITE_FOLDER, type BookPage } from '../browser/support/site.ts';

const at = '2026-03-04T09:30:00.000Z';
const inPage = `
import { appendEvent, newJob } from './src/domain/jobs/edit.ts';
import { openJobStore } from './src/elements/storage/jobs.ts';
const store = openJobStore();
globalThis.note = async (id, text) => {
  const job = (await store.read(id)).value ?? newJob(id, '${at}', 'Ignition Bench Book test', 'Job ' + id);
  return (await store.write(appendEvent(job, { kind: 'note', text }, text, '${at}'))).ok;
};
globalThis.notes = async (id) => ((await store.read(id)).value?.events ?? []).map((event) => event.id).sort();
globalThis.count = async () => (await store.marks()).value.length;
globalThis.fill = async (count) => {
  for (let index = 0; index < count; index += 1) await globalThis.note('job-' + index, 'note-' + index);
};
globalThis.removeJob = (id) => store.remove(id);`;

const jobWith = (id: string, ...notes: readonly string[]): Job =>
  notes.reduce((job, text) => appendEvent(job, { kind: 'note', text }, text, at), newJob(id, at, 'Ignition Bench Book test', `Job ${id}`));

describe.skipIf(!canShare('apache'))('a folder that asks for a name and password', () => {
  it('is used once the browser has them, and refused in plain words before; the book keeps neither', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'shared-'));
    chmodSync(folder, 0o755);
    mkdirSync(join(folder, 'jobs'));
    // As `htpasswd -s` writes it: the SHA-1 of the password.
    const user = `bay:{SHA}${createHash('sha1').update('oil-and-rags').digest('base64')}`;
    const book = await hostBook('apache', SITE_FOLDER, '/tools/ignition/', { sharedJobs: `${join(folder, 'jobs')}/`, user });
    const browser = await launchBrowser();
    const attempt = async (credentials?: { username: string; password: string }): Promise<{ words: string; kept: string }> => {
      const context = await browser.newContext({ serviceWorkers: 'block', ...(credentials ? { httpCredentials: credentials } : {}) });
      const page = await context.newPage();
      await page.goto(`${book.url}jobs/`);
      await page.locator('#shared-jobs-summary').click();
      await page.locator('#shared-try').click();
      await page.locator('.shared-found .job-problem, #shared-on').first().waitFor();
      const words = await page.locator('.shared-found').innerText();
      if (credentials) await page.locator('#shared-on').click();
      const kept = await page.evaluate<string>('JSON.stringify({ ...localStorage })');
      await context.close();
      return { words, kept };
    };
    try {
      expect((await attempt()).words).toContain('asks for a name and password');
      const { words, kept } = await attempt({ username: 'bay', password: 'oil-and-rags' });
      expect(words).toContain('Writing and reading back works');
      expect(kept).toContain('shared-folder');
      expect(kept).not.toContain('oil-and-rags');
    } finally {
      await browser.close();
      await book.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

for (const name of ['apache', 'nginx'] as const satisfies readonly ServerName[]) {
  const isThere = canShare(name);
  describe.skipIf(!isThere)(`jobs shared through ${name}${isThere ? '' : ` (not run: ${name} with its part for shared folders is not installed here)`}`, () => {
    let folder: string;
    let shared: string;
    let book: HostedBook;
    let browser: Browser;
    let script: string;
    const options = () => ({ sharedJobs: shared, port: Number(new URL(book.url).port) });

    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'shared-'));
      chmodSync(folder, 0o755);
      shared = `${join(folder, 'jobs')}/`;
      mkdirSync(shared);
      book = await hostBook(name, SITE_FOLDER, '/tools/ignition/', { sharedJobs: shared });
      [browser, script] = [await launchBrowser(), await bundleForPage(inPage)];
    });
    afterAll(async () => {
      await browser.close();
      await book.close();
      rmSync(folder, { recursive: true, force: true });
    });

    const address = (file: string): string => new URL(`../shared-jobs/${file}`, book.url).href;
    const onServer = (id: string): readonly string[] => {
      const job = importJob(readFileSync(join(shared, `${id}.json`), 'utf8'));
      return job.ok ? job.value.events.map((event) => event.id).sort() : [];
    };
    const notes = (page: Page, id: string): Promise<readonly string[]> => page.evaluate(`notes('${id}')`);
    const emptied = (): void => readdirSync(shared).forEach((file) => rmSync(join(shared, file), { recursive: true }));

    async function bay(width = 390): Promise<BookPage> {
      const visit = await openPage(browser, book.url, { width, height: 844 });
      await visit.page.goto(`${book.url}jobs/`);
      await visit.page.locator('#open-file').waitFor();
      await visit.page.evaluate(script);
      return visit;
    }

    async function tryIt(page: Page, typed = '../shared-jobs/'): Promise<string> {
      await page.locator('#shared-jobs-summary').click();
      await page.locator('#shared-folder').fill(typed);
      await page.locator('#shared-try').click();
      await page.locator('.shared-found .job-problem, #shared-on').first().waitFor();
      return page.locator('.shared-found').innerText();
    }

    async function sharingBay(): Promise<BookPage> {
      const visit = await bay();
      await tryIt(visit.page);
      await visit.page.locator('#shared-on').click();
      await visit.page.locator('#shared-off').waitFor();
      return visit;
    }

    it('checks before it overwrites, or does not, just as the book says of it', async () => {
      emptied();
      const put = async (headers: Record<string, string>): Promise<number> => (await fetch(address('tag.json'), { method: 'PUT', body: '{}', headers })).status;
      expect(await put({ 'if-none-match': '*' })).toBe(201);
      expect(await put({ 'if-match': '"no-such-copy"' })).toBe(name === 'apache' ? 412 : 204);
      expect(await put({ 'if-none-match': '*' })).toBe(name === 'apache' ? 412 : 204);
    });

    it('takes job files alone, deletes nothing, and what lies there is no page of the book', async () => {
      emptied();
      writeFileSync(join(shared, 'kept.json'), '<script>1</script>');
      const ask = (file: string, method: string): Promise<Response> => fetch(address(file), { method, ...(method === 'PUT' ? { body: '<script>1</script>' } : {}) });
      for (const file of ['page.html', 'worker.js', 'a.json.html', '.htaccess', 'below/a.json', 'a_b.json']) expect((await ask(file, 'PUT')).status).toBeGreaterThanOrEqual(403);
      for (const method of ['DELETE', 'MKCOL', 'MOVE', 'COPY', 'PROPPATCH', 'LOCK', 'POST']) expect((await ask('kept.json', method)).status).toBeGreaterThanOrEqual(400);
      expect((await ask('', 'GET')).status).toBeGreaterThanOrEqual(400);
      expect(readdirSync(shared)).toEqual(['kept.json']);
      const { headers } = await ask('kept.json', 'GET');
      expect(headers.get('content-type')).toMatch(/^application\/json/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('content-security-policy')).toContain('sandbox');
      expect(headers.get('cache-control')).toBe('no-store');
    });

    it('"Try it" says in plain words what was found', async () => {
      emptied();
      writeFileSync(join(shared, 'job-1.json'), exportJob(jobWith('job-1', 'one')));
      const { page, context } = await bay();
      expect(await tryIt(page, '../no-such-folder/')).toMatch(/^It does not work: .*(no such folder|does not let this be done|not a folder that takes jobs)/);
      await page.locator('#shared-folder').fill('https://elsewhere.test/jobs/');
      await page.locator('#shared-try').click();
      await page.locator('.shared-found', { hasText: 'own server' }).waitFor();
      // The book's own page of jobs is a folder on the server too, and not one for this.
      await page.locator('#shared-folder').fill('jobs/');
      await page.locator('#shared-try').click();
      await page.locator('.shared-found', { hasText: 'It does not work' }).waitFor();
      await page.locator('#shared-folder').fill('../shared-jobs/');
      await page.locator('#shared-try').click();
      await page.locator('#shared-on').waitFor();
      const words = await page.locator('.shared-found').innerText();
      expect(words).toContain('holds 1 job.');
      expect(words).toContain(name === 'apache' ? 'checks that nobody else wrote' : 'without checking');
      await context.close();
    });

    it('two bays write into one job at once, and both see all of it', async () => {
      emptied();
      const [one, two] = [await sharingBay(), await sharingBay()];
      await one.page.evaluate("note('job-1', 'first')");
      await one.page.evaluate("note('job-1', 'from-one')");
      await two.page.evaluate("note('job-1', 'from-two')");
      const all = ['first', 'from-one', 'from-two'];
      const look = async (): Promise<void> => {
        for (const { page } of [one, two]) await page.evaluate("dispatchEvent(new Event('online'))");
      };
      await expect
        .poll(async () => (await look(), [await notes(one.page, 'job-1'), await notes(two.page, 'job-1'), onServer('job-1')]), { timeout: 45_000, interval: 1000 })
        .toEqual([all, all, all]);
      await two.page.locator('.job-link', { hasText: 'Job job-1' }).waitFor();
      expect(two.faults.filter((fault) => !/\b(404|412)\b/.test(fault))).toEqual([]);
      await one.context.close();
      await two.context.close();
    });

    it('the server goes away and comes back: nothing is lost, the line says how it stands, all is sent', async () => {
      emptied();
      const { page, context } = await sharingBay();
      const line = page.locator('shared-jobs-line').first();
      await line.filter({ hasText: 'Shared with the other bays' }).waitFor();
      const again = options();
      await book.close();
      await page.evaluate("note('job-2', 'while-away')");
      await line.filter({ hasText: /Not yet on the shop server: 1 job\. Tried at .*cannot be reached.*again in a moment/ }).waitFor();
      expect(await notes(page, 'job-2')).toEqual(['while-away']);
      await screenshot(page, `shared-away-${name}`);
      book = await hostBook(name, SITE_FOLDER, '/tools/ignition/', again);
      await line.getByRole('button', { name: 'Try now' }).click();
      await line.filter({ hasText: 'Shared with the other bays' }).waitFor();
      expect(onServer('job-2')).toEqual(['while-away']);
      await context.close();
    });

    it('a damaged file is named and replaces nothing; a job removed here stays there; one removed there stays here', async () => {
      emptied();
      const { page, context } = await sharingBay();
      await page.evaluate("note('job-3', 'mine')");
      await expect.poll(() => readdirSync(shared), { timeout: 20_000 }).toContain('job-3.json');
      writeFileSync(join(shared, 'job-4.json'), exportJob(jobWith('job-4', 'x')).slice(0, 150));
      await page.evaluate("dispatchEvent(new Event('online'))");
      await page.locator('.shared-problems', { hasText: 'job-4.json' }).waitFor();
      rmSync(join(shared, 'job-4.json'));
      await page.evaluate("removeJob('job-3')");
      await page.evaluate("dispatchEvent(new Event('online'))");
      await page.locator('#shared-fetch').click();
      await expect.poll(() => notes(page, 'job-3')).toEqual(['mine']);
      rmSync(join(shared, 'job-3.json'));
      await page.evaluate("dispatchEvent(new Event('online'))");
      await page.locator('.shared-news', { hasText: 'No longer on the server: 1 job' }).waitFor();
      expect(readdirSync(shared)).not.toContain('job-3.json');
      await page.locator('#shared-send-again').click();
      await expect.poll(() => readdirSync(shared)).toContain('job-3.json');
      await context.close();
    });

    it('a thousand jobs are sent by one bay and fetched by another', { timeout: 180_000 }, async () => {
      emptied();
      const one = await bay();
      await one.page.evaluate('fill(1000)');
      await tryIt(one.page);
      let start = performance.now();
      await one.page.locator('#shared-on').click();
      await one.page.locator('shared-jobs-line').first().filter({ hasText: 'Shared with the other bays' }).waitFor({ timeout: 90_000 });
      const sent = performance.now() - start;
      expect(readdirSync(shared).filter((file) => /^job-\d+\.json$/.test(file))).toHaveLength(1000);
      await one.context.close();
      const two = await sharingBay();
      start = performance.now();
      await expect.poll(() => two.page.evaluate('count()'), { timeout: 90_000, interval: 250 }).toBe(1000);
      const fetched = performance.now() - start;
      await two.page.locator('shared-jobs-line').first().filter({ hasText: 'Shared with the other bays' }).waitFor({ timeout: 60_000 });
      let requests = 0;
      two.page.on('request', () => (requests += 1));
      start = performance.now();
      const listed = two.page.waitForResponse((response) => response.request().method() === 'PROPFIND');
      await two.page.evaluate("dispatchEvent(new Event('online'))");
      await (await listed).finished();
      const looked = performance.now() - start;
      console.log(`${name}, 1,000 jobs: sent in ${(sent / 1000).toFixed(1)} s, fetched in ${(fetched / 1000).toFixed(1)} s, listed again in ${(looked / 1000).toFixed(2)} s`);
      await two.page.waitForTimeout(1500);
      if (name === 'apache') expect(requests).toBe(1);
      await two.context.close();
    });

    it.each([390, 1280])('the fold reads well %s wide', async (width) => {
      emptied();
      const { page, context, faults } = await bay(width);
      await tryIt(page);
      expect(await axeFindings(page)).toEqual([]);
      expect(await sidewaysOverflow(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      await screenshot(page, `shared-try-${name}-${width}`);
      await page.locator('#shared-on').click();
      await page.locator('shared-jobs-line').first().filter({ hasText: 'Shared with the other bays' }).waitFor();
      await screenshot(page, `shared-on-${name}-${width}`);
      expect(faults.filter((fault) => !/\b(404|412)\b/.test(fault))).toEqual([]);
      await context.close();
    });
  });
}
