import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { listFiles } from '../files.ts';
import { portablePage } from './pages.ts';
import { dataScript, searchScript } from './scripts.ts';
import { zipOf } from './zip.ts';

/** The folder that the archive unpacks to. */
const NAME = 'ignition-bench-book';
const LIST_OF_HASHES = 'SHA256SUMS.txt';
const READ_ME = 'READ-ME-FIRST.txt';

/** What only a server has a use for: workers, the record they are told of, the page for a wrong address, the web manifest. */
const SERVER_ONLY = new Set(['service-worker.js', 'service-worker-off.js', '404.html', 'manifest.webmanifest']);
/** The lists that pages read, `data/<name>.json`; here each is a script. */
const READ_BY_PAGES = ['code-meanings', 'figure-book', 'job-book', 'search-codes', 'search-spellings', 'search-words'];
/** With them the invented jobs, a file each, and their list. */
const DEMO_JOBS = /^data\/(demo-jobs\/[a-z0-9-]+)\.json$/;
/** Invented logs and traces: the file stays for whoever wants to open it, and a script brings its text to the page. */
const CAPTURES = /^data\/(captures\/[a-z0-9-]+)\.csv$/;

export interface PortableReport {
  readonly files: number;
  /** Of all files together, and of the archive. */
  readonly bytes: number;
  readonly zipBytes: number;
}

/**
 * Makes the edition that is opened by double click from a finished site: `folder`, and beside it
 * `ignition-bench-book-portable.zip` with its hash. The site's links have been checked, and here each is only made to name
 * its file; a test goes through them all again.
 */
export async function writePortable(site: string, folder: string): Promise<PortableReport> {
  const files = await portableFiles(new Map(listFiles(site).map((path) => [path, readFileSync(join(site, path))])));
  rmSync(folder, { recursive: true, force: true });
  for (const place of new Set([...files.keys()].map((path) => dirname(path)))) mkdirSync(join(folder, place), { recursive: true });
  for (const [path, content] of files) writeFileSync(join(folder, path), content);
  const zip = await zipOf(new Map([...files].map(([path, content]) => [`${NAME}/${path}`, content])));
  const zipPath = join(folder, `../${NAME}-portable.zip`);
  writeFileSync(zipPath, zip);
  writeFileSync(`${zipPath}.sha256`, hashLine(basename(zipPath), zip));
  const bytes = [...files.values()].reduce((sum, { length }) => sum + length, 0);
  return { files: files.size, bytes, zipBytes: zip.length };
}

/** The files of the portable edition, made from those of the site. */
export async function portableFiles(site: ReadonlyMap<string, Buffer>): Promise<Map<string, Buffer>> {
  const scripts = new Map(READ_BY_PAGES.map((name) => [`data/${name}.json`, name]));
  const files = new Map<string, Buffer>();
  for (const [path, content] of site) {
    const script = scripts.get(path) ?? DEMO_JOBS.exec(path)?.[1];
    if (SERVER_ONLY.has(path) || path.startsWith('pagefind/')) continue;
    if (script !== undefined) files.set(`data/${script}.js`, Buffer.from(dataScript(script, content.toString('utf8'))));
    else files.set(path, path.endsWith('.html') ? Buffer.from(portablePage(content.toString('utf8'))) : content);
    const capture = CAPTURES.exec(path)?.[1];
    if (capture !== undefined) files.set(`data/${capture}.js`, Buffer.from(dataScript(capture, JSON.stringify(content.toString('utf8')))));
  }
  const index = [...site].filter(([path]) => path.startsWith('pagefind/'));
  files.set('pagefind/pagefind.js', Buffer.from(await searchScript(new Map(index.map(([path, content]) => [path.slice('pagefind/'.length), content])))));
  files.set(READ_ME, Buffer.from(readMe));
  const hashes = [...files].sort(([a], [b]) => (a < b ? -1 : 1)).map(([path, content]) => hashLine(path, content));
  return files.set(LIST_OF_HASHES, Buffer.from(hashes.join('')));
}

/** As the command `sha256sum` writes and checks it: the hash, a mark for binary, and the path. */
function hashLine(path: string, content: Uint8Array): string {
  return `${createHash('sha256').update(content).digest('hex')} *${path}\n`;
}

// Windows' own editor shows lines that end in CR LF on any version.
const readMe = `IGNITION BENCH BOOK, portable edition

Copy this whole folder onto the computer, or leave it on the stick.
Open index.html by double click. No network, no server and no installation are needed.
It is made for a computer; a phone's browser does not open folders of files.

Jobs worked in this edition belong in files: press "Save job to a file" after every
stage, keep the file with the car's papers, and open it from the page Jobs.

To see that no file of this folder is damaged or changed, on Linux or macOS:
  sha256sum -c SHA256SUMS.txt        (macOS: shasum -a 256 -c SHA256SUMS.txt)
`.replaceAll('\n', '\r\n');
