import type { ListedItem } from '../../src/domain/sync/listing.ts';
import { openFolder, type FolderServer } from '../../src/elements/sync/server.ts';

/** How a server marks and guards its files: as Apache, as nginx's simpler module, with weak tags only, or with none at all. */
export type ServerKind = 'checks' | 'coarse-unchecked' | 'weak' | 'no-tags';

/** What goes wrong with one request. */
export type Mishap =
  | 'refused-connection'
  | 'cut-mid-put'
  | 'answer-lost'
  | 'changed-before'
  | 'full'
  | 'busy'
  | 'late'
  | 'late-but-kept'
  | 'cut-answer'
  | 'login-page'
  | 'redirect'
  | 'wrong-checksum'
  | 'keeps-something-else'
  | 'half-listing';

interface File {
  readonly text: string;
  readonly version: number;
  readonly tick: number;
}

const loginPage = '<!doctype html><title>Sign in</title><form method="post"></form>';

/** A shared folder in memory whose requests can be made to go wrong, one by one. */
export class FakeServer {
  readonly files = new Map<string, File>();
  readonly requests: string[] = [];
  /** What each PUT asked to hold. */
  readonly conditions: string[] = [];
  readonly kind: ServerKind;
  /** Taken one for each request; undefined when all is well. */
  mishaps: (Mishap | undefined)[] = [];
  /** Turns of the event loop that each request takes, so that requests of two devices come in any order. */
  turns: number[] = [];
  /** Stands for the second on the server's clock. */
  tick = 0;
  private version = 0;

  constructor(kind: ServerKind = 'checks') {
    this.kind = kind;
  }

  folder(patience = 40): FolderServer {
    return openFolder('http://bench.test/shared-jobs/', {
      patience,
      fetch: (address, options) => this.answer(decodeURIComponent(new URL(address).pathname.replace('/shared-jobs/', '')), options),
      list: (_address, signal) => this.list(signal),
    });
  }

  text(name: string): string | undefined {
    return this.files.get(name)?.text;
  }

  keep(name: string, text: string): void {
    this.version += 1;
    this.files.set(name, { text, version: this.version, tick: this.tick });
  }

  private tagOf(name: string): string | undefined {
    const file = this.files.get(name);
    if (!file || this.kind === 'no-tags') return undefined;
    // To the second and the length, so that two copies within one second may bear the same.
    if (this.kind === 'coarse-unchecked') return `"${file.tick}-${file.text.length}"`;
    return `${this.kind === 'weak' ? 'W/' : ''}"${file.version}"`;
  }

  private async list(signal: AbortSignal): Promise<readonly ListedItem[] | number> {
    this.requests.push('PROPFIND');
    const mishap = this.mishaps.shift();
    if (mishap === 'refused-connection' || mishap === 'answer-lost' || mishap === 'cut-answer') throw new Error('broken off');
    if (mishap === 'late') await never(signal);
    if (mishap === 'busy') return 503;
    if (mishap === 'login-page') return 200;
    if (mishap === 'redirect') return 302;
    const items = [...this.files].map(([name, { text }]) => ({ href: `/shared-jobs/${name}`, etag: this.tagOf(name) ?? '', length: String(text.length), modified: '', isFolder: false }));
    const folder = { href: '/shared-jobs/', etag: '', length: '', modified: '', isFolder: true };
    return [folder, ...(mishap === 'half-listing' ? items.slice(0, Math.floor(items.length / 2)) : items)];
  }

  private async answer(name: string, options: RequestInit): Promise<Response> {
    const method = options.method ?? 'GET';
    this.requests.push(`${method} ${name}`);
    const mishap = this.mishaps.shift();
    const { signal } = options;
    if (mishap === 'refused-connection') throw new Error('refused');
    if (mishap === 'late') await never(signal);
    if (mishap === 'busy') return new Response('', { status: 503 });
    if (mishap === 'full') return new Response('', { status: 507 });
    if (mishap === 'login-page') return new Response(loginPage, { status: 200 });
    if (mishap === 'redirect') return new Response('', { status: 302 });
    for (let turns = this.turns.shift() ?? 1; turns > 0; turns -= 1) await new Promise((resolve) => setImmediate(resolve));
    const answer = method === 'PUT' ? this.put(name, String(options.body), new Headers(options.headers), mishap) : this.get(name, mishap);
    if (mishap === 'late-but-kept') await never(signal);
    if (mishap === 'answer-lost') throw new Error('broken off');
    return answer;
  }

  private put(name: string, text: string, headers: Headers, mishap: Mishap | undefined): Response {
    this.conditions.push(headers.get('if-match') ?? headers.get('if-none-match') ?? 'none');
    if (mishap === 'cut-mid-put') {
      this.keep(name, text.slice(0, Math.floor(text.length / 2)));
      throw new Error('broken off');
    }
    if (this.kind !== 'coarse-unchecked') {
      const match = headers.get('if-match');
      const isThere = this.files.has(name);
      const tag = this.tagOf(name);
      const isRefused = (match !== null && (match !== tag || tag.startsWith('W/'))) || (headers.get('if-none-match') === '*' && isThere);
      if (isRefused || mishap === 'changed-before') return new Response('', { status: 412 });
    }
    if (mishap !== 'keeps-something-else') this.keep(name, text);
    return new Response(null, { status: 204 });
  }

  private get(name: string, mishap: Mishap | undefined): Response {
    const file = this.files.get(name);
    if (!file) return new Response('', { status: 404 });
    const tag = this.tagOf(name);
    const headers: Record<string, string> = tag === undefined ? {} : { etag: tag };
    if (mishap === 'cut-answer') return new Response(file.text.slice(0, Math.floor(file.text.length / 3)), { headers });
    if (mishap === 'wrong-checksum') return new Response(file.text.replace('"title"', '"title" ').replace(/crc32:./, 'crc32:z'), { headers });
    return new Response(file.text, { headers });
  }
}

function never(signal: AbortSignal | null | undefined): Promise<never> {
  return new Promise((_resolve, reject) => {
    if (signal?.aborted) return reject(new Error('given up'));
    signal?.addEventListener('abort', () => reject(new Error('given up')));
  });
}
