/** A trade term with the other words for it, as the glossary has them. */
export interface TermWords {
  readonly term: string;
  readonly other: readonly string[];
}

/** A query with another word put in place of one it uses, for each glossary term that has it as another word. */
export function otherQueries(query: string, terms: readonly TermWords[]): string[] {
  const plain = query.toLowerCase().trim();
  const found = terms.flatMap(({ term, other }) =>
    other
      .filter((word) => hasWord(plain, word.toLowerCase()) && !hasWord(plain, term.toLowerCase()) && !hasWord(term.toLowerCase(), word.toLowerCase()))
      .map((word) => plain.replace(word.toLowerCase(), term.toLowerCase())),
  );
  return [...new Set(found)].slice(0, 2);
}

function hasWord(text: string, word: string): boolean {
  const at = text.indexOf(word);
  if (at < 0) return false;
  const before = text.charAt(at - 1);
  const after = text.charAt(at + word.length);
  return !/[\p{L}\p{N}]/u.test(before) && !/[\p{L}\p{N}]/u.test(after);
}

/** Words of the glossary that are spelled nearly like the query, nearest first; to be offered as words, not as answers. */
export function nearestWords(query: string, terms: readonly TermWords[]): string[] {
  const plain = query.toLowerCase().trim();
  const allowed = plain.length < 5 ? 1 : plain.length < 9 ? 2 : 3;
  const words = new Set(terms.flatMap(({ term, other }) => [term, ...other]));
  return [...words]
    .map((word) => ({ word, distance: editDistance(plain, word.toLowerCase()) }))
    .filter(({ distance }) => distance <= allowed)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 4)
    .map(({ word }) => word);
}

/** Letters to change, add or take out to make one word of the other (Levenshtein). */
export function editDistance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= other.length; j += 1) {
      const swap = (row[j - 1] ?? 0) + (one[i - 1] === other[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[other.length] ?? 0;
}

/** Words of the query that stand in none of the texts: the search went on without them, and says so. */
export function wordsLeftOut(query: string, texts: readonly string[]): string[] {
  const words = query.toLowerCase().split(/\s+/).filter((word) => word.length > 2);
  const all = texts.join(' ').toLowerCase();
  return words.filter((word) => !all.includes(word.slice(0, Math.max(3, word.length - 3))));
}
