import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { SITE_FOLDER } from './support/site.ts';

// The files are held against their schemas by a validator that knows nothing of the code that made either.
// JSON Schema, draft 2020-12.

type Item = Readonly<Record<string, unknown>>;

interface OpenData {
  readonly version: string;
  readonly items: readonly Item[];
}

const ROOT = join(import.meta.dirname, '../..');
const kinds = readdirSync(join(ROOT, 'content')).filter((name) => !name.startsWith('.')).sort();

function built(path: string): unknown {
  return JSON.parse(readFileSync(join(SITE_FOLDER, 'data', path), 'utf8'));
}

function dataOf(kind: string): OpenData {
  return built(`${kind}.json`) as OpenData;
}

function validatorOf(kind: string): ValidateFunction {
  return new Ajv2020({ allErrors: true }).compile(built(`schemas/${kind}.schema.json`) as object);
}

function contentFiles(kind: string): string[] {
  return readdirSync(join(ROOT, 'content', kind)).filter((name) => !name.startsWith('.'));
}

function idsOf(kind: string): string[] {
  return contentFiles(kind).map((name) => name.replace(/\.\w+$/, '')).sort();
}

/** The codes of a family by its file: those written one by one, and those of a run counted in decimal digits. */
function codesOfFamily(file: string): string[] {
  const family = parse(readFileSync(join(ROOT, 'content/codes', file), 'utf8')) as {
    members?: { code: string }[];
    run?: { first: string; last: string; step?: number };
  };
  const codes = (family.members ?? []).map(({ code }) => code);
  if (family.run === undefined) return codes;
  const { first, last, step = 1 } = family.run;
  for (let number = Number(first.slice(1)); number <= Number(last.slice(1)); number += step) {
    codes.push(first.slice(0, 1) + String(number).padStart(4, '0'));
  }
  return codes;
}

describe('the open data of the built site', () => {
  it('has a file for every kind of content', () => expect(kinds).toHaveLength(11));

  it.each(kinds)('%s keeps to its schema and carries the version', (kind) => {
    const validate = validatorOf(kind);
    const data = dataOf(kind);
    validate(data);
    expect(validate.errors).toBeNull();
    const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string };
    expect(data.version).toBe(version);
  });

  it.each(kinds.filter((kind) => kind !== 'codes'))('%s has an item for each file', (kind) => {
    const ids = dataOf(kind).items.map(({ id }) => id);
    expect([...ids].sort()).toEqual(idsOf(kind));
  });

  it('codes has an item for each code of each family, and names the family', () => {
    const items = dataOf('codes').items;
    const expected = contentFiles('codes').flatMap((file) => codesOfFamily(file).map((code) => `${code} ${file.replace('.yaml', '')}`));
    expect(items.map(({ id, family }) => `${String(id)} ${String(family)}`).sort()).toEqual(expected.sort());
  });

  it('fills the number of a code into its title', () => {
    const third = dataOf('codes').items.find(({ id }) => id === 'P0303');
    expect(third).toMatchObject({ family: 'misfire-cylinder', number: 3, title: 'Misfire, cylinder 3' });
  });

  it('calculators name their inputs, outputs and the units of both', () => {
    const coil = dataOf('calculators').items.find(({ id }) => id === 'coil-resistance');
    expect(coil).toMatchObject({ inputs: expect.arrayContaining([expect.objectContaining({ name: 'reading', unit: 'ohm' })]) });
    expect(coil?.['units']).toContainEqual(expect.objectContaining({ id: 'ohm', symbol: 'Ω', dimension: 'resistance' }));
    for (const { id, inputs, outputs, units } of dataOf('calculators').items as unknown as readonly CalculatorItem[]) {
      const named = new Set([...inputs, ...outputs].flatMap(({ unit }) => unit ?? []));
      expect(units.map((unit) => unit.id).sort(), id).toEqual([...named].sort());
    }
  });
});

interface CalculatorItem {
  readonly id: string;
  readonly inputs: readonly { readonly unit?: string }[];
  readonly outputs: readonly { readonly unit?: string }[];
  readonly units: readonly { readonly id: string }[];
}

const ways: readonly { label: string; broken: (item: Item) => Item }[] = [
  { label: 'without its id', broken: ({ id: _id, ...rest }) => rest },
  { label: 'with an id that is no id', broken: (item) => ({ ...item, id: 'Not An Id' }) },
  { label: 'with a field that does not exist', broken: (item) => ({ ...item, colour: 'red' }) },
  { label: 'with a number where text belongs', broken: (item) => Object.fromEntries(Object.entries(item).map(([key, value]) => [key, typeof value === 'string' && key !== 'id' ? 1 : value])) },
];

describe.each(kinds)('a broken item of %s', (kind) => {
  const validate = validatorOf(kind);
  const data = dataOf(kind);
  const [first = {}, ...rest] = data.items;

  it.each(ways)('$label is refused', ({ broken }) => {
    expect(validate(data)).toBe(true);
    expect(validate({ ...data, items: [broken(first), ...rest] })).toBe(false);
  });
});

describe('rules across fields', () => {
  it('a range without either limit is refused', () => {
    const data = dataOf('ranges');
    const [{ low: _low, high: _high, ...bare } = {}] = data.items;
    const validate = validatorOf('ranges');
    expect(validate({ ...data, items: [bare] })).toBe(false);
    expect(validate({ ...data, items: [{ ...bare, high: 1 }] })).toBe(true);
  });
  it.each(['version', 'items'])('a file without its %s is refused', (field) => {
    const validate = validatorOf('glossary');
    expect(validate({ ...dataOf('glossary'), [field]: undefined })).toBe(false);
  });
});
