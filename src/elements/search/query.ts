/**
 * A query in the form in which the index has its words: small letters, a plain minus, a decimal point, sizes of threads
 * in one piece. `−17,8` becomes `-17.8`, `M14 × 1,25` becomes `m14x1.25`.
 */
export function plainQuery(typed: string): string {
  return typed
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/(?<=\d),(?=\d)/g, '.')
    .replace(/\b(m\d+)\s*[x×*]\s*(?=\d)/g, '$1x')
    .trim()
    .replace(/\s+/g, ' ');
}

/**
 * The words of a text, small letters, without the marks round them. A compound with a dash is one word and its parts:
 * `coil-on-plug`; a figure keeps its minus and its point.
 */
export function wordsOf(text: string): string[] {
  const whole = plainQuery(text).match(/-?\d[\p{L}\p{N}.-]*|[\p{L}\p{N}][\p{L}\p{N}.-]*/gu) ?? [];
  const words = whole.map((word) => word.replace(/[.-]+$/, ''));
  return words.flatMap((word) => (/\p{L}-/u.test(word) ? [word, ...word.split('-')] : [word]));
}

/** The same query put in other ways that cannot mean anything else; empty where there is none. */
export function otherSpellings(query: string): string[] {
  // 1342 is how a firing order is typed, and 1-3-4-2 how it is written.
  if (/^[1-9]{3,9}$/.test(query)) return [query.split('').join('-')];
  const thread = /\bm\d+(?=x[\d.]+)/.exec(query);
  return thread ? [query.replace(/\b(m\d+)x[\d.]+/, '$1')] : [];
}

/** A word without the ending that changes with number and time: enough to see that `coils` and `coil` are one. */
export function stem(word: string): string {
  if (/\d/.test(word) || word.length < 4) return word;
  return word.replace(/'s$/, '').replace(/(?:(?<=[^s])s|(?<=[xs])es|ed|ing)$/, '');
}

/** Does the word stand among the words of a text, whole or as their beginning? A figure must be there as it is. */
export function standsIn(word: string, words: ReadonlySet<string>): boolean {
  if (words.has(word)) return true;
  if (/^-?\d/.test(word)) return false;
  const start = stem(word);
  for (const one of words) if (one.startsWith(start)) return true;
  return false;
}
