/** Each invented car is worked from complaint to hand-over by following what the bench proposes, whatever it is; the car answers from its file. */
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDemoJobs } from '../../src/checks/demoJobs.ts';
import { readBook } from '../../src/checks/readBook.ts';
import { makeLayout } from '../../src/domain/diagnosis/layout.ts';
import { placesOf } from '../../src/domain/diagnosis/places.ts';
import type { EngineLayout } from '../../src/domain/diagnosis/types.ts';
import type { DemoAnswer, DemoStep, DemoStory } from '../../src/schemas/demoJobs.ts';
import { openSite, pdfText, type BookPage, type OpenSite } from './support/site.ts';

const root = join(import.meta.dirname, '../..');
const { book } = readBook(root);
const { stories } = readDemoJobs(root, book);
/** More than the longest sensible search; a bench that goes on beyond it has lost its way. */
const mostTests = 25;

let site: OpenSite;
beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

/** What was tapped and filled in, counted. */
class Hand {
  taps = 0;
  fields = 0;
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async tap(selector: string): Promise<void> {
    this.taps += 1;
    await this.page.locator(selector).first().click();
  }

  async write(selector: string, text: string): Promise<void> {
    this.fields += 1;
    await this.page.locator(selector).fill(text);
  }

  async choose(selector: string, value: string): Promise<void> {
    this.taps += 1;
    await this.page.locator(selector).selectOption(value);
  }

  async tick(box: Locator): Promise<void> {
    this.taps += 1;
    await box.check();
  }
}

const stage = (page: Page): Promise<string | null> => page.locator('.stage-line [aria-current="step"]').textContent();
const untilStage = (page: Page, name: string): Promise<void> => page.locator('.stage-line [aria-current="step"]', { hasText: name }).waitFor();

/** The one step of a kind that every story has. */
function told<Kind extends DemoStep['kind']>(story: DemoStory, kind: Kind): Extract<DemoStep, { kind: Kind }> {
  const found = story.story.find((step): step is Extract<DemoStep, { kind: Kind }> => step.kind === kind);
  if (!found) throw new Error(`${story.id} tells no step of the kind ${kind}.`);
  return found;
}

function layoutOf({ engine: { id, ignition, injection } }: DemoStory): EngineLayout {
  const known = book.engines.get(id);
  const layout = known && makeLayout({ ...known, id }, ignition, injection);
  if (!layout?.ok) throw new Error(`${id} is no engine of the book.`);
  return layout.value;
}

/** An answer that names place and partner comes before one that names the place, then the partner, then neither. */
function answerTo(answers: readonly DemoAnswer[], test: string, place: string, partner: string | undefined): string {
  const exactness = (answer: DemoAnswer): number => (answer.place === undefined ? 0 : 2) + (answer.partner === undefined ? 0 : 1);
  const fitting = answers.filter((answer) => answer.test === test && [undefined, place].includes(answer.place) && [undefined, partner].includes(answer.partner));
  const best = fitting.sort((one, other) => exactness(other) - exactness(one))[0];
  if (!best) throw new Error(`The bench asks for ${test} at ${place}${partner ? ` with ${partner}` : ''}, which the car does not answer.`);
  return best.outcome;
}

interface Proposed {
  readonly test: string;
  readonly place: string;
  readonly partner: string | undefined;
  readonly minutes: number;
}

/** The proposed test, read off the page: its page in the book names it, its line names the places. */
async function proposed(page: Page, layout: EngineLayout): Promise<Proposed> {
  const name = (await page.locator('.test-name').textContent()) ?? '';
  const address = (await page.locator('#open-procedure').getAttribute('href')) ?? '';
  const test = /procedures\/([^/]+)\//.exec(address)?.[1] ?? '';
  const procedure = book.procedures.get(test);
  if (!procedure) throw new Error(`The bench proposes “${name}”, which the book does not hold.`);
  const places = placesOf(layout, procedure.placeKind);
  const pairs = places.flatMap((place) => [{ place, partner: undefined, words: place.label }, ...places.map((partner) => ({ place, partner, words: `${place.label} with ${partner.label}` }))]);
  const found = pairs.find(({ words }) => name === `${procedure.title}, ${words}`);
  if (!found) throw new Error(`“${name}” names no place of this engine.`);
  const minutes = Number(await page.locator('.test-minutes .figure').textContent());
  return { test, place: found.place.id, partner: found.partner?.id, minutes };
}

async function takeIn(hand: Hand, story: DemoStory): Promise<void> {
  const { page } = hand;
  await page.goto(`${site.url}jobs/`);
  await hand.write('#engine-description', story.car);
  await hand.write('#engine-customer', story.customerReference);
  await hand.choose('#engine-engine', story.engine.id);
  await hand.choose('#engine-ignition', story.engine.ignition);
  await hand.choose('#engine-injection', story.engine.injection);
  await hand.tap('#engine-submit');
  await page.locator('#complaint-text').waitFor();
  await hand.write('#complaint-text', story.complaint.text);
  for (const sign of story.complaint.signs) await hand.tick(page.locator(`#complaint-sign-${sign}`));
  await hand.choose('#complaint-lamp', story.complaint.lamp);
  await hand.tap('#complaint-submit');
  await untilStage(page, 'Codes');
  if (story.frame) await frame(hand, story.frame);
  if (story.codes.text === '') await hand.tap('#codes-read-none');
  else {
    await hand.write('#codes-read-text', story.codes.text);
    await hand.tap('#codes-read-submit');
  }
  await untilStage(page, 'Tests');
}

async function frame(hand: Hand, { code, speed, load, coolant, warm }: NonNullable<DemoStory['frame']>): Promise<void> {
  await hand.tap('#frame-summary');
  await hand.write('#frame-code', code);
  await hand.write('#frame-speed', String(speed));
  if (load !== undefined) await hand.write('#frame-load', String(load));
  if (coolant !== undefined) await hand.write('#frame-coolant', String(coolant));
  await hand.choose('#frame-warm', warm);
  await hand.tap('#frame-submit');
  await hand.page.locator('#frame-summary', { hasText: String(speed) }).waitFor();
}

/** Does what is proposed until the bench offers the finding; gives back what was done. */
async function followTheBench(hand: Hand, story: DemoStory): Promise<readonly Proposed[]> {
  const { page } = hand;
  const layout = layoutOf(story);
  const done: Proposed[] = [];
  while ((await stage(page)) === 'Tests') {
    if (done.length >= mostTests) throw new Error(`No finding after ${mostTests} tests.`);
    const next = await proposed(page, layout);
    done.push(next);
    const written = await page.locator('.timeline .entry').count();
    await hand.tap(`#outcome-${answerTo(story.answers, next.test, next.place, next.partner)}`);
    await page.locator('.timeline .entry').nth(written).waitFor({ state: 'attached' });
  }
  return done;
}

async function repair(hand: Hand, story: DemoStory): Promise<void> {
  const { page } = hand;
  const { what, minutes } = told(story, 'repair');
  for (const box of await page.locator('#repair input[id^="repair-match-"]').all()) await hand.tick(box);
  await hand.write('#repair-what', what);
  await hand.write('#repair-minutes', String(minutes));
  await hand.tap('#repair-submit');
  await untilStage(page, 'Proof');
}

async function prove(hand: Hand, story: DemoStory): Promise<void> {
  const { page } = hand;
  const count = told(story, 'count');
  const run = told(story, 'proof-run');
  await hand.tap('#codes-cleared');
  await page.locator('#codes-cleared').waitFor({ state: 'detached' });
  await hand.write('#count-misfires', String(count.misfires));
  await hand.write('#count-revolutions', String(count.revolutions));
  await hand.write('#count-how', count.how);
  await hand.tap('#count-submit');
  await page.locator('#count-submit').waitFor({ state: 'detached' });
  await hand.write('#run-minutes', String(run.minutes));
  if (run.speed !== undefined) await hand.write('#run-speed', String(run.speed));
  if (run.load !== undefined) await hand.write('#run-load', String(run.load));
  if (story.frame) await hand.choose('#run-warm', story.frame.warm);
  else await hand.choose('#run-similar', 'yes');
  await hand.choose('#run-result', run.result);
  const written = await page.locator('.timeline .entry').count();
  await hand.tap('#run-submit');
  await page.locator('.timeline .entry').nth(written).waitFor({ state: 'attached' });
  for (const step of story.story) if (step.kind === 'check') await check(hand, step);
  await hand.tap('#reread-summary');
  await hand.tap('#codes-reread-none');
  await untilStage(page, 'Hand-over');
}

async function check(hand: Hand, { check: name, state, note }: Extract<DemoStep, { kind: 'check' }>): Promise<void> {
  await hand.tap(`#check-${name}-summary`);
  await hand.choose(`#check-${name}-state`, state);
  await hand.write(`#check-${name}-note`, note);
  await hand.tap(`#check-${name}-submit`);
  await hand.page.locator(`#check-${name}-submit`).waitFor({ state: 'detached' });
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();

describe.each(stories.map((story) => [story.id, story] as const))('the invented car %s', (id, story) => {
  let visit: BookPage;
  let hand: Hand;
  let done: readonly Proposed[] = [];

  beforeAll(async () => {
    visit = await site.newPage({ width: 390, height: 844 });
    hand = new Hand(visit.page);
  });
  afterAll(() => visit.context.close());

  it('is taken in, and the proposed tests lead to what is really wrong', async () => {
    await takeIn(hand, story);
    done = await followTheBench(hand, story);
    await hand.page.locator('#finding-hypothesis').waitFor();
    expect(await hand.page.locator('#finding-hypothesis').inputValue()).toBe(`${story.truth.fault}@${story.truth.place}`);
    await hand.tap('#finding-submit');
    await untilStage(hand.page, 'Repair');
  });

  it('is repaired, proven and handed over', async () => {
    await repair(hand, story);
    await prove(hand, story);
    await hand.write('#hand-over-to', told(story, 'hand-over').to);
    await hand.tap('#hand-over-submit');
    await hand.page.locator('.handed-over', { hasText: 'repair proven' }).waitFor();
  });

  it("prints a sheet with the customer's own words and what was done", async () => {
    await hand.tap('#to-sheet');
    await hand.page.locator('.sheet-customer').waitFor();
    const printed = plain((await pdfText(hand.page)).join(' '));
    expect(printed).toContain(plain(story.complaint.text));
    expect(printed).toContain(plain(told(story, 'repair').what));
    const minutes = done.reduce((sum, test) => sum + test.minutes, 0);
    console.log(`${id}: ${hand.taps} taps, ${hand.fields} fields, ${done.length} tests, ${minutes} minutes of tests: ${done.map(({ test, place }) => `${test} at ${place}`).join(', ')}`);
  });

  it('went without a fault of the page', () => expect(visit.faults).toEqual([]));
});
