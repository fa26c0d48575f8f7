import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');

function runCheck(words: readonly string[]): { status: number | null; said: string } {
  const { status, stdout } = spawnSync(process.execPath, [join(root, 'src/build/commands/check.ts'), ...words], { cwd: root, encoding: 'utf8' });
  return { status, said: stdout };
}

describe('the check command', () => {
  it('tells every finding of a folder, says what is not in order and ends with 1', () => {
    const { status, said } = runCheck(['--content', join(root, 'tests/fixtures/books/broken-and-orphaned')]);
    expect(status).toBe(1);
    expect(said).toContain('\n== content\n');
    expect(said).toContain('content/ranges/plug-gap.yaml:3  low\n    found: low 2 above high 1\n    expected: low at most as large as high\n');
    expect(said).toContain('content/sources/common-practice.yaml:1  kind\n');
    expect(said.trimEnd().endsWith('Not in order: content.')).toBe(true);
  });

  it('runs the content alone when asked', () => {
    const { said } = runCheck(['--content', join(root, 'tests/fixtures/books/broken-and-orphaned')]);
    expect(said.match(/^== .*$/gm)).toEqual(['== content']);
  });

  it('makes the repairs that need no author, says which, and checks again', () => {
    const folder = mkdtempSync(join(tmpdir(), 'bench-book-'));
    try {
      cpSync(join(root, 'tests/fixtures/books/broken-and-orphaned'), folder, { recursive: true });
      const { status, said } = runCheck(['--fix', folder]);
      expect(status).toBe(1);
      expect(said).toContain('content/ranges/plug-gap.yaml:6  inside: put a full stop at the end\n');
      expect(said).not.toContain('text that ends in');
      expect(said).toContain('found: low 2 above high 1');
      expect(readFileSync(join(folder, 'content/ranges/plug-gap.yaml'), 'utf8')).toContain('gap is usual.\n');
      expect(runCheck(['--fix', folder]).said).toContain('Nothing that can be repaired without an author.');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('ends with 0 for the book itself', () => {
    expect(runCheck(['--content'])).toEqual({ status: 0, said: '\n== content\nNo findings.\n\nEverything checked is in order.\n' });
  });
});
