import { version } from '../../../package.json';
import { jobBook } from '../../render/jobBook.ts';
import { wholeBook } from '../../render/queries.ts';

export async function GET(): Promise<Response> {
  return new Response(JSON.stringify(jobBook(await wholeBook(), version)), { headers: { 'content-type': 'application/json' } });
}
