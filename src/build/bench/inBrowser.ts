import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page, Request } from 'playwright-core';
import { launchBrowser } from '../browser.ts';
import { startServer } from '../serve.ts';
import { median, type Measurement } from './measurement.ts';
import { RECOMPUTE_LIMIT } from './timings.ts';

/** What the first search for one word may bring over the network, kB; each further word may need one more part of the index. */
const FIRST_SEARCH_LIMIT = 110;
/** A cheap tablet is about this many times slower than the machine that builds. */
const SLOWDOWN = 4;

/** What only a browser can tell: bytes of the first search, and the time from typing to a drawn result. */
export async function measureInBrowser(folder: string): Promise<Measurement[]> {
  const server = await startServer({ folder, port: 0 });
  const browser = await launchBrowser();
  try {
    const oneWord = { ...(await measureFirstSearch(browser, server.url, 'coil')), limit: FIRST_SEARCH_LIMIT };
    const twoWords = await measureFirstSearch(browser, server.url, 'plug gap');
    return [oneWord, twoWords, ...(await measureForms(browser, server.url, folder))];
  } finally {
    await browser.close();
    await server.close();
  }
}

/** Milliseconds from typing one word on the start page to the first result, nothing of the search loaded before. */
export async function measureFirstAnswer(folder: string, query: string): Promise<number> {
  const server = await startServer({ folder, port: 0 });
  const browser = await launchBrowser();
  try {
    const page = await openPage(browser, server.url);
    const start = performance.now();
    await page.locator('book-search input[type="search"]').first().fill(query);
    await page.locator('book-search [data-results] a').first().waitFor();
    return performance.now() - start;
  } finally {
    await browser.close();
    await server.close();
  }
}

async function openPage(browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(url, { waitUntil: 'networkidle' });
  return page;
}

async function measureFirstSearch(browser: Browser, url: string, query: string): Promise<Measurement> {
  const page = await openPage(browser, url);
  const requests: Request[] = [];
  page.on('requestfinished', (request) => requests.push(request));
  await page.locator('book-search input[type="search"]').first().fill(query);
  await page.locator('book-search [data-results] a').first().waitFor();
  await page.waitForLoadState('networkidle');
  const sizes = await Promise.all(requests.map((request) => request.sizes()));
  await page.context().close();
  const bytes = sizes.reduce((sum, { responseBodySize }) => sum + responseBodySize, 0);
  return { group: 'first search', name: `"${query}", ${requests.length} files`, value: bytes / 1000, unit: 'kB' };
}

async function measureForms(browser: Browser, url: string, folder: string): Promise<Measurement[]> {
  const ids = readdirSync(join(folder, 'calculators'), { withFileTypes: true }).filter((item) => item.isDirectory());
  const measurements: Measurement[] = [];
  for (const { name } of ids) {
    const page = await openPage(browser, `${url}calculators/${name}/`);
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
    const value = median(await timeTyping(page));
    measurements.push({ group: `recompute, page, ${SLOWDOWN} times slower`, name, value, unit: 'ms', limit: RECOMPUTE_LIMIT });
    await page.context().close();
  }
  return measurements;
}

/** Milliseconds from an input event to the laid-out result, 30 times, on the page's first worked example. */
async function timeTyping(page: Page): Promise<number[]> {
  await page.locator('[data-example]').first().click();
  await page.locator('calculator-form [data-result] dd').first().waitFor();
  return await page.evaluate(() => {
    const form = document.querySelector<HTMLElement>('calculator-form');
    if (form === null) return [];
    return Array.from({ length: 30 }, () => {
      const start = performance.now();
      form.dispatchEvent(new Event('input', { bubbles: true }));
      form.getBoundingClientRect();
      return performance.now() - start;
    });
  });
}
