/** What keeps a job safe: a file is looked at before it is taken in, two windows lose nothing, a full device says so, a reminder comes in time. */
import { readFileSync } from 'node:fs';
import type { BrowserContext, Dialog, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appendEvent } from '../../src/domain/jobs/edit.ts';
import { exportJob, importJob, readJob } from '../../src/domain/jobs/file.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { exportJobs } from '../../src/elements/storage/jobsFile.ts';
import { codes, complaint, engine, jobOf, startTime } from '../jobs/jobBook.ts';
import { axeFindings, sidewaysOverflow, smallTargets } from './support/accessibility.ts';
import { bundleForPage } from './support/inPage.ts';
import { openSite, screenshot, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let script: string;

const inPage = `
import { JobSession } from './src/elements/jobs/session.ts';
import { openJobStore } from './src/elements/storage/jobs.ts';
import { jobBook } from './tests/jobs/jobBook.ts';

globalThis.storeJob = (job) => openJobStore().write(job);
globalThis.storedJob = async (id) => (await openJobStore().read(id)).value;
globalThis.removeJob = async (id) => openJobStore().remove(id);
globalThis.storedCount = async () => (await openJobStore().list()).value.jobs.length;
globalThis.addMany = async (id, mark, count) => {
  const store = openJobStore();
  const session = new JobSession((await store.read(id)).value, jobBook, store, { changed: () => undefined, statusChanged: () => undefined });
  store.watch((changed) => changed === id && session.refresh());
  for (let index = 0; index < count; index += 1) {
    session.add({ body: { kind: 'note', text: mark + index }, id: mark + '-' + index });
    // Now and then the other window gets its turn, at other places in each window.
    if (index % (mark === 'one' ? 7 : 5) === 0) await session.save();
  }
  await session.save();
  await session.refresh();
  return session.status.kind;
};`;

beforeAll(async () => {
  site = await openSite();
  script = await bundleForPage(inPage);
});
afterAll(() => site.close());

interface JobsPage extends BookPage {
  readonly page: Page;
}

async function jobsPage(width = 390): Promise<JobsPage> {
  const visit = await site.newPage({ width, height: 844 });
  await visit.page.goto(`${site.url}jobs/`);
  await visit.page.locator('#open-file').waitFor();
  await visit.page.evaluate(script);
  return visit;
}

const asFile = (text: string, name = 'job.json') => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
const choose = (page: Page, text: string, name?: string) => page.locator('#open-file').setInputFiles(asFile(text, name));
const stored = (page: Page, id = 'job-1'): Promise<Job | undefined> => page.evaluate(`storedJob('${id}')`);
const keep = (page: Page, job: Job): Promise<unknown> => page.evaluate(([given]) => (globalThis as unknown as { storeJob: (job: unknown) => unknown }).storeJob(given), [job]);
const withNotes = (job: Job, mark: string, count: number): Job =>
  Array.from({ length: count }).reduce<Job>((before, _, index) => appendEvent(before, { kind: 'note', text: `${mark} ${index}` }, `${mark}-${index}`, startTime), job);

const job = jobOf(engine, complaint, codes);

describe('a file is looked at before anything is written', () => {
  it('a new job: said, left, and nothing was kept; chosen again and taken in, it is there', async () => {
    const { page, faults, context } = await jobsPage();
    await choose(page, exportJob(job), 'from-the-other-bay.json');
    await page.locator('.import-review h3').waitFor();
    expect(await page.locator('.import-review').textContent()).toMatch(/from-the-other-bay\.json.*“Rough when hot” is not on this device yet.*with 3 entries/s);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H3');
    expect(await axeFindings(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    expect(await stored(page)).toBeUndefined();
    await page.locator('#import-leave').click();
    expect(await page.locator('.import-review').textContent()).toBe('');
    expect(await stored(page)).toBeUndefined();
    await choose(page, exportJob(job));
    await page.locator('#import-take').click();
    await page.locator('.stage-line').waitFor();
    await page.evaluate(script);
    expect((await stored(page))?.events).toHaveLength(3);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('a newer copy: the entries it would add are listed, those only here stay', async () => {
    const { page, context } = await jobsPage();
    await keep(page, withNotes(job, 'here', 1));
    await choose(page, exportJob(withNotes(job, 'there', 2)));
    await page.locator('.import-review h3').waitFor();
    expect(await page.locator('.import-review').textContent()).toMatch(/2 entries would be added to “Rough when hot”.*1 entry that only this device holds stays/s);
    expect(await page.locator('.import-added li').count()).toBe(2);
    expect((await stored(page))?.events).toHaveLength(4);
    await screenshot(page, 'import-adds-390');
    await page.locator('#import-take').click();
    await page.locator('.stage-line').waitFor();
    await page.evaluate(script);
    expect((await stored(page))?.events.map(({ id }) => id).toSorted()).toEqual(['e1', 'e2', 'e3', 'here-0', 'there-0', 'there-1']);
    await context.close();
  });

  it.each([
    { label: 'the same', here: job, says: /on this device already.*Nothing would change/s },
    { label: 'an older copy', here: withNotes(job, 'here', 5), says: /file is older than “Rough when hot” on this device, which has 5 entries more.*nothing is lost/s },
  ])('$label: there is nothing to take in', async ({ here, says }) => {
    const { page, context } = await jobsPage();
    await keep(page, here);
    await choose(page, exportJob(job));
    await page.locator('.import-review h3').waitFor();
    expect(await page.locator('.import-review').textContent()).toMatch(says);
    expect(await page.locator('#import-take').count()).toBe(0);
    expect((await stored(page))?.events).toEqual(here.events);
    await context.close();
  });

  it.each([
    { label: 'not JSON', text: 'hello', says: /cannot be read as JSON/ },
    { label: 'a newer version', text: exportJob(job).replace(/"version": \d+/, '"version": 99'), says: /newer book.*Nothing was changed/ },
    { label: 'changed since it was written', text: exportJob(job).replace('Rough when hot', 'Rough when cold'), says: /checksum/ },
    { label: 'a poisoned key', text: '{"type":"ignition-bench-book/job","version":3,"__proto__":{"polluted":1}}', says: /__proto__/ },
    { label: 'too large for one job', text: `{"a":"${'x'.repeat(10 * 1024 * 1024)}"}`, says: /larger than 10 MB/ },
    { label: 'without a job', text: '{"type":"ignition-bench-book/jobs","version":1,"jobs":[]}', says: /holds no job/ },
    { label: 'a copy that disagrees about an entry', text: exportJob(withNotes(job, 'here', 1)).replace('here 0', 'here 9').replace(/,\s*"checksum": "[^"]*"/, ''), says: /disagree about the entry/ },
  ])('$label: refused at the field, and what is here is untouched', async ({ text, says }) => {
    const { page, faults, context } = await jobsPage();
    const here = withNotes(job, 'here', 1);
    await keep(page, here);
    await choose(page, text);
    await expect.poll(() => page.locator('#open-file-note').textContent()).toMatch(says);
    expect(await page.locator('#open-file').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.import-review').textContent()).toBe('');
    expect((await stored(page))?.events).toEqual(here.events);
    expect(await page.evaluate(() => ({} as { polluted?: number }).polluted)).toBeUndefined();
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('all jobs in one file', () => {
  it('go to another device in one file, each looked at first; a damaged one does not hold up the others', async () => {
    const one = await jobsPage();
    for (const id of ['a', 'b', 'c']) await keep(one.page, { ...job, id, title: `Car ${id}` });
    await one.page.locator('.jobs .job-list li').nth(2).waitFor();
    const [download] = await Promise.all([one.page.waitForEvent('download'), one.page.locator('#save-all').click()]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(download.suggestedFilename()).toMatch(/^jobs-\d{4}-\d\d-\d\d\.json$/);
    expect((JSON.parse(text) as { jobs: unknown[] }).jobs.map((item) => readJob(item).ok)).toEqual([true, true, true]);
    expect(await one.page.evaluate(() => document.activeElement?.id)).toBe('save-all');
    await one.context.close();

    const other = await jobsPage(1280);
    await keep(other.page, { ...withNotes(job, 'later', 1), id: 'b', title: 'Car b' });
    await choose(other.page, text.replace('"title": "Car c"', '"title": "Car x"'), 'all.json');
    await other.page.locator('.import-review h3').waitFor();
    expect(await other.page.locator('.import-jobs > li').allTextContents()).toEqual([
      expect.stringMatching(/“Car x” cannot be taken in.*checksum/),
      expect.stringMatching(/file is older than “Car b”/),
      expect.stringMatching(/“Car a” is not on this device yet/),
    ]);
    expect(await other.page.evaluate('storedCount()')).toBe(1);
    expect(await axeFindings(other.page)).toEqual([]);
    await screenshot(other.page, 'import-several-1280');
    await other.page.locator('#import-take', { hasText: 'Take in 1 of 3 jobs' }).click();
    await expect.poll(() => other.page.locator('#open-file-note').textContent()).toBe('1 job was taken in.');
    await other.context.close();
  });
});

describe('two windows', () => {
  it('that add 100 entries each at once lose none, and both end with all of them', async () => {
    const one = await jobsPage();
    await keep(one.page, job);
    const other = await one.context.newPage();
    await other.goto(`${site.url}jobs/`);
    await other.evaluate(script);
    const kinds = await Promise.all([one.page.evaluate("addMany('job-1', 'one', 100)"), other.evaluate("addMany('job-1', 'other', 100)")]);
    expect(kinds).toEqual(['saved', 'saved']);
    const kept = readJob(await stored(other));
    const ids = kept.ok ? kept.value.events.map(({ id }) => id) : [];
    expect(ids).toHaveLength(203);
    for (const mark of ['one', 'other']) expect(ids.filter((id) => id.startsWith(`${mark}-`))).toHaveLength(100);
    expect(one.faults).toEqual([]);
    await one.context.close();
  });
});

/** Leaves the page's origin no more than this many bytes, by the browser itself. */
async function limitRoom(context: BrowserContext, page: Page, bytes?: number): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send('Storage.overrideQuotaForOrigin', { origin: new URL(site.url).origin, ...(bytes === undefined ? {} : { quotaSize: bytes }) });
}

/** Does the browser ask before the page is left? What was asked is answered with staying. */
async function leavingAsks(page: Page): Promise<boolean> {
  let asked = false;
  const stay = (dialog: Dialog): void => {
    asked = dialog.type() === 'beforeunload';
    void dialog.dismiss();
  };
  page.on('dialog', stay);
  await page.goto(`${site.url}icon.svg`).catch(() => undefined);
  page.off('dialog', stay);
  return asked;
}

/** The same refusal by the page's own IndexedDB: once it has written, the browser holds room in reserve for half a minute. */
async function refuseWrites(page: Page, refused: boolean): Promise<void> {
  await page.evaluate((refuse) => {
    const stores = IDBObjectStore.prototype as unknown as { put: unknown; putBefore: unknown };
    stores.putBefore ??= stores.put;
    stores.put = refuse
      ? () => {
          throw new DOMException('full', 'QuotaExceededError');
        }
      : stores.putBefore;
  }, refused);
}

describe('a browser that loses its database', () => {
  it('has every job again from the second copy, with all its entries; one that was removed stays removed', async () => {
    const { page, context, faults } = await jobsPage();
    const kept = jobOf(engine, complaint, codes);
    await keep(page, kept);
    await keep(page, { ...kept, id: 'job-gone' });
    await page.evaluate("removeJob('job-gone')");
    const before = await stored(page);
    await page.goto('about:blank');
    const other = await context.newPage();
    // As a browser does that finds its database damaged: all of it goes, and the files beside it stay.
    await other.goto(`${site.url}licences.txt`);
    await other.evaluate("new Promise((resolve, reject) => { const asked = indexedDB.deleteDatabase('ignition-bench-book'); asked.onsuccess = resolve; asked.onerror = reject; asked.onblocked = reject; })");
    await other.goto(`${site.url}jobs/`);
    await other.locator('.job-link').waitFor();
    await other.evaluate(script);
    expect(await stored(other)).toEqual(before);
    expect(await other.evaluate('storedCount()')).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe('a device without room', () => {
  it('says so on the bench, keeps what was typed, gives it out as a file, and keeps it once there is room', async () => {
    const { page, context } = await jobsPage();
    await keep(page, job);
    await page.goto(`${site.url}jobs/bench/?job=job-1`);
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    await refuseWrites(page, true);
    await page.locator('#extra-note-summary').click();
    await page.locator('#note-text').fill('Typed when there was no room.');
    await page.locator('#note-submit').click();
    await page.locator('.save-words', { hasText: 'no room left' }).waitFor();
    expect(await page.locator('.save-words').textContent()).toMatch(/^Not saved\..*Save the job to a file now, then make room/);
    // The form is far below the line that says so: it must be seen all the same.
    const line = await page.locator('.save-words').boundingBox();
    expect(line && line.y >= 0 && line.y + line.height < 844).toBe(true);
    expect(await page.locator('.timeline').textContent()).toContain('Typed when there was no room.');
    expect(await axeFindings(page)).toEqual([]);
    await screenshot(page, 'no-room-390', false);
    expect(await leavingAsks(page)).toBe(true);
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-to-file').click()]);
    const inFile = importJob(readFileSync(await download.path(), 'utf8'));
    expect(inFile.ok && inFile.value.events.at(-1)).toMatchObject({ kind: 'note', text: 'Typed when there was no room.' });
    await refuseWrites(page, false);
    await page.locator('#save-again').click();
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    expect(await leavingAsks(page)).toBe(false);
    await page.goBack();
    await page.locator('.timeline', { hasText: 'Typed when there was no room.' }).waitFor();
    await context.close();
  });

  it('says so where a job is started; every word stays in the form and goes into a file', async () => {
    const { page, context } = await jobsPage();
    await page.locator('#engine-description').fill('Blue estate');
    await page.locator('#engine-customer').fill('Order 7');
    await limitRoom(context, page, 1);
    await page.locator('#engine-submit').click();
    await page.locator('.new-job-note .job-problem', { hasText: 'no room left' }).waitFor();
    expect(await page.locator('#engine-description').inputValue()).toBe('Blue estate');
    expect(await page.locator('#engine-customer').inputValue()).toBe('Order 7');
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-new').click()]);
    const inFile = importJob(readFileSync(await download.path(), 'utf8'));
    expect(inFile.ok && inFile.value.events[0]).toMatchObject({ kind: 'engine-chosen', description: 'Blue estate', customerReference: 'Order 7' });
    await limitRoom(context, page);
    await page.locator('#engine-submit').click();
    await page.locator('.stage-line').waitFor();
    expect(await page.locator('h1').textContent()).toContain('Blue estate');
    await context.close();
  });

  it('says so where a file is taken in, and the file can be taken in later', async () => {
    const { page, context } = await jobsPage();
    await choose(page, exportJobs([job, { ...job, id: 'job-2' }]));
    await page.locator('#import-take').waitFor();
    await limitRoom(context, page, 1);
    await page.locator('#import-take').click();
    await expect.poll(() => page.locator('#open-file-note').textContent()).toMatch(/^Nothing was taken in\..*no room left/);
    await limitRoom(context, page);
    await page.locator('#import-take').click();
    await expect.poll(() => page.locator('#open-file-note').textContent()).toBe('2 jobs were taken in.');
    await context.close();
  });
});

describe('the reminder to save a job to a file', () => {
  it('comes with 30 entries, on the list and on the bench, blocks nothing, and goes once the job is in a file', async () => {
    const { page, context } = await jobsPage();
    await keep(page, withNotes({ ...job, createdAt: new Date().toISOString() }, 'note', 20));
    await page.reload();
    await page.locator('.job-list li').first().waitFor();
    expect(await page.locator('.save-reminder').count()).toBe(0);
    expect(await page.locator('.jobs .field-hint', { hasText: /of the .* this browser gives/ }).count()).toBe(1);
    await page.evaluate(script);
    await keep(page, withNotes({ ...job, createdAt: new Date().toISOString() }, 'note', 30));
    await page.locator('.job-list .save-reminder', { hasText: 'never saved to a file' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await screenshot(page, 'reminder-390');
    await page.setViewportSize({ width: 1280, height: 900 });
    await screenshot(page, 'reminder-1280');
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(`${site.url}jobs/bench/?job=job-1`);
    await page.locator('.save-line .save-reminder', { hasText: 'never saved to a file' }).waitFor();
    await Promise.all([page.waitForEvent('download'), page.locator('#save-to-file').click()]);
    await expect.poll(() => page.locator('.save-line .save-reminder').isVisible()).toBe(false);
    await page.goto(`${site.url}jobs/`);
    await page.locator('.job-list li').first().waitFor();
    expect(await page.locator('.save-reminder').count()).toBe(0);
    await context.close();
  });
});
