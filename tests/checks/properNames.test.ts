import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { properNamePatterns, properNames } from '../../src/checks/rules/properNames.data.ts';

const content = join(import.meta.dirname, '../../content');
const files = readdirSync(content, { recursive: true, withFileTypes: true }).filter((item) => item.isFile() && item.parentPath !== join(content, 'sources'));
const used = new Set(files.flatMap((item) => readFileSync(join(item.parentPath, item.name), 'utf8').match(/\p{Lu}[\p{L}\p{N}]*/gu) ?? []));

describe('the list of proper names', () => {
  it('holds nothing that the book does not use, but for the months', () => {
    const { months: _months, ...others } = properNames;
    expect(Object.values(others).flat().filter((name) => !used.has(name))).toEqual([]);
  });

  it('names nothing twice, and nothing that a pattern covers', () => {
    const names = Object.values(properNames).flat();
    expect(names.filter((name, index) => names.indexOf(name) !== index || properNamePatterns.some((pattern) => pattern.test(name)))).toEqual([]);
  });
});
