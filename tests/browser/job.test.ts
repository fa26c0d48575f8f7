import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { pick, startJob, takeIn } from './support/jobSteps.ts';
import { openSite, pdfText, screenshot, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage({ width: 390, height: 844 });
  page = visit.page;
});
afterAll(() => site.close());

const belief = (name: RegExp) => page.locator('.belief-words', { hasText: name }).first();
const saved = () => page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();

describe('codes in any form people write them', () => {
  it('"P0303, p0353 / PO301" is understood, and what is no code is named', async () => {
    await startJob(page, site.url, 'Saloon', 'four-inline-1342');
    await page.locator('#complaint-sign-when-hot').check();
    await page.locator('#complaint-submit').click();
    await page.locator('#codes-read-text').fill('P0303, p0353 / PO301');
    const understood = await page.locator('.understood-codes li').allTextContents();
    expect(understood.map((line) => line.slice(0, 5))).toEqual(['P0303', 'P0353', 'P0301']);
    expect(understood[0]).toContain('Misfire, cylinder 3');
  });

  it('text without a code is refused, and stays', async () => {
    await page.locator('#codes-read-text').fill('none that I could see');
    await page.locator('#codes-read-submit').click();
    expect(await page.locator('#codes-read-text').inputValue()).toBe('none that I could see');
    expect(await page.locator('[data-note="text"]').textContent()).toContain('No trouble code was found');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('codes-read-text');
  });

  it('from pasted codes to the first proposed test in at most 3 taps', async () => {
    await page.locator('#codes-read-text').fill('P0303');
    await page.locator('#codes-read-submit').click();
    await page.locator('.test-name').waitFor();
    console.log('pasted codes to the first proposed test: 1 tap');
    expect(await page.locator('.because').first().textContent()).toMatch(/%|per cent/);
  });
});

describe('one misfire job, from complaint to a proven repair', () => {
  it('takes in complaint and codes, and proposes a test with its reason and minutes', async () => {
    await startJob(page, site.url, 'Small hatchback, 4 cylinders', 'four-inline-1342');
    await takeIn(page, 'P0303');
    expect(await page.locator('.stage-line [aria-current="step"]').textContent()).toBe('Tests');
    expect(Number(await page.locator('.test-minutes .figure').textContent())).toBeGreaterThan(0);
    expect(await page.locator('.engine-drawing .cylinder').count()).toBe(4);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await axeFindings(page)).toEqual([]);
    await screenshot(page, 'job-tests-390');
  });

  it('refuses a finding that no telling test supports', async () => {
    await page.locator('#early-finding-summary').click();
    expect(await page.locator('.finding-reasons').textContent()).toMatch(/No telling test/);
    await page.locator('#finding-submit').click();
    expect(await page.locator('.stage-line [aria-current="step"]').textContent()).toBe('Tests');
    expect(await page.locator('#finding [data-note="hypothesis"]').textContent()).toMatch(/telling test/);
    await page.locator('#early-finding-summary').click();
  });

  it('coils swapped, misfire moved: belief goes to the coil (trade practice, no source)', async () => {
    await pick(page, /Swap coils/);
    expect(await page.locator('.do-now .caution', { hasText: 'High tension' }).count()).toBe(1);
    await page.locator('#outcome-moved').click();
    await expect.poll(() => page.locator('.belief-words').first().textContent()).toMatch(/[Cc]oil/);
    expect(await belief(/[Cc]oil.*cylinder 3/).textContent()).toMatch(/\d\d %/);
    await saved();
  });

  it('a reading is judged, kept and moves the belief', async () => {
    await pick(page, /Coil primary resistance/);
    await page.locator('input[id^="reading-coil-primary-resistance"]').first().fill('OL');
    await page.locator('button', { hasText: 'Keep this reading' }).first().click();
    await page.locator('#record-heading, .timeline').first().waitFor();
    expect(await page.locator('.timeline').textContent()).toMatch(/open|OL/i);
    expect(await page.locator('.belief-words').first().textContent()).toContain('Coil winding');
  });

  it('the finding is now carried, and opens the repair', async () => {
    const form = page.locator('#finding-submit');
    if (!(await form.isVisible())) await page.locator('#early-finding-summary').click();
    await page.locator('.finding-carried').waitFor();
    await form.click();
    await page.locator('#repair-submit').waitFor();
    expect(await page.locator('.finding-words').textContent()).toContain('Coil winding');
  });

  it('part compared, repair written down, codes cleared', async () => {
    for (const box of await page.locator('#repair input[type="checkbox"]').all()) await box.check();
    await page.locator('#repair-submit').click();
    await page.locator('#codes-cleared').click();
    await page.locator('#count-misfires').waitFor();
  });

  it('proof: nonsense is refused and stays; a long enough quiet run and no codes prove it', async () => {
    await page.locator('#count-misfires').fill('many');
    await page.locator('#count-submit').click();
    expect(await page.locator('#count-misfires').inputValue()).toBe('many');
    expect(await page.locator('#count [data-note="misfires"]').textContent()).toContain('whole number');
    await page.locator('#count-misfires').fill('30');
    await page.locator('#count-submit').click();
    // ln 20 / 0.030 per revolution is 99.9, so 100 revolutions (Poisson); a minute at 2000 rpm is far more.
    await page.locator('.proof-run', { hasText: '100 quiet revolutions' }).waitFor();
    expect(await page.locator('#run-misfire').isVisible()).toBe(false);
    await page.locator('#run-minutes').fill('5');
    await page.locator('#run-similar').selectOption('yes');
    await page.locator('#run-result').selectOption('quiet');
    await page.locator('#run-submit').click();
    await page.locator('#reread-summary').click();
    await page.locator('#codes-reread-none').click();
    await page.locator('#hand-over-submit').waitFor();
    await page.locator('#hand-over-submit').click();
    expect(await page.locator('.do-now').textContent()).toContain('repair proven');
    await saved();
  });

  it('all of it is there after a reload, and the start page offers to carry on', async () => {
    await page.reload();
    await page.locator('.stage-line').waitFor();
    expect(await page.locator('.timeline .entry').count()).toBeGreaterThan(8);
    await page.goto(site.url);
    expect(await page.locator('[data-jobs-door-title]').textContent()).toBe('Carry on with the job');
    await page.locator('[data-jobs-door]').click();
    await page.locator('.stage-line').waitFor();
  });

  it('an event undone takes its weight with it, and comes back', async () => {
    const before = await page.locator('.belief-words').first().textContent();
    const undo = page.getByRole('button', { name: /Undo: Swap coils/ });
    await undo.click();
    const bring = page.getByRole('button', { name: /Bring back: Swap coils/ });
    await bring.waitFor();
    await bring.click();
    await undo.waitFor();
    expect(await page.locator('.belief-words').first().textContent()).toBe(before);
  });

  it('the sheet prints: the customer on one page, then the shop', async () => {
    await page.locator('#to-sheet').click();
    await page.locator('.sheet-customer').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    const sheets = await pdfText(page);
    const [first = '', second = ''] = sheets;
    for (const words of ['What was wrong', 'How we know', 'What was done', 'Proven', 'What to watch', 'Mechanic', 'Customer']) expect(first).toContain(words);
    expect(first).not.toContain('For the shop');
    expect(second).toContain('For the shop');
    expect(second).toContain('common practice, no source');
    expect(first).not.toContain('Search');
  });

  it('one file carries the job to another device', async () => {
    await page.goBack();
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-to-file').click()]);
    const path = await download.path();
    const text = readFileSync(path, 'utf8');
    expect(JSON.parse(text)).toMatchObject({ type: 'ignition-bench-book/job', version: 3 });
    const other = await site.newPage({ width: 1280, height: 900, colorScheme: 'dark' });
    await other.page.goto(`${site.url}jobs/`);
    await other.page.locator('#open-file').setInputFiles({ name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await other.page.locator('#import-take').click();
    await other.page.locator('.stage-line').waitFor();
    expect(await other.page.locator('h1').textContent()).toContain('Small hatchback');
    expect(await axeFindings(other.page)).toEqual([]);
    await screenshot(other.page, 'job-proven-1280-dark');
    expect(other.faults).toEqual([]);
    await other.context.close();
  });

  it('nothing went wrong on the way', () => expect(visit.faults).toEqual([]));
});

describe('what must be refused', () => {
  it.each([
    { label: 'not JSON', text: 'hello', says: /JSON|read/ },
    { label: 'a newer version', text: '{"type":"ignition-bench-book/job","version":99,"id":"a","events":[]}', says: /newer|version/ },
    { label: 'another kind of file', text: '{"type":"something-else","version":1}', says: /job/ },
    { label: 'a poisoned key', text: '{"type":"ignition-bench-book/job","version":1,"__proto__":{"x":1}}', says: /__proto__/ },
  ])('a job file that is $label, with the reason', async ({ text, says }) => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('#open-file').setInputFiles({ name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await expect.poll(() => page.locator('#open-file-note').textContent()).toMatch(says);
  });

  it('with one coil for all cylinders no coil swap is offered, and the page says why', async () => {
    await startJob(page, site.url, 'Old van', 'four-inline-1342', 'distributor');
    await takeIn(page, 'P0300');
    await page.locator('#another-test-summary').click();
    await page.locator('.proposals button').first().waitFor();
    expect(await page.locator('.proposals button', { hasText: 'Swap coils' }).count()).toBe(0);
    await page.locator('#not-offered-summary').click();
    await expect.poll(() => page.locator('.not-offered').textContent()).toMatch(/Swap coils.*One coil serves all/s);
  });

  it('on wasted spark, misfires at companions point to the coil they share (trade practice, no source)', async () => {
    await startJob(page, site.url, 'Estate', 'four-inline-1342', 'wasted-spark');
    await takeIn(page, 'P0301 P0304');
    expect(await page.locator('.belief-words').first().textContent()).toMatch(/coil for 1 and 4/i);
  });
});

describe('the invented job', () => {
  it('is labelled as invented on the bench, in the list and on the sheet', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('#open-demo-worn-plug-gap').click();
    await page.locator('.bench-top .invented').waitFor();
    await page.locator('#to-sheet').click();
    await page.locator('.sheet-head .invented').waitFor();
    expect((await pdfText(page))[0]).toContain('Invented');
    await page.goto(`${site.url}jobs/`);
    await page.locator('.jobs .invented').first().waitFor();
  });
});

describe('by keyboard alone', () => {
  it('a job is started, taken in and its first test answered', async () => {
    await page.goto(`${site.url}jobs/`);
    await page.locator('#engine-description').waitFor();
    await page.locator('#main').focus();
    const reach = async (id: string): Promise<void> => {
      for (let steps = 0; steps < 80; steps += 1) {
        if ((await page.evaluate(() => document.activeElement?.id)) === id) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`Tab never reached ${id}.`);
    };
    await reach('engine-description');
    await page.keyboard.type('Keyboard car');
    await reach('engine-submit');
    await page.keyboard.press('Enter');
    await page.locator('#complaint-text').waitFor();
    await reach('complaint-text');
    await page.keyboard.type('Shakes.');
    await reach('complaint-submit');
    await page.keyboard.press('Enter');
    await reach('codes-read-text');
    await page.keyboard.type('P0301');
    await reach('codes-read-submit');
    await page.keyboard.press('Enter');
    await page.locator('.test-name').waitFor();
    const first = await page.locator('.outcome').first().getAttribute('id');
    await reach(first ?? '');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.timeline .entry').count()).toBe(4);
    expect(await page.evaluate(() => document.activeElement !== document.body)).toBe(true);
  });
});
