import { existsSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { IncomingMessage, ServerResponse } from 'node:http';
import * as esbuild from 'esbuild';

/** Each file here becomes one script of the same name. */
const ENTRIES = join(import.meta.dirname, '../elements/entries');
/** Each folder here becomes a script `calculator-<id>`, so that a calculator's page carries no other calculator. */
const CALCULATORS = join(import.meta.dirname, '../domain/calculators');

/** Each file here becomes a script `<name>-worker` that brings the worker's own script as text. */
const WORKERS = join(import.meta.dirname, '../elements/workers');

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
 * A worker from a page on disk can only be started from text at hand, so its script comes as text: a classic script that leaves it under
 * its name.
 */
const workerEntries: esbuild.Plugin = {
  name: 'worker-entries',
  setup(build) {
    build.onResolve({ filter: /^worker:/ }, ({ path }) => ({ path: path.slice('worker:'.length), namespace: 'worker' }));
    build.onLoad({ filter: /.*/, namespace: 'worker' }, async ({ path }) => {
      const { outputFiles } = await bundleWorker(path);
      return { loader: 'js', contents: `(globalThis.ignitionBenchBookWorkers??={})[${JSON.stringify(path)}]=${JSON.stringify(outputFiles[0]?.text ?? '')};` };
    });
  },
};

function bundleWorker(name: string) {
  const options = { bundle: true, minify: true, format: 'iife', platform: 'browser', target: 'es2022', charset: 'utf8', legalComments: 'none', logLevel: 'silent', tsconfigRaw: {} } as const;
  return esbuild.build({ ...options, entryPoints: [join(WORKERS, `${name}.ts`)], write: false, metafile: true, outdir: 'assets' });
}

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
  plugins: [calculatorEntries, workerEntries],
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
  return new Map([...own, ...(folder === ENTRIES ? [...calculatorIds(), ...workerNames()] : [])]);
}

function calculatorIds(): (readonly [string, string])[] {
  const folders = readdirSync(CALCULATORS, { withFileTypes: true }).filter((item) => item.isDirectory());
  return folders.map(({ name }) => [`calculator-${name}`, `calculator:${name}`]);
}

function workerNames(): (readonly [string, string])[] {
  const names = readdirSync(WORKERS).filter((file) => file.endsWith('.ts')).map((file) => basename(file, '.ts'));
  return names.map((name) => [`${name}-worker`, `worker:${name}`]);
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
  const inWorkers = entries === ENTRIES ? await packagesOfWorkers() : new Map<string, readonly string[]>();
  return Object.entries(metafile?.outputs ?? {}).map(([path, { bytes, inputs }]) => {
    const name = basename(path);
    return { name, bytes, packages: [...packagesAmong(inputs), ...(inWorkers.get(name) ?? [])] };
  });
}

/** What a worker carries is text to the script that brings it, so it is asked for by itself. */
async function packagesOfWorkers(): Promise<ReadonlyMap<string, readonly string[]>> {
  const found = workerNames().map(async ([script, entry]) => {
    const { metafile } = await bundleWorker(entry.slice('worker:'.length));
    return [`${script}.js`, Object.values(metafile.outputs).flatMap(({ inputs }) => packagesAmong(inputs))] as const;
  });
  return new Map(await Promise.all(found));
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
