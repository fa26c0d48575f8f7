import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { openSite, pdfText, screenshot, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage({ width: 320, height: 640, colorScheme: 'dark' });
  page = visit.page;
});
afterAll(() => site.close());

const said = () => page.locator('[data-wall-note]').textContent();
const rows = () => page.locator('.wall-table tbody tr');

async function openWallChart(address: string): Promise<void> {
  await page.goto(site.url + address);
  await page.locator('.result dl, .result-waits').first().waitFor();
  await page.locator('[data-wall-chart] > summary').focus();
  await page.keyboard.press('Enter');
  await page.locator('#wall-varied').waitFor();
}

describe('a wall chart', () => {
  it('is fetched only when its fold is opened, which the keyboard does', async () => {
    await page.goto(`${site.url}calculators/plug-gap/`);
    await page.locator('.result-waits').waitFor();
    const fetched = () => page.evaluate(() => performance.getEntriesByType('resource').some(({ name }) => name.endsWith('wall-chart.js')));
    expect(await fetched()).toBe(false);
    await openWallChart('calculators/plug-gap/');
    expect(await fetched()).toBe(true);
  });

  it('works out table and chart as the published curve has it: 24.22 x + 6.08 √x kV, x in cm (Naidu and Kamaraju)', async () => {
    await page.locator('#wall-varied').selectOption('gap');
    await page.locator('#wall-from').fill('0.5');
    await page.locator('#wall-to').fill('1,5 mm');
    await page.locator('#wall-rows').fill('11');
    expect(await rows().count()).toBe(11);
    expect(await said()).toBe('11 rows worked out.');
    const shown = await page.locator('.wall-table tbody tr').evaluateAll((all) => all.map((row) => [...row.children].map((cell) => Number.parseFloat(cell.textContent ?? ''))));
    for (const [gap = NaN, kilovolts = NaN] of shown) {
      expect(Math.abs(24.22 * (gap / 10) + 6.08 * Math.sqrt(gap / 10) - kilovolts)).toBeLessThan(0.051);
    }
    expect(await page.locator('.wall-chart-sheet .chart-line').count()).toBe(1);
  });

  it('follows the form above', async () => {
    const before = await rows().first().textContent();
    await page.locator('#compressionRatio').fill('10');
    expect(await rows().first().textContent()).not.toBe(before);
    expect(await page.locator('.wall-conditions').textContent()).toContain('10');
  });

  it('fits 320 px, has targets for a glove, and axe finds nothing', async () => {
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await screenshot(page, 'wall-chart-320');
  });

  it('refuses at the field and keeps what was typed; each input has a span of its own', async () => {
    await page.locator('#wall-rows').fill('41');
    expect(await page.locator('[data-note="rows"]').textContent()).toContain('from 3 to 40');
    expect(await page.locator('#wall-rows').getAttribute('aria-invalid')).toBe('true');
    expect(await rows().count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Print the wall chart' }).isVisible()).toBe(false);
    await page.locator('#wall-rows').fill('5');
    await page.locator('#wall-varied').selectOption('compressionRatio');
    expect(await page.locator('#wall-from').inputValue()).toBe('');
    expect(await said()).toContain('nothing was typed');
    await page.locator('#wall-varied').selectOption('gap');
    expect(await page.locator('#wall-to').inputValue()).toBe('1,5 mm');
    expect(await rows().count()).toBe(5);
  });

  it('a row that cannot be worked out says why, and the form above says what it lacks', async () => {
    await openWallChart('calculators/coil-resistance/');
    expect(await said()).toContain('In the form above: Meter reading');
    await page.locator('#reading').fill('0.5');
    await page.locator('#wall-varied').selectOption('leadResistance');
    await page.locator('#wall-from').fill('0');
    await page.locator('#wall-to').fill('1');
    await page.locator('#wall-rows').fill('11');
    expect(await page.locator('.wall-refused').count()).toBe(5);
    expect(await page.locator('.wall-refused').first().textContent()).toContain('more than the whole reading');
    expect(await said()).toBe('11 rows, 5 of them refused with the reason.');
  });

  it('prints on one sheet, and nothing else of the page; afterwards the page prints whole again', async () => {
    await openWallChart('calculators/plug-gap/?compressionRatio=10');
    await page.locator('#wall-rows').fill('40');
    expect(await rows().count()).toBe(40);
    // The browser under test has no print dialog: its PDF is taken while the sheet is being printed.
    await page.evaluate(() => {
      globalThis.print = () => undefined;
    });
    await page.getByRole('button', { name: 'Print the wall chart' }).click();
    expect(await page.evaluate(() => document.body.className)).toContain('printing-wall-chart');
    const sheets = await pdfText(page);
    expect(sheets).toHaveLength(1);
    const text = sheets.join('\n');
    for (const words of ['plug gap from', 'Compression ratio', 'Formula:', 'kV']) expect(text).toContain(words);
    for (const words of ['What it means', 'Worked example', 'Runs over the rows', 'Sources', 'Version']) expect(text).not.toContain(words);
    expect(await page.evaluate(() => document.body.className)).not.toContain('printing-wall-chart');
    expect((await pdfText(page)).join('\n')).toContain('What it means');
    expect(visit.faults).toEqual([]);
  });
});

describe('with scripts off', () => {
  it('the fold says what it needs', async () => {
    const { page: still, context } = await site.newPage({ javaScript: false });
    await still.goto(`${site.url}calculators/plug-gap/`);
    expect(await still.locator('[data-wall-chart-place]').textContent()).toContain('With scripts on');
    await context.close();
  });
});
