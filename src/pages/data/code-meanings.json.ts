import { codePages } from '../../render/codePages.ts';
import { wholeBook } from '../../render/queries.ts';

/** What each code of the book means, for the trouble-code calculator: by family, since a family shares its meaning. */
export async function GET(): Promise<Response> {
  const book = await wholeBook();
  const families = Object.fromEntries([...book.codes].map(([id, family]) => [id, { meaning: family.meaning, lookFirst: family.lookFirst }]));
  const codes = Object.fromEntries(codePages(book).map(({ code, title, familyId }) => [code, { title, family: familyId }]));
  return new Response(JSON.stringify({ families, codes }), { headers: { 'content-type': 'application/json' } });
}
