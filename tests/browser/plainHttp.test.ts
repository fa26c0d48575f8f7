import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSite, type OpenSite } from './support/site.ts';

let site: OpenSite;

// A name of the shop's own network over http is no secure context: browsers offer no service worker there.
beforeAll(async () => {
  site = await openSite({ host: 'bench.shop.test' });
});
afterAll(() => site.close());

describe("over plain http in the shop's network", () => {
  it('says that the book needs the server, and everything but keeping it works', async () => {
    const { page, faults } = await site.newPage({ serviceWorkers: true });
    await page.goto(site.url);
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    await page.locator('[data-offline-state="needs-server"]').first().waitFor({ state: 'attached' });
    expect(await page.locator('[data-offline-state]').first().textContent()).toContain("needs the shop's server");
    await page.locator('#start-search').fill('p0303');
    await page.locator('.search-code').waitFor();
    await page.goto(`${site.url}jobs/`);
    await page.locator('#engine-description').fill('Van over http');
    await page.locator('#engine-submit').click();
    await page.locator('#complaint-text').waitFor();
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    expect(faults).toEqual([]);
  });
});
