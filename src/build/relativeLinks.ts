import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { listFiles } from './files.ts';
import { readTags } from './html.ts';

/** Attributes that hold one address. */
const ADDRESS = new Set(['href', 'src', 'action', 'formaction', 'poster', 'data', 'xlink:href', 'manifest']);
/** Attributes of our own elements that hold one address: `data-root`, `data-href`, `data-search-src` … */
const OWN_ADDRESS = /^data-(?:.+-)?(?:root|href|src|url|action|poster)$/;
/** Attributes that hold a list of addresses, each with an optional width or density. */
const ADDRESS_LIST = new Set(['srcset', 'imagesrcset']);

/**
 * Rewrites every root-absolute address in a page to one relative to that page, so that the same files work under any
 * base path. Addresses with a scheme, `//host`, `#anchor` and addresses that are relative already stay as they are.
 *
 * @param pagePath path of the page's file from the root of the site, as `procedures/swap-coils/index.html`
 */
export function rewriteLinks(html: string, pagePath: string): string {
  const toRoot = pathToRoot(pagePath);
  let result = '';
  let copied = 0;
  for (const { name, value, start, end } of readTags(html).flatMap((tag) => tag.attributes)) {
    const rewritten = rewriteAttribute(name, value, toRoot);
    if (rewritten === value) continue;
    result += html.slice(copied, start) + rewritten;
    copied = end;
  }
  return result + html.slice(copied);
}

/** The way from a page to the root of the site: `./`, `../`, `../../` … */
export function pathToRoot(pagePath: string): string {
  return '../'.repeat(pagePath.split('/').length - 1) || './';
}

function rewriteAttribute(name: string, value: string, toRoot: string): string {
  if (ADDRESS.has(name) || OWN_ADDRESS.test(name)) return relative(value, toRoot);
  if (!ADDRESS_LIST.has(name)) return value;
  return value.replace(/(^|,\s*)(\S+)/g, (_whole, before: string, address: string) => before + relative(address, toRoot));
}

function relative(address: string, toRoot: string): string {
  return isRootAbsolute(address) ? toRoot + address.slice(1) : address;
}

function isRootAbsolute(address: string): boolean {
  return address.startsWith('/') && !address.startsWith('//');
}

/** The same for the addresses in a style sheet, which count from the sheet's own place. */
export function rewriteStyleLinks(css: string, sheetPath: string): string {
  const toRoot = pathToRoot(sheetPath);
  return css.replace(
    /url\((\s*["']?)(\/[^)"']*)/g,
    (_whole, before: string, address: string) => `url(${before}${relative(address, toRoot)}`,
  );
}

/** Rewrites all pages and style sheets of a built folder in place. Returns the number of files changed. */
export function makeLinksRelative(folder: string): number {
  const changed = listFiles(folder).filter((path) => {
    const rewrite = path.endsWith('.html') ? rewriteLinks : path.endsWith('.css') ? rewriteStyleLinks : undefined;
    if (rewrite === undefined) return false;
    const before = readFileSync(join(folder, path), 'utf8');
    const after = rewrite(before, path);
    if (after !== before) writeFileSync(join(folder, path), after);
    return after !== before;
  });
  return changed.length;
}
