import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { Dirent } from 'node:fs';
import { extname, join } from 'node:path';
import { contentKinds, schemas } from '../schemas/index.ts';
import type { Book, ContentKind } from '../schemas/index.ts';
import { fieldName } from './finding.ts';
import type { FieldPath, Finding } from './finding.ts';
import { splitFrontMatter } from './frontMatter.ts';
import { nearestClause } from './nearest.ts';
import { schemaFindings } from './schemaFindings.ts';
import { readYaml } from './yamlSource.ts';
import type { YamlSource } from './yamlSource.ts';

/** Where an entry was written. */
export interface EntrySource {
  readonly file: string;
  readonly lineOf: (path: FieldPath) => number;
  /** Line on which the prose starts; 0 for an entry without prose. */
  readonly bodyLine: number;
}

/** The book as it was read, and everything that could not be. */
export interface ReadBook {
  /** Entries that keep to their schema. */
  readonly book: Book;
  /** Prose by `kind/id`. */
  readonly bodies: ReadonlyMap<string, string>;
  /** Every entry that has a file, by `kind/id`, also those that break their schema. */
  readonly sources: ReadonlyMap<string, EntrySource>;
  readonly findings: readonly Finding[];
}

/** Kinds whose prose matters; the others are all fields. */
const kindsWithProse: ReadonlySet<ContentKind> = new Set(['procedures', 'calculators']);
const idPattern = /^[a-z0-9]+(-[a-z0-9]+)*$/;

interface Reading {
  readonly book: Record<ContentKind, Map<string, unknown>>;
  readonly bodies: Map<string, string>;
  readonly sources: Map<string, EntrySource>;
  readonly findings: Finding[];
}

function visibleItems(folder: string): Dirent[] {
  const items = readdirSync(folder, { withFileTypes: true }).filter((item) => !item.name.startsWith('.'));
  return items.sort((a, b) => (a.name < b.name ? -1 : 1));
}

function fileFinding(file: string, found: string, expected: string, example?: string): Finding {
  return { file, line: 1, field: fieldName([]), found, expected, rule: 'file', ...(example ? { example } : {}) };
}

/** What is wrong with the name of a file, if anything. */
function nameFinding(kind: ContentKind, file: string, name: string): Finding | undefined {
  const extension = extname(name);
  const accepted = kindsWithProse.has(kind) ? ['.mdx', '.md'] : ['.yaml'];
  const id = name.slice(0, name.length - extension.length);
  if (!accepted.includes(extension)) {
    const found = extension === '' ? 'a file name without an ending' : `a file name that ends in ${extension}`;
    return fileFinding(file, found, `a file name that ends in ${accepted.join(' or ')}`, `content/${kind}/${id.toLowerCase()}${accepted[0] ?? ''}`);
  }
  if (idPattern.test(id)) return undefined;
  const better = id.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
  return fileFinding(file, `the file name "${name}"`, 'a file name in lower case letters and digits with hyphens', `content/${kind}/${better}${extension}`);
}

/** Reads the fields and the prose of one file; undefined when there are no fields to read. */
function readFields(kind: ContentKind, text: string): { yaml: YamlSource; body: string; bodyLine: number } | undefined {
  if (!kindsWithProse.has(kind)) return { yaml: readYaml(text), body: '', bodyLine: 0 };
  const parts = splitFrontMatter(text);
  if (parts === undefined) return undefined;
  return { yaml: readYaml(parts.fields, parts.fieldsLine), body: parts.body, bodyLine: parts.bodyLine };
}

function applySchema(reading: Reading, kind: ContentKind, id: string, file: string, yaml: YamlSource): void {
  const schema = schemas[kind];
  const parsed = schema.safeParse(yaml.value ?? {});
  if (parsed.success) {
    reading.book[kind].set(id, parsed.data);
    return;
  }
  for (const { path, ...rest } of schemaFindings(kind, schema, yaml.value ?? {}, parsed.error.issues)) {
    reading.findings.push({ file, line: yaml.lineOf(path), field: fieldName(path), ...rest, rule: 'schema' });
  }
}

function readEntry(reading: Reading, root: string, kind: ContentKind, name: string): void {
  const file = `content/${kind}/${name}`;
  const wrongName = nameFinding(kind, file, name);
  if (wrongName !== undefined) {
    reading.findings.push(wrongName);
    return;
  }
  const id = name.slice(0, name.length - extname(name).length);
  const fields = readFields(kind, readFileSync(join(root, file), 'utf8'));
  reading.sources.set(`${kind}/${id}`, { file, lineOf: fields?.yaml.lineOf ?? (() => 1), bodyLine: fields?.bodyLine ?? 0 });
  if (fields === undefined) {
    reading.findings.push(fileFinding(file, 'a page that does not open with its fields', 'a line of three hyphens, the fields, another line of three hyphens, then the prose'));
    return;
  }
  for (const problem of fields.yaml.problems) {
    reading.findings.push({ file, field: 'the YAML', ...problem, rule: 'yaml' });
  }
  if (fields.yaml.problems.length > 0) return;
  if (kindsWithProse.has(kind)) reading.bodies.set(`${kind}/${id}`, fields.body);
  applySchema(reading, kind, id, file, fields.yaml);
}

function readKind(reading: Reading, root: string, kind: ContentKind): void {
  for (const item of visibleItems(join(root, 'content', kind))) {
    if (item.isDirectory()) {
      reading.findings.push(
        fileFinding(`content/${kind}/${item.name}`, `a folder inside content/${kind}`, `files only: every entry stands directly in content/${kind}`),
      );
    } else readEntry(reading, root, kind, item.name);
  }
}

function strayItem(item: Dirent): Finding {
  const what = item.isDirectory() ? 'folder' : 'file';
  const near = nearestClause(item.name, contentKinds);
  return fileFinding(`content/${item.name}`, `the ${what} "${item.name}" in content`, `one of the folders ${contentKinds.join(', ')}${near}`);
}

/**
 * Reads `content/<kind>/*` under a folder. Never stops at a mistake: whatever cannot be read becomes a finding with
 * the file and line of the offending field, and the rest of the book is read on.
 */
export function readBook(root: string): ReadBook {
  const book = Object.fromEntries(contentKinds.map((kind) => [kind, new Map()])) as Reading['book'];
  const reading: Reading = { book, bodies: new Map(), sources: new Map(), findings: [] };
  const folder = join(root, 'content');
  if (!existsSync(folder)) {
    reading.findings.push(fileFinding('content', 'no folder of this name', `the folder that holds the book: ${contentKinds.join(', ')}`));
  } else {
    for (const item of visibleItems(folder)) {
      const kind = contentKinds.find((name) => name === item.name);
      if (kind !== undefined && item.isDirectory()) readKind(reading, root, kind);
      else reading.findings.push(strayItem(item));
    }
  }
  // Every entry went through the schema of its kind, which is what the type of the book says.
  return { ...reading, book: reading.book as unknown as Book };
}
