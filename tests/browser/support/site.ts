import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { listFiles } from '../../../src/build/files.ts';
import { startServer, type RunningServer } from '../../../src/build/serve.ts';
import { launchBrowser } from './browser.ts';

const ROOT = join(import.meta.dirname, '../../..');
export const SITE_FOLDER = join(ROOT, 'dist/site');
const OUTPUT_FOLDER = join(ROOT, 'tests/.output');

export interface PageOptions {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
  /** Cuts the network for this page's whole context. A service worker's network is cut only by closing the server. */
  readonly offline?: boolean;
  readonly javaScript?: boolean;
  /** Workers are blocked unless a test is about them, so that every page comes from the server. */
  readonly serviceWorkers?: boolean;
}

/** A page of the book, and everything that went wrong on it so far. */
export interface BookPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Console errors, uncaught errors, policy violations and failed requests, in order. Empty when all is well. */
  readonly faults: string[];
}

export interface OpenSite {
  readonly url: string;
  readonly server: RunningServer;
  readonly browser: Browser;
  /** A page in a context of its own, with empty storage. */
  newPage(options?: PageOptions): Promise<BookPage>;
  close(): Promise<void>;
}

export interface OpenSiteOptions {
  readonly folder?: string;
  readonly base?: string;
  readonly port?: number;
  /** A name the browser takes for this machine. Unlike 127.0.0.1 it is no secure context, as in a shop's own network. */
  readonly host?: string;
}

/** Serves a built folder, `dist/site` unless another is named, and starts a browser for it. */
export async function openSite(options: OpenSiteOptions = {}): Promise<OpenSite> {
  const folder = options.folder ?? SITE_FOLDER;
  if (!existsSync(join(folder, 'index.html'))) throw new Error(`There is no book in ${folder}: run "npm run build" first.`);
  const server = await startServer({ folder, base: options.base ?? '/', port: options.port ?? 0 });
  const { host } = options;
  const url = host === undefined ? server.url : server.url.replace('127.0.0.1', host);
  const browser = await launchBrowser(host === undefined ? [] : [`--host-resolver-rules=MAP ${host} 127.0.0.1`]);
  return {
    url,
    server,
    browser,
    newPage: (pageOptions = {}) => openPage(browser, url, pageOptions),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

export async function openPage(browser: Browser, url: string, options: PageOptions): Promise<BookPage> {
  const context = await browser.newContext({
    baseURL: url,
    viewport: { width: options.width ?? 1024, height: options.height ?? 768 },
    colorScheme: options.colorScheme ?? 'light',
    offline: options.offline ?? false,
    javaScriptEnabled: options.javaScript ?? true,
    serviceWorkers: options.serviceWorkers === true ? 'allow' : 'block',
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const faults = watchFaults(page);
  return { page, context, faults };
}

/** Chromium reports a policy violation as a console error, so one list holds both. */
function watchFaults(page: Page): string[] {
  const faults: string[] = [];
  const note = (kind: string, text: string): number => faults.push(`${kind}: ${text} (on ${page.url()})`);
  page.on('console', (message) => {
    if (message.type() === 'error') note('console', message.text());
  });
  page.on('pageerror', (error) => note('uncaught', error.message));
  page.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText ?? '';
    // A request that the reader's next step cut short is no fault of the book.
    if (reason !== 'net::ERR_ABORTED') note('request', `${request.url()} ${reason}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) note('response', `${response.url()} ${response.status()}`);
  });
  return faults;
}

/** The addresses of all pages in a built folder, relative to its root: ``, `search/`, `procedures/swap-coils/` … */
export function pageAddresses(folder = SITE_FOLDER): string[] {
  if (!existsSync(folder)) return [];
  return listFiles(folder)
    .filter((path) => path.endsWith('index.html'))
    .map((path) => path.slice(0, -'index.html'.length));
}

/** One page of each kind: the single pages, the index of each section and the first page in it. */
export function onePageOfEachKind(folder = SITE_FOLDER): string[] {
  const firstOfKind = new Map<string, string>();
  for (const address of pageAddresses(folder)) {
    const steps = address.split('/').filter((step) => step !== '');
    const kind = steps.length < 2 ? address : `${steps[0]}/${steps.length}`;
    if (!firstOfKind.has(kind)) firstOfKind.set(kind, address);
  }
  return [...firstOfKind.values()];
}

/** Saves what the page shows to `tests/.output/<name>.png` for a person to look at. */
export async function screenshot(page: Page, name: string, fullPage = true): Promise<string> {
  mkdirSync(OUTPUT_FOLDER, { recursive: true });
  const path = join(OUTPUT_FOLDER, `${name}.png`);
  await page.screenshot({ path, fullPage });
  return path;
}

/** Prints the page on A4 and reads the text back, one string for each sheet. */
export async function pdfText(page: Page): Promise<string[]> {
  const data = new Uint8Array(await page.pdf({ format: 'A4', preferCSSPageSize: true }));
  const task = getDocument({ data, verbosity: 0 });
  const printed = await task.promise;
  try {
    return await Promise.all(Array.from({ length: printed.numPages }, (_, index) => sheetText(index + 1)));
  } finally {
    await task.destroy();
  }
  async function sheetText(number: number): Promise<string> {
    const content = await (await printed.getPage(number)).getTextContent();
    return content.items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('');
  }
}
