import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { openSite, pdfText, screenshot, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage({ width: 320, height: 640 });
  page = visit.page;
});
afterAll(() => site.close());

const field = (name: string) => page.locator(`[data-field="${name}"]`);
const note = (name: string) => page.locator(`[data-note="${name}"]`);
const said = () => page.locator('.meter-note').textContent();

async function openMeters(where = page): Promise<void> {
  await where.goto(`${site.url}meters/`);
  await where.locator('#meter-add, .meter-editor').first().waitFor();
}

/** Two ohm ranges and one of volts, in the manner of a data sheet; the figures are invented. */
async function typeBenchMeter(): Promise<void> {
  await page.locator('#meter-add').click();
  await field('name').fill('Bench meter');
  await field('ranges.0.upTo').fill('200 ohm');
  await field('ranges.0.percent').fill('0.5');
  await field('ranges.0.counts').fill('2');
  await field('ranges.0.resolution').fill('0,01');
  await page.locator('#meter-add-range').click();
  await field('ranges.1.upTo').fill('20k');
  await field('ranges.1.percent').fill('1');
  await field('ranges.1.counts').fill('5');
  await page.locator('#meter-add-range').click();
  await field('ranges.2.quantity').selectOption('voltage');
  await field('ranges.2.percent').fill('0.8');
  await field('ranges.2.counts').fill('3');
}

describe('my meters', () => {
  it('is reached from the page of this device', async () => {
    await page.goto(`${site.url}device/`);
    await page.getByRole('link', { name: 'My meters' }).click();
    await page.locator('#meter-add').waitFor();
    expect(await page.locator('my-meters .lead').textContent()).toContain('None yet');
  });

  it('refuses at the field, takes the focus there, and keeps every word typed, also over a reload', async () => {
    await typeBenchMeter();
    await field('ranges.1.upTo').fill('20 V');
    await page.locator('#meter-keep').click();
    expect(await note('ranges.1.upTo').textContent()).toMatch(/resistance/);
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe('ranges.1.upTo');
    expect(await field('ranges.1.upTo').getAttribute('aria-invalid')).toBe('true');
    expect(await axeFindings(page)).toEqual([]);
    await openMeters();
    expect(await field('name').inputValue()).toBe('Bench meter');
    expect(await field('ranges.1.upTo').inputValue()).toBe('20 V');
    expect(await field('ranges.2.quantity').inputValue()).toBe('voltage');
  });

  it('fits 320 px, with targets for a glove, and axe finds nothing', async () => {
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await screenshot(page, 'meters-editor-320');
  });

  it('keeps the meter and says its ranges', async () => {
    await field('ranges.1.upTo').fill('20k');
    await page.locator('#meter-keep').click();
    expect(await said()).toContain('kept on this device');
    expect(await page.locator('.meters > li li').allTextContents()).toEqual([
      'Resistance, up to 200 Ω: ±0.5 % ±2 counts of 0.01 Ω',
      'Resistance, up to 20 kΩ: ±1 % ±5 counts',
      'Voltage, any reading: ±0.8 % ±3 counts',
    ]);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('meter-add');
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await screenshot(page, 'meters-320');
  });

  it('is changed, removed and brought back from the keyboard alone', async () => {
    await page.getByRole('button', { name: 'Change Bench meter' }).focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-field'))).toBe('name');
    await page.keyboard.press('End');
    await page.keyboard.type(' 2');
    await page.keyboard.press('Enter');
    expect(await page.locator('.meters h2').allTextContents()).toEqual(['Bench meter 2']);
    await page.getByRole('button', { name: 'Remove Bench meter 2' }).focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('.meters').count()).toBe(0);
    await page.keyboard.press('Enter');
    expect(await page.locator('.meters h2').allTextContents()).toEqual(['Bench meter 2']);
  });

  it('goes out as a file and into another device; a damaged or newer file takes nothing', async () => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#meters-to-file').click()]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(download.suggestedFilename()).toBe('my-meters.json');
    expect(JSON.parse(text)).toMatchObject({ type: 'ignition-bench-book/meters', version: 1, meters: [{ name: 'Bench meter 2' }] });
    const other = await site.newPage();
    await openMeters(other.page);
    const takeIn = async (content: string): Promise<string> => {
      await other.page.locator('#meters-file-note').evaluate((place) => (place.textContent = ''));
      await other.page.locator('#meters-file').setInputFiles({ name: 'my-meters.json', mimeType: 'application/json', buffer: Buffer.from(content) });
      await other.page.locator('#meters-file-note:not(:empty)').waitFor();
      return (await other.page.locator('#meters-file-note').textContent()) ?? '';
    };
    expect(await takeIn(text.slice(0, 90))).toContain('cannot be read as JSON');
    expect(await takeIn(text.replace('"version": 1', '"version": 9'))).toContain('newer book');
    expect(await takeIn(text.replace('"name":', '"__proto__": {}, "name":'))).toContain('hostile');
    expect(await other.page.locator('.meters').count()).toBe(0);
    expect(await takeIn(text)).toBe('Added: Bench meter 2.');
    expect(await takeIn(text)).toBe('Every meter of the file was here already.');
    expect(await takeIn(text.replace('Bench meter 2', 'Bench meter 3'))).toBe('Replaced by the file’s: Bench meter 3.');
    expect(await other.page.locator('.meters h2').allTextContents()).toEqual(['Bench meter 3']);
    expect(other.faults).toEqual([]);
    await other.context.close();
  });

  it('prints', async () => {
    expect((await pdfText(page)).join('\n')).toContain('up to 200');
    expect(visit.faults).toEqual([]);
  });
});

describe('on a device with no room left', () => {
  it('says so, and every word stays in the form', async () => {
    const full = await site.newPage();
    await full.page.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await openMeters(full.page);
    await full.page.locator('#meter-add').click();
    await full.page.locator('[data-field="name"]').fill('Gauge');
    await full.page.locator('[data-field="ranges.0.percent"]').fill('2');
    await full.page.locator('[data-field="ranges.0.counts"]').fill('0');
    await full.page.locator('#meter-keep').click();
    await full.page.locator('.meter-editor > .field-note', { hasText: 'no room left' }).waitFor();
    expect(await full.page.locator('[data-field="name"]').inputValue()).toBe('Gauge');
    expect(await full.page.locator('.meters').count()).toBe(0);
    await full.context.close();
  });
});

describe('a list that cannot be read', () => {
  it('is told and left alone until the user says otherwise', async () => {
    const damaged = await site.newPage();
    await openMeters(damaged.page);
    await damaged.page.evaluate(() => localStorage.setItem('ignition-bench-book:meters', '{"type":"ignition-bench-book/meters","version":2}'));
    await openMeters(damaged.page);
    expect(await damaged.page.locator('my-meters [role="alert"]').textContent()).toContain('newer book');
    expect(await axeFindings(damaged.page)).toEqual([]);
    await damaged.page.goto(`${site.url}ranges/coil-primary-coil-on-plug/`);
    await damaged.page.locator('#check-meter').waitFor({ state: 'attached' });
    expect(await damaged.page.locator('#check-meter option').count()).toBe(2);
    await openMeters(damaged.page);
    await damaged.page.getByRole('button', { name: 'Remove it and start afresh' }).click();
    await damaged.page.locator('my-meters .lead', { hasText: 'None yet' }).waitFor();
    expect(damaged.faults).toEqual([]);
    await damaged.context.close();
  });
});

describe('a reading judged by a meter of the shop', () => {
  const percent = () => page.locator('#check-meterPercent').inputValue();
  const counts = () => page.locator('#check-meterCounts').inputValue();
  const size = () => page.locator('#check-meterResolution').inputValue();

  async function openRange(id: string): Promise<void> {
    await page.goto(`${site.url}ranges/${id}/`);
    await page.locator('reading-check [data-field="meter"]').waitFor({ state: 'attached' });
  }

  it('takes the figures of the range that holds the reading, and follows it', async () => {
    await openRange('coil-primary-coil-on-plug');
    await page.locator('summary', { hasText: /meter/ }).click();
    await page.locator('#check-meter').selectOption({ label: 'Bench meter 2' });
    await page.locator('#check-reading').fill('0.62');
    expect([await percent(), await counts(), await size()]).toEqual(['0.5', '2', '0.01']);
    // Half width 0.5 % of 0.62 and 2 counts of 0.01 = 0.0231; k = 2: 2 × 0.0231/√3 = 0.027 Ω; temperature ±3 K adds 2 × 0.62 × 0.00393 × 3/√3 = 0.0084: 0.028.
    expect(await page.locator('[data-verdict-sentence]').textContent()).toMatch(/0\.620\sΩ at 20\s°C, give or take 0\.028\sΩ/u);
    await page.locator('#check-reading').fill('4k7');
    expect([await percent(), await counts(), await size()]).toEqual(['1', '5', '']);
    expect(await page.locator('[data-conditions]').textContent()).toContain('meter Bench meter 2 ±1 % ±5 digits');
  });

  it('refuses a reading that the meter cannot have shown, and says so', async () => {
    await page.locator('#check-reading').fill('30 kohm');
    expect(await page.locator('[data-note="reading"]').textContent()).toMatch(/Bench meter 2 reads up to 20 kΩ/);
    expect(await page.locator('[data-verdict-word]').textContent()).toBe('');
    expect(await page.locator('#check-reading').inputValue()).toBe('30 kohm');
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
  });

  it('is remembered for the next reading, and figures typed by hand go before it', async () => {
    await openRange('battery-rest');
    await page.locator('#check-reading').fill('12.60');
    expect(await percent()).toBe('0.8');
    await openRange('coil-primary-coil-on-plug');
    expect(await page.locator('#check-meter option:checked').textContent()).toBe('Bench meter 2');
    await page.locator('summary', { hasText: /meter/ }).click();
    await page.locator('#check-meterPercent').fill('3');
    await page.locator('#check-reading').fill('0.62');
    expect(await page.locator('#check-meter option:checked').textContent()).toBe('As typed below');
    expect(await percent()).toBe('3');
  });

  it('fills the figures of a calculator that asks for them, and follows the reading there', async () => {
    await page.goto(`${site.url}calculators/coil-resistance/?reading=0.62`);
    await page.locator('[data-output="corrected"]').waitFor();
    await page.locator('summary', { hasText: 'Fine adjustments' }).click();
    await page.locator('#calculator-meter').selectOption({ label: 'Bench meter 2' });
    const figures = () => page.locator('#meterPercent, #meterCounts, #meterResolution').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    expect(await figures()).toEqual(['0.5', '2', '0.01']);
    // As worked above for the same reading, meter and temperature.
    expect(await page.locator('[data-output="expandedUncertainty"] dd').textContent()).toMatch(/^0\.028\sΩ$/u);
    await page.locator('#reading').fill('9.4 kohm');
    expect(await figures()).toEqual(['1', '5', '']);
    expect(page.url()).toContain('meterCounts=5');
    await page.locator('#reading').fill('30 kohm');
    expect(await page.locator('[data-note="meter"]').textContent()).toContain('reads up to 20 kΩ');
    await page.locator('#calculator-meter').selectOption('usual');
    expect(await figures()).toEqual(['', '', '']);
    await page.locator('#meterPercent').fill('4');
    expect(await page.locator('#calculator-meter').inputValue()).toBe('typed');
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(visit.faults).toEqual([]);
  });

  it('a quantity that it does not measure offers the usual meter only', async () => {
    await openRange('plug-gap-general');
    expect(await page.locator('#check-meter option').allTextContents()).toHaveLength(2);
    expect(visit.faults).toEqual([]);
  });

  it('in a job, its name is kept with the reading and printed on the sheet', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('#engine-description').fill('Estate');
    await page.locator('#engine-submit').click();
    await page.locator('#extra-reading-summary').click();
    await page.locator('#any-reading-range').selectOption('coil-primary-coil-on-plug');
    await page.locator('#any-reading-fine-summary').click();
    await page.locator('#any-reading-meter').selectOption({ label: 'Bench meter 2' });
    await page.locator('#any-reading-reading').fill('0.62');
    expect(await page.locator('#any-reading-meterCounts').inputValue()).toBe('2');
    await page.locator('#any-reading-reading').fill('30k');
    expect(await page.locator('.any-reading .verdict-sentence').textContent()).toContain('Bench meter 2 reads up to');
    await page.locator('#any-reading-reading').fill('0.62');
    await page.locator('#any-reading-submit').click();
    await page.locator('.timeline', { hasText: 'Reading: Coil primary resistance' }).waitFor();
    const words = await page.locator('.timeline').textContent();
    expect(words).toMatch(/0\.620\s±\s0\.028\sΩ/u);
    expect(words).toMatch(/meter Bench meter 2, ±0\.5 % ±2 digits of 0\.01\sΩ/u);
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    await page.locator('#to-sheet').click();
    await page.locator('.sheet-shop').waitFor();
    expect((await pdfText(page)).join('\n').replace(/\s+/gu, ' ')).toContain('Bench meter 2');
    expect(visit.faults).toEqual([]);
  });
});
