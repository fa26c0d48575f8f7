import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkBook } from '../../src/checks/checkBook.ts';
import { writeGeneratedBook } from '../../src/build/bench/generatedBook.ts';
import { pageText } from '../../src/build/bench/plainSite.ts';

const content = join(import.meta.dirname, '../../content');
const folders = [1, 2].map(() => mkdtempSync(join(tmpdir(), 'book-scale-test-')));
const [first = '', second = ''] = folders;

beforeAll(() => {
  for (const folder of folders) writeGeneratedBook(content, folder, { procedures: 40, ranges: 130 });
});
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});

describe('the generated book', () => {
  const generated = (folder: string, kind: string): string[] =>
    readdirSync(join(folder, 'content', kind)).filter((name) => name.startsWith('generated-'));

  it('has the entries that were asked for, each marked', () => {
    expect(generated(first, 'procedures')).toHaveLength(40);
    expect(generated(first, 'ranges')).toHaveLength(130);
    const texts = ['procedures', 'ranges'].flatMap((kind) => generated(first, kind).map((name) => readFileSync(join(first, 'content', kind, name), 'utf8')));
    // The writer of YAML may break a line at any blank.
    expect(texts.every((text) => text.replace(/\s+/g, ' ').includes('Generated for measuring; not part of the book.'))).toBe(true);
  });

  it('keeps every rule of the book, links and orphans included', () => {
    const check = checkBook(first);
    expect(check.findings.filter(({ file }) => file.includes('generated-'))).toEqual([]);
  });

  it('is the same each time', () => {
    for (const kind of ['procedures', 'ranges']) {
      for (const name of generated(first, kind)) {
        expect(readFileSync(join(first, 'content', kind, name), 'utf8')).toBe(readFileSync(join(second, 'content', kind, name), 'utf8'));
      }
    }
  });
});

describe('the text of a page for the plain site', () => {
  it('keeps headings and words, and nothing that MDX would run', () => {
    const html = '<title>Gap &amp; wear</title><main id="main"><h1>Gap</h1><p>Less than <b>0.9</b> mm &lt; {wide}</p><h2>Why</h2><ul><li>- one</li></ul></main>';
    expect(pageText(html)).toBe('---\ntitle: "Gap & wear"\n---\n\nGap\n\nLess than 0.9 mm \\< \\{wide\\}\n\n## Why\n\n\\- one\n');
  });
});
