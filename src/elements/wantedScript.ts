/** Asked of the shell by the script of a page: fetch another script of the book and say when it has run. */
export interface ScriptWanted {
  readonly place: string;
  readonly done: (arrived: boolean) => void;
}

export const scriptWantedEvent = 'book-script-wanted';

/**
 * Fetches a script of the book, once; false when it did not arrive. Only the shell may name scripts (its Trusted Types policy is the
 * only one), so it is asked by an event.
 */
export function wantScript(place: string): Promise<boolean> {
  return new Promise((resolve) => {
    const detail: ScriptWanted = { place, done: resolve };
    document.dispatchEvent(new CustomEvent(scriptWantedEvent, { detail }));
  });
}
