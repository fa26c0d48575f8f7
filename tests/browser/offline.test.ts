import { copyFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type RunningServer } from '../../src/build/serve.ts';
import { writeServiceWorker, type BuildRecord } from '../../src/build/serviceWorker.ts';
import { onePageOfEachKind, openSite, SITE_FOLDER, type BookPage, type OpenSite } from './support/site.ts';

/** Not the root of the host, so that every address is tried the hard way. */
const BASE = '/tools/ignition/';
/** A name that gives a page away as the new edition's. */
const NEW_TITLE = 'Second edition';

let folder = '';
let site: OpenSite;
let server: RunningServer;

/** A copy of the built book that a test may change, served at the same address before and after the change. */
async function openCopy(): Promise<void> {
  folder = mkdtempSync(join(tmpdir(), 'book-'));
  cpSync(SITE_FOLDER, folder, { recursive: true });
  site = await openSite({ folder, base: BASE });
  server = site.server;
}

async function restartServer(): Promise<void> {
  server = await startServer({ folder, base: BASE, port: Number(new URL(site.url).port) });
}

async function closeCopy(): Promise<void> {
  await server.close();
  await site.browser.close();
  rmSync(folder, { recursive: true });
}

async function waitForState(page: Page, state: string): Promise<string> {
  const line = page.locator(`[data-offline-state="${state}"]`).first();
  await line.waitFor({ state: 'attached', timeout: 90_000 });
  return (await line.textContent()) ?? '';
}

async function firstVisit(): Promise<BookPage> {
  const opened = await site.newPage({ serviceWorkers: true });
  await opened.page.goto(site.url);
  await waitForState(opened.page, 'kept');
  return opened;
}

function buildRecord(): BuildRecord {
  return JSON.parse(readFileSync(join(folder, 'build.json'), 'utf8')) as BuildRecord;
}

/** The caches of the editions; the one for the shop's own file is no part of any. */
const cacheNames = (page: Page): Promise<string[]> => page.evaluate(async () => (await caches.keys()).filter((name) => !name.startsWith('ignition-bench-book-shop ')));

describe('after one visit, with the server gone', () => {
  let visit: BookPage;
  const titles = new Map<string, string>();

  beforeAll(async () => {
    await openCopy();
    visit = await firstVisit();
    const online = await site.newPage();
    for (const address of onePageOfEachKind(folder)) {
      await online.page.goto(site.url + address);
      titles.set(address, await online.page.title());
    }
    await server.close();
  });
  afterAll(closeCopy);

  it('says how much is kept, and that is all of it', async () => {
    const { files, buildId } = buildRecord();
    const said = await waitForState(visit.page, 'kept');
    expect(said).toContain(`${files} files`);
    expect(said).toContain(buildId.slice(0, 8));
    const stored = await visit.page.evaluate(async (names) => {
      const lists = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return lists.flat().length;
    }, await cacheNames(visit.page));
    expect(stored).toBe(files);
  });

  it('opens a page of every kind without one failed request', async () => {
    expect(titles.size).toBeGreaterThan(5);
    for (const [address, title] of titles) {
      const response = await visit.page.goto(site.url + address);
      expect({ address, status: response?.status(), title: await visit.page.title() }).toEqual({ address, status: 200, title });
    }
    expect(visit.faults).toEqual([]);
  });

  it.each([
    { label: 'with a query', address: 'search/?q=4.7', ends: 'search/?q=4.7' },
    { label: 'without the closing slash', address: 'search', ends: 'search/' },
    { label: 'without the slash, with a query', address: 'search?q=4.7', ends: 'search/?q=4.7' },
    { label: 'by its file', address: 'search/index.html', ends: 'search/index.html' },
    { label: 'the start page by its file', address: 'index.html', ends: 'index.html' },
  ])('opens a page $label', async ({ address, ends }) => {
    const response = await visit.page.goto(site.url + address);
    expect({ status: response?.status(), url: visit.page.url() }).toEqual({ status: 200, url: site.url + ends });
    expect(visit.faults).toEqual([]);
  });

  it('searches', async () => {
    await visit.page.goto(`${site.url}search/?q=plug`);
    await visit.page.locator('[data-results] a').first().waitFor({ timeout: 15_000 });
    expect(visit.faults).toEqual([]);
  });

  it('answers an address the book does not have with the not-found page, links working', async () => {
    const response = await visit.page.goto(`${site.url}none/deeper/`);
    expect(response?.status()).toBe(404);
    const expected = /<title>(.*?)<\/title>/.exec(readFileSync(join(folder, '404.html'), 'utf8'))?.[1];
    expect(await visit.page.title()).toBe(expected);
    const links = await visit.page.locator('a[href]').evaluateAll((all) => all.map((link) => (link as HTMLAnchorElement).href));
    expect(links).toContain(site.url);
    expect(visit.faults.filter((fault) => !fault.includes('none/deeper/'))).toEqual([]);
  });
});

describe('when the server has a new edition', () => {
  let visit: BookPage;
  let oldTitle = '';

  /** Changes the start page and makes the edition anew, as an upload would. */
  async function publish(title: string): Promise<void> {
    const path = join(folder, 'index.html');
    writeFileSync(path, readFileSync(path, 'utf8').replace(/<title>.*?<\/title>/, `<title>${title}</title>`));
    await writeServiceWorker(folder, '9.9.9');
  }

  beforeAll(async () => {
    await openCopy();
    visit = await firstVisit();
    oldTitle = await visit.page.title();
  });
  afterAll(closeCopy);

  it('keeps the old edition whole while an upload is half done', async () => {
    await publish(NEW_TITLE);
    // A changed file that has not arrived whole. Unchanged files are taken from the device and not asked for again.
    const half = join(folder, 'index.html');
    const whole = readFileSync(half);
    writeFileSync(half, whole.subarray(0, -20));
    const outcome = await visit.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      const { installing } = registration;
      if (installing === null) return 'no new worker was tried';
      return await new Promise<string>((resolve) => {
        installing.addEventListener('statechange', () => resolve(installing.state));
      });
    });
    expect(outcome).toBe('redundant');
    writeFileSync(half, whole);
    expect(await visit.page.evaluate(() => navigator.serviceWorker.ready.then(({ waiting }) => waiting))).toBeNull();
    await visit.page.reload();
    expect(await visit.page.title()).toBe(oldTitle);
  });

  it('tells of it, and goes on with the old edition until it is accepted', async () => {
    await visit.page.reload();
    await waitForState(visit.page, 'new-version');
    await visit.page.goto(`${site.url}search/`);
    await waitForState(visit.page, 'new-version');
    await visit.page.goto(site.url);
    expect(await visit.page.title()).toBe(oldTitle);
    expect(await cacheNames(visit.page)).toHaveLength(2);
  });

  it('takes it when accepted, and drops the old one', async () => {
    await waitForState(visit.page, 'new-version');
    await visit.page.locator('[data-offline-state] button').first().click();
    await visit.page.waitForFunction((title) => document.title === title, NEW_TITLE);
    await waitForState(visit.page, 'kept');
    const names = await cacheNames(visit.page);
    expect(names).toHaveLength(1);
    expect(names[0]).toContain(buildRecord().buildId);
    await server.close();
    await visit.page.goto(`${site.url}?again`);
    expect(await visit.page.title()).toBe(NEW_TITLE);
    await restartServer();
  });

  it('is given up when the worker is withdrawn: nothing stays stored and pages come from the server', async () => {
    copyFileSync(join(folder, 'service-worker-off.js'), join(folder, 'service-worker.js'));
    await publishOff();
    await visit.page.waitForFunction(async () => (await caches.keys()).length === 0);
    const response = await visit.page.goto(site.url);
    expect(response?.fromServiceWorker()).toBe(false);
  });

  async function publishOff(): Promise<void> {
    await visit.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
    });
  }
});

describe('over plain http in a shop network', () => {
  it('says that the book is not kept, and works', async () => {
    const shop = await openSite({ host: 'bench.shop.test' });
    try {
      const { page, faults } = await shop.newPage({ serviceWorkers: true });
      await page.goto(shop.url);
      expect(await waitForState(page, 'needs-server')).toMatch(/server/);
      expect(faults).toEqual([]);
    } finally {
      await shop.close();
    }
  });
});
