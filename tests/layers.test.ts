import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatFindings } from '../src/checks/finding.ts';
import { checkLayers, importsOf, layerFindings, rooms, sourceFiles } from '../src/build/layers.ts';

const root = join(import.meta.dirname, '..');

describe('the project', () => {
  it('keeps to its rooms', () => {
    expect(formatFindings(checkLayers(root))).toBe('No findings.');
  });

  it('is read whole: every folder of src is a room, and none is empty', () => {
    const files = sourceFiles(root);
    const folders = new Set(files.filter((file) => file.startsWith('src/')).map((file) => file.split('/')[1]));
    expect([...folders].filter((folder) => folder === undefined || !(folder in rooms))).toEqual([]);
    for (const folder of ['domain', 'schemas', 'checks', 'build', 'render', 'pages', 'elements']) expect(folders).toContain(folder);
  });
});

/** The table of who may import whom, written out a second time from the design of the house. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  domain: [],
  schemas: ['domain'],
  elements: ['domain'],
  checks: ['schemas', 'domain'],
  render: ['schemas', 'domain'],
  pages: ['render', 'schemas', 'domain'],
  build: ['checks', 'schemas', 'domain'],
};
const pairs = Object.keys(mayImport).flatMap((from) => Object.keys(mayImport).map((to) => [from, to] as const));

describe('an import', () => {
  it.each(pairs)('from %s to %s is judged by the table', (from, to) => {
    const found = layerFindings(`src/${from}/one.ts`, `import { two } from '../${to}/two.ts';\n`);
    const allowed = from === to || mayImport[from]?.includes(to);
    expect(found.length).toBe(allowed ? 0 : 1);
  });

  it('that is not allowed is told with its line and the reason', () => {
    const text = "import type { Result } from '../result.ts';\n\nimport { schemas } from '../../schemas/index.ts';\n";
    expect(formatFindings(layerFindings('src/domain/units/parse.ts', text))).toBe(
      [
        'src/domain/units/parse.ts:3  import',
        '    found: "../../schemas/index.ts"',
        '    expected: no import from outside domain: the domain is pure: it must run in a browser, on a command line and in a test without anything around it',
        '',
        '1 finding in 1 file.',
      ].join('\n'),
    );
  });

  it.each([
    ['a package in the domain', 'src/domain/a.ts', "import { z } from 'zod';"],
    ['Node in the domain', 'src/domain/a.ts', "import { readFileSync } from 'node:fs';"],
    ['a type from above', 'src/schemas/a.ts', "import type { Rule } from '../checks/rules/rule.ts';"],
    ['a re-export from above', 'src/domain/a.ts', "export * from '../render/words.ts';"],
    ['a dynamic import from above', 'src/elements/a.ts', "const x = await import('../render/words.ts');"],
    ['a site in the checks', 'src/checks/a.ts', "import { getCollection } from 'astro:content';"],
    ['a package in browser code', 'src/elements/a.ts', "import { parse } from 'yaml';"],
    ['the head of an Astro page', 'src/pages/a.astro', "---\nimport { a } from '../build/files.ts';\n---\n<p>Text</p>"],
    ['the script of an Astro page', 'src/render/a.astro', "---\nconst a = 1;\n---\n<script>\n  import { b } from '../elements/dom.ts';\n</script>"],
    ['the collections', 'src/content.config.ts', "import { a } from './render/words.ts';"],
    ['content', 'content/procedures/a.mdx', "---\ntitle: A\n---\n\nimport Step from '../../src/render/components/Step.astro';\n"],
    ['seeds', 'seeds/a.ts', "import { a } from '../src/domain/result.ts';"],
    ['pages from render', 'src/render/a.ts', "import { a } from '../pages/b.ts';"],
  ])('is caught: %s', (_label, file, text) => {
    expect(layerFindings(file, text)).toHaveLength(1);
  });

  it.each([
    ['the storage library in browser code', 'src/elements/storage/a.ts', "import { openDB } from 'idb';"],
    ['a neighbour in the same room', 'src/elements/reading/a.ts', "import { b } from '../dom.ts';"],
    ['the schemas by the collections', 'src/content.config.ts', "import { schemas } from './schemas/index.ts';\nimport { glob } from 'astro/loaders';"],
    ['an import that is only talked about', 'src/domain/a.ts', "// import { z } from 'zod';\nexport const text = \"import { z } from 'zod'\";"],
    ['the version in a page', 'src/render/layouts/a.astro', "---\nimport { version } from '../../../package.json';\n---\n"],
    ['an import in a sample of code', 'content/procedures/a.mdx', "---\ntitle: A\n---\n\n```\nimport a from 'b';\n```\n"],
  ])('is allowed: %s', (_label, file, text) => {
    expect(layerFindings(file, text)).toEqual([]);
  });

  it('keeps its line in an Astro page', () => {
    const text = "---\nimport a from './a.ts';\n---\n<p>\n</p>\n<script>\n  import b from './b.ts';\n</script>\n";
    expect(importsOf('src/pages/a.astro', text)).toEqual([
      { specifier: './a.ts', line: 2 },
      { specifier: './b.ts', line: 7 },
    ]);
  });
});

describe('a name', () => {
  it.each([
    ['src/domain/a.ts', 'export const now = Date.now();', 'Date.now'],
    ['src/domain/a.ts', 'export const now = new Date();', 'new Date()'],
    ['src/domain/a.ts', 'export const chance = Math.random();', 'Math.random'],
    ['src/domain/a.ts', 'export const page = document;', 'document'],
    ['src/domain/a.ts', 'export const place = process.env;', 'process'],
    ['src/elements/search/a.ts', "localStorage.setItem('a', 'b');", 'localStorage'],
    ['src/elements/search/a.ts', "window.localStorage.setItem('a', 'b');", 'localStorage'],
    ['src/elements/search/a.ts', "window['localStorage'];", 'localStorage'],
    ['src/elements/jobs/a.ts', "indexedDB.open('a');", 'indexedDB'],
    ['src/render/a.astro', "<script>sessionStorage.setItem('a', 'b');</script>", 'sessionStorage'],
  ])('is caught in %s: %s', (file, text, name) => {
    expect(layerFindings(file, text).map(({ found }) => found)).toEqual([name]);
  });

  it.each([
    ['src/elements/storage/a.ts', "localStorage.setItem('a', 'b');"],
    ['src/domain/a.ts', '// Date.now() is not for here\nexport const text = "new Date()";'],
    ['src/domain/a.ts', 'export const a = { process: 1 }; export const b = a.process;'],
    ['src/domain/a.ts', 'export const year = (time: number) => new Date(time).getUTCFullYear();'],
    ['src/domain/a.ts', 'export const first = (window: readonly number[]) => window[0];'],
    ['src/elements/a.ts', 'export const now = Date.now();'],
  ])('is allowed in %s: %s', (file, text) => {
    expect(layerFindings(file, text)).toEqual([]);
  });
});
