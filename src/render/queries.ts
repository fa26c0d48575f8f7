import { getCollection, type CollectionEntry } from 'astro:content';
import { contentKinds, type Book, type ContentKind, type Entry } from '../schemas/index.ts';

/** An entry of the book: its fields, and what Astro needs to render its body. */
export interface BookEntry<Kind extends ContentKind> {
  readonly id: string;
  readonly data: Entry<Kind>;
  readonly source: CollectionEntry<Kind>;
}

interface Loaded {
  readonly entries: ReadonlyMap<string, BookEntry<ContentKind>>;
  readonly data: ReadonlyMap<string, Entry<ContentKind>>;
}

/** The collections are read once a build: asking Astro for them again, or copying them for each page, is slow on a large book. */
const loaded = new Map<ContentKind, Promise<Loaded>>();

function load(kind: ContentKind): Promise<Loaded> {
  const known = loaded.get(kind);
  if (known && !import.meta.env.DEV) return known;
  const fresh = getCollection(kind).then((collection) => {
    const sorted = collection.sort((a, b) => a.id.localeCompare(b.id));
    // Astro has put each entry through the schema of its kind.
    const data = new Map(sorted.map((source) => [source.id, source.data as Entry<ContentKind>]));
    const entries = new Map(sorted.map((source) => [source.id, { id: source.id, data: source.data as Entry<ContentKind>, source }]));
    return { entries, data };
  });
  loaded.set(kind, fresh);
  return fresh;
}

/** Every entry of a kind, with its body, by id, in order of id. */
export async function entriesOf<Kind extends ContentKind>(kind: Kind): Promise<ReadonlyMap<string, BookEntry<Kind>>> {
  // The map was filled from the collection of this very kind.
  return (await load(kind)).entries as unknown as ReadonlyMap<string, BookEntry<Kind>>;
}

/** The fields of every entry of a kind, by id. */
export async function dataOf<Kind extends ContentKind>(kind: Kind): Promise<ReadonlyMap<string, Entry<Kind>>> {
  // The map was filled from the collection of this very kind.
  return (await load(kind)).data as unknown as ReadonlyMap<string, Entry<Kind>>;
}

let whole: Promise<Book> | undefined;

/** The whole book as plain data; the same object throughout a build, so that what is worked out from it can be kept with it. */
export function wholeBook(): Promise<Book> {
  if (whole === undefined || import.meta.env.DEV) whole = gatherBook();
  return whole;
}

async function gatherBook(): Promise<Book> {
  const kinds = await Promise.all(contentKinds.map(async (kind) => [kind, await dataOf(kind)] as const));
  return Object.fromEntries(kinds) as unknown as Book;
}

/** An entry that must be there; the checks before the build have made sure of it. */
export function required<Value>(entries: ReadonlyMap<string, Value>, id: string, kind: string): Value {
  const entry = entries.get(id);
  if (entry === undefined) throw new Error(`${kind} has no entry "${id}"; run "npm run check" for the place that names it.`);
  return entry;
}
