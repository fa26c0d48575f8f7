/** Asked of the shell by the script of a page: fetch a worker's script and start it. */
export interface WorkerWanted {
  /** Name of the worker: its script is `assets/<name>-worker.js`. */
  readonly name: string;
  readonly done: (worker: Worker | undefined) => void;
}

export const workerWantedEvent = 'book-worker-wanted';

declare global {
  /** The scripts of workers as text, by name, as the files `assets/<name>-worker.js` bring them. */
  var ignitionBenchBookWorkers: Readonly<Record<string, string>> | undefined;
}

/**
 * Starts a worker of the book; nothing when its script did not arrive. A worker may not be started from a file on disk, but may from
 * text at hand, so its script comes as text. Only the shell may name scripts, so it is asked by an event.
 */
export function wantWorker(name: string): Promise<Worker | undefined> {
  return new Promise((resolve) => {
    const detail: WorkerWanted = { name, done: resolve };
    document.dispatchEvent(new CustomEvent(workerWantedEvent, { detail }));
  });
}
