import { standsIn, wordsOf } from './query.ts';

/** A trade term with the other words for it, as the glossary has them. */
export interface TermWords {
  readonly term: string;
  readonly other: readonly string[];
}

/**
 * The query with the book's own term put in place of another word for it, at most two ways. Of two other words, one
 * within the other, the longer is meant: `catalytic converter`, not `converter`.
 */
export function otherQueries(query: string, terms: readonly TermWords[]): string[] {
  const found = terms.flatMap(({ term, other }) =>
    other
      .map((word) => ({ term: term.toLowerCase(), word: word.toLowerCase() }))
      .filter(({ term, word }) => hasWord(query, word) && !hasWord(query, term) && !hasWord(term, word)),
  );
  const meant = found.filter(({ word }) => !found.some((longer) => longer.word.length > word.length && hasWord(longer.word, word)));
  return [...new Set(meant.map(({ term, word }) => query.replace(word, term)))].slice(0, 2);
}

/** The word by itself, or as more than one of it. */
function hasWord(text: string, word: string): boolean {
  const at = text.indexOf(word);
  if (at < 0) return false;
  const before = text.charAt(at - 1);
  const after = text.slice(at + word.length);
  return !/[\p{L}\p{N}]/u.test(before) && /^(?:e?s)?(?![\p{L}\p{N}])/u.test(after);
}

/** Words and terms of the book that are spelled nearly like what was typed, nearest first. A figure is never put right. */
export function nearestWords(typed: string, vocabulary: Iterable<string>): string[] {
  const plain = typed.toLowerCase().trim();
  if (/\d/.test(plain)) return [];
  const allowed = plain.length < 6 ? 1 : plain.length < 9 ? 2 : 3;
  return [...new Set(vocabulary)]
    .filter((word) => Math.abs(word.length - plain.length) <= allowed)
    .map((word) => ({ word, distance: editDistance(plain, word.toLowerCase()) }))
    .filter(({ word, distance }) => distance <= allowed && distance < word.length / 2)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 4)
    .map(({ word }) => word);
}

/**
 * Slips to make one word of the other: a letter changed, added, left out, or two neighbours exchanged
 * (Damerau and Levenshtein, optimal string alignment).
 */
export function editDistance(one: string, other: string): number {
  let before: number[] = [];
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const changed = (row[j - 1] ?? 0) + (one[i - 1] === other[j - 1] ? 0 : 1);
      const exchanged = one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1] ? (before[j - 2] ?? Infinity) + 1 : Infinity;
      next.push(Math.min(changed, exchanged, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    before = row;
    row = next;
  }
  return row[other.length] ?? 0;
}

/** The query with each unknown word put right that the book has nearly so; undefined where none could be. */
export function putRight(query: string, unknown: readonly string[], vocabulary: readonly string[]): string | undefined {
  const known = new Set(vocabulary.flatMap(wordsOf));
  const right = query.split(' ').map((word) => {
    if (!unknown.includes(word) || standsIn(word, known)) return word;
    return nearestWords(word, vocabulary)[0]?.toLowerCase() ?? word;
  });
  const put = right.join(' ');
  return put === query ? undefined : put;
}
