import { expandFamily } from '../domain/obd/families.ts';
import type { Book, Entry } from '../schemas/index.ts';

/** One code with a page of its own. */
export interface CodePage {
  readonly code: string;
  readonly number?: number;
  readonly title: string;
  readonly familyId: string;
  readonly family: Entry<'codes'>;
}

/** Every code in the book, in order. */
export function codePages(book: Pick<Book, 'codes'>): CodePage[] {
  return [...book.codes]
    .flatMap(([familyId, family]) => expandFamily(family).map((member) => ({ ...member, familyId, family })))
    .sort((a, b) => a.code.localeCompare(b.code));
}

/** The page of a family: that of its first code. */
export function codePath(book: Pick<Book, 'codes'>, familyId: string): string {
  const family = book.codes.get(familyId);
  const codes = family ? expandFamily(family).map(({ code }) => code) : [];
  const [first] = codes.sort((a, b) => a.localeCompare(b));
  return first ? `/codes/${first.toLowerCase()}/` : '/codes/';
}
