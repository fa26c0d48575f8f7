import { createHash } from 'node:crypto';
import { mkdtempSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeManifest, writeServiceWorker } from '../../src/build/serviceWorker.ts';
import { answerFor, keyOf, wayToScope } from '../../src/build/worker/addresses.ts';

const KEYS = new Set(['', 'search/', 'procedures/swap-coils/', 'assets/base.css', 'pagefind/index/en_1.pf_index', 'a b/']);

// What an address means is fixed by the folder layout of the built site and by RFC 3986; the redirect is what a web
// server with folder pages does (RFC 9110, 15.4.2).
const addresses: readonly { label: string; path: string; scope: string; kind: string; key?: string }[] = [
  { label: 'start page', path: '/', scope: '/', kind: 'file', key: '' },
  { label: 'start page by its file', path: '/index.html', scope: '/', kind: 'file', key: '' },
  { label: 'page by its folder', path: '/procedures/swap-coils/', scope: '/', kind: 'file', key: 'procedures/swap-coils/' },
  { label: 'page by its file', path: '/procedures/swap-coils/index.html', scope: '/', kind: 'file', key: 'procedures/swap-coils/' },
  { label: 'page without the slash', path: '/procedures/swap-coils', scope: '/', kind: 'redirect', key: 'procedures/swap-coils/' },
  { label: 'file', path: '/assets/base.css', scope: '/', kind: 'file', key: 'assets/base.css' },
  { label: 'under a base path', path: '/tools/ignition/search/', scope: '/tools/ignition/', kind: 'file', key: 'search/' },
  { label: 'start page under a base path', path: '/tools/ignition/', scope: '/tools/ignition/', kind: 'file', key: '' },
  { label: 'percent-encoded', path: '/a%20b/', scope: '/', kind: 'file', key: 'a b/' },
  { label: 'no such page', path: '/none/', scope: '/', kind: 'unknown' },
  { label: 'outside the scope', path: '/search/', scope: '/tools/ignition/', kind: 'unknown' },
  { label: 'broken percent-encoding', path: '/%E0%A4%A', scope: '/', kind: 'unknown' },
  { label: 'a name that only ends alike', path: '/searchindex.html', scope: '/', kind: 'unknown' },
];

describe('answerFor', () => {
  it.each(addresses)('$label: $path', ({ path, scope, kind, key }) => {
    expect(answerFor(path, scope, KEYS)).toEqual(key === undefined ? { kind } : { kind, key });
  });
});

describe('keyOf and wayToScope', () => {
  it.each([
    ['index.html', ''],
    ['a/index.html', 'a/'],
    ['a/b.html', 'a/b.html'],
    ['a/myindex.html', 'a/myindex.html'],
  ])('%s is stored under "%s"', (path, key) => expect(keyOf(path)).toBe(key));
  it.each([
    ['/', '/', './'],
    ['/none', '/', './'],
    ['/none/', '/', '../'],
    ['/base/a/b/', '/base/', '../../'],
  ])('from %s in scope %s the way is %s', (path, scope, way) => {
    expect(wayToScope(path, scope)).toBe(way);
    expect(new URL(way, `http://host.invalid${path}`).pathname).toBe(scope);
  });
});

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const sha256Start = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 16);

describe('makeManifest', () => {
  const files = new Map([
    ['b/index.html', bytes('two')],
    ['index.html', bytes('one')],
  ]);
  const manifest = makeManifest(files, '1.2.3');

  it('lists every file under its key with the start of its SHA-256', () => {
    expect(manifest.files).toEqual({ '': sha256Start('one'), 'b/': sha256Start('two') });
    expect(manifest).toMatchObject({ version: '1.2.3', bytes: 6 });
  });
  it('gives the same id for the same files in another order', () => {
    expect(makeManifest(new Map([...files].reverse()), '1.2.3').buildId).toBe(manifest.buildId);
  });
  it.each([
    ['a changed byte', [['b/index.html', 'Two'], ['index.html', 'one']]],
    ['a moved file', [['c/index.html', 'two'], ['index.html', 'one']]],
    ['an added file', [['b/index.html', 'two'], ['index.html', 'one'], ['x.css', '']]],
    ['a file less', [['index.html', 'one']]],
  ] as const)('gives another id for %s', (_label, changed) => {
    const changedFiles = new Map(changed.map(([path, text]) => [path, bytes(text)]));
    expect(makeManifest(changedFiles, '1.2.3').buildId).not.toBe(manifest.buildId);
  });
  it('leaves the workers and the build record out of the id', () => {
    const more = [...files, ['service-worker.js', bytes('x')], ['build.json', bytes('y')]] as const;
    expect(makeManifest(new Map(more), '1.2.3').buildId).toBe(manifest.buildId);
  });
});

describe('writeServiceWorker', () => {
  const folder = mkdtempSync(join(tmpdir(), 'worker-'));
  beforeAll(() => {
    mkdirSync(join(folder, 'b'));
    writeFileSync(join(folder, 'index.html'), 'one');
    writeFileSync(join(folder, 'b/index.html'), 'two');
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('writes the same worker twice for the same files, with the build record inside and beside it', async () => {
    const record = await writeServiceWorker(folder, '1.2.3');
    const first = readFileSync(join(folder, 'service-worker.js'), 'utf8');
    expect(record).toMatchObject({ version: '1.2.3', files: 2, bytes: 6 });
    expect(JSON.parse(readFileSync(join(folder, 'build.json'), 'utf8'))).toEqual(record);
    expect(first).toContain(record.buildId);
    expect(first).toContain(sha256Start('two'));
    expect(await writeServiceWorker(folder, '1.2.3')).toEqual(record);
    expect(readFileSync(join(folder, 'service-worker.js'), 'utf8')).toBe(first);
  });
  it('writes a worker that removes the book', () => {
    const off = readFileSync(join(folder, 'service-worker-off.js'), 'utf8');
    expect(off).toContain('unregister');
    expect(off).not.toContain('"fetch"');
  });
});
