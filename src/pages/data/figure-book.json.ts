import { wholeBook } from '../../render/queries.ts';
import { figureBook } from '../../schemas/shopFigures.ts';

/** What the shop's own figures are checked against and shown with. */
export async function GET(): Promise<Response> {
  return new Response(JSON.stringify(figureBook(await wholeBook())), { headers: { 'content-type': 'application/json' } });
}
