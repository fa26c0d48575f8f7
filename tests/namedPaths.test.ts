import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..');
/** Folders that a command makes; they are not there before it has run. */
const made = ['dist', 'node_modules', '.astro', '.cache', 'tests/.output'];
const topLevel = /^(\.?\/)?(src|content|seeds|tests|docs)(\/|$)/;

/** A path as far as it is spelled out: `content/<kind>/…` names the folder `content`. */
function spelledOut(path: string): string {
  const plain = path.replace(/[#:].*$/, '').split('/');
  const end = plain.findIndex((part) => /[<>*…{}[\]]/.test(part));
  return (end === -1 ? plain : plain.slice(0, end)).join('/').replace(/^\.\//, '').replace(/\/$/, '');
}

/** Every path of the project that a page of Markdown names, in backticks or as the target of a link. */
function namedPaths(markdown: string): string[] {
  const quoted = [...markdown.matchAll(/`([^`\n]+)`/g)].map((match) => match[1] ?? '');
  const inBackticks = quoted.flatMap((text) => text.split(/\s+/)).filter((word) => topLevel.test(word) || /^[\w.-]+\.(md|mjs|json|ts|yaml|yml)$/.test(word));
  const linked = [...markdown.matchAll(/\]\(([^)\s]+)\)/g)].map((match) => match[1] ?? '').filter((target) => !/^([a-z]+:|#)/.test(target));
  const paths = [...inBackticks, ...linked].map(spelledOut).filter((path) => path !== '');
  return [...new Set(paths)].filter((path) => !made.some((folder) => path === folder || path.startsWith(`${folder}/`)));
}

/** Files that a script of package.json names: words with a slash that end like source. */
function scriptFiles(scripts: Readonly<Record<string, string>>): string[] {
  return Object.values(scripts).flatMap((script) => script.split(/\s+/).filter((word) => /\/.*\.(ts|mjs|js|json)$/.test(word)));
}

/** Names of all files of the project: a file named without its folder may be any of them. */
function fileNames(): ReadonlySet<string> {
  const folders = ['src', 'content', 'seeds', 'tests'].filter((folder) => existsSync(join(root, folder)));
  return new Set([...readdirSync(root), ...folders.flatMap((folder) => readdirSync(join(root, folder), { recursive: true }).map((file) => basename(String(file))))]);
}

function missing(paths: readonly string[]): string[] {
  const names = fileNames();
  return paths.filter((path) => (path.includes('/') ? !existsSync(join(root, path)) : !names.has(path)));
}

/** Programs that a script starts: the first word of each command in it. */
function scriptPrograms(scripts: Readonly<Record<string, string>>): string[] {
  return Object.values(scripts).flatMap((script) => script.split('&&').map((command) => command.trim().split(/\s+/)[0] ?? ''));
}

describe('namedPaths', () => {
  it('finds paths in backticks and links, and nothing else', () => {
    const markdown = [
      'Rules stand in `src/checks/rules/` and `content/<kind>/…`; see [the guide](DEVELOPERS.md#rules), [a page](https://example.org/a.md)',
      'and [below](#below). Run `npm run check` or `tsx src/build/commands/check.ts --content`. `low: 0.3` and `and/or` are no paths; `dist/site` is made; `tsconfig.json` is one.',
    ].join('\n');
    expect(namedPaths(markdown)).toEqual(['src/checks/rules', 'content', 'src/build/commands/check.ts', 'tsconfig.json', 'DEVELOPERS.md']);
  });

  it('tells a path that does not exist', () => {
    expect(missing(namedPaths('See `src/checks/rules/rule.ts` and `src/checks/ruels.ts`, `rule.ts` and `ruel.ts`.'))).toEqual(['src/checks/ruels.ts', 'ruel.ts']);
  });
});

describe('every path that is named exists', () => {
  it.each(['README.md', 'DEVELOPERS.md'])('in %s', (file) => {
    const paths = namedPaths(readFileSync(join(root, file), 'utf8'));
    expect(paths.length).toBeGreaterThan(0);
    expect(missing(paths)).toEqual([]);
  });

  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> };

  it('in the scripts of package.json', () => {
    const files = scriptFiles(scripts);
    expect(files).toContain('src/build/commands/check.ts');
    expect(missing(files)).toEqual([]);
  });
  it('as a program that the scripts of package.json start', () => {
    const programs = [...new Set(scriptPrograms(scripts))].filter((program) => program !== 'npm');
    expect(programs.filter((program) => !existsSync(join(root, 'node_modules/.bin', program)))).toEqual([]);
  });
});
