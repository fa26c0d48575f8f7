import { bookAddress } from '../dom.ts';

interface ScriptPolicy {
  createScriptURL(text: string): string;
}

interface PolicyMaker {
  createPolicy(name: string, rules: { createScriptURL(text: string): string }): ScriptPolicy;
}

/** The only scripts that may be named by code; everything else that asks is refused. */
const known: readonly string[] = [
  'service-worker.js',
  'assets/reading.js',
  'assets/search.js',
  'assets/bench-reading.js',
  'assets/bench-later.js',
  'assets/keep-in-job.js',
  'assets/wall-chart.js',
  'assets/meter-select.js',
  'assets/shop-figures.js',
  'assets/captures-worker.js',
  'assets/captures-keep.js',
  'assets/shared-jobs.js',
  // In the portable edition what would be fetched is brought by scripts.
  'pagefind/pagefind.js',
  'data/code-meanings.js',
  'data/figure-book.js',
  'data/job-book.js',
  'data/search-codes.js',
  'data/search-spellings.js',
  'data/search-words.js',
];
/** The invented jobs, one file each, and their list. */
const demoJobs = /^data\/demo-jobs\/[a-z0-9-]+\.js$/;
/** And the invented logs and traces. */
const captures = /^data\/captures\/[a-z0-9-]+\.js$/;

let policy: ScriptPolicy | undefined;

/** The address of one of the book's own scripts, in the form that Trusted Types ask for where the browser has them. */
export function scriptAddress(place: string): string {
  if (!known.includes(place) && !demoJobs.test(place) && !captures.test(place)) throw new Error(`${place} is not a script of the book.`);
  return trusted(bookAddress(place));
}

/**
 * The address of a worker's script that is at hand as text, brought by one of the book's own scripts. A browser starts no worker from a
 * file on disk, and does from such an address. Give it back with `URL.revokeObjectURL` once the worker has started.
 */
export function workerAddress(text: string): { readonly address: string; readonly plain: string } {
  const plain = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
  return { address: trusted(plain), plain };
}

function trusted(address: string): string {
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  if (!maker) return address;
  policy ??= maker.createPolicy('bench-book', { createScriptURL: (text) => text });
  return policy.createScriptURL(address);
}
