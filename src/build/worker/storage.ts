import type { Manifest } from './types.ts';

/** How many files are fetched at once: enough to fill a shop's wireless network, few enough not to stall its server. */
const AT_ONCE = 6;

/** All caches of the book at this address share a start of name; another book on the same host has another. */
export function cachePrefix(scopePath: string): string {
  return `ignition-bench-book ${scopePath} `;
}

/**
 * Puts every file of the manifest into `cache`. What is there already stays, so that an interrupted attempt goes on
 * where it stopped. A file that did not change is taken from an older edition's cache. A file whose hash is not the
 * one expected is refused: a server in the middle of an update must not leave a mixture of two editions.
 */
export async function storeAll(
  manifest: Manifest,
  cache: Cache,
  scope: string,
  progress: (done: number) => void,
): Promise<void> {
  const waiting = Object.entries(manifest.files);
  let done = 0;
  const storeNext = async (): Promise<void> => {
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      await storeOne(new URL(encodeURI(next[0]), scope).href, next[1], cache, scope);
      done += 1;
      progress(done);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, storeNext));
}

async function storeOne(address: string, hash: string, cache: Cache, scope: string): Promise<void> {
  if ((await cache.match(address)) !== undefined) return;
  const response = (await unchangedCopy(address, hash, scope)) ?? (await fetch(address, { cache: 'reload' }));
  const body = await response.arrayBuffer();
  const found = await hashOfBody(body);
  if (found !== hash) {
    throw new Error(`${address} has hash ${found} where ${hash} is expected (status ${response.status}).`);
  }
  await cache.put(address, new Response(body, { headers: keptHeaders(response.headers) }));
}

async function unchangedCopy(address: string, hash: string, scope: string): Promise<Response | undefined> {
  for (const name of await olderCaches(scope, '')) {
    const copy = await (await caches.open(name)).match(address);
    if (copy !== undefined && (await hashOfBody(await copy.clone().arrayBuffer())) === hash) return copy;
  }
  return undefined;
}

/** The names of this book's caches other than `current`. */
export async function olderCaches(scope: string, current: string): Promise<string[]> {
  const prefix = cachePrefix(new URL(scope).pathname);
  return (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== current);
}

async function hashOfBody(body: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return [...digest.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The stored body is unpacked and whole, so the headers that describe the journey are left out. */
function keptHeaders(headers: Headers): Headers {
  const kept = new Headers(headers);
  for (const name of ['content-encoding', 'content-length', 'transfer-encoding', 'vary']) kept.delete(name);
  return kept;
}
