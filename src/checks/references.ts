import type { Book, ContentKind } from '../schemas/index.ts';
import { valuesAt } from './fieldValues.ts';
import type { FieldPath } from './finding.ts';

/** A field of one entry that names another. */
export interface Reference {
  readonly fromKind: ContentKind;
  readonly fromId: string;
  readonly path: FieldPath;
  readonly toKind: ContentKind;
  readonly toId: string;
}

/** Every field that names another entry, and the kind it names, as `valuesAt` patterns. A test holds this list against the schemas. */
export const referenceFields: Readonly<Record<ContentKind, Readonly<Record<string, ContentKind>>>> = {
  sources: {},
  quantities: {},
  ranges: {
    quantity: 'quantities',
    'below.faults.[]': 'faults',
    'above.faults.[]': 'faults',
    'open.faults.[]': 'faults',
    'source.id': 'sources',
  },
  procedures: {
    'cautions.[]': 'cautions',
    'steps.[].caution': 'cautions',
    'steps.[].reading.ranges.[]': 'ranges',
    'outcomes.[].favours.[]': 'faults',
    'outcomes.[].next.[]': 'procedures',
    'likelihoods.[].faults.[]': 'faults',
    'sources.[].id': 'sources',
  },
  faults: {
    'codes.{}': 'codes',
    part: 'parts',
    'partByIgnition.*': 'parts',
    repairProcedure: 'procedures',
    'tellsApart.[]': 'procedures',
    'source.id': 'sources',
  },
  codes: { 'procedures.[]': 'procedures', 'faults.[]': 'faults', 'source.id': 'sources' },
  cautions: { 'sources.[].id': 'sources' },
  parts: {
    'fit.[].caution': 'cautions',
    'askMaker.[].source.id': 'sources',
    'cautions.[]': 'cautions',
    'procedures.[]': 'procedures',
    'sources.[].id': 'sources',
  },
  engines: { 'source.id': 'sources', 'makerFigures.[].range': 'ranges' },
  calculators: { 'procedures.[]': 'procedures', 'ranges.[]': 'ranges', 'sources.[].id': 'sources' },
  glossary: {},
};

function referencesOfKind(book: Book, kind: ContentKind): Reference[] {
  return [...book[kind]].flatMap(([fromId, entry]) =>
    Object.entries(referenceFields[kind]).flatMap(([pattern, toKind]) =>
      valuesAt(entry, pattern).map(({ path, value }) => ({ fromKind: kind, fromId, path, toKind, toId: String(value) })),
    ),
  );
}

/** The pages a glossary term leads to, written `kind/id`; the kind is taken as written. */
export function seeReferences(book: Book): Reference[] {
  return [...book.glossary].flatMap(([fromId, entry]) =>
    entry.see.map((address, index) => {
      const [toKind, toId] = address.split('/') as [ContentKind, string];
      return { fromKind: 'glossary' as const, fromId, path: ['see', index], toKind, toId };
    }),
  );
}

/** Every place in the book where an entry names another by id. */
export function referencesIn(book: Book): Reference[] {
  const kinds = Object.keys(referenceFields) as ContentKind[];
  return kinds.flatMap((kind) => referencesOfKind(book, kind));
}
