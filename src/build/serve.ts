import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { extname, join, normalize, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { gzipSync } from 'node:zlib';
import { hashOf } from './files.ts';
import { attributeOf, readTags } from './html.ts';
import { pathToRoot } from './relativeLinks.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.txt': 'text/plain; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.wasm': 'application/wasm',
};
const COMPRESSIBLE = /^(?:text\/|application\/(?:json|xml|manifest)|image\/svg)/;
const FIRST_PORT = 4321;

export interface ServeOptions {
  readonly folder: string;
  /** Path the book stands under, with a slash at both ends. */
  readonly base?: string;
  /** 0 takes any free port; without it, 4321 or the next free one. */
  readonly port?: number;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface RunningServer {
  /** Address of the book, base path included. */
  readonly url: string;
  close(): Promise<void>;
}

/** Serves a built folder to this machine alone. */
export async function startServer({ folder, base = '/', port, headers = {} }: ServeOptions): Promise<RunningServer> {
  const server = createServer((request, response) => answer(request, response, { folder, base, headers }));
  const taken = port === undefined ? await listenFrom(server, FIRST_PORT) : await listen(server, port);
  return {
    url: `http://127.0.0.1:${taken}${base}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
}

async function listenFrom(server: Server, port: number): Promise<number> {
  try {
    return await listen(server, port);
  } catch (error) {
    const isTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
    if (!isTaken || port >= FIRST_PORT + 100) throw error;
    return await listenFrom(server, port + 1);
  }
}

interface Place {
  readonly folder: string;
  readonly base: string;
  readonly headers: Readonly<Record<string, string>>;
}

function answer(request: IncomingMessage, response: ServerResponse, place: Place): void {
  if (request.method !== 'GET' && request.method !== 'HEAD') return end(response, 405, { allow: 'GET, HEAD' });
  const written = `http://local${request.url ?? '/'}`;
  if (!URL.canParse(written)) return end(response, 400, {});
  const address = new URL(written);
  const path = pathInside(address.pathname, place.base);
  if (path === undefined) return sendNotFound(request, response, place, '');
  const file = join(place.folder, path);
  if (isFolder(file) && path !== '' && !path.endsWith('/')) {
    return end(response, 301, { location: `${address.pathname}/${address.search}` });
  }
  const found = path === '' || path.endsWith('/') ? join(file, 'index.html') : file;
  if (!existsSync(found) || isFolder(found)) return sendNotFound(request, response, place, path);
  send(request, response, 200, found, readFileSync(found), place.headers);
}

/** The decoded path below the base, or undefined when it is not below it or tries to climb out. */
function pathInside(pathname: string, base: string): string | undefined {
  if (!pathname.startsWith(base)) return undefined;
  try {
    const path = decodeURIComponent(pathname.slice(base.length));
    const climbs = normalize(path).split(sep).includes('..') || path.includes('\0');
    return climbs ? undefined : path;
  } catch {
    return undefined;
  }
}

function isFolder(path: string): boolean {
  return existsSync(path) && statSync(path).isDirectory();
}

function sendNotFound(request: IncomingMessage, response: ServerResponse, place: Place, path: string): void {
  const page = join(place.folder, '404.html');
  if (!existsSync(page)) return end(response, 404, { 'content-type': 'text/plain' }, 'Not found');
  // The page is written for the root of the book; make its links count from the address that was asked for.
  const html = readFileSync(page, 'utf8').replaceAll('="./', `="${pathToRoot(path)}`);
  send(request, response, 404, page, Buffer.from(html), place.headers);
}

function send(
  request: IncomingMessage,
  response: ServerResponse,
  status: number,
  file: string,
  content: Buffer,
  headers: Readonly<Record<string, string>>,
): void {
  const type = TYPES[extname(file)] ?? 'application/octet-stream';
  const compress = COMPRESSIBLE.test(type) && /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));
  const tag = `"${hashOf(content)}${compress ? '-gzip' : ''}"`;
  const all = { 'content-type': type, etag: tag, ...fixedHeaders(type, content), ...headers };
  if (status === 200 && request.headers['if-none-match'] === tag) return end(response, 304, all);
  const body = compress ? gzipSync(content) : content;
  end(response, status, compress ? { ...all, 'content-encoding': 'gzip' } : all, request.method === 'HEAD' ? undefined : body);
}

/** Headers that a public server should send too. A page's own policy is repeated as a header, word for word. */
function fixedHeaders(type: string, content: Buffer): Record<string, string> {
  const headers = {
    'cache-control': 'no-cache',
    vary: 'accept-encoding',
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'no-referrer',
  };
  const policy = type.startsWith('text/html') ? contentSecurityPolicy(content.toString('utf8')) : undefined;
  return policy === undefined ? headers : { ...headers, 'content-security-policy': policy };
}

/** The policy a page carries in its `meta` element. */
export function contentSecurityPolicy(html: string): string | undefined {
  const tag = readTags(html).find(
    (candidate) => attributeOf(candidate, 'http-equiv')?.toLowerCase() === 'content-security-policy',
  );
  return tag === undefined ? undefined : attributeOf(tag, 'content');
}

function end(response: ServerResponse, status: number, headers: Record<string, string>, body?: Buffer | string): void {
  response.writeHead(status, headers);
  response.end(body);
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: { base: { type: 'string' }, folder: { type: 'string' }, port: { type: 'string' } },
  });
  const folder = values.folder ?? join(import.meta.dirname, '../../dist/site');
  if (!existsSync(join(folder, 'index.html'))) {
    console.error(`There is no book in ${folder}. Run "npm run build" first, or name its place with --folder.`);
    process.exit(1);
  }
  const base = `/${values.base ?? ''}/`.replace(/\/{2,}/g, '/');
  const port = values.port === undefined ? {} : { port: Number(values.port) };
  const { url } = await startServer({ folder, base, ...port });
  console.log(`The bench book is at ${url}  (stop with Ctrl+C)`);
}

if (import.meta.main) await main();
