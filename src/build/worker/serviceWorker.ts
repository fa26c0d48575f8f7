/**
 * Keeps the whole book on the device. It stores every file when it is installed, answers from the store first, and
 * never takes over from an older edition by itself: the page asks the reader, and only then sends `use-new-version`.
 *
 * Should a faulty edition ever hold readers back: put the contents of `service-worker-off.js` in place of
 * `service-worker.js` on the server. Browsers fetch the worker past every cache, so each reader is freed at the next visit.
 */
import { answerFor, wayToScope, type Answer } from './addresses.ts';
import { SHOP_FIGURES, shopFigures } from './shopFigures.ts';
import { cachePrefix, olderCaches, storeAll } from './storage.ts';
import type { Manifest, WorkerMessage, WorkerScope } from './types.ts';

/** Put in by the build. */
declare const MANIFEST: Manifest;

const worker = self as unknown as WorkerScope;
const scope = worker.registration.scope;
const scopePath = decodeURI(new URL(scope).pathname);
const cacheName = cachePrefix(new URL(scope).pathname) + MANIFEST.buildId;
const keys: ReadonlySet<string> = new Set(Object.keys(MANIFEST.files));
const NOT_FOUND_PAGE = '404.html';

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));
worker.addEventListener('message', (event) => {
  const asked = typeof event.data === 'object' && event.data !== null && 'type' in event.data ? event.data.type : event.data;
  if (asked === 'use-new-version') event.waitUntil(worker.skipWaiting());
  if (asked === 'state') event.waitUntil(reportState(event.ports[0] ?? event.source));
});
worker.addEventListener('fetch', (event) => {
  const address = new URL(event.request.url);
  const isOurs = event.request.method === 'GET' && address.href.startsWith(scope);
  if (!isOurs) return;
  if (address.href === new URL(SHOP_FIGURES, scope).href) return event.respondWith(shopFigures(scope));
  const answer = answerFor(address.pathname, scopePath, keys);
  if (answer.kind !== 'unknown' || event.request.mode === 'navigate') event.respondWith(respond(event.request, address, answer));
});

async function install(): Promise<void> {
  const cache = await caches.open(cacheName);
  await storeAll(MANIFEST, cache, scope, (done) => {
    void tellPages({ type: 'storing', buildId: MANIFEST.buildId, done, files: keys.size });
  });
  // The book is whole without them.
  await shopFigures(scope).catch(() => undefined);
}

async function activate(): Promise<void> {
  await Promise.all((await olderCaches(scope, cacheName)).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function tellPages(message: WorkerMessage): Promise<void> {
  for (const client of await worker.clients.matchAll({ includeUncontrolled: true })) client.postMessage(message);
}

async function reportState(receiver: { postMessage(message: WorkerMessage): void } | null): Promise<void> {
  const stored = (await (await caches.open(cacheName)).keys()).length;
  const { buildId, version, bytes } = MANIFEST;
  receiver?.postMessage({ type: 'state', buildId, version, files: keys.size, bytes, stored });
}

async function respond(request: Request, address: URL, answer: Answer): Promise<Response> {
  if (answer.kind === 'redirect') {
    const target = new URL(encodeURI(answer.key), scope);
    target.search = address.search;
    return Response.redirect(target.href, 301);
  }
  const stored = answer.kind === 'file' ? await storedFile(answer.key) : undefined;
  if (stored !== undefined) return stored;
  return request.mode === 'navigate' ? await fromNetworkOrNotFound(request, address) : await fetch(request);
}

async function storedFile(key: string): Promise<Response | undefined> {
  return await (await caches.open(cacheName)).match(new URL(encodeURI(key), scope).href);
}

async function fromNetworkOrNotFound(request: Request, address: URL): Promise<Response> {
  try {
    const response = await fetch(request);
    return response.status === 404 ? ((await notFoundPage(address)) ?? response) : response;
  } catch (error) {
    const page = await notFoundPage(address);
    if (page === undefined) throw error;
    return page;
  }
}

/** The page is written for the root of the book; its links are made to count from the address that was asked for. */
async function notFoundPage(address: URL): Promise<Response | undefined> {
  const stored = await storedFile(NOT_FOUND_PAGE);
  if (stored === undefined) return undefined;
  const html = (await stored.text()).replaceAll('="./', `="${wayToScope(decodeURI(address.pathname), scopePath)}`);
  return new Response(html, { status: 404, headers: stored.headers });
}
