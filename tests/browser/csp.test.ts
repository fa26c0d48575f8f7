import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contentSecurityPolicy } from '../../src/build/serve.ts';
import { openSite, pageAddresses, SITE_FOLDER, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage();
});
afterAll(() => site.close());

describe('every page under a strict content security policy', () => {
  const addresses = pageAddresses();

  it('there are pages', () => expect(addresses.length).toBeGreaterThan(20));

  // Directives by Content Security Policy Level 3: without 'unsafe-inline' and 'unsafe-eval' no text becomes a script.
  it.each(addresses.map((address) => ({ address })))('/$address opens without a complaint', async ({ address }) => {
    visit.faults.length = 0;
    const response = await visit.page.goto(site.url + address, { waitUntil: 'load' });
    expect(response?.status()).toBe(200);
    const policy = contentSecurityPolicy(readFileSync(join(SITE_FOLDER, address, 'index.html'), 'utf8')) ?? '';
    expect(response?.headers()['content-security-policy']).toBe(policy);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|\*/);
    expect(visit.faults).toEqual([]);
  });

  it('does block what it forbids', async () => {
    visit.faults.length = 0;
    await visit.page.goto(site.url);
    await visit.page.evaluate(() => {
      const script = document.createElement('script');
      script.src = 'data:text/javascript,document.title="ran"';
      document.head.append(script);
    }).catch(() => undefined);
    await visit.page.waitForTimeout(200);
    expect(await visit.page.title()).not.toBe('ran');
    expect(visit.faults.length).toBeGreaterThan(0);
  });
});
