import { calculatorById } from './calculatorPages.ts';
import { codePath } from './codePages.ts';
import { groupOf } from './glossaryPages.ts';
import type { Book, ContentKind } from '../schemas/index.ts';

/** What an entry is called on links to it. */
export function titleOf(book: Book, kind: ContentKind, id: string): string {
  switch (kind) {
    case 'glossary':
      return book.glossary.get(id)?.term ?? id;
    case 'calculators':
      return calculatorById(id)?.title ?? id;
    case 'codes':
      return familyTitle(book.codes.get(id)?.title ?? id);
    default:
      return book[kind].get(id)?.title ?? id;
  }
}

/** A family's title without the place it counts: `Misfire, cylinder {number}` becomes `Misfire, by cylinder`. */
export function familyTitle(title: string): string {
  return title
    .replace(/,?\s*(cylinder|coil|bank) \{(?:number|letter)\}/g, ', by $1')
    .replace(/\s*\{(?:number|letter)\}/g, '')
    .trim();
}

/** The page of an entry. Kinds without pages of their own stand on a page of their section. */
export function pathOf(book: Book, kind: ContentKind, id: string): string {
  switch (kind) {
    case 'codes':
      return codePath(book, id);
    case 'quantities':
      return `/ranges/#${id}`;
    case 'glossary':
      return `/glossary/${groupOf(book.glossary.get(id)?.term ?? id)}/#${id}`;
    default:
      return `/${kind}/${id}/`;
  }
}
