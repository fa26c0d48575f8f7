import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { onePageOfEachKind, openSite, pageAddresses, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let light: BookPage;
let dark: BookPage;
let narrow: BookPage;

beforeAll(async () => {
  site = await openSite();
  light = await site.newPage({ width: 1280, height: 900 });
  dark = await site.newPage({ width: 390, height: 844, colorScheme: 'dark' });
  narrow = await site.newPage({ width: 320, height: 640 });
});
afterAll(() => site.close());

// Every calculator and every procedure has its own form, so all of them are visited, not one of each kind.
const kinds = onePageOfEachKind();
const formPages = pageAddresses().filter((address) => /^(calculators|procedures)\/./.test(address));
const pages = [...new Set([...kinds, ...formPages])].map((address) => ({ address }));

describe('every kind of page, by WCAG 2.2 AA', () => {
  it.each(pages)('/$address: axe finds nothing on a wide light screen', async ({ address }) => {
    await light.page.goto(site.url + address);
    await light.page.waitForLoadState('networkidle');
    expect(await axeFindings(light.page)).toEqual([]);
  });

  it.each(kinds.map((address) => ({ address })))('/$address: axe finds nothing on a dark phone', async ({ address }) => {
    await dark.page.goto(site.url + address);
    await dark.page.waitForLoadState('networkidle');
    expect(await axeFindings(dark.page)).toEqual([]);
  });

  // 320 px is what 400 % zoom leaves of a 1280 px window (WCAG 2.2, 1.4.10).
  it.each(pages)('/$address: no sideways scrolling at 320 px, targets for a glove', async ({ address }) => {
    await narrow.page.goto(site.url + address);
    await narrow.page.waitForLoadState('networkidle');
    expect(await sidewaysOverflow(narrow.page)).toEqual([]);
    expect(await smallTargets(narrow.page)).toEqual([]);
  });
});

describe('with scripts off', () => {
  it('a procedure reads whole: cautions before actions, ranges with their limits', async () => {
    const { page } = await site.newPage({ javaScript: false });
    await page.goto(`${site.url}procedures/coil-primary-resistance/`);
    const steps = await page.locator('.step').count();
    expect(steps).toBeGreaterThan(4);
    const firstCaution = page.locator('.step:has(.caution)').first();
    const caution = await firstCaution.locator('.caution').boundingBox();
    const action = await firstCaution.locator('.step-text').boundingBox();
    expect(caution && action && caution.y < action.y).toBe(true);
    expect(await page.locator('.strip-drawing').count()).toBeGreaterThan(0);
    await page.context().close();
  });

  it('a calculator shows its table of worked values and the formula', async () => {
    const { page } = await site.newPage({ javaScript: false });
    await page.goto(`${site.url}calculators/plug-gap/`);
    expect(await page.locator('table.figures tbody tr').count()).toBeGreaterThan(5);
    expect(await page.locator('math').count()).toBeGreaterThan(1);
    await page.context().close();
  });
});
