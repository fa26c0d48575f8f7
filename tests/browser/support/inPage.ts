import { join } from 'node:path';
import * as esbuild from 'esbuild';

const ROOT = join(import.meta.dirname, '../../..');

/**
 * The book's own sources as a script that a test runs in a page. `contents` is TypeScript whose imports start at the root of the
 * project; what it needs to hand out it puts on `globalThis`.
 */
export async function bundleForPage(contents: string): Promise<string> {
  const { outputFiles } = await esbuild.build({
    stdin: { contents, resolveDir: ROOT, loader: 'ts' },
    bundle: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    write: false,
    tsconfigRaw: {},
  });
  const [script] = outputFiles;
  if (script === undefined) throw new Error('Nothing was bundled.');
  return script.text;
}
