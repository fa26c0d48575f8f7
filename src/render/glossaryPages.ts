import type { Book, Entry } from '../schemas/index.ts';

/** Letters that share a page: the glossary is too long for one page on a slow connection. */
const letterGroups = ['a-b', 'c', 'd-e', 'f-h', 'i-l', 'm-o', 'p-r', 's', 't-z'] as const;

export type LetterGroup = (typeof letterGroups)[number];

export interface GlossaryPage {
  readonly group: LetterGroup;
  readonly terms: readonly (readonly [id: string, entry: Entry<'glossary'>])[];
}

/** The page of a term, by its first letter; terms that start with a digit stand on the first page. */
export function groupOf(term: string): LetterGroup {
  const letter = term.trim().charAt(0).toLowerCase();
  const found = letterGroups.find((group) => {
    const [from = '', to = from] = group.split('-');
    return letter >= from && letter <= to;
  });
  return found ?? 'a-b';
}

/** Every page of the glossary that has terms, each in the order of the alphabet. */
export function glossaryPages(book: Pick<Book, 'glossary'>): readonly GlossaryPage[] {
  const terms = [...book.glossary].sort(([, one], [, other]) => one.term.localeCompare(other.term));
  return letterGroups
    .map((group) => ({ group, terms: terms.filter(([, entry]) => groupOf(entry.term) === group) }))
    .filter((page) => page.terms.length > 0);
}
