import type { Book, ContentKind } from '../schemas/index.ts';

/** One entry that names a source, with the clause or page it names. */
export interface SourceUse {
  readonly kind: ContentKind;
  readonly id: string;
  readonly place?: string;
}

interface Citing {
  readonly source?: { readonly id: string; readonly place?: string | undefined };
  readonly sources?: readonly { readonly id: string; readonly place?: string | undefined }[];
}

const citing: readonly ContentKind[] = ['ranges', 'codes', 'faults', 'procedures', 'calculators', 'cautions', 'parts', 'engines'];

/** Every entry that rests on a source, in the order of the kinds. */
export function sourceUses(book: Book, sourceId: string): SourceUse[] {
  return citing.flatMap((kind) =>
    [...(book[kind] as ReadonlyMap<string, Citing>)].flatMap(([id, entry]) => {
      const named = [...(entry.source ? [entry.source] : []), ...(entry.sources ?? [])].filter((source) => source.id === sourceId);
      const place = named.find((source) => source.place)?.place;
      return named.length === 0 ? [] : [{ kind, id, ...(place === undefined ? {} : { place }) }];
    }),
  );
}
