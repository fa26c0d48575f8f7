import { existsSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { checkBook, formatCheck, type BookCheck } from '../checks/checkBook.ts';
import { hashOf, listFiles } from './files.ts';

export type Middleware = (request: IncomingMessage, response: ServerResponse, next: () => void) => void;

/** Which files a book has, and when each was last written: the same text as long as nobody has touched it. */
function stateOf(root: string): string {
  const folder = join(root, 'content');
  if (!existsSync(folder)) return '';
  const lines = listFiles(folder).map((path) => {
    const { mtimeMs, size } = statSync(join(folder, path));
    return `${path} ${mtimeMs} ${size}`;
  });
  return hashOf(lines.join('\n'));
}

/** The check of the book under `root`, held again only after a file of its content has changed. */
export function rememberedCheck(root: string, check: (root: string) => BookCheck = checkBook): () => BookCheck {
  let last: { readonly state: string; readonly result: BookCheck } | undefined;
  return () => {
    const state = stateOf(root);
    if (last?.state !== state) last = { state, result: check(root) };
    return last.result;
  };
}

function wantsPage({ method, headers }: IncomingMessage): boolean {
  return (method === 'GET' || method === 'HEAD') && (headers.accept ?? '').includes('text/html');
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function faultPage(check: BookCheck): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>The content has faults</title>
<h1>The content has faults</h1>
<p>Put them right and load the page again. <code>npm run check</code> lists the same.</p>
<pre style="white-space: pre-wrap">${escaped(formatCheck(check))}</pre>
</html>
`;
}

/**
 * For the authoring server: while the content has faults, every page is answered with all of them at once.
 * Scripts, styles and data are passed on.
 */
export function contentFaultMiddleware(checked: () => BookCheck): Middleware {
  return (request, response, next) => {
    if (!wantsPage(request)) return next();
    const result = checked();
    if (result.findings.length === 0) return next();
    response.statusCode = 500;
    response.setHeader('content-type', 'text/html; charset=utf-8');
    response.setHeader('cache-control', 'no-store');
    response.end(request.method === 'HEAD' ? undefined : faultPage(result));
  };
}

/**
 * Serves the faults until there are none. Astro ends at the first fault it meets while it starts, so it has to wait;
 * later it lives with faults. Rejects when the port cannot be had.
 */
export async function serveFaultsUntilRight(checked: () => BookCheck, address: { port: number; host: string }, pollMilliseconds = 1000): Promise<void> {
  const answer = contentFaultMiddleware(checked);
  const server = createServer((request, response) => {
    answer(request, response, () => {
      response.writeHead(503, { 'retry-after': '1' }).end();
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(address.port, address.host, resolve);
  });
  while (checked().findings.length > 0) await setTimeout(pollMilliseconds);
  const closed = new Promise((resolve) => server.close(resolve));
  server.closeAllConnections();
  await closed;
}
