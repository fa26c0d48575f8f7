import { createHash } from 'node:crypto';
import { gzipSync, inflateRawSync } from 'node:zlib';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { checkPages } from '../../src/build/checkLinks.ts';
import { portablePage } from '../../src/build/portable/pages.ts';
import { dataScript, searchScript } from '../../src/build/portable/scripts.ts';
import { portableFiles } from '../../src/build/portable/writePortable.ts';
import { zipOf } from '../../src/build/portable/zip.ts';

// Expected: a folder's page is its index.html, which a file address must name (RFC 8089 knows no index); the rest stays.
describe('a page for a folder on disk', () => {
  it.each([
    { label: 'a link to a folder', input: '<a href="../b/">', expected: '<a href="../b/index.html">' },
    { label: 'the start page from itself', input: '<a href="./">', expected: '<a href="./index.html">' },
    { label: 'the page above', input: '<a href="../">', expected: '<a href="../index.html">' },
    { label: 'query and anchor stay behind the file', input: '<a href="../b/?q=1/2&amp;r#c/">', expected: '<a href="../b/index.html?q=1/2&amp;r#c/">' },
    { label: 'an anchor alone', input: '<a href="#c/">', expected: '<a href="#c/">' },
    { label: 'a query alone', input: '<a href="?q=a/">', expected: '<a href="?q=a/">' },
    { label: 'a file', input: '<link rel="stylesheet" href="../assets/x.css">', expected: '<link rel="stylesheet" href="../assets/x.css">' },
    { label: 'another host', input: '<a href="https://example.org/a/">', expected: '<a href="https://example.org/a/">' },
    { label: 'a form', input: '<form action="../search/">', expected: '<form action="../search/index.html">' },
    { label: 'the root for scripts stays a folder', input: '<html data-root="../">', expected: '<html data-edition="portable" data-root="../">' },
    { label: 'the web manifest goes', input: '<i></i><link rel="manifest" href="../m.json"><b></b>', expected: '<i></i><b></b>' },
    { label: 'text stays', input: '<p>a/ href="b/"</p>', expected: '<p>a/ href="b/"</p>' },
  ])('$label', ({ input, expected }) => expect(portablePage(input)).toBe(expected));
});

describe('links of pages on disk', () => {
  const pages = new Map([['index.html', '<a href="b/">x</a>'], ['b/index.html', '<a href="../index.html">x</a>']]);

  it('a link to a folder is a fault, one to its page is none', () => {
    expect(checkPages(pages, pages.keys(), { openedFromDisk: true }).map(({ page, fault }) => `${page} ${fault}`)).toEqual(['index.html folder-link']);
    expect(checkPages(pages, pages.keys())).toEqual([]);
  });
});

describe('data as scripts', () => {
  it('are left under their names, one beside the other', () => {
    const world: { ignitionBenchBookData?: unknown } = {};
    runInNewContext(dataScript('one', '{"a":"\u2028</script>"}') + dataScript('two', '[1]'), world);
    expect(JSON.stringify(world.ignitionBenchBookData)).toBe(JSON.stringify({ one: { a: '\u2028</script>' }, two: [1] }));
  });

  it('the search is handed its files out of its own script', async () => {
    const engine = `export const read = async (name) => { const answer = await fetch(import.meta.url.replace('pagefind.js', name) + '?ts=1'); return answer.ok ? answer.text() : answer.status; };`;
    const files = new Map([['pagefind.js', Buffer.from(engine)], ['index/a.pf_index', Buffer.from('words: Ω')]]);
    const world: { ignitionBenchBookPagefind?: { read(name: string): Promise<unknown> }; [name: string]: unknown } = { Response, atob, Uint8Array };
    runInNewContext(await searchScript(files), world);
    expect(await world.ignitionBenchBookPagefind?.read('index/a.pf_index')).toBe('words: Ω');
    expect(await world.ignitionBenchBookPagefind?.read('index/b.pf_index')).toBe(404);
  });
});

describe('the files of the edition', () => {
  const site = new Map(
    Object.entries({
      'index.html': '<!doctype html><html lang="en"><a href="a/">a</a></html>',
      '404.html': '',
      'service-worker.js': '',
      'data/job-book.json': '{"edition":"x"}',
      'data/ranges.json': '[]',
      'pagefind/pagefind.js': 'export const x = 1;',
      'pagefind/fragment/en.pf_fragment': '',
    }).map(([path, text]) => [path, Buffer.from(text)]),
  );

  it('are the pages, the data of the pages as scripts, the search as one, and the list of hashes', async () => {
    const files = await portableFiles(site);
    const names = ['READ-ME-FIRST.txt', 'SHA256SUMS.txt', 'data/job-book.js', 'data/ranges.json', 'index.html', 'pagefind/pagefind.js'];
    expect([...files.keys()].sort()).toEqual(names);
    const page = files.get('index.html') ?? Buffer.alloc(0);
    expect(files.get('SHA256SUMS.txt')?.toString()).toContain(`${createHash('sha256').update(page).digest('hex')} *index.html\n`);
  });
});

/** Reads an archive as a reader of the format does (PKWARE APPNOTE 4.3): from its end to the list, from the list to each file. */
function unzip(zip: Buffer): Map<string, Buffer> {
  const end = zip.length - 22;
  expect(zip.readUInt32LE(end)).toBe(0x06054b50);
  const files = new Map<string, Buffer>();
  let at = zip.readUInt32LE(end + 16);
  for (let count = zip.readUInt16LE(end + 10); count > 0; count -= 1) {
    expect(zip.readUInt32LE(at)).toBe(0x02014b50);
    const nameLength = zip.readUInt16LE(at + 28);
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength);
    const local = zip.readUInt32LE(at + 42);
    expect(zip.readUInt32LE(local)).toBe(0x04034b50);
    const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const data = zip.subarray(start, start + zip.readUInt32LE(at + 20));
    const content = zip.readUInt16LE(at + 10) === 8 ? inflateRawSync(data) : data;
    expect(content.length).toBe(zip.readUInt32LE(at + 24));
    expect(crcByHand(content)).toBe(zip.readUInt32LE(at + 16));
    files.set(name, content);
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  expect(at).toBe(end);
  return files;
}

/** CRC-32 bit by bit, from its polynomial (ISO/IEC 8802-3); over "123456789" it is CBF43926. */
function crcByHand(content: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of content) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

describe('the archive', () => {
  const files = new Map([
    ['b/Ω.txt', Buffer.from('ohm '.repeat(500))],
    ['a.txt', Buffer.from('123456789')],
    ['packed.gz', gzipSync('already small')],
    ['empty', Buffer.alloc(0)],
  ]);

  it('gives every file back, in the order of the names', async () => {
    expect(crcByHand(Buffer.from('123456789'))).toBe(0xcbf43926);
    const read = unzip(await zipOf(files));
    expect([...read.keys()]).toEqual([...files.keys()].sort());
    for (const [name, content] of files) expect(read.get(name)?.equals(content)).toBe(true);
  });

  it('is the same for the same files, in whatever order they come', async () => {
    expect((await zipOf(new Map([...files].reverse()))).equals(await zipOf(files))).toBe(true);
  });

  it('carries the first date of the format', async () => {
    // Bits 9 to 15 are the years since 1980, 5 to 8 the month, 0 to 4 the day.
    expect((await zipOf(files)).readUInt16LE(12)).toBe(0b0000000_0001_00001);
  });
});
