import { dataOf } from '../../render/queries.ts';

/** Glossary words for the search: other words lead to the book's own. */
export async function GET(): Promise<Response> {
  const terms = [...(await dataOf('glossary')).values()].map((entry) => ({ term: entry.term, other: entry.otherWords }));
  return new Response(JSON.stringify(terms), { headers: { 'content-type': 'application/json' } });
}
