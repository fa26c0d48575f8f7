import { bookAddress } from './dom.ts';
import { isPortable } from './edition.ts';
import { wantScript } from './wantedScript.ts';

declare global {
  /** In the portable edition, where nothing can be fetched: what the scripts `data/<name>.js` have brought, by name. */
  var ignitionBenchBookData: Readonly<Record<string, unknown>> | undefined;
}

const read = new Map<string, Promise<unknown>>();

/**
 * A list of the book's data, `data/<name>.json`, read at most once; one that did not arrive is asked for again.
 * Rejects when it cannot be had. The data was checked when the pages were made and is of the same edition.
 */
export function readBookData<Data>(name: string): Promise<Data> {
  const known = read.get(name);
  if (known) return known as Promise<Data>;
  const data = isPortable() ? fromScript(name) : fromServer(name);
  read.set(name, data);
  data.catch(() => read.delete(name));
  return data as Promise<Data>;
}

async function fromServer(name: string): Promise<unknown> {
  const answer = await fetch(bookAddress(`data/${name}.json`));
  if (!answer.ok) throw new Error(`${name} did not load (${answer.status}).`);
  return answer.json();
}

async function fromScript(name: string): Promise<unknown> {
  await wantScript(`data/${name}.js`);
  const data = globalThis.ignitionBenchBookData?.[name];
  if (data === undefined) throw new Error(`${name} did not load.`);
  return data;
}
