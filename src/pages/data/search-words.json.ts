import { codePages } from '../../render/codePages.ts';
import { wholeBook } from '../../render/queries.ts';

/** Codes and glossary words for the search: codes are found exactly, other words lead to the book's own. */
export async function GET(): Promise<Response> {
  const book = await wholeBook();
  const codes = Object.fromEntries(codePages(book).map(({ code, title }) => [code, title]));
  const terms = [...book.glossary.values()].map((entry) => ({ term: entry.term, other: entry.otherWords }));
  return new Response(JSON.stringify({ codes, terms }), { headers: { 'content-type': 'application/json' } });
}
