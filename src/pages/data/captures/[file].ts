import type { APIContext } from 'astro';
import { captureFiles } from '../../../render/captureExamples.ts';

export function getStaticPaths() {
  return [...captureFiles()].map(([file, text]) => ({ params: { file }, props: { text } }));
}

/** An invented log or trace, or what was put into it. */
export async function GET({ params, props }: APIContext<{ text: string }>): Promise<Response> {
  const type = params.file?.endsWith('.csv') === true ? 'text/csv; charset=utf-8' : 'application/yaml; charset=utf-8';
  return new Response(props.text, { headers: { 'content-type': type } });
}
