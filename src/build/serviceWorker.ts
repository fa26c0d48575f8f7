import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as esbuild from 'esbuild';
import { hashOf, listFiles } from './files.ts';
import { keyOf } from './worker/addresses.ts';
import { SHOP_FIGURES } from './worker/shopFigures.ts';
import type { Manifest } from './worker/types.ts';

const WORKER_FOLDER = join(import.meta.dirname, 'worker');
const BUILD_FILE = 'build.json';
/**
 * Not stored: the workers, because the browser keeps the one and the other exists to end it; the build record, because
 * it must tell what the server has now; the shop's own figures, because they are no part of an edition.
 */
const NOT_STORED = new Set(['service-worker.js', 'service-worker-off.js', BUILD_FILE, SHOP_FIGURES]);

export interface BuildRecord {
  readonly buildId: string;
  readonly version: string;
  /** Number and total size of the files a reader's device keeps. */
  readonly files: number;
  readonly bytes: number;
}

/**
 * Lists what a device keeps. The build id is a hash over all paths and contents: the same book always has the same id,
 * and no clock takes part.
 */
export function makeManifest(files: ReadonlyMap<string, Uint8Array>, version: string): Manifest {
  const stored = [...files].filter(([path]) => !NOT_STORED.has(path)).sort(([a], [b]) => (a < b ? -1 : 1));
  const hashes = stored.map(([path, content]) => [path, hashOf(content)] as const);
  return {
    buildId: hashOf(hashes.map(([path, hash]) => `${path} ${hash}\n`).join('')),
    version,
    files: Object.fromEntries(hashes.map(([path, hash]) => [keyOf(path), hash])),
    bytes: stored.reduce((sum, [, content]) => sum + content.length, 0),
  };
}

/** Writes `service-worker.js`, `service-worker-off.js` and `build.json` for the finished files of a folder. */
export async function writeServiceWorker(folder: string, version: string): Promise<BuildRecord> {
  const files = new Map(listFiles(folder).map((path) => [path, readFileSync(join(folder, path))]));
  const manifest = makeManifest(files, version);
  const record: BuildRecord = {
    buildId: manifest.buildId,
    version,
    files: Object.keys(manifest.files).length,
    bytes: manifest.bytes,
  };
  writeFileSync(join(folder, BUILD_FILE), `${JSON.stringify(record, null, 2)}\n`);
  writeFileSync(join(folder, 'service-worker.js'), await bundleWorker('serviceWorker.ts', manifest));
  writeFileSync(join(folder, 'service-worker-off.js'), await bundleWorker('serviceWorkerOff.ts', manifest));
  return record;
}

async function bundleWorker(file: string, manifest: Manifest): Promise<string> {
  const result = await esbuild.build({
    entryPoints: [join(WORKER_FOLDER, file)],
    bundle: true,
    write: false,
    minify: true,
    format: 'iife',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'none',
    tsconfigRaw: {},
    define: { MANIFEST: JSON.stringify(manifest) },
  });
  const code = result.outputFiles[0]?.text;
  if (code === undefined) throw new Error(`The service worker ${file} could not be bundled.`);
  return code;
}
