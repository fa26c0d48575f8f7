import { codePages } from '../../render/codePages.ts';
import { wholeBook } from '../../render/queries.ts';

/** Every code of the book with its title, so that the search finds codes exactly. */
export async function GET(): Promise<Response> {
  const codes = Object.fromEntries(codePages(await wholeBook()).map(({ code, title }) => [code, title]));
  return new Response(JSON.stringify(codes), { headers: { 'content-type': 'application/json' } });
}
