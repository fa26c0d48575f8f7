/** The list of the book's files that is built into the service worker. */
export interface Manifest {
  readonly buildId: string;
  readonly version: string;
  /** Key (see `keyOf`) and hash of each file: the first 16 hexadecimal digits of SHA-256. */
  readonly files: Readonly<Record<string, string>>;
  /** Bytes of all files together, uncompressed. */
  readonly bytes: number;
}

/** What the worker tells a page: `state` in answer to the message `state`, `storing` while it fetches the book. */
export type WorkerMessage =
  | {
      readonly type: 'state';
      readonly buildId: string;
      readonly version: string;
      readonly files: number;
      readonly bytes: number;
      /** How many of the files are on the device; all of them unless someone emptied the browser's storage. */
      readonly stored: number;
    }
  | { readonly type: 'storing'; readonly buildId: string; readonly done: number; readonly files: number };

/* The few parts of a service worker's world that are used; the compiler's own list clashes with that of pages. */

interface WaitingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

export interface PageClient {
  postMessage(message: WorkerMessage): void;
}

interface RequestEvent extends WaitingEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}

interface PageMessageEvent extends WaitingEvent {
  readonly data: unknown;
  readonly source: PageClient | null;
  readonly ports: readonly MessagePort[];
}

export interface WorkerScope {
  readonly registration: { readonly scope: string; unregister(): Promise<boolean> };
  readonly clients: {
    claim(): Promise<void>;
    matchAll(options: { readonly includeUncontrolled: boolean }): Promise<readonly PageClient[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: WaitingEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: RequestEvent) => void): void;
  addEventListener(type: 'message', listener: (event: PageMessageEvent) => void): void;
}
