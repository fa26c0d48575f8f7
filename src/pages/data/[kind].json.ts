import type { APIContext } from 'astro';
import { version } from '../../../package.json';
import { openData } from '../../render/openData.ts';
import { wholeBook } from '../../render/queries.ts';
import { contentKinds, type ContentKind } from '../../schemas/index.ts';

export function getStaticPaths() {
  return contentKinds.map((kind) => ({ params: { kind }, props: { kind } }));
}

/** The book's own data out, for other programs; `data/schemas/<kind>.schema.json` says what is in it. */
export async function GET({ props }: APIContext<{ kind: ContentKind }>): Promise<Response> {
  const data = openData(props.kind, await wholeBook(), version);
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
}
