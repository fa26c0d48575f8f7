/** The shop's own file beside the pages: no part of an edition, so it is no file of the manifest and outlives each edition. */
export const SHOP_FIGURES = 'shop/figures.json';

/** Not among the caches of the editions, which are cleared when a new one takes over. */
function cacheName(scope: string): string {
  return `ignition-bench-book-shop ${new URL(scope).pathname}`;
}

/**
 * The shop's figures as they are on the server now; without a network, as they were when they last came, be it that there were none:
 * a device out of reach must not judge by the book's range where yesterday it judged by the maker's.
 */
export async function shopFigures(scope: string): Promise<Response> {
  const cache = await caches.open(cacheName(scope));
  const address = new URL(SHOP_FIGURES, scope).href;
  try {
    const response = await fetch(address, { cache: 'no-cache' });
    // A file that cannot be kept is still a good answer.
    if (response.ok || response.status === 404) await cache.put(address, response.clone()).catch(() => undefined);
    if (response.status < 500) return response;
    return (await cache.match(address)) ?? response;
  } catch (error) {
    const kept = await cache.match(address);
    if (kept === undefined) throw error;
    return kept;
  }
}

/** Takes the kept copy off the device. */
export async function forgetShopFigures(scope: string): Promise<void> {
  await caches.delete(cacheName(scope));
}
