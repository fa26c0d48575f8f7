/** A name that a room may not use, and what it does instead. */
export interface ForbiddenName {
  readonly name: string;
  readonly expected: string;
}

const clock = 'the time as an argument: the domain has no clock, so that the same inputs always give the same result';
const chance = 'random numbers from an argument: the domain draws none, so that the same inputs always give the same result';
const surroundings = 'no name of a browser or of Node: the domain must run in both';
const storage = 'a call to src/elements/storage: it is the only place that touches what the browser keeps';

/** Objects through which a global name can be reached. */
export const builtInNames: ReadonlySet<string> = new Set(['window', 'globalThis', 'self']);

export const impureNames: readonly ForbiddenName[] = [
  { name: 'Date.now', expected: clock },
  // With an argument it only reads the time it is given.
  { name: 'new Date()', expected: clock },
  { name: 'performance.now', expected: clock },
  { name: 'Math.random', expected: chance },
  { name: 'crypto', expected: chance },
  ...['document', 'window', 'navigator', 'process', 'globalThis', 'fetch', 'localStorage', 'indexedDB'].map((name) => ({ name, expected: surroundings })),
];

export const storageNames: readonly ForbiddenName[] = ['indexedDB', 'localStorage', 'sessionStorage'].map((name) => ({
  name,
  expected: storage,
}));
