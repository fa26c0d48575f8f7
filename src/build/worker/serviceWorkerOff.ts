/**
 * Takes the book off the device again: deletes its stored pages and removes the worker, so that every page comes from
 * the server. Saved jobs are not touched. Put in place of `service-worker.js` when an edition must be withdrawn.
 */
import { forgetShopFigures } from './shopFigures.ts';
import { olderCaches } from './storage.ts';
import type { WorkerScope } from './types.ts';

const worker = self as unknown as WorkerScope;

worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));
worker.addEventListener('activate', (event) => event.waitUntil(remove()));

async function remove(): Promise<void> {
  await Promise.all((await olderCaches(worker.registration.scope, '')).map((name) => caches.delete(name)));
  await forgetShopFigures(worker.registration.scope);
  await worker.registration.unregister();
}
