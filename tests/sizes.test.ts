import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Long files hide what they do; tables of data are exempt and say so in their name. */
const mostLines = 300;
const root = join(import.meta.dirname, '..');

function sourceFiles(): string[] {
  const items = readdirSync(join(root, 'src'), { withFileTypes: true, recursive: true });
  const files = items.filter((item) => item.isFile()).map((item) => join(item.parentPath, item.name));
  return files.filter((file) => /\.(ts|mjs|astro|css)$/.test(file) && !file.endsWith('.data.ts'));
}

function linesOf(text: string): number {
  return text.replace(/\n$/, '').split('\n').length;
}

describe('source files', () => {
  it('count their lines as an editor does', () => {
    expect(linesOf('one\ntwo\n')).toBe(2);
    expect(linesOf('one\ntwo')).toBe(2);
  });

  it(`are at most ${mostLines} lines long`, () => {
    const files = sourceFiles();
    expect(files.length).toBeGreaterThan(50);
    const long = files.map((file) => ({ file: relative(root, file), lines: linesOf(readFileSync(file, 'utf8')) })).filter(({ lines }) => lines > mostLines);
    expect(long).toEqual([]);
  });
});
