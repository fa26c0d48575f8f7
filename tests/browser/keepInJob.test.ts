import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { openSite, pdfText, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage({ width: 320, height: 640 });
  page = visit.page;
});
afterAll(() => site.close());

const keep = () => page.locator('[data-keep]');
const note = () => page.locator('[data-keep-note]');

async function openCalculator(query: string): Promise<void> {
  await page.goto(`${site.url}calculators/${query}`);
  await page.locator('.result dl, .result-waits').first().waitFor();
}

describe('without an open job', () => {
  it('a calculator offers nothing to keep it in', async () => {
    await openCalculator('plug-gap/?gap=1');
    expect(await keep().isVisible()).toBe(false);
  });
});

describe('with an open job', () => {
  let job = '';

  it('the button names the job, fits 320 px, and axe finds nothing', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('#engine-description').fill('Van of the baker');
    await page.locator('#engine-submit').click();
    await page.locator('#complaint-text').waitFor();
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    job = page.url();
    await openCalculator('plug-gap/');
    expect(await keep().textContent()).toBe('Keep in the job: Van of the baker');
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
  });

  it('nothing is kept until there is a result', async () => {
    await keep().click();
    await note().filter({ hasText: 'There is no result to keep yet' }).waitFor();
    expect(await page.evaluate(() => performance.getEntriesByType('resource').some(({ name }) => name.endsWith('keep-in-job.js')))).toBe(false);
  });

  it('keeps the figures from the keyboard, once', async () => {
    await page.locator('#gap').fill('1.1');
    await page.locator('[data-output="breakdown"]').waitFor();
    await keep().focus();
    await page.keyboard.press('Enter');
    await note().filter({ hasText: 'Kept in the job' }).waitFor();
    await keep().click();
    await note().filter({ hasText: 'already in the job' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await note().getByRole('link', { name: 'Open the job' }).click();
    await page.locator('.timeline').waitFor();
    expect(page.url()).toBe(job);
    const entries = page.locator('.timeline .entry', { hasText: 'Calculation: Plug gap and voltage' });
    expect(await entries.count()).toBe(1);
    const words = (await entries.textContent()) ?? '';
    // 24.22 × 0.11 + 6.08 × √0.11 = 4.68 kV (Naidu and Kamaraju, open air).
    expect(words).toMatch(/Voltage to jump the gap, at most: 4\.\d+\skV/u);
    expect(words).toContain('Plug gap: 1.1 mm');
    expect(words).toContain('(usual)');
  });

  it('leads back to the calculator with these figures', async () => {
    await page.getByRole('link', { name: 'The calculator with these figures' }).click();
    await page.locator('[data-output="breakdown"]').waitFor();
    expect(await page.locator('#gap').inputValue()).toBe('1.1');
  });

  it('does not overwrite what another window wrote meanwhile', async () => {
    const other = await visit.context.newPage();
    await other.goto(job);
    await other.locator('#complaint-text').waitFor();
    await page.locator('#gap').fill('0.9');
    await keep().click();
    await note().filter({ hasText: 'Kept in the job' }).waitFor();
    // The other window hears of it by itself, and its own entry stands beside it.
    await other.locator('.timeline .entry', { hasText: 'Plug gap: 0.9 mm' }).waitFor();
    await other.locator('#extra-note-summary').click();
    await other.locator('#note-text').fill('Written in the other window');
    await other.locator('#note-submit').click();
    await other.locator('.timeline .entry', { hasText: 'Written in the other window' }).waitFor();
    expect(await other.locator('.timeline .entry').count()).toBe(4);
    await other.close();
  });

  it('is undone like any entry, printed on the sheet and carried in the file', async () => {
    await page.goto(job);
    await page.getByRole('button', { name: 'Undo: Calculation: Plug gap and voltage' }).first().click();
    await page.locator('.entry.is-undone', { hasText: 'Plug gap: 0.9 mm' }).waitFor();
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-to-file').click()]);
    const file = JSON.parse(readFileSync(await download.path(), 'utf8')) as { version: number; events: { kind: string; address?: string }[] };
    expect(file.version).toBe(3);
    expect(file.events.filter(({ kind }) => kind === 'calculation').map(({ address }) => address)).toEqual(['calculators/plug-gap/?gap=1.1', 'calculators/plug-gap/?gap=0.9']);
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    await page.locator('#to-sheet').click();
    await page.locator('.sheet-shop').waitFor();
    const printed = (await pdfText(page)).join('\n').replace(/\s+/gu, ' ');
    expect(printed).toContain('Calculation: Plug gap and voltage');
    expect(printed).toContain('Plug gap: 1.1 mm');
  });

  it('says so when the job is no longer there', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('.job-more summary').click();
    await page.getByRole('button', { name: 'Remove from this device' }).click();
    await page.locator('.field-note', { hasText: 'was removed' }).waitFor();
    await openCalculator('plug-gap/?gap=1');
    await keep().click();
    await note().filter({ hasText: 'no longer on this device' }).waitFor();
    expect(visit.faults).toEqual([]);
  });
});

describe('where the book is read from a copy without that script', () => {
  it('the button says that it could not be fetched, and the figures stay', async () => {
    const cut = await site.newPage();
    await cut.page.route('**/keep-in-job.js', (route) => route.abort());
    await cut.page.goto(site.url);
    await cut.page.evaluate(() => localStorage.setItem('ignition-bench-book:choice:open-job', 'some-job\nFour in line\nTests'));
    await cut.page.goto(`${site.url}calculators/plug-gap/?gap=1`);
    await cut.page.locator('[data-output="breakdown"]').waitFor();
    // A choice kept before jobs left their title there still names the engine.
    expect(await cut.page.locator('[data-keep]').textContent()).toBe('Keep in the job: Four in line');
    await cut.page.locator('[data-keep]').click();
    await cut.page.locator('[data-keep-note]', { hasText: 'could not be fetched' }).waitFor();
    expect(await cut.page.locator('#gap').inputValue()).toBe('1');
    await cut.context.close();
  });
});
