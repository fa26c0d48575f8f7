import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listFiles } from '../files.ts';
import { writeSearchIndex } from '../searchIndex.ts';
import { writeGeneratedBook, type ScaleSizes } from './generatedBook.ts';
import { measureFirstAnswer } from './inBrowser.ts';
import type { Measurement } from './measurement.ts';
import { writePlainSite } from './plainSite.ts';

const ROOT = join(import.meta.dirname, '../../..');
const MODULES = join(ROOT, 'node_modules');
/** How much longer the book may take than a plain site of the same pages. */
const RATIO_LIMIT = 1.3;

interface BuildFigures {
  readonly seconds: number;
  readonly bytes: number;
}

/** Builds a generated book of the given size, and a plain site with the same pages, one after the other in a folder of their own. */
export async function measureScale(sizes: ScaleSizes): Promise<Measurement[]> {
  const folder = mkdtempSync(join(tmpdir(), 'book-scale-'));
  try {
    symlinkSync(MODULES, join(folder, 'node_modules'));
    writeGeneratedBook(join(ROOT, 'content'), folder, sizes);
    const site = join(folder, 'site');
    const book = buildOnce(ROOT, site, { BOOK_FOLDER: folder });
    const pages = writePlainSite(site, join(folder, 'plain'), MODULES);
    const plain = buildOnce(join(folder, 'plain'), join(folder, 'plain/dist'));
    const plainPages = listFiles(join(folder, 'plain/dist')).filter((path) => path.endsWith('.html')).length;
    return [
      ...rows('book, whole build', book, pages),
      ...(await searchRows(site)),
      ...rows('plain Astro and MDX, same pages and text', plain, plainPages),
      { group: 'book against plain', name: 'wall time', value: book.seconds / plain.seconds, unit: 'times', limit: RATIO_LIMIT },
      { group: 'book against plain', name: 'peak memory', value: book.bytes / plain.bytes, unit: 'times' },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Wall time with the start of the process, and the peak of its memory. */
function buildOnce(project: string, output: string, environment: Readonly<Record<string, string>> = {}): BuildFigures {
  const script = join(import.meta.dirname, 'buildOnce.ts');
  const start = performance.now();
  const { status, stdout } = spawnSync(process.execPath, [script, project, output, join(output, '../cache')], {
    cwd: project,
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', ...environment },
    encoding: 'utf8',
    maxBuffer: 1e9,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const seconds = (performance.now() - start) / 1000;
  if (status !== 0) throw new Error(`The build of ${project} failed.\n${stdout}`);
  return { seconds, bytes: Number(stdout.trim().split('\n').at(-1)) };
}

function rows(group: string, { seconds, bytes }: BuildFigures, pages: number): Measurement[] {
  return [
    { group, name: 'pages', value: pages, unit: 'pages' },
    { group, name: 'wall time', value: seconds, unit: 's' },
    { group, name: 'speed', value: pages / seconds, unit: 'pages/s' },
    { group, name: 'peak memory', value: bytes / 1e6, unit: 'MB' },
  ];
}

/** The index is made once more by itself, over the finished pages; then a browser asks it once. */
async function searchRows(site: string): Promise<Measurement[]> {
  const group = 'book, search';
  const start = performance.now();
  const { bytes } = await writeSearchIndex(site);
  return [
    { group, name: 'making the index', value: (performance.now() - start) / 1000, unit: 's' },
    { group, name: 'size of the index', value: bytes / 1e6, unit: 'MB' },
    { group, name: 'first answer', value: await measureFirstAnswer(site, 'coil'), unit: 'ms' },
  ];
}
