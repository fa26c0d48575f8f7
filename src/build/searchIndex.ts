import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import * as esbuild from 'esbuild';
import * as pagefind from 'pagefind';
import { listFiles } from './files.ts';

/** Characters that make a different word: without them `4.5`, `45` and `0.45` are one word, and so are `-40` and `40`. */
const INCLUDED_CHARACTERS = '.-+%';

/** What the book's own search needs; the ready-made interfaces that come with the indexer stay behind. */
const NEEDED = /^(?:pagefind\.js|pagefind-entry\.json|wasm\.en\.pagefind|pagefind\..+\.pf_meta|(?:index|filter|fragment)\/.+)$/;

export interface SearchIndexReport {
  /** HTML files read; those without a marked body are read and left out. */
  readonly pages: number;
  readonly files: number;
  readonly bytes: number;
}

/** Indexes the pages of a built folder and writes the index to `pagefind/` inside it. Throws when a page cannot be read. */
export async function writeSearchIndex(folder: string): Promise<SearchIndexReport> {
  const created = await pagefind.createIndex({ includeCharacters: INCLUDED_CHARACTERS });
  const index = created.index;
  refuseErrors(created.errors);
  if (index === undefined) throw new Error('The search index could not be started.');
  try {
    const pages = listFiles(folder).filter((path) => path.endsWith('.html'));
    for (const sourcePath of pages) {
      const { errors } = await index.addHTMLFile({ sourcePath, content: withPlainMinus(readFileSync(join(folder, sourcePath), 'utf8')) });
      refuseErrors(errors);
    }
    const made = await index.getFiles();
    refuseErrors(made.errors);
    return { pages: pages.length, ...(await writeNeeded(join(folder, 'pagefind'), made.files)) };
  } finally {
    await pagefind.close();
  }
}

/** A minus sign before a figure as it is typed, so that both are one word to the search. */
function withPlainMinus(html: string): string {
  return html.replace(/\u2212(?=\d)/g, '-');
}

function refuseErrors(errors: readonly string[]): void {
  if (errors.length > 0) throw new Error(`The search index could not be made: ${errors.join('; ')}`);
}

async function writeNeeded(folder: string, files: readonly pagefind.IndexFile[]): Promise<{ files: number; bytes: number }> {
  rmSync(folder, { recursive: true, force: true });
  let bytes = 0;
  const needed = files
    .map(({ path, content }) => ({ path: path.replace(/^(?:\.?\/)?(?:pagefind\/)?/, ''), content }))
    .filter(({ path }) => NEEDED.test(path));
  for (const { path, content } of needed) {
    const written = path.endsWith('.js') ? await shortened(content) : path.startsWith('fragment/') ? withoutAnchors(content) : content;
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), written);
    bytes += written.length;
  }
  return { files: needed.length, bytes };
}

/** What the indexer's script looks for at the start of each of its files. */
const SIGNATURE = 'pagefind_dcd';

/** The text of a page without the list of its headings, which the book's search does not show. */
function withoutAnchors(packed: Uint8Array): Uint8Array {
  const text = gunzipSync(packed).toString('utf8');
  if (!text.startsWith(SIGNATURE)) throw new Error('The search index has changed its form: a fragment has no signature.');
  const fragment: unknown = JSON.parse(text.slice(SIGNATURE.length));
  return gzipSync(SIGNATURE + JSON.stringify({ ...(fragment as object), anchors: [] }), { level: 9 });
}

/** The indexer's script comes unshortened, and the first search must wait for it. */
async function shortened(script: Uint8Array): Promise<Uint8Array> {
  const options = { minify: true, format: 'esm', target: 'es2022', legalComments: 'inline' } as const;
  const { code } = await esbuild.transform(Buffer.from(script).toString('utf8'), options);
  return Buffer.from(code);
}
