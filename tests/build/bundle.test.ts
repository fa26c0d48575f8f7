import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { afterAll, describe, expect, it } from 'vitest';
import { median, medianMilliseconds } from '../../src/build/bench/measurement.ts';
import { bundleElements, elementEntries } from '../../src/build/bundle.ts';

const folder = mkdtempSync(join(tmpdir(), 'bundle-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('bundleElements', () => {
  it('makes one classic script of each entry, and leaves nothing outside it', async () => {
    writeFileSync(join(folder, 'part.ts'), 'export const unit: string = "kΩ";');
    writeFileSync(join(folder, 'sample.ts'), 'import { unit } from "./part.ts"; const secret = unit; globalThis.shown = secret;');
    const bundles = await bundleElements(folder, { entries: folder });
    expect(bundles.map(({ name }) => name).sort()).toEqual(['part.js', 'sample.js']);
    const code = readFileSync(join(folder, 'assets/sample.js'), 'utf8');
    // A classic script: it runs as it is, where an import or export statement would be a syntax error.
    const world: Record<string, unknown> = {};
    runInNewContext(code, world);
    expect(world).toEqual({ shown: 'kΩ' });
  });
  it('says which file is at fault', async () => {
    writeFileSync(join(folder, 'broken.ts'), 'import "./missing.ts";');
    await expect(bundleElements(folder, { entries: folder })).rejects.toThrow(/broken\.ts/);
  });
  it('finds the entries of the book', () => expect([...elementEntries().keys()]).toContain('shell'));
});

// The median by its definition: the middle of the sorted list, or the mean of the two in the middle.
describe('median', () => {
  it.each([
    [[3, 1, 2], 2],
    [[4, 1, 3, 2], 2.5],
    [[5], 5],
    [[], Number.NaN],
  ])('%j', (values, expected) => expect(median(values)).toBe(expected));
  it('times a run that waits two milliseconds at two milliseconds or a little more', () => {
    const wait = (): void => {
      const end = performance.now() + 2;
      while (performance.now() < end);
    };
    const milliseconds = medianMilliseconds(wait, 20);
    expect(milliseconds).toBeGreaterThanOrEqual(2);
    expect(milliseconds).toBeLessThan(6);
  });
});
