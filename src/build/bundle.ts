import { existsSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { IncomingMessage, ServerResponse } from 'node:http';
import * as esbuild from 'esbuild';

/** Each file here becomes one script of the same name. */
const ENTRIES = join(import.meta.dirname, '../elements/entries');
/** Each folder here becomes a script `calculator-<id>`, so that a calculator's page carries no other calculator. */
const CALCULATORS = join(import.meta.dirname, '../domain/calculators');

/** The few lines that set one calculator going; they are the same for all but the id, so no file is kept for them. */
const calculatorEntries: esbuild.Plugin = {
  name: 'calculator-entries',
  setup(build) {
    build.onResolve({ filter: /^calculator:/ }, ({ path }) => ({ path: path.slice('calculator:'.length), namespace: 'calculator' }));
    build.onLoad({ filter: /.*/, namespace: 'calculator' }, ({ path }) => ({
      resolveDir: join(import.meta.dirname, '..'),
      loader: 'ts',
      contents: `import { calculator } from './domain/calculators/${path}/index.ts';
import { startCalculator } from './elements/calculator/start.ts';
startCalculator(calculator);`,
    }));
  },
};

/**
 * Browser scripts are classic scripts in a function of their own: a module script does not run from a folder opened by
 * double click, a classic one does, and the same file serves every edition.
 */
const OPTIONS = {
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: 'es2022',
  charset: 'utf8',
  legalComments: 'none',
  logLevel: 'silent',
  tsconfigRaw: {},
  plugins: [calculatorEntries],
} satisfies esbuild.BuildOptions;

export interface Bundle {
  readonly name: string;
  readonly bytes: number;
  /** Packages of others whose code is in it. */
  readonly packages: readonly string[];
}

/** The entry files by the name of the script they become. */
export function elementEntries(folder = ENTRIES): Map<string, string> {
  if (!existsSync(folder)) return new Map();
  const files = readdirSync(folder).filter((file) => file.endsWith('.ts')).sort();
  const own: (readonly [string, string])[] = files.map((file) => [basename(file, '.ts'), join(folder, file)]);
  return new Map([...own, ...(folder === ENTRIES ? calculatorIds() : [])]);
}

function calculatorIds(): (readonly [string, string])[] {
  const folders = readdirSync(CALCULATORS, { withFileTypes: true }).filter((item) => item.isDirectory());
  return folders.map(({ name }) => [`calculator-${name}`, `calculator:${name}`]);
}

/** Bundles and minifies each entry to `<outFolder>/assets/<name>.js`; with `watch` keeps doing so at each change. */
export async function bundleElements(
  outFolder: string,
  { watch = false, entries = ENTRIES }: { watch?: boolean; entries?: string } = {},
): Promise<Bundle[]> {
  const options: esbuild.BuildOptions = {
    ...OPTIONS,
    entryPoints: Object.fromEntries(elementEntries(entries)),
    outdir: join(outFolder, 'assets'),
    minify: true,
    metafile: true,
  };
  if (watch) {
    const context = await esbuild.context(options);
    await context.watch();
    return [];
  }
  const { metafile } = await esbuild.build(options);
  return Object.entries(metafile?.outputs ?? {}).map(([path, { bytes, inputs }]) => ({ name: basename(path), bytes, packages: packagesAmong(inputs) }));
}

function packagesAmong(inputs: Readonly<Record<string, { readonly bytesInOutput: number }>>): string[] {
  const used = Object.entries(inputs).filter(([, { bytesInOutput }]) => bytesInOutput > 0);
  return [...new Set(used.flatMap(([path]) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []))];
}

/**
 * Answers `/<name>.js` with a fresh bundle of that entry, for the authoring server, which mounts it under `/assets`.
 * Anything else is passed on. A fault in the source is shown in the browser's console.
 */
export function elementMiddleware(
  entries = ENTRIES,
): (request: IncomingMessage, response: ServerResponse, next: () => void) => Promise<void> {
  return async (request, response, next) => {
    const name = /^\/([a-zA-Z0-9-]+)\.js(?:\?|$)/.exec(request.url ?? '')?.[1];
    const entry = name === undefined ? undefined : elementEntries(entries).get(name);
    if (entry === undefined) return next();
    response.setHeader('content-type', 'text/javascript; charset=utf-8');
    response.setHeader('cache-control', 'no-store');
    response.end(await bundleForAuthor(entry));
  };
}

async function bundleForAuthor(entry: string): Promise<string> {
  try {
    const result = await esbuild.build({ ...OPTIONS, entryPoints: [entry], write: false, sourcemap: 'inline' });
    return result.outputFiles[0]?.text ?? '';
  } catch (error) {
    return `console.error(${JSON.stringify(String(error))});`;
  }
}
