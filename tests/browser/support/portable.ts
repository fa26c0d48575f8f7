import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { launchBrowser } from './browser.ts';
import { openPage, type BookPage, type PageOptions } from './site.ts';

export const PORTABLE_FOLDER = join(import.meta.dirname, '../../../dist/portable');

export interface OpenFolder {
  /** Address of the folder, `file:///…/`. */
  readonly url: string;
  /** The address of a page's file, from the page's place: `codes/p0303/`. */
  fileOf(address: string): string;
  newPage(options?: PageOptions): Promise<BookPage>;
  close(): Promise<void>;
}

/** Starts a browser for the portable edition, which no server stands behind: every address is a file. */
export async function openFolder(folder = PORTABLE_FOLDER): Promise<OpenFolder> {
  if (!existsSync(join(folder, 'index.html'))) throw new Error(`There is no book in ${folder}: run "npm run build" first.`);
  const url = `${pathToFileURL(folder).href}/`;
  const browser = await launchBrowser();
  return {
    url,
    fileOf: (address) => url + address.replace(/(^|\/)(?=$|[?#])/, '$1index.html'),
    newPage: (options = {}) => openPage(browser, url, options),
    close: () => browser.close(),
  };
}
