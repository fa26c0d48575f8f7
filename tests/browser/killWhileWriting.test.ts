/** A browser that is killed while it writes: what was shown as saved is there when it starts again, and nothing is torn. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type RunningServer } from '../../src/build/serve.ts';
import { readJob } from '../../src/domain/jobs/file.ts';
import { launchWithProfile } from './support/browser.ts';
import { bundleForPage } from './support/inPage.ts';
import { SITE_FOLDER } from './support/site.ts';

const rounds = 60;
/** Decides the moments of the kills; any seed must do. */
const seed = 20_260_304;
/** Milliseconds from the first acknowledged entry to the kill, at most. */
const longestWriting = 600;
/** Every so many rounds the kill does not wait for a first entry: it hits the opening of the database and the first write. */
const earlyEvery = 6;

/** Notes of every length up to some kilobytes, so that a write spans many blocks of the disk. */
const inPage = `
import { JobSession } from './src/elements/jobs/session.ts';
import { openJobStore } from './src/elements/storage/jobs.ts';
import { engine, jobBook, jobOf } from './tests/jobs/jobBook.ts';

globalThis.readAll = () => openJobStore().list();
globalThis.writeOn = async (id) => {
  const store = openJobStore();
  const first = await store.write({ ...jobOf(engine), id });
  if (!first.ok) throw new Error(first.error.message);
  let saved = () => undefined;
  const session = new JobSession(first.value.job, jobBook, store, { changed: () => undefined, statusChanged: () => session.status.kind === 'saved' && saved() });
  for (let count = 0; ; count += 1) {
    const isSaved = new Promise((resolve) => (saved = resolve));
    const event = id + '-' + count;
    session.add({ body: { kind: 'note', text: 'x'.repeat((count * 997) % 6000) }, id: event });
    await isSaved;
    globalThis.acknowledged(id, event);
  }
};`;

interface StoredForTest {
  readonly ok: boolean;
  readonly value: { readonly jobs: readonly { readonly id: string }[]; readonly unreadable: readonly unknown[] };
}

let server: RunningServer;
let script: string;
let profile: string;
let heard: () => void = () => undefined;
let last: { context: BrowserContext; page: Page; pid: number } | undefined;
const acknowledged = new Map<string, string[]>();

beforeAll(async () => {
  server = await startServer({ folder: SITE_FOLDER, port: 0 });
  script = await bundleForPage(inPage);
  profile = mkdtempSync(join(tmpdir(), 'killed-profile-'));
});
afterAll(async () => {
  await last?.context.close();
  await server.close();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

async function start(): Promise<{ context: BrowserContext; page: Page; pid: number }> {
  const context = await launchWithProfile(profile);
  const page = context.pages()[0] ?? (await context.newPage());
  await page.exposeFunction('acknowledged', (id: string, event: string) => {
    acknowledged.get(id)?.push(event);
    heard();
  });
  await page.goto(`${server.url}jobs/`, { waitUntil: 'commit' });
  await page.evaluate(script);
  return { context, page, pid: await processOf(context) };
}

async function processOf(context: BrowserContext): Promise<number> {
  const session = await context.browser()?.newBrowserCDPSession();
  const processes = await session?.send('SystemInfo.getProcessInfo');
  const browser = processes?.processInfo.find(({ type }) => type === 'browser');
  if (browser === undefined) throw new Error('The browser does not tell its process.');
  return browser.id;
}

/** SIGKILL to the browser and all it started, at once: nothing gets the chance to finish. */
async function kill({ context, pid }: { context: BrowserContext; pid: number }): Promise<void> {
  const gone = new Promise((resolve) => context.once('close', resolve));
  process.kill(-pid, 'SIGKILL');
  await gone;
}

/** Numbers from 0 to 1 that a seed decides (mulberry32). */
function seeded(state: number): () => number {
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What is wrong with what the device holds, against what was acknowledged; empty when all is well. */
async function faultsAfter(page: Page): Promise<string[]> {
  const stored = (await page.evaluate('readAll()')) as StoredForTest;
  if (!stored.ok) return ['The jobs could not be read.'];
  const faults = stored.value.unreadable.map((one) => `torn: ${JSON.stringify(one).slice(0, 200)}`);
  const jobs = new Map(stored.value.jobs.map((job) => [job.id, readJob(job)]));
  for (const [id, events] of acknowledged) {
    const job = jobs.get(id);
    const here = new Set(job?.ok ? job.value.events.map((event) => event.id) : []);
    const lost = events.filter((event) => !here.has(event));
    if (lost.length > 0) faults.push(`${id}: lost ${lost.join(', ')} of ${events.length}`);
    if (job?.ok === false) faults.push(`${id}: ${job.error.message}`);
  }
  return faults;
}

/** In how many rounds the device holds an entry more than was acknowledged. */
async function writtenBeyond(page: Page): Promise<number> {
  const stored = (await page.evaluate('readAll()')) as StoredForTest;
  const jobs = stored.value.jobs.map((job) => ({ id: job.id, read: readJob(job) }));
  return jobs.filter(({ id, read }) => read.ok && read.value.events.some(({ kind, id: event }) => kind === 'note' && !acknowledged.get(id)?.includes(event))).length;
}

describe('a browser killed while it writes', () => {
  it(`keeps every acknowledged entry, ${rounds} times`, { timeout: 240_000 }, async () => {
    const chance = seeded(seed);
    for (let round = 0; round < rounds; round += 1) {
      last = await start();
      // What the rounds before left behind.
      expect(await faultsAfter(last.page), `before round ${round}`).toEqual([]);
      const id = `round-${round}`;
      acknowledged.set(id, []);
      const first = new Promise<void>((resolve) => (heard = resolve));
      // Never answers: the page writes until it is killed.
      last.page.evaluate(`writeOn('${id}')`).catch(() => undefined);
      if (round % earlyEvery !== 0) await first;
      await new Promise((resolve) => setTimeout(resolve, chance() * longestWriting));
      await kill(last);
      last = undefined;
    }
    last = await start();
    expect(await faultsAfter(last.page)).toEqual([]);
    const counts = [...acknowledged.values()].map((events) => events.length);
    const total = counts.reduce((sum, count) => sum + count, 0);
    const withEntries = counts.filter((count) => count > 0).length;
    const beyond = await writtenBeyond(last.page);
    console.log(
      `${rounds} kills, seed ${seed}: ${total} entries acknowledged in ${withEntries} rounds, at most ${Math.max(...counts)} in one; ` +
        `in ${beyond} rounds the kill came between a write and its acknowledgement; none lost, none torn`,
    );
    expect(withEntries).toBeGreaterThanOrEqual(50);
    expect(total).toBeGreaterThan(150);
  });

  it('would be found out: an entry that was never written counts as lost', async () => {
    if (!last) throw new Error('No browser is open.');
    acknowledged.get('round-0')?.push('round-0-never');
    expect(await faultsAfter(last.page)).toEqual([expect.stringContaining('round-0-never')]);
    acknowledged.get('round-0')?.pop();
  });
});
