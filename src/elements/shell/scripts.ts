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
];

let policy: ScriptPolicy | undefined;

/** The address of one of the book's own scripts, in the form that Trusted Types ask for where the browser has them. */
export function scriptAddress(place: string): string {
  if (!known.includes(place)) throw new Error(`${place} is not a script of the book.`);
  const address = bookAddress(place);
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  if (!maker) return address;
  policy ??= maker.createPolicy('bench-book', { createScriptURL: (text) => text });
  return policy.createScriptURL(address);
}
