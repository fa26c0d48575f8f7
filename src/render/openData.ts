import { unitById } from '../domain/units/table.ts';
import type { Book, ContentKind, Entry } from '../schemas/index.ts';
import type { OpenDataItem } from '../schemas/openData.ts';
import { calculatorById } from './calculatorPages.ts';
import { codePages } from './codePages.ts';

/** What `data/<kind>.json` holds. */
export interface OpenData {
  /** Of the book. */
  readonly version: string;
  /** In order of id. */
  readonly items: readonly object[];
}

/** Every entry of a kind for other programs to read. Codes are one by one, calculators carry what they take and give. */
export function openData(kind: ContentKind, book: Book, version: string): OpenData {
  return { version, items: itemsOf(kind, book) };
}

function itemsOf(kind: ContentKind, book: Book): readonly object[] {
  if (kind === 'codes') return codeItems(book);
  if (kind === 'calculators') return [...book.calculators].map(([id, entry]) => calculatorItem(id, entry));
  return [...(book[kind] as ReadonlyMap<string, object>)].map(([id, entry]) => ({ id, ...entry }));
}

function codeItems(book: Book): readonly OpenDataItem<'codes'>[] {
  return codePages(book).map((page) => {
    const { members: _members, run: _run, ...family } = page.family;
    return { id: page.code, family: page.familyId, ...(page.number === undefined ? {} : { number: page.number }), ...family, title: page.title };
  });
}

function calculatorItem(id: string, entry: Entry<'calculators'>): object {
  const definition = calculatorById(id);
  if (definition === undefined) throw new Error(`content/calculators/${id}.mdx has no calculator of this id.`);
  const { title, summary, inputs, outputs } = definition;
  return { id, title, summary, inputs, outputs, units: unitsOf([...inputs, ...outputs]), ...entry };
}

/** The units that fields name, each once. */
function unitsOf(fields: readonly { readonly unit?: string }[]): OpenDataItem<'calculators'>['units'] {
  const ids = [...new Set(fields.flatMap((field) => field.unit ?? []))].sort();
  return ids.flatMap((id) => {
    const unit = unitById(id);
    if (unit === undefined) return [];
    const { symbol, name, dimension, factor, offset } = unit;
    return [{ id, symbol, name, dimension, factor, offset }];
  });
}
