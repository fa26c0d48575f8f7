import { parseCodeList } from '../obd/code-list.ts';
import type { JobBook } from './book.ts';
import type { CodeNoted } from './types.ts';

/** What stands for a code that the book gives no meaning. */
export const codeNotInBook = 'not in this edition of the book';

/** Codes out of typed or pasted text, with what the book says of them; pieces that look like a code and are none are kept apart. */
export function noteCodes(text: string, book: JobBook): { readonly codes: readonly CodeNoted[]; readonly refused: readonly string[] } {
  const { codes, refused } = parseCodeList(text);
  return { codes: codes.map((code) => noteCode(code, book)), refused: refused.map((piece) => piece.text) };
}

function noteCode(code: string, book: JobBook): CodeNoted {
  const known = Object.hasOwn(book.codes, code) ? book.codes[code] : undefined;
  if (known === undefined) return { code, title: codeNotInBook };
  const { family, number, title } = known;
  return number === undefined ? { code, title, family } : { code, title, family, number };
}
