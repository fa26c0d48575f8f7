import type { Book, ContentKind } from '../schemas/index.ts';
import { titleOf } from './titles.ts';

/** One page that names another. */
export interface Reference {
  readonly kind: ContentKind;
  readonly id: string;
  readonly title: string;
}

type Named = readonly (readonly [kind: ContentKind, ids: readonly string[]])[];

/** What each kind of entry names on other pages. */
function namedBy(book: Book, kind: ContentKind, id: string): Named {
  switch (kind) {
    case 'procedures': {
      const entry = book.procedures.get(id);
      if (!entry) return [];
      return [
        ['cautions', [...entry.cautions, ...entry.steps.flatMap((step) => step.caution ?? [])]],
        ['ranges', entry.steps.flatMap((step) => step.reading?.ranges ?? [])],
        ['faults', entry.outcomes.flatMap((outcome) => outcome.favours)],
        ['procedures', entry.outcomes.flatMap((outcome) => outcome.next)],
      ];
    }
    case 'ranges': {
      const entry = book.ranges.get(id);
      return entry ? [['faults', [entry.below, entry.above, entry.open].flatMap((end) => end?.faults ?? [])]] : [];
    }
    case 'faults': {
      const entry = book.faults.get(id);
      if (!entry) return [];
      return [
        ['procedures', [...entry.tellsApart, ...(entry.repairProcedure ? [entry.repairProcedure] : [])]],
        ['parts', [...(entry.part ? [entry.part] : []), ...Object.values(entry.partByIgnition)]],
      ];
    }
    case 'codes': {
      const entry = book.codes.get(id);
      return entry ? [['procedures', entry.procedures], ['faults', entry.faults]] : [];
    }
    case 'parts': {
      const entry = book.parts.get(id);
      if (!entry) return [];
      return [['procedures', entry.procedures], ['cautions', [...entry.cautions, ...entry.fit.flatMap((step) => step.caution ?? [])]]];
    }
    case 'calculators': {
      const entry = book.calculators.get(id);
      return entry ? [['procedures', entry.procedures], ['ranges', entry.ranges]] : [];
    }
    default:
      return [];
  }
}

const naming: readonly ContentKind[] = ['codes', 'faults', 'procedures', 'ranges', 'parts', 'calculators'];

type ReferenceIndex = ReadonlyMap<string, readonly Reference[]>;

/** One index for each book: going through the whole book for every page takes the square of its size. */
const indexes = new WeakMap<Book, ReferenceIndex>();

function makeIndex(book: Book): ReferenceIndex {
  const index = new Map<string, Reference[]>();
  for (const reference of naming.flatMap((kind) => byTitle(book, kind))) {
    for (const address of addressesNamedBy(book, reference)) {
      const known = index.get(address);
      if (known) known.push(reference);
      else index.set(address, [reference]);
    }
  }
  return index;
}

function byTitle(book: Book, kind: ContentKind): Reference[] {
  const entries = [...book[kind].keys()].map((id) => ({ kind, id, title: titleOf(book, kind, id) }));
  return entries.sort((a, b) => a.title.localeCompare(b.title));
}

/** What an entry names, each once and not itself, as `kind/id`. */
function addressesNamedBy(book: Book, { kind, id }: Reference): ReadonlySet<string> {
  const named = new Set(namedBy(book, kind, id).flatMap(([target, ids]) => ids.map((one) => `${target}/${one}`)));
  named.delete(`${kind}/${id}`);
  return named;
}

/** Every page that names this entry, in order of kind and title. */
export function referencesTo(book: Book, target: { readonly kind: ContentKind; readonly id: string }): readonly Reference[] {
  const index = indexes.get(book) ?? makeIndex(book);
  indexes.set(book, index);
  return index.get(`${target.kind}/${target.id}`) ?? [];
}
