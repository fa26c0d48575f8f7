/** What the shop found: counted from its own jobs, off until it is switched on, and then in the belief of an open job. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Job, JobEventBody } from '../../src/domain/jobs/types.ts';
import { cleared, complaint, count, engine, finding, jobOf, noneBack, quietRun, repair } from '../jobs/jobBook.ts';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { bundleForPage } from './support/inPage.ts';
import { openSite, screenshot, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;
let script: string;

const inPage = `
import { openJobStore } from './src/elements/storage/jobs.ts';
globalThis.storeJobs = async (jobs) => { for (const job of jobs) await openJobStore().write(job); };
globalThis.storedCount = async () => (await openJobStore().list()).value.jobs.length;`;

beforeAll(async () => {
  site = await openSite();
  visit = await site.newPage({ width: 390, height: 844 });
  page = visit.page;
  script = await bundleForPage(inPage);
});
afterAll(() => site.close());

const none: JobEventBody = { kind: 'codes-read', text: '', codes: [], refused: [] };
/** A job that has told nothing yet, so that its beliefs are the weights alone. */
const untold: readonly JobEventBody[] = [engine, { kind: 'complaint', text: 'Shakes.', signs: [] }, { ...none, notRead: 'No reader at hand.' }];
const checks: readonly JobEventBody[] = (['trims', 'monitors', 'catalyst'] as const).map((check) => ({ kind: 'proof-check', check, state: 'good', note: '' }));
const finished = (index: number): Job => ({ ...jobOf(engine, complaint, none, count, finding, repair, cleared, quietRun, noneBack, ...checks, { kind: 'handed-over', to: 'Customer' }), id: `done-${index}` });
const keep = async (jobs: readonly Job[]): Promise<void> => {
  await openPage();
  await page.evaluate(script);
  await page.evaluate(([given]) => (globalThis as unknown as { storeJobs: (jobs: unknown) => Promise<void> }).storeJobs(given), [jobs]);
};
const openPage = async (): Promise<void> => {
  await page.goto(`${site.url}jobs/experience/`);
  await page.locator('#experience-on').waitFor();
};
const row = (fault: string): Promise<string[]> => page.locator(`tr[data-fault="${fault}"] td`).allTextContents();
const settings = (): Promise<Record<string, unknown>> => page.evaluate(() => JSON.parse(localStorage.getItem('ignition-bench-book:settings') ?? '{}') as Record<string, unknown>);
/** Percent that the bench gives the coil's winding at cylinder 3, before any code or test. */
async function coilBelief(): Promise<number> {
  await page.goto(`${site.url}jobs/bench/?job=open`);
  await page.locator('.belief-words').first().waitFor();
  const words = await page.locator('.belief-words', { hasText: /Coil winding/ }).allTextContents();
  return Math.max(...words.map((text) => Number(/([\d.]+) %/.exec(text)?.[1] ?? Number.NaN)));
}

describe('with no job', () => {
  it('the list of jobs leads here, and the page says that nothing counts yet', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('a', { hasText: 'What this shop has found' }).click();
    await page.locator('#experience-on').waitFor();
    expect(await page.locator('shop-experience').textContent()).toContain('No job counts yet');
    expect(await page.locator('#experience-on').isChecked()).toBe(false);
    await page.locator('#other-faults').click();
    expect(await page.locator('tr[data-fault]:visible').count()).toBeGreaterThan(20);
    expect(await axeFindings(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
  });
});

describe('on a dark screen of 320 px', () => {
  it('nothing is hidden, too small or too faint', async () => {
    const dark = await site.newPage({ width: 320, height: 640, colorScheme: 'dark' });
    await dark.page.goto(`${site.url}jobs/experience/`);
    await dark.page.locator('#other-faults').click();
    expect(await axeFindings(dark.page)).toEqual([]);
    expect(await smallTargets(dark.page)).toEqual([]);
    expect(await sidewaysOverflow(dark.page)).toEqual([]);
    expect(dark.faults).toEqual([]);
    await dark.context.close();
  });
});

describe('with 50 finished jobs on the coil’s winding', () => {
  it('they are counted, and change no weight while it is off', async () => {
    await keep([...Array.from({ length: 50 }, (_, index) => finished(index)), { ...finished(50), source: 'Invented for demonstration' }, { ...jobOf(...untold), id: 'open' }]);
    const before = await coilBelief();
    await openPage();
    expect(await page.locator('shop-experience').textContent()).toContain('50 jobs count, handed over with the repair proven.');
    const [bookWeight, found, used, minutes, back] = await row('coil-winding');
    expect([found, minutes, back]).toEqual(['50', '22', '0']);
    expect(used).toBe(bookWeight);
    await page.locator('#experience-on').check();
    expect((await settings())['experience']).toEqual({ on: true });
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('experience-on');
    const [, , joined] = await row('coil-winding');
    expect(Number(joined)).toBeGreaterThan(Number(bookWeight));
    expect(await axeFindings(page)).toEqual([]);
    await screenshot(page, 'experience-390');
    await page.setViewportSize({ width: 1280, height: 900 });
    await screenshot(page, 'experience-1280');
    await page.setViewportSize({ width: 390, height: 844 });
    // 50 jobs against the 50 that the book stands for give the winding at least half of the 95 % that named faults have: 12 % for each of four coils.
    const after = await coilBelief();
    expect(after).toBeGreaterThan(before);
    expect(after).toBeGreaterThan(11);
    expect(await page.locator('#beliefs, .beliefs').first().textContent()).toContain('50 finished jobs of this shop');
  });

  it('clearing asks once on the page; then only later jobs count, the jobs stay, and it can be taken back', async () => {
    await openPage();
    await page.locator('#experience-clear').click();
    expect((await settings())['experience']).toEqual({ on: true });
    await page.locator('#experience-clear-not').click();
    await page.locator('#experience-clear').click();
    await page.locator('#experience-clear-sure').click();
    expect(await page.locator('shop-experience').textContent()).toMatch(/No job finished since .* counts yet/);
    expect((await row('coil-winding'))[1]).toBe('0');
    await page.evaluate(script);
    expect(await page.evaluate('storedCount()')).toBe(52);
    await page.locator('#experience-all').click();
    expect((await row('coil-winding'))[1]).toBe('50');
    await page.locator('#experience-on').uncheck();
    expect((await settings())['experience']).toEqual({ on: false });
  });
});

describe('tools this shop has not got', () => {
  it('are ticked by plain names, kept, and there when the page is opened again', async () => {
    await openPage();
    expect(await page.locator('#tools input').count()).toBe(22);
    await page.locator('label', { hasText: 'Borescope' }).click();
    await page.locator('#tool-lift').check();
    expect(await page.locator('.shop-tools .field-note').textContent()).toBe('Kept on this device: 2 tools are missing.');
    expect((await settings())['toolsNotHad']).toEqual(['borescope', 'lift']);
    await openPage();
    expect(await page.locator('#tools input:checked').evaluateAll((ticks) => ticks.map((tick) => tick.id).toSorted())).toEqual(['tool-borescope', 'tool-lift']);
  });

  it('nothing went wrong on the way', () => expect(visit.faults).toEqual([]));
});
