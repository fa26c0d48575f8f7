import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkBook, formatCheck, type BookCheck } from '../../src/checks/checkBook.ts';
import { contentFaultMiddleware, rememberedCheck, serveFaultsUntilRight } from '../../src/build/contentFaults.ts';
import { decodeReferences } from '../../src/build/html.ts';
import { fixtureRoot } from '../checks/fixtureBook.ts';

const PASSED_ON = 'the page itself';
const HTML = { accept: 'text/html,application/xhtml+xml,*/*;q=0.8' };
const root = mkdtempSync(join(tmpdir(), 'faults-'));
let checks = 0;
let server: Server;

/** Without the rules over the whole book, which a fixture of a few files cannot satisfy. */
function check(folder: string): BookCheck {
  checks += 1;
  return checkBook(folder, { rules: [] });
}

function useBook(name: string): void {
  rmSync(join(root, 'content'), { recursive: true, force: true });
  cpSync(join(fixtureRoot(name), 'content'), join(root, 'content'), { recursive: true });
}

function get(path: string, init: RequestInit = { headers: HTML }): Promise<Response> {
  return fetch(`http://127.0.0.1:${(server.address() as AddressInfo).port}${path}`, init);
}

beforeEach(async () => {
  checks = 0;
  const middleware = contentFaultMiddleware(rememberedCheck(root, check));
  server = createServer((request, response) => middleware(request, response, () => response.end(PASSED_ON)));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});
afterEach(() => new Promise((resolve) => server.close(resolve)));
afterAll(() => rmSync(root, { recursive: true }));

describe('contentFaultMiddleware', () => {
  it('passes a page on while the book is in order', async () => {
    useBook('right');
    const response = await get('/ranges/');
    expect([response.status, await response.text()]).toEqual([200, PASSED_ON]);
  });

  it('answers a page with every finding at once', async () => {
    useBook('wrong-types');
    const response = await get('/ranges/plug-gap/');
    const html = await response.text();
    expect([response.status, response.headers.get('content-type'), response.headers.get('cache-control')]).toEqual([500, 'text/html; charset=utf-8', 'no-store']);
    const { findings } = checkBook(root, { rules: [] });
    expect(findings.length).toBeGreaterThan(2);
    for (const { file, line, field } of findings) expect(decodeReferences(html)).toContain(`${file}:${line}  ${field}`);
    const shown = decodeReferences(/<pre[^>]*>([^]*)<\/pre>/.exec(html)?.[1] ?? '');
    expect(shown).toBe(formatCheck({ findings, notRun: [] }));
  });

  // HTML, 13.2: text in an element holds no `<` and no ambiguous `&`.
  it('shows what an author wrote as text, never as markup', async () => {
    useBook('right');
    writeFileSync(join(root, 'content/glossary/coil.yaml'), 'term: Coil\nmeaning: A coil.\nsee: ["</pre><script>alert(1)</script>&lt;"]\n');
    const html = await (await get('/')).text();
    expect(html).toContain('&lt;/pre&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;lt;');
    expect(html).not.toContain('<script');
  });

  it.each([
    { label: 'a script', path: '/assets/search.js', init: { headers: { accept: '*/*' } } },
    { label: 'a style sheet', path: '/assets/base.css', init: { headers: { accept: 'text/css,*/*;q=0.1' } } },
    { label: 'data', path: '/data/ranges.json', init: { headers: { accept: 'application/json' } } },
    { label: 'a page that is posted', path: '/', init: { headers: HTML, method: 'POST' } },
  ])('passes $label on and does not check', async ({ path, init }) => {
    useBook('wrong-types');
    const response = await get(path, init);
    expect([response.status, await response.text(), checks]).toEqual([200, PASSED_ON, 0]);
  });

  it('answers a question for the head alone without a body', async () => {
    useBook('wrong-types');
    const response = await get('/', { headers: HTML, method: 'HEAD' });
    expect([response.status, await response.text()]).toEqual([500, '']);
  });

  it('checks again only after the content has changed', async () => {
    useBook('right');
    await get('/');
    await get('/ranges/');
    expect(checks).toBe(1);
    const file = join(root, 'content/glossary/coil.yaml');
    const right = readFileSync(file, 'utf8');
    writeFileSync(file, `${right}colour: red\n`);
    expect([(await get('/')).status, (await get('/')).status, checks]).toEqual([500, 500, 2]);
    writeFileSync(file, right);
    expect([(await get('/')).status, checks]).toEqual([200, 3]);
    writeFileSync(join(root, 'content/glossary/New.yaml'), right);
    expect([(await get('/')).status, checks]).toEqual([500, 4]);
    rmSync(join(root, 'content/glossary/New.yaml'));
    expect([(await get('/')).status, checks]).toEqual([200, 5]);
  });

  it('says so when there is no content at all', async () => {
    rmSync(join(root, 'content'), { recursive: true, force: true });
    const response = await get('/');
    expect([response.status, await response.text()]).toEqual([500, expect.stringContaining('no folder of this name')]);
  });
});

describe('serveFaultsUntilRight', () => {
  /** A port that was free a moment ago. */
  async function freePort(): Promise<number> {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const { port } = other.address() as AddressInfo;
    await new Promise((resolve) => other.close(resolve));
    return port;
  }

  it('answers with the faults, and gives the port back once there are none', async () => {
    useBook('wrong-types');
    const port = await freePort();
    const served = serveFaultsUntilRight(rememberedCheck(root, check), { port, host: '127.0.0.1' }, 20);
    const ask = (accept: string): Promise<Response> => fetch(`http://127.0.0.1:${port}/`, { headers: { accept } });
    expect((await ask('text/html')).status).toBe(500);
    expect((await ask('application/json')).status).toBe(503);
    useBook('right');
    await served;
    await expect(ask('text/html')).rejects.toThrow();
  });

  it('says when the port is taken', async () => {
    useBook('wrong-types');
    const { port } = server.address() as AddressInfo;
    await expect(serveFaultsUntilRight(rememberedCheck(root, check), { port, host: '127.0.0.1' })).rejects.toThrow('EADDRINUSE');
  });
});
