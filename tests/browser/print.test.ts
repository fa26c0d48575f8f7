import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSite, pdfText, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;

beforeAll(async () => {
  site = await openSite();
  visit = await site.newPage({ width: 390, height: 844, colorScheme: 'dark' });
});
afterAll(() => site.close());

async function printed(address: string): Promise<string> {
  await visit.page.goto(site.url + address);
  await visit.page.waitForLoadState('networkidle');
  return (await pdfText(visit.page)).join('\n');
}

describe('on A4', () => {
  it('a procedure prints whole: cautions, steps, outcomes, and what is folded on the screen', async () => {
    const text = await printed('procedures/swap-coils/');
    for (const words of ['Swap coils between two cylinders', 'Danger', 'What you found', 'Points to', 'Why it works', 'Usual mistakes', 'Sources', 'Version']) {
      expect(text).toContain(words);
    }
    expect(text).toContain('common practice, no source');
  });

  it('leaves out what paper cannot do', async () => {
    const text = await printed('procedures/coil-primary-resistance/');
    for (const words of ['Search', 'Contents', 'on this device', 'Meter, leads and temperature']) expect(text).not.toContain(words);
  });

  it('a calculator prints as a wall chart: table, formula and a filled form', async () => {
    const text = await printed('calculators/proof-run/?rateBefore=12');
    expect(text).toContain('Table');
    expect(text).toContain('250');
  });

  it('a range prints its limits large with its source', async () => {
    const text = await printed('ranges/coil-primary-coil-on-plug/');
    expect(text).toMatch(/0\.3 to 1\.0\s*Ω/);
    expect(text).toContain('common practice, no source');
  });
});
