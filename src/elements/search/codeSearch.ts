import { codeOwner } from '../../domain/obd/codes.ts';
import { normaliseCode } from '../../domain/obd/normalise.ts';

/** Codes in the book: their titles, by code. The page of a code follows from the code. */
export type CodeIndex = Readonly<Record<string, string>>;

export type CodeAnswer =
  | { readonly kind: 'found'; readonly code: string; readonly title: string; readonly page: string }
  | { readonly kind: 'not-in-book'; readonly code: string; readonly says: string };

/** Only what can be nothing but a code is taken for one: a letter and four characters with a digit among them, or four digits alone. */
const letterAndFour = /^[pcbu][\s.-]?[0-9oil](?:\s?[0-9a-foil]){3}$/i;
const fourAlone = /^[0-9o]\d{3}$/i;

/** May the query be a trouble code? Then the list of codes is asked before the words of the book. */
export function looksLikeCode(query: string): boolean {
  const typed = query.trim();
  return fourAlone.test(typed) || (letterAndFour.test(typed) && /\d/.test(typed));
}

/** The exact answer for a query that is a trouble code, in whichever spelling. Never a neighbouring code. */
export function findCode(query: string, index: CodeIndex): CodeAnswer | undefined {
  if (!looksLikeCode(query)) return undefined;
  const typed = query.trim();
  const alone = fourAlone.test(typed);
  const normal = normaliseCode(typed);
  const title = normal.ok ? index[normal.value] : undefined;
  if (normal.ok && title !== undefined) return { kind: 'found', code: normal.value, title, page: `codes/${normal.value.toLowerCase()}/` };
  // Four digits alone may be a part number or a year: only a code of the book is taken from them.
  if (alone) return undefined;
  const code = normal.ok ? normal.value : typed.toUpperCase();
  return { kind: 'not-in-book', code, says: normal.ok ? notInBook(code) : `${code} is not in this book. ${normal.error.message}` };
}

function notInBook(code: string): string {
  const owner = codeOwner(code);
  if (owner === 'maker') return `${code} is not in this book. The car's maker sets its meaning: only the maker's documents give it.`;
  if (owner === 'reserved') return `${code} is not in this book. The standard keeps it in reserve.`;
  return `${code} is not in this book. It is a code of the standard, SAE J2012: look it up there or in the maker's documents.`;
}
