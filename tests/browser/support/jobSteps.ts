import type { Page } from 'playwright-core';

/** Starts a job and stands at its complaint. */
export async function startJob(where: Page, siteUrl: string, description: string, engine: string, ignition?: string): Promise<void> {
  await where.goto(`${siteUrl}jobs/`);
  await where.locator('#engine-description').fill(description);
  await where.locator('#engine-engine').selectOption(engine);
  if (ignition) await where.locator('#engine-ignition').selectOption(ignition);
  await where.locator('#engine-submit').click();
  await where.locator('#complaint-text').waitFor();
}

/** Takes in complaint and codes, and stands at the first proposed test. */
export async function takeIn(where: Page, codes: string): Promise<void> {
  await where.locator('#complaint-text').fill('Shakes when pulling uphill, lamp flashes.');
  await where.locator('#complaint-sign-under-load').check();
  await where.locator('#complaint-submit').click();
  await where.locator('#codes-read-text').fill(codes);
  await where.locator('#codes-read-submit').click();
  await where.locator('.test-name').waitFor();
}

/** Picks a test by its name and place, whatever is proposed; where it is not among those listed, out of all. */
export async function pick(where: Page, test: RegExp): Promise<void> {
  await where.locator('#another-test-summary').click();
  await where.locator('#any-test-test').waitFor();
  const listed = where.locator('.proposals button', { hasText: test });
  if ((await listed.count()) > 0) await listed.first().click();
  else await pickOutOfAll(where, test);
  await where.locator('.test-name', { hasText: test }).waitFor();
}

async function pickOutOfAll(where: Page, test: RegExp): Promise<void> {
  const options = await where.locator('#any-test-test option').evaluateAll((all) => all.map((option) => ({ value: (option as HTMLOptionElement).value, label: option.textContent ?? '' })));
  const wanted = options.find(({ label }) => test.test(label));
  if (!wanted) throw new Error(`No test is called ${String(test)}.`);
  await where.locator('#any-test-test').selectOption(wanted.value);
  await where.locator('#any-test-submit').click();
}

/** Finds the coil of cylinder 3 at fault by a swap and an open winding, and stands at the repair. */
export async function findCoil(where: Page): Promise<void> {
  await pick(where, /Swap coils/);
  await where.locator('#outcome-moved').click();
  await pick(where, /Coil primary resistance/);
  await where.locator('input[id^="reading-coil-primary-resistance"]').first().fill('OL');
  await where.locator('button', { hasText: 'Keep this reading' }).first().click();
  await where.locator('.belief-words', { hasText: 'Coil winding' }).first().waitFor();
  if (!(await where.locator('#finding-submit').isVisible())) await where.locator('#early-finding-summary').click();
  await where.locator('.finding-carried').waitFor();
  await where.locator('#finding-submit').click();
  await where.locator('#repair-submit').waitFor();
}
