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

const output = (name: string) => page.locator(`[data-output="${name}"] dd`);

describe('a calculator in the page', () => {
  // The same published values as the tables under tests/published: here they must come out of the built page.
  it.each([
    { address: 'calculators/coil-resistance/?reading=0.618&readingTemperature=176%20F', name: 'corrected', shows: /^0\.50\d*\sΩ$/, source: 'copper, alpha 0.00393, IEC 60028: 0.617900 at 80 C is 0.50 at 20 C' },
    { address: 'calculators/plug-gap/?gap=1', name: 'breakdown', shows: /^4\.3\d*\skV$/, source: 'uniform field, 0.1 cm at 760 torr and 293 K: 4.3447 kV (Naidu and Kamaraju)' },
    { address: 'calculators/fuel-trim/?short=20&long=15', name: 'product', shows: /^\+?38/, source: '(1.20)(1.15) - 1 = 38 %' },
    { address: 'calculators/trouble-code/?bytes=03%2012', name: 'code', shows: /^P0312$/, source: 'SAE J2012: decimal-looking digits' },
    { address: 'calculators/unit-converter/?value=150%20psi&to=kPa', name: 'result', shows: /^1034/, source: 'NIST SP 811: 1034.21359 kPa' },
    { address: 'calculators/misfire-rate/?cylinders=4&revolutions=200&counts=20', name: 'rate', shows: /^5/, source: '20 of 400 firings' },
    { address: 'calculators/proof-run/?rateBefore=30', name: 'revolutions', shows: /^100$/, source: 'ln 20 / 0.030 = 99.86 (Poisson)' },
  ])('$address shows $name by $source', async ({ address, name, shows }) => {
    await page.goto(site.url + address);
    await output(name).waitFor();
    expect(((await output(name).textContent()) ?? '').replace('revolutions', '').trim()).toMatch(shows);
    expect(visit.faults).toEqual([]);
  });

  it('keeps inputs in the address, so that it can be kept and sent', async () => {
    await page.goto(`${site.url}calculators/proof-run/`);
    await page.locator('#rateBefore').fill('12');
    await output('revolutions').waitFor();
    expect(page.url()).toContain('rateBefore=12');
    await page.reload();
    expect(await page.locator('#rateBefore').inputValue()).toBe('12');
  });

  it('refuses at the field, keeps what was typed, and leads the focus there', async () => {
    await page.goto(`${site.url}calculators/plug-gap/`);
    await page.locator('#gap').fill('1,234');
    expect(await page.locator('[data-note="gap"]').textContent()).toMatch(/1\.234.*1234|1234.*1\.234/s);
    await page.locator('#gap').press('Enter');
    expect(await page.locator('#gap').inputValue()).toBe('1,234');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('gap');
    expect(await output('breakdown').count()).toBe(0);
  });

  it('takes a bad address gently', async () => {
    await page.goto(`${site.url}calculators/plug-gap/?gap=1&colour=blue`);
    await output('breakdown').waitFor();
    expect(await page.locator('[data-address-note]').textContent()).toContain('colour');
  });

  it('loads the worked example, whose sentence is true', async () => {
    await page.goto(`${site.url}calculators/plug-gap/`);
    await page.locator('[data-example]').first().click();
    await output('breakdown').waitFor();
    expect(await page.locator('.chart-mark').count()).toBeGreaterThan(0);
    expect(visit.faults).toEqual([]);
  });
});
