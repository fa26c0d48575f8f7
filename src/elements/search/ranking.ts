import type { Hit } from './fullText.ts';
import { standsIn, stem, wordsOf } from './query.ts';

/** Who asks for a thing wants first to test it, then to fit it, then to know what it should read. */
const parts: Readonly<Record<string, number>> = {
  Procedures: 1.3,
  Parts: 1.25,
  Calculators: 1.15,
  Cautions: 1.1,
  Faults: 1.05,
  Engines: 1,
  Ranges: 0.85,
  Codes: 0.7,
  Glossary: 0.4,
  Sources: 0.3,
};
const otherPart = 1;

/** What a page is called, and what it says. */
interface Read {
  readonly hit: Hit;
  readonly words: ReadonlySet<string>;
}

/**
 * Hits in the order in which they are shown, without those that hold none of the query's words: a text index answers
 * an unknown word with its neighbours.
 *
 * @param queries the words as typed, and those that were searched besides, in the order of their worth
 */
export function ranked(hits: readonly Hit[], queries: readonly string[]): Hit[] {
  const asked = queries.map((query) => wordsOf(query));
  const read: readonly Read[] = hits.map((hit) => ({ hit, words: textOf(hit) }));
  return read
    .filter(({ words }) => asked.some((query) => query.length === 0 || query.some((word) => standsIn(word, words))))
    .map(({ hit }) => ({ hit, worth: hit.score * (parts[hit.part] ?? otherPart) * nameWorth(hit, asked) }))
    .sort((a, b) => b.worth - a.worth)
    .map(({ hit }) => hit);
}

/** All words of a page. */
function textOf(hit: Hit): Set<string> {
  return new Set(wordsOf([hit.title, hit.names.join(' '), hit.content].join(' ')));
}

/** The words of the query that stand on none of the pages. */
export function wordsNowhere(query: string, hits: readonly Hit[]): string[] {
  const texts = hits.map(textOf);
  return query.split(' ').filter((typed) => {
    const words = wordsOf(typed);
    return words.some((word) => word.length > 1) && !words.some((word) => texts.some((text) => standsIn(word, text)));
  });
}

/** A page whose name is just what was asked for comes first, and the more of the query stands in a name the better. */
function nameWorth(hit: Hit, queries: readonly (readonly string[])[]): number {
  const worths = queries.flatMap((query, place) => {
    const less = place === 0 ? 1 : 0.8;
    const names = [worthOf(hit.title, query, 4), ...hit.names.map((name) => worthOf(name, query, 2.5))];
    return names.map((worth) => worth * less);
  });
  return Math.max(1, ...worths);
}

function worthOf(name: string, query: readonly string[], whole: number): number {
  const [named, asked] = [singleWords(wordsOf(name)), singleWords(query)];
  if (asked.length === 0) return 1;
  const found = asked.filter((word) => named.includes(word)).length;
  if (found === asked.length && found === named.length) return whole;
  const begins = named[0] === asked[0] ? 0.25 : 0;
  return 1 + found / asked.length + begins;
}

/** Compounds taken apart: `coil-on-plug` and `coil on plug` name the same thing. */
function singleWords(words: readonly string[]): string[] {
  return [...new Set(words.filter((word) => !/\p{L}-/u.test(word)).map(stem))];
}
