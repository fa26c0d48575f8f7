import { makeCalculators } from '../../domain/calculators/registry.ts';
import { wholeBook } from '../../render/queries.ts';

/**
 * The words that pages are called by, beyond those of the glossary: what a word typed with a slip is held against.
 * Fetched only when a query holds a word that is on no page found.
 */
export async function GET(): Promise<Response> {
  const { procedures, ranges, faults, parts, cautions, engines } = await wholeBook();
  const named = [procedures, ranges, faults, parts, cautions, engines].flatMap((kind) => [...kind.values()]);
  const names = [
    ...named.flatMap(({ title, otherWords }) => [title, ...otherWords]),
    ...makeCalculators({}).flatMap(({ title, searchWords }) => [title, ...searchWords]),
  ];
  const words = names.flatMap((name) => name.toLowerCase().match(/\p{L}{3,}/gu) ?? []);
  return new Response(JSON.stringify([...new Set(words)].sort()), { headers: { 'content-type': 'application/json' } });
}
