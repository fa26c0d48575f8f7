import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSite, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage({ width: 390, height: 844 });
  page = visit.page;
});
afterAll(() => site.close());

async function ask(query: string): Promise<void> {
  await page.goto(`${site.url}search/`);
  await page.locator('#search').fill(query);
  await page.locator('[data-results] > *').first().waitFor();
}

const results = () => page.locator('[data-results]');
const titles = () => page.locator('[data-results] .search-part a').allTextContents();

describe('codes are found exactly', () => {
  it.each(['P0303', 'p0303', 'PO303', '0303', 'p 0303', 'P-0303'])('%s', async (query) => {
    await ask(query);
    expect(await page.locator('.search-code').textContent()).toBe('P0303 - Misfire, cylinder 3');
    expect(await page.locator('[data-results] a').count()).toBe(1);
  });

  it.each([
    { query: 'P9999', says: 'P9999 is not in this book' },
    { query: 'P030C', says: 'P030C is not in this book' },
    { query: 'P1351', says: "The car's maker sets its meaning" },
  ])('$query is said not to be in the book, and no neighbour is shown', async ({ query, says }) => {
    await ask(query);
    expect(await results().textContent()).toContain(says);
    expect(await page.locator('[data-results] a').count()).toBe(0);
  });

  it('Enter on a code opens its page', async () => {
    await ask('p0171');
    await page.locator('#search').press('Enter');
    await page.waitForURL(/codes\/p0171\/$/);
    expect(await page.locator('h1').textContent()).toContain('P0171');
  });
});

describe('words', () => {
  it.each([
    { query: 'swap coils', first: 'Swap coils between two cylinders' },
    { query: 'compression', first: 'Compression' },
    { query: 'plug gap', first: 'gap' },
    { query: 'proof drive', first: 'Proof drive' },
  ])('$query', async ({ query, first }) => {
    await ask(query);
    expect((await titles())[0]).toContain(first);
  });

  it('other words of the glossary lead to the book\'s own', async () => {
    await ask('ground');
    expect(await results().textContent()).toMatch(/Also searched: earth/);
  });

  it('a word on no page is said to be left out', async () => {
    await ask('coil zzyzx');
    expect(await results().textContent()).toMatch(/Left out|Nothing found/);
    expect(await results().textContent()).toContain('zzyzx');
  });

  it('nothing found offers words of the glossary, not answers', async () => {
    await ask('cataylst');
    const said = await results().textContent();
    expect(said).toMatch(/Nothing found|Left out|Also searched/);
  });

  it('parts of the book filter, with and without words', async () => {
    await page.goto(`${site.url}search/`);
    const box = page.locator('[data-part][value="Cautions"]');
    await page.locator('.search-parts summary').click();
    await box.waitFor();
    await box.check();
    await page.locator('.search-part').first().waitFor();
    expect(await page.locator('.search-part h2').allTextContents()).toEqual(['Cautions']);
    expect((await titles()).length).toBeGreaterThan(7);
    await page.locator('#search').fill('petrol');
    await expect.poll(titles).not.toHaveLength(0);
    expect(await page.locator('.search-part h2').allTextContents()).toEqual(['Cautions']);
  });
});

describe('by keyboard', () => {
  it('Ctrl+K, four letters, arrow and Enter reach the steps of swap coils', async () => {
    await page.goto(`${site.url}cautions/`);
    await page.keyboard.press('Control+k');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('search');
    await page.keyboard.type('swap');
    await page.locator('.search-part a').first().waitFor();
    const names = await titles();
    const at = names.findIndex((name) => name.startsWith('Swap coils'));
    expect(at).toBeGreaterThanOrEqual(0);
    expect(at).toBeLessThan(4);
    for (let step = 0; step <= at; step += 1) await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.waitForURL(/procedures\/swap-coils\/$/);
    console.log(`to the steps of swap coils: 4 letters, place ${at + 1} in the list`);
  });

  it('Escape goes back to the field', async () => {
    await ask('coil');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Escape');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('search');
  });

  it('nothing went wrong on the way', () => expect(visit.faults).toEqual([]));
});
