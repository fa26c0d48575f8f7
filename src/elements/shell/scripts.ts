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
  'assets/shared-jobs.js',
  // In the portable edition what would be fetched is brought by scripts.
  'pagefind/pagefind.js',
  'data/code-meanings.js',
  'data/job-book.js',
  'data/search-codes.js',
  'data/search-spellings.js',
  'data/search-words.js',
];
/** The invented jobs, one file each, and their list. */
const demoJobs = /^data\/demo-jobs\/[a-z0-9-]+\.js$/;

let policy: ScriptPolicy | undefined;

/** The address of one of the book's own scripts, in the form that Trusted Types ask for where the browser has them. */
export function scriptAddress(place: string): string {
  if (!known.includes(place) && !demoJobs.test(place)) throw new Error(`${place} is not a script of the book.`);
  const address = bookAddress(place);
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  if (!maker) return address;
  policy ??= maker.createPolicy('bench-book', { createScriptURL: (text) => text });
  return policy.createScriptURL(address);
}
