import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { openFolder } from './support/portable.ts';
import { openSite, screenshot, SITE_FOLDER, type BookPage, type OpenSite } from './support/site.ts';

// Figures invented for an invented engine. The book's range of the coil is 0.3 to 1.0 ohm, that of the "maker" is 0.5 to 0.6 ohm.

const figure = { range: 'coil-primary-coil-on-plug', low: 0.5, high: 0.6, unit: 'ohm', referenceTemperature: 20, from: 'Invented data, page 14', enteredBy: 'The foreman', enteredOn: '2026-03-04' };
const file = (...figures: readonly object[]): object => ({
  type: 'ignition-bench-book/figures',
  version: 1,
  engines: [{ id: 'small-van', title: 'Small van (invented)', layout: 'three-inline', figures }],
});
const asText = (value: object): string => JSON.stringify(value, undefined, 2);
const range = 'ranges/coil-primary-coil-on-plug/';

let folder: string;
let site: OpenSite;

beforeAll(async () => {
  // The built site with a folder of its own beside the pages, as on the shop's server.
  folder = mkdtempSync(join(tmpdir(), 'shop-'));
  for (const name of readdirSync(SITE_FOLDER)) symlinkSync(join(SITE_FOLDER, name), join(folder, name));
  mkdirSync(join(folder, 'shop'));
  site = await openSite({ folder, base: '/tools/ignition/' });
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true, force: true });
});

function onServer(text: string | undefined): void {
  rmSync(join(folder, 'shop/figures.json'), { force: true });
  if (text !== undefined) writeFileSync(join(folder, 'shop/figures.json'), text);
}

/** A page, and how often it asked for the shop's file. */
async function visit(options: Parameters<OpenSite['newPage']>[0] = {}): Promise<BookPage & { readonly asked: () => number }> {
  const opened = await site.newPage(options);
  let asked = 0;
  opened.page.on('request', (request) => {
    if (request.url().endsWith('/shop/figures.json')) asked += 1;
  });
  return { ...opened, asked: () => asked };
}

const verdict = (page: Page): Promise<string | null> => page.locator('[data-verdict-word]').first().textContent();
const engineSelect = (page: Page) => page.locator('select[data-field="engine"]').first();

async function read(page: Page, text: string): Promise<void> {
  await page.locator('[data-field="reading"]').first().fill(text);
  await page.locator('[data-verdict-word]:not(:empty)').first().waitFor();
}

describe('figures on the server', () => {
  it('are asked for once, when a reading is touched, and judge the reading with their mark', async () => {
    onServer(asText(file(figure)));
    const { page, asked, faults } = await visit({ width: 390, height: 844 });
    await page.goto(site.url + range);
    await page.waitForLoadState('networkidle');
    expect(asked()).toBe(0);
    await read(page, '0.80');
    expect(await verdict(page)).toBe('Inside the range');
    await engineSelect(page).selectOption({ label: 'Small van (invented)' });
    expect(await verdict(page)).toBe('Above the range');
    expect(await page.locator('[data-verdict-sentence]').textContent()).toContain("Judged by the maker's figure.");
    expect(await page.locator('#check-engine-note').textContent()).toBe(
      'The maker’s figure comes first: from Invented data, page 14; entered by The foreman on 2026-03-04, kept on the shop’s server.',
    );
    expect(await page.locator('[data-field="makerLow"]').inputValue()).toBe('0.5');
    expect(await page.locator('[data-field="makerHigh"]').inputValue()).toBe('0.6');
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await screenshot(page, 'shop-range-390');
    // What is typed over it counts instead, and comes back after another look at the engine's own.
    await page.locator('details.fine', { hasText: 'own figure' }).locator('summary').click();
    await page.locator('[data-field="makerHigh"]').fill('0.9');
    expect(await engineSelect(page).inputValue()).toBe('typed');
    expect(await verdict(page)).toBe('Inside the range');
    await engineSelect(page).selectOption({ label: 'Small van (invented)' });
    expect(await page.locator('[data-field="makerHigh"]').inputValue()).toBe('0.6');
    await engineSelect(page).selectOption({ label: 'As typed below' });
    expect(await page.locator('[data-field="makerHigh"]').inputValue()).toBe('0.9');
    await engineSelect(page).selectOption({ label: 'Small van (invented)' });
    expect(asked()).toBe(1);
    // The choice is kept: the next page takes it without being touched.
    await page.goto(`${site.url}procedures/coil-primary-resistance/`);
    await page.locator('.shop-engine .field-note', { hasText: 'The foreman' }).first().waitFor();
    expect(asked()).toBe(2);
    await page.goto(`${site.url}ranges/plug-gap-general/`);
    await page.locator('.shop-engine .field-note', { hasText: 'so the book’s counts' }).waitFor();
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('in a procedure are chosen once for all its readings', async () => {
    const { page, faults } = await visit();
    await page.goto(`${site.url}procedures/coil-primary-resistance/`);
    const fields = page.locator('reading-check');
    expect(await fields.count()).toBeGreaterThan(1);
    await fields.nth(0).locator('[data-field="reading"]').focus();
    await engineSelect(page).selectOption({ label: 'Small van (invented)' });
    for (const at of [0, 1]) await fields.nth(at).locator('.shop-engine select').waitFor();
    expect(await page.locator('.shop-engine select').evaluateAll((all) => all.map((one) => (one as HTMLSelectElement).value))).toEqual(
      Array.from({ length: await page.locator('.shop-engine select').count() }, () => 'my:small-van'),
    );
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it.each([
    ['a wrong unit', asText(file(figure, { ...figure, range: 'plug-gap-general' })), 'Line 24, engines[0].figures[1].unit: is “ohm”, which measures resistance'],
    ['a file cut short', asText(file(figure)).slice(0, -30), 'The file cannot be read as JSON'],
    ['an unknown key', asText({ ...file(figure), shop: 'ours' }), 'shop: is not known here'],
    ['a newer version', asText({ ...file(figure), version: 2 }), 'Line 3, version: a newer book wrote this file'],
  ])('with %s are told with line and field, and nothing of them counts', async (_label, text, message) => {
    onServer(text);
    const { page, faults } = await visit({ width: 390, height: 844 });
    await page.goto(site.url + range);
    await read(page, '0.80');
    await page.locator('.shop-problem').waitFor();
    const said = await page.locator('.shop-problem').textContent();
    expect(said).toContain('Nothing was taken from the shop’s figures on the server (shop/figures.json).');
    expect(said).toContain(message);
    expect(await engineSelect(page).count()).toBe(0);
    expect(await verdict(page)).toBe('Inside the range');
    expect(await sidewaysOverflow(page)).toEqual([]);
    await page.goto(`${site.url}jobs/`);
    await page.locator('#engine .job-problem', { hasText: message }).waitFor();
    expect(await page.locator('#engine-shopEngine').count()).toBe(0);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('that are not there are not missed', async () => {
    onServer(undefined);
    const { page, asked, faults } = await visit();
    await page.goto(site.url + range);
    await read(page, '0.80');
    await page.waitForLoadState('networkidle');
    expect(asked()).toBe(1);
    expect(await page.locator('.shop-engine').count()).toBe(0);
    expect(await verdict(page)).toBe('Inside the range');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('come with the book onto a device and are there without a network', async () => {
    onServer(asText(file(figure)));
    const own = await openSite({ folder, base: '/' });
    const { page } = await own.newPage({ serviceWorkers: true });
    await page.goto(own.url);
    await page.locator('[data-offline-state="kept"]').first().waitFor({ timeout: 60_000 });
    await own.server.close();
    await page.goto(own.url + range);
    await read(page, '0.80');
    await engineSelect(page).selectOption({ label: 'Small van (invented)' });
    expect(await verdict(page)).toBe('Above the range');
    await own.browser.close();
  });
});

describe('my engines', () => {
  let shop: Awaited<ReturnType<typeof visit>>;
  let page: Page;
  const field = (name: string) => page.locator(`[data-field="${name}"]`);
  const note = (name: string) => page.locator(`[data-note="${name}"]`);

  beforeAll(async () => {
    onServer(asText(file(figure)));
    shop = await visit({ width: 390, height: 844 });
    page = shop.page;
  });
  afterAll(() => page.context().close());

  it('is reached from the page of this device, and shows what the server has', async () => {
    await page.goto(`${site.url}device/`);
    await page.getByRole('link', { name: 'My engines' }).click();
    await page.locator('.engine-figures li').waitFor();
    expect(await page.locator('.engine-figures li').textContent()).toMatch(/0\.5 to 0\.6\sΩ, at 20 °C; from Invented data, page 14; entered by The foreman on 2026-03-04, kept on the shop’s server\./u);
  });

  it('refuses at the field and keeps every word, also over a reload', async () => {
    await field('engine').selectOption({ label: 'Small van (invented)' });
    expect(await field('title').inputValue()).toBe('Small van (invented)');
    expect(await field('layout').inputValue()).toBe('three-inline');
    await field('search').fill('primary on plug');
    await field('range').selectOption({ label: 'Coil primary resistance, coil on plug' });
    await field('low').fill('0,7');
    await field('high').fill('9 V');
    await page.locator('#figure-keep').click();
    expect(await note('high').textContent()).toMatch(/resistance/);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe('high');
    await field('high').fill('0.9');
    await page.locator('#figure-keep').click();
    expect(await note('from').textContent()).toContain('where the figure was read');
    expect(await axeFindings(page)).toEqual([]);
    await page.reload();
    await field('low').waitFor();
    const kept = Object.fromEntries(await Promise.all(['engine', 'title', 'search', 'range', 'unit', 'low', 'high'].map(async (name) => [name, await field(name).inputValue()] as const)));
    expect(kept).toEqual({ engine: 'small-van', title: 'Small van (invented)', search: 'primary on plug', range: 'coil-primary-coil-on-plug', unit: 'ohm', low: '0,7', high: '0.9' });
  });

  it('keeps a figure, which then comes before the one on the server', async () => {
    await field('from').fill('Invented supplement, page 2');
    await field('enteredBy').fill('The apprentice');
    await page.locator('#figure-keep').click();
    await page.locator('.meter-note', { hasText: 'Kept for “Small van (invented)”: Coil primary resistance' }).waitFor();
    await page.locator('.engine-figures li').nth(1).waitFor();
    const [own, server] = await page.locator('.engine-figures li').allTextContents();
    expect(own).toMatch(/0\.7 to 0\.9\sΩ; from Invented supplement, page 2; entered by The apprentice on \d{4}-\d\d-\d\d, kept in this browser\./);
    expect(own).not.toContain('Does not count');
    expect(server).toContain('Does not count: another comes first.');
    expect([await field('low').inputValue(), await field('from').inputValue()]).toEqual(['', 'Invented supplement, page 2']);
    for (const look of [sidewaysOverflow, smallTargets, axeFindings]) expect(await look(page)).toEqual([]);
    await screenshot(page, 'my-engines-390');
    await page.setViewportSize({ width: 1280, height: 900 });
    await screenshot(page, 'my-engines-1280');
    await page.setViewportSize({ width: 320, height: 640 });
    for (const look of [sidewaysOverflow, smallTargets]) expect(await look(page)).toEqual([]);
  });

  it('judges a reading by it', async () => {
    const other = await page.context().newPage();
    await other.goto(site.url + range);
    await read(other, '0.80');
    await engineSelect(other).selectOption({ label: 'Small van (invented)' });
    expect(await verdict(other)).toBe('Inside the range');
    expect(await other.locator('#check-engine-note').textContent()).toContain('The apprentice');
    await read(other, '0.55');
    expect(await verdict(other)).toBe('Below the range');
    await other.close();
  });

  it('a figure removed is brought back', async () => {
    await page.getByRole('button', { name: 'Remove the figure: Coil primary resistance' }).click();
    await page.locator('.meter-note', { hasText: 'was removed' }).waitFor();
    expect(await page.locator('.engine-figures li').count()).toBe(1);
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await page.locator('.engine-figures li').nth(1).waitFor();
    await page.getByRole('button', { name: /^Remove the engine: Small van/ }).click();
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await page.locator('.engine-figures li').nth(1).waitFor();
  });

  it('goes out as a file and into another device, which is told first what it would do', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#figures-to-file').click()]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(download.suggestedFilename()).toBe('figures.json');
    expect(JSON.parse(text)).toMatchObject({ type: 'ignition-bench-book/figures', version: 1, engines: [{ id: 'small-van', figures: [{ low: 0.7 }] }] });
    onServer(undefined);
    const other = await visit();
    await other.page.goto(`${site.url}my-engines/`);
    const said = other.page.locator('#figures-file-note');
    const choose = async (content: string): Promise<string> => {
      await said.evaluate((place) => (place.textContent = ''));
      await other.page.locator('#figures-file').setInputFiles({ name: 'figures.json', mimeType: 'application/json', buffer: Buffer.from(content) });
      await other.page.locator('#figures-file-note:not(:empty)').waitFor();
      return (await said.textContent()) ?? '';
    };
    expect(await choose(text.replace('"low": 0.7', '"low": "0.7"'))).toMatch(/^Nothing was taken in\. Line \d+, engines\[0\]\.figures\[0\]\.low: must be a number\.$/);
    expect(await choose(text.replace('"title":', '"__proto__": {}, "title":'))).toContain('__proto__: this is not allowed');
    expect(await choose(text)).toBe('The file would add: Small van (invented): Coil primary resistance, coil on plug. Nothing is changed yet.');
    expect(await other.page.locator('.engine-figures').count()).toBe(0);
    expect(await axeFindings(other.page)).toEqual([]);
    await other.page.locator('#figures-take').click();
    await other.page.locator('.engine-figures li').waitFor();
    expect(await choose(text)).toBe('Every figure of the file is here already. Nothing is changed yet.');
    // The very file is good for the server, too.
    onServer(text);
    await other.page.reload();
    await other.page.locator('.engine-figures li').nth(1).waitFor();
    expect(other.faults).toEqual([]);
    await other.context.close();
  });

  it('kept figures that cannot be read are told and left alone', async () => {
    const damaged = await visit();
    await damaged.page.goto(`${site.url}my-engines/`);
    await damaged.page.evaluate(() => localStorage.setItem('ignition-bench-book:shop-engines', '{"type":"ignition-bench-book/figures",\n"version":7}'));
    await damaged.page.reload();
    await damaged.page.locator('.job-problem', { hasText: 'Line 2, version: a newer book' }).waitFor();
    await damaged.page.goto(site.url + range);
    await read(damaged.page, '0.80');
    await damaged.page.locator('.shop-problem', { hasText: 'Line 2' }).waitFor();
    expect(await damaged.page.evaluate(() => localStorage.getItem('ignition-bench-book:shop-engines'))).toContain('"version":7');
    expect(damaged.faults).toEqual([]);
    await damaged.context.close();
  });

  it('on a device with no room left says so, and every word stays in the form', async () => {
    const full = await visit();
    await full.page.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await full.page.goto(`${site.url}my-engines/`);
    const words = { title: 'Estate', search: 'plug gap', low: '0.7', from: 'Invented data', enteredBy: 'B' };
    for (const [name, text] of Object.entries(words)) await full.page.locator(`[data-field="${name}"]`).fill(text);
    await full.page.locator('[data-field="range"]').selectOption('plug-gap-general');
    await full.page.locator('#figure-keep').click();
    await full.page.locator('.meter-editor > .field-note', { hasText: 'no room left' }).waitFor();
    for (const [name, text] of Object.entries(words)) expect(await full.page.locator(`[data-field="${name}"]`).inputValue()).toBe(text);
    await full.context.close();
  });

  it('a job on one of them takes its layout and its figures, and judges by them', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('#engine-shopEngine').selectOption({ label: 'Small van (invented)' });
    expect(await page.locator('#engine-shopEngine-note').textContent()).toBe('One figure of its maker comes into the job.');
    expect(await page.locator('#engine-engine').inputValue()).toBe('three-inline');
    expect(await page.locator('#engine-description').inputValue()).toBe('Small van (invented)');
    expect(await axeFindings(page)).toEqual([]);
    await page.locator('#engine-submit').click();
    await page.locator('#extra-reading-summary').click();
    await page.locator('#any-reading-range').selectOption('coil-primary-coil-on-plug');
    await page.locator('#any-reading-reading').fill('0.55');
    expect(await page.locator('.any-reading .verdict-word').textContent()).toBe('Below the range');
    expect(await page.locator('.any-reading .strip-source').textContent()).toMatch(/the engine maker's figure, from Invented supplement, page 2; entered by The apprentice on \d{4}-\d\d-\d\d/);
    await page.locator('#any-reading-submit').click();
    await page.locator('.timeline', { hasText: 'The apprentice' }).waitFor();
    expect(shop.faults).toEqual([]);
  });
});

describe('the portable edition', () => {
  it('asks no server, and judges by the figures taken in', async () => {
    const portable = await openFolder();
    const { page, faults } = await portable.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(portable.fileOf('my-engines/'));
    await page.locator('#figures-file').setInputFiles({ name: 'figures.json', mimeType: 'application/json', buffer: Buffer.from(asText(file(figure))) });
    await page.locator('#figures-take').click();
    await page.locator('.engine-figures li').waitFor();
    await page.goto(portable.fileOf(range));
    await read(page, '0.80');
    await engineSelect(page).selectOption({ label: 'Small van (invented)' });
    expect(await verdict(page)).toBe('Above the range');
    expect(asked.length).toBeGreaterThan(4);
    expect(asked.filter((address) => address.includes('shop/figures') || !address.startsWith('file:'))).toEqual([]);
    expect(faults).toEqual([]);
    await portable.close();
  });
});
