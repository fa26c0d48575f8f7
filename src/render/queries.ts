import { getCollection, type CollectionEntry } from 'astro:content';
import { contentKinds, type Book, type ContentKind, type Entry } from '../schemas/index.ts';

/** An entry of the book: its fields, and what Astro needs to render its body. */
export interface BookEntry<Kind extends ContentKind> {
  readonly id: string;
  readonly data: Entry<Kind>;
  readonly source: CollectionEntry<Kind>;
}

type Loaded = ReadonlyMap<string, BookEntry<ContentKind>>;

/** The collections are read once a build: asking Astro for them again is slow on a large book. */
const loaded = new Map<ContentKind, Promise<Loaded>>();

function load(kind: ContentKind): Promise<Loaded> {
  const known = loaded.get(kind);
  if (known && !import.meta.env.DEV) return known;
  const fresh = getCollection(kind).then((entries) => {
    const sorted = entries.sort((a, b) => a.id.localeCompare(b.id));
    // Astro has put each entry through the schema of its kind.
    return new Map(sorted.map((source) => [source.id, { id: source.id, data: source.data as Entry<ContentKind>, source }]));
  });
  loaded.set(kind, fresh);
  return fresh;
}

/** Every entry of a kind, with its body, by id, in order of id. */
export async function entriesOf<Kind extends ContentKind>(kind: Kind): Promise<ReadonlyMap<string, BookEntry<Kind>>> {
  // The map was filled from the collection of this very kind.
  return (await load(kind)) as unknown as ReadonlyMap<string, BookEntry<Kind>>;
}

/** The fields of every entry of a kind, by id. */
export async function dataOf<Kind extends ContentKind>(kind: Kind): Promise<ReadonlyMap<string, Entry<Kind>>> {
  return new Map([...(await entriesOf(kind))].map(([id, entry]) => [id, entry.data]));
}

/** The whole book as plain data. */
export async function wholeBook(): Promise<Book> {
  const kinds = await Promise.all(contentKinds.map(async (kind) => [kind, await dataOf(kind)] as const));
  return Object.fromEntries(kinds) as unknown as Book;
}

/** An entry that must be there; the checks before the build have made sure of it. */
export function required<Value>(entries: ReadonlyMap<string, Value>, id: string, kind: string): Value {
  const entry = entries.get(id);
  if (entry === undefined) throw new Error(`${kind} has no entry "${id}"; run "npm run check" for the place that names it.`);
  return entry;
}
