import type { Book, ContentKind } from '../schemas/index.ts';

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

/** Every page that names this entry, in order of kind and title. */
export function referencesTo(book: Book, titles: (kind: ContentKind, id: string) => string, target: { kind: ContentKind; id: string }): Reference[] {
  return naming.flatMap((kind) =>
    [...book[kind].keys()]
      .filter((id) => !(kind === target.kind && id === target.id))
      .filter((id) => namedBy(book, kind, id).some(([named, ids]) => named === target.kind && ids.includes(target.id)))
      .map((id) => ({ kind, id, title: titles(kind, id) }))
      .sort((a, b) => a.title.localeCompare(b.title)),
  );
}
