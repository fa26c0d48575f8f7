import type { APIContext } from 'astro';
import { contentKinds, type ContentKind } from '../../../schemas/index.ts';
import { openDataJsonSchema } from '../../../schemas/openData.ts';

export function getStaticPaths() {
  return contentKinds.map((kind) => ({ params: { kind }, props: { kind } }));
}

/** What `data/<kind>.json` holds, as JSON Schema. */
export function GET({ props }: APIContext<{ kind: ContentKind }>): Response {
  return new Response(JSON.stringify(openDataJsonSchema(props.kind), null, 2), { headers: { 'content-type': 'application/schema+json' } });
}
