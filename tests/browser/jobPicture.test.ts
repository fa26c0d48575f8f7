import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, sidewaysOverflow } from './support/accessibility.ts';
import { startJob } from './support/jobSteps.ts';
import { markersOf, withExif } from './support/jpeg.ts';
import { openSite, screenshot, type BookPage, type OpenSite } from './support/site.ts';

let site: OpenSite;
let visit: BookPage;
let page: Page;

beforeAll(async () => {
  site = await openSite({ base: '/tools/ignition/' });
  visit = await site.newPage({ width: 390, height: 844 });
  page = visit.page;
});
afterAll(() => site.close());

/** A JPEG of coloured noise, which no encoder can make small without cutting quality or size. */
async function noise(width: number, height: number): Promise<Buffer> {
  const address = await page.evaluate(
    ([wide, high]) => {
      const canvas = document.createElement('canvas');
      canvas.width = wide ?? 1;
      canvas.height = high ?? 1;
      const brush = canvas.getContext('2d');
      const pixels = brush?.createImageData(canvas.width, canvas.height);
      if (!brush || !pixels) return '';
      let state = 1;
      for (let index = 0; index < pixels.data.length; index += 1) {
        state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
        pixels.data[index] = index % 4 === 3 ? 255 : state >> 16;
      }
      brush.putImageData(pixels, 0, 0);
      return canvas.toDataURL('image/jpeg', 0.9);
    },
    [width, height],
  );
  return Buffer.from(address.split(',')[1] ?? '', 'base64');
}

interface KeptPicture {
  readonly kind: string;
  readonly caption: string;
  readonly width: number;
  readonly height: number;
  readonly jpeg: string;
}

async function keptPictures(): Promise<readonly KeptPicture[]> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-to-file').click()]);
  const job = JSON.parse(readFileSync(await download.path(), 'utf8')) as { events: readonly KeptPicture[] };
  return job.events.filter(({ kind }) => kind === 'picture');
}

async function choose(name: string, buffer: Buffer): Promise<void> {
  if (!(await page.locator('#picture-file').isVisible())) await page.locator('#extra-picture-summary').click();
  await page.locator('#picture-file').setInputFiles({ name, mimeType: 'image/jpeg', buffer });
}

describe('a picture in a job', () => {
  it('is kept turned upright and without what the camera wrote into its file', async () => {
    await startJob(page, site.url, 'Van', 'four-inline-1342');
    const camera = withExif(await noise(400, 200));
    expect(camera.includes('Exif')).toBe(true);
    expect(markersOf(camera)[0]).toBe('e1');
    await choose('camera.jpg', camera);
    await page.locator('.picture-preview img').waitFor();
    await page.locator('#picture-submit').click();
    expect(await page.locator('#picture [data-note="caption"]').textContent()).not.toBe('');
    await page.locator('#picture-caption').fill('Tracking on the boot');
    await page.locator('#picture-submit').click();
    await page.locator('.timeline img[alt="Tracking on the boot"]').waitFor();
    const [kept] = await keptPictures();
    const bytes = Buffer.from(kept?.jpeg ?? '', 'base64');
    // Orientation 6: the upright picture is as wide as the stored one is high.
    expect([kept?.width, kept?.height]).toEqual([200, 400]);
    // JFIF head, tables, frame, scan; no APP1 (Exif), APP13 or comment.
    expect(markersOf(bytes).filter((marker) => !['e0', 'db', 'c0', 'c2', 'c4', 'dd', 'da'].includes(marker))).toEqual([]);
    expect(bytes.includes('Exif')).toBe(false);
  });

  it('however large, it is at most 1000 pixels long and 150 kB of Base64', async () => {
    await choose('large.jpg', await noise(2400, 1600));
    await page.locator('.picture-preview img').waitFor();
    await page.locator('#picture-caption').fill('Noise');
    await page.locator('#picture-submit').click();
    await page.locator('.timeline img[alt="Noise"]').waitFor();
    const large = (await keptPictures()).at(-1);
    expect(Math.max(large?.width ?? 0, large?.height ?? 0)).toBeLessThanOrEqual(1000);
    expect((large?.width ?? 0) / (large?.height ?? 1)).toBeCloseTo(1.5, 2);
    expect(large?.jpeg.length).toBeLessThanOrEqual(150_000);
  });

  it('what is no picture is refused, and the words typed stay', async () => {
    await choose('not.jpg', Buffer.from('no picture'));
    await page.locator('#picture-caption').fill('Words that stay');
    await expect.poll(() => page.locator('#picture-file-note').textContent()).toContain('could not be read as a picture');
    expect(await page.locator('#picture-caption').inputValue()).toBe('Words that stay');
  });

  it('stands on the sheet of the shop, and not once it is undone', async () => {
    expect(await axeFindings(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toEqual([]);
    await screenshot(page, 'bench-picture-390');
    await page.getByRole('button', { name: /^Undo: .*Noise|^Undo: Picture/ }).first().click();
    await expect.poll(() => page.locator('.timeline img').count()).toBe(1);
    await page.locator('.save-words', { hasText: 'Saved on this device' }).waitFor();
    await page.locator('#to-sheet').click();
    await page.locator('.sheet-shop img').waitFor();
    expect(await page.locator('.sheet-shop img').count()).toBe(1);
  });

  it('nothing went wrong on the way', () => expect(visit.faults).toEqual([]));
});
