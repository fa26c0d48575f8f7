import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { fieldName, type FieldPath } from '../src/checks/finding.ts';
import { splitFrontMatter } from '../src/checks/frontMatter.ts';
import { unwrapSchema } from '../src/checks/schemaShape.ts';
import { readYaml } from '../src/checks/yamlSource.ts';
import { contentKinds, schemas, type ContentKind } from '../src/schemas/index.ts';

// An author copies these files. Each must pass its schema, use every field of it, and say of every field what the schema says.

const FOLDER = join(import.meta.dirname, 'fixtures/examples');
/** Longer lists of choices stand in one place in the source, which the comment then names. */
const MOST_CHOICES = 15;

interface Example {
  readonly value: unknown;
  readonly problems: readonly unknown[];
  /** The comment that stands directly above a field. */
  readonly commentOf: (path: FieldPath) => string;
}

function readExample(name: string): Example {
  const text = readFileSync(join(FOLDER, name), 'utf8');
  const fields = name.endsWith('.mdx') ? splitFrontMatter(text)?.fields : text;
  if (fields === undefined) throw new Error(`${name} has no fields between two lines of hyphens.`);
  const { value, problems, lineOf } = readYaml(fields);
  const lines = fields.split('\n');
  return { value, problems, commentOf: (path) => commentAbove(lines, lineOf(path)) };
}

function commentAbove(lines: readonly string[], line: number): string {
  const words: string[] = [];
  for (let at = line - 2; /^\s*#/.test(lines[at] ?? ''); at -= 1) words.unshift((lines[at] ?? '').replace(/^\s*#\s*/, ''));
  return words.join(' ');
}

interface Field {
  /** In lists the first entry stands for all. */
  readonly path: FieldPath;
  readonly schema: unknown;
}

/** Every field of a schema, however deep. Names in a group that the author chooses are no fields. */
function fieldsOf(schema: unknown, path: FieldPath = []): Field[] {
  const inner = unwrapSchema(schema);
  if (inner instanceof z.ZodArray) return fieldsOf(inner.element, [...path, 0]);
  if (!(inner instanceof z.ZodObject)) return [];
  return Object.entries(inner.shape).flatMap(([key, field]) => [{ path: [...path, key], schema: field }, ...fieldsOf(field, [...path, key])]);
}

function valueAt(value: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>((inner, step) => (typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[String(step)] : undefined), value);
}

/** The choices of a field, of the entries of its list or of the names in its group. */
function choicesOf(schema: unknown): readonly string[] {
  const inner = unwrapSchema(schema);
  if (inner instanceof z.ZodEnum) return inner.options.map(String);
  if (inner instanceof z.ZodArray) return choicesOf(inner.element);
  return inner instanceof z.ZodRecord ? choicesOf(inner.keyType) : [];
}

function defaultWords(value: unknown): string {
  if (Array.isArray(value)) return 'an empty list';
  return typeof value === 'object' ? 'an empty group' : String(value);
}

/** How the comment on a field must begin. */
function openingOf(schema: unknown): string {
  if (schema instanceof z.ZodDefault) return `Optional, default ${defaultWords(schema.parse(undefined))}.`;
  return schema instanceof z.ZodOptional ? 'Optional.' : 'Mandatory.';
}

/** Limits of a number that an author can break; the safe integers are a limit of the machine. */
function limitsOf(schema: unknown): number[] {
  const inner = unwrapSchema(schema);
  if (!(inner instanceof z.ZodNumber)) return [];
  return [inner.minValue, inner.maxValue].filter((limit) => limit !== null && Number.isFinite(limit) && Math.abs(limit) !== Number.MAX_SAFE_INTEGER).map(Number);
}

/** What the comment on a field does not say. */
function missingIn(comment: string, { schema }: Field): string[] {
  const choices = choicesOf(schema);
  const listed = choices.length <= MOST_CHOICES;
  const words = new Set(comment.split(/[\s,.;:]+/));
  return [
    ...(comment.startsWith(openingOf(schema)) ? [] : [`to begin with "${openingOf(schema)}"`]),
    ...(listed ? choices.filter((choice) => !words.has(choice)) : []),
    ...(listed || namesFile(comment) ? [] : ['the file that lists the choices']),
    ...limitsOf(schema).map(String).filter((limit) => !words.has(limit)),
  ];
}

function namesFile(comment: string): boolean {
  const path = /src\/[\w./-]+\.ts/.exec(comment)?.[0];
  return path !== undefined && existsSync(join(FOLDER, '../../..', path));
}

function nameOf(kind: ContentKind): string {
  return `${kind}${['procedures', 'calculators'].includes(kind) ? '.mdx' : '.yaml'}`;
}

it('there is one example of each kind and nothing else', () => {
  expect(readdirSync(FOLDER).sort()).toEqual(contentKinds.map(nameOf).sort());
});

describe.each(contentKinds)('the example of %s', (kind) => {
  const example = readExample(nameOf(kind));
  const fields = fieldsOf(schemas[kind]);

  it('passes its schema', () => {
    expect(example.problems).toEqual([]);
    expect(schemas[kind].safeParse(example.value).error?.issues ?? []).toEqual([]);
  });
  it('uses every field', () => {
    expect(fields.length).toBeGreaterThan(3);
    expect(fields.filter(({ path }) => valueAt(example.value, path) === undefined).map(({ path }) => fieldName(path))).toEqual([]);
  });
  it('says of every field whether it may be left out, its default, its choices and its limits', () => {
    const said = fields.flatMap((field) => missingIn(example.commentOf(field.path), field).map((word) => `${fieldName(field.path)}: ${word}`));
    expect(said).toEqual([]);
  });
});

describe('the test of the examples', () => {
  const schema = z.strictObject({ a: z.number().min(2).max(5), b: z.array(z.strictObject({ c: z.enum(['x', 'y']).default('x') })), d: z.string().optional() });

  it('knows fields inside lists', () => {
    expect(fieldsOf(schema).map(({ path }) => path)).toEqual([['a'], ['b'], ['b', 0, 'c'], ['d']]);
  });
  it.each([
    { field: 'a', comment: 'Mandatory. From 2 to 5.', missing: [] },
    { field: 'a', comment: 'Optional. From 2.', missing: ['to begin with "Mandatory."', '5'] },
    { field: 'b › 1 › c', comment: 'Optional, default x. One of: x, y.', missing: [] },
    { field: 'b › 1 › c', comment: 'Optional. One of: x.', missing: ['to begin with "Optional, default x."', 'y'] },
    { field: 'd', comment: '', missing: ['to begin with "Optional."'] },
  ])('"$comment" on $field', ({ field, comment, missing }) => {
    const found = fieldsOf(schema).find(({ path }) => fieldName(path) === field);
    expect(found && missingIn(comment, found)).toEqual(missing);
  });
});
