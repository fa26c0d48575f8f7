import { readdirSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { createHash } from 'node:crypto';
import { gzipSync } from 'node:zlib';

/** Every file under `folder`, as sorted paths relative to it with forward slashes, so that two machines list them alike. */
export function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(folder, path)).isFile())
    .map((path) => path.split(sep).join('/'))
    .sort();
}

/** First 16 hexadecimal digits of SHA-256: enough to tell two files apart, short enough to list hundreds. */
export function hashOf(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 16);
}

/** Bytes after gzip at the highest level: what a web server sends. */
export function gzipSize(content: Uint8Array | string): number {
  return gzipSync(content, { level: 9 }).length;
}

/** Bytes as people read them, in decimal kilobytes: `13.2 kB`. */
export function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`;
}
