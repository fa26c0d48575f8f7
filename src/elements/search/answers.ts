import { readBookData } from '../bookData.ts';
import { searchText, type Hit } from './fullText.ts';
import { otherSpellings, plainQuery } from './query.ts';
import { ranked, wordsNowhere } from './ranking.ts';
import { nearestWords, otherQueries, putRight, type TermWords } from './words.ts';

export interface Answers {
  /** Best first; empty when nothing was found. */
  readonly hits: readonly Hit[];
  /** What was searched besides, with the book's own terms. */
  readonly others: readonly string[];
  /** What was searched in place of a query that the book has no word of, or not all. */
  readonly instead: string | undefined;
  /** Words of the query that no page holds. */
  readonly leftOut: readonly string[];
  /** Where nothing was found: words of the book spelled nearly so. */
  readonly near: readonly string[];
}

/** Pages with the words of a query; a slip of the finger is put right and said. An empty query with parts chosen lists those parts. */
export async function findWords(typed: string, parts: readonly string[]): Promise<Answers> {
  const query = plainQuery(typed);
  const terms = await readBookData<readonly TermWords[]>('search-words');
  const first = await searchAll(query, terms, parts);
  if (first.leftOut.length === 0) return { ...first, instead: undefined, near: [] };
  const spellings = await readBookData<readonly string[]>('search-spellings');
  const vocabulary = [...terms.flatMap(({ term, other }) => [term, ...other]), ...spellings];
  const right = putRight(query, first.leftOut, vocabulary);
  if (right !== undefined) {
    const second = await searchAll(right, terms, parts);
    if (second.leftOut.length < first.leftOut.length) return { ...second, instead: right, near: [] };
  }
  return { ...first, instead: undefined, near: first.hits.length === 0 ? nearestWords(query, vocabulary) : [] };
}

type Searched = Pick<Answers, 'hits' | 'others' | 'leftOut'>;

async function searchAll(query: string, terms: readonly TermWords[], parts: readonly string[]): Promise<Searched> {
  const others = [...otherSpellings(query), ...otherQueries(query, terms)];
  const queries = [query, ...others];
  const found = await Promise.all(queries.map((one) => searchText(one, parts)));
  const hits = ranked(onePerPage(found.flat()), queries);
  // A word that another word stood in for was used after all.
  const nowhere = wordsNowhere(query, hits).filter((word) => hits.length === 0 || others.every((other) => other.includes(word)));
  return { hits, others: hits.length === 0 ? [] : others, leftOut: nowhere };
}

/** A page found by two of the queries counts once, at its better score. */
function onePerPage(hits: readonly Hit[]): Hit[] {
  const best = new Map<string, Hit>();
  for (const hit of hits) {
    const known = best.get(hit.page);
    if (known === undefined || hit.score > known.score) best.set(hit.page, hit);
  }
  return [...best.values()];
}
