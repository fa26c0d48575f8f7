import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listFiles } from './files.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Where and when a build stands: nothing of it may be found in what is built. */
export interface Surroundings {
  readonly timeZone: string;
  readonly language: string;
}

/** Builds both editions in a folder of their own, lets them be looked at, and takes the folder away. Throws when the build fails. */
export function withBuild<Result>({ timeZone, language }: Surroundings, look: (folder: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), 'book-again-'));
  try {
    symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
    const output = join(folder, 'dist');
    const words = [join(import.meta.dirname, 'bench/buildOnce.ts'), ROOT, join(output, 'site'), join(folder, 'cache')];
    const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', TZ: timeZone, LANG: language, LC_ALL: language };
    const { status, stdout } = spawnSync(process.execPath, words, { cwd: ROOT, env, encoding: 'utf8', maxBuffer: 1e9, stdio: ['ignore', 'pipe', 'inherit'] });
    if (status !== 0) throw new Error(`The build failed.\n${stdout}`);
    return look(output);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The SHA-256 of every file under a folder, by its path. */
export function hashesOf(folder: string): Map<string, string> {
  return new Map(listFiles(folder).map((path) => [path, createHash('sha256').update(readFileSync(join(folder, path))).digest('hex')]));
}

/** Files that only one of two builds has, or that differ; sorted. */
export function differences(one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>): string[] {
  return [...new Set([...one.keys(), ...other.keys()])].filter((path) => one.get(path) !== other.get(path)).sort();
}
