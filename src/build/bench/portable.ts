import { statSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../browser.ts';
import type { Measurement } from './measurement.ts';

/** What goes onto any stick and through most mail, and the longest wait for an answer that is hardly felt. */
const SIZE_LIMIT = 10;
const FIRST_SEARCH_LIMIT = 300;
/** Each time in a browser profile of its own. The quickest counts: what else the machine was busy with is no work of the book. */
const TIMES = 8;

/** The edition that is opened from a folder: its size when packed, and the first search on a page that has just opened. */
export async function measurePortable(folder: string): Promise<Measurement[]> {
  const bytes = statSync(join(folder, '../ignition-bench-book-portable.zip')).size;
  return [
    { group: 'portable edition', name: 'packed', value: bytes / 1e6, unit: 'MB', limit: SIZE_LIMIT },
    { group: 'portable edition', name: 'first search', value: await firstSearch(folder), unit: 'ms', limit: FIRST_SEARCH_LIMIT },
  ];
}

async function firstSearch(folder: string): Promise<number> {
  const browser = await launchBrowser();
  try {
    const times: number[] = [];
    for (let time = 0; time < TIMES; time += 1) times.push(await searchOnce(browser, folder));
    return Math.min(...times);
  } finally {
    await browser.close();
  }
}

/** Milliseconds from the words in the field to the first result, script and index included. */
async function searchOnce(browser: Browser, folder: string): Promise<number> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(folder, 'cautions/index.html')).href);
  const time = await page.evaluate(async () => {
    const field = document.querySelector<HTMLInputElement>('book-search input[type="search"]');
    const results = document.querySelector('[data-results]');
    if (field === null || results === null) throw new Error('The page has no search.');
    const start = performance.now();
    const shown = new Promise((resolve) => new MutationObserver(resolve).observe(results, { childList: true }));
    field.value = 'swap coils';
    field.focus();
    await shown;
    if (results.querySelector('a') === null) throw new Error('The search found nothing.');
    return performance.now() - start;
  });
  await context.close();
  return time;
}
