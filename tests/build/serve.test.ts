import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startServer, type RunningServer } from '../../src/build/serve.ts';

const POLICY = "default-src 'none'; script-src 'self'";
const PAGE = `<meta http-equiv="Content-Security-Policy" content="${POLICY.replaceAll("'", '&#39;')}"><h1>Start</h1>`;

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

let folder = '';
let server: RunningServer;
const BASE = '/tools/ignition/';

/** A bare request: unlike fetch it neither follows redirects nor unpacks nor tidies the path. */
function get(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(server.url);
    const sent = request({ hostname, port, path, headers, method }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }));
    });
    sent.on('error', reject).end();
  });
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'serve-'));
  mkdirSync(join(folder, 'site/a'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'not to be served');
  writeFileSync(join(folder, 'site/index.html'), PAGE);
  writeFileSync(join(folder, 'site/a/index.html'), '<h1>A</h1>');
  writeFileSync(join(folder, 'site/404.html'), '<link href="./x.css"><h1>None</h1>');
  writeFileSync(join(folder, 'site/x.css'), 'p{color:red}');
  writeFileSync(join(folder, 'site/x.wasm'), Buffer.from([0, 97, 115, 109]));
  server = await startServer({ folder: join(folder, 'site'), base: BASE, port: 0, headers: { 'x-test': 'yes' } });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

// Status codes and headers as in RFC 9110; media types as registered with IANA.
describe('startServer', () => {
  it.each([
    { label: 'start page', path: BASE, status: 200, type: 'text/html; charset=utf-8' },
    { label: 'page by its folder', path: `${BASE}a/`, status: 200, type: 'text/html; charset=utf-8' },
    { label: 'page by its file', path: `${BASE}a/index.html`, status: 200, type: 'text/html; charset=utf-8' },
    { label: 'a query is no part of the file', path: `${BASE}a/?q=1`, status: 200, type: 'text/html; charset=utf-8' },
    { label: 'style sheet', path: `${BASE}x.css`, status: 200, type: 'text/css; charset=utf-8' },
    { label: 'WebAssembly', path: `${BASE}x.wasm`, status: 200, type: 'application/wasm' },
    { label: 'no such page', path: `${BASE}none/`, status: 404, type: 'text/html; charset=utf-8' },
    { label: 'outside the base', path: '/', status: 404, type: 'text/html; charset=utf-8' },
  ])('$label', async ({ path, status, type }) => {
    const answer = await get(path);
    expect({ status: answer.status, type: answer.headers['content-type'] }).toEqual({ status, type });
    expect(answer.headers['x-test']).toBe('yes');
  });

  it.each(['../secret.txt', '..%2fsecret.txt', 'a/../../secret.txt', '%2e%2e/secret.txt', '%00', '%E0%A4%A'])(
    'does not leave the folder: %s',
    async (path) => {
      const answer = await get(BASE + path);
      expect(answer.status).toBe(404);
      expect(answer.body.toString()).not.toContain('not to be served');
    },
  );

  it('sends a page without the slash to its folder and keeps the query', async () => {
    const answer = await get(`${BASE}a?q=1`);
    expect({ status: answer.status, to: answer.headers['location'] }).toEqual({ status: 301, to: `${BASE}a/?q=1` });
  });
  it('repeats the policy of the page as a header, word for word', async () => {
    expect((await get(BASE)).headers['content-security-policy']).toBe(POLICY);
  });
  it('packs text when asked to, and only then', async () => {
    const packed = await get(BASE, { 'accept-encoding': 'gzip' });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(packed.body).toString()).toBe(PAGE);
    expect((await get(BASE)).body.toString()).toBe(PAGE);
  });
  it('answers 304 to the tag it gave, and 200 to another', async () => {
    const tag = String((await get(`${BASE}x.css`)).headers['etag']);
    expect((await get(`${BASE}x.css`, { 'if-none-match': tag })).status).toBe(304);
    expect((await get(`${BASE}x.css`, { 'if-none-match': '"other"' })).status).toBe(200);
  });
  it('makes the links of the not-found page count from the address asked for', async () => {
    expect((await get(`${BASE}none/deeper/`)).body.toString()).toContain('href="../../x.css"');
  });
  it.each(['//', '//other.invalid/', '/tools/ignition//'])('survives the odd address %s', async (path) => {
    expect((await get(path)).status).toBe(path.startsWith(BASE) ? 200 : 404);
    expect((await get(BASE)).status).toBe(200);
  });
  it('refuses anything but reading', async () => {
    expect((await get(BASE, {}, 'POST')).status).toBe(405);
    const head = await get(BASE, {}, 'HEAD');
    expect({ status: head.status, length: head.body.length }).toEqual({ status: 200, length: 0 });
  });
  it('takes the next port when the usual one is in use', async () => {
    const first = await startServer({ folder: join(folder, 'site') });
    const second = await startServer({ folder: join(folder, 'site') });
    expect(Number(new URL(second.url).port)).toBeGreaterThan(Number(new URL(first.url).port));
    await first.close();
    await second.close();
  });
});
