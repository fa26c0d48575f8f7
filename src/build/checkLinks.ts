import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { listFiles } from './files.ts';
import { attributeOf, readTags, type Tag } from './html.ts';

export type LinkFault =
  | 'broken-link'
  | 'folder-link'
  | 'broken-anchor'
  | 'broken-reference'
  | 'root-absolute'
  | 'duplicate-id'
  | 'outside-resource'
  | 'inline-script'
  | 'inline-style'
  | 'event-handler'
  | 'base-element';

export interface LinkFinding {
  readonly page: string;
  readonly fault: LinkFault;
  /** What was found and what would be right. */
  readonly message: string;
}

interface Page {
  readonly path: string;
  readonly tags: readonly Tag[];
  readonly ids: ReadonlySet<string>;
}

interface Site {
  readonly openedFromDisk: boolean;
  readonly files: ReadonlySet<string>;
  readonly pages: ReadonlyMap<string, Page>;
}

export interface LinkRules {
  /** A link must name a file: a folder on disk shows its list of files, not its page. */
  readonly openedFromDisk?: boolean;
}

/** Checks a built folder. See {@link checkPages}. */
export function checkLinks(folder: string, rules: LinkRules = {}): LinkFinding[] {
  const paths = listFiles(folder);
  const pages = paths.filter((path) => path.endsWith('.html'));
  return checkPages(new Map(pages.map((path) => [path, readFileSync(join(folder, path), 'utf8')])), paths, rules);
}

/**
 * Holds every page against the promises of a book that must work under any base path, without a network and under a
 * strict content security policy: links and anchors resolve, ids are unique, nothing comes from another host, and no
 * script or style is written into the page.
 *
 * @param html pages by path from the root of the site
 * @param files all files of the site, pages included
 */
export function checkPages(html: ReadonlyMap<string, string>, files: Iterable<string>, { openedFromDisk = false }: LinkRules = {}): LinkFinding[] {
  const pages = [...html].map(([path, text]) => readPage(path, text));
  const site: Site = { openedFromDisk, files: new Set(files), pages: new Map(pages.map((page) => [page.path, page])) };
  return pages.flatMap((page) => [
    ...duplicateIds(page),
    ...page.tags.flatMap((tag) => [
      ...addressFindings(tag, page, site),
      ...referenceFindings(tag, page),
      ...policyFindings(tag, page),
    ]),
  ]);
}

function readPage(path: string, html: string): Page {
  const tags = readTags(html);
  return { path, tags, ids: new Set(tags.flatMap((tag) => attributeOf(tag, 'id') ?? [])) };
}

function duplicateIds(page: Page): LinkFinding[] {
  const seen = new Set<string>();
  return page.tags.flatMap((tag) => {
    const id = attributeOf(tag, 'id');
    if (id === undefined) return [];
    if (seen.has(id)) return [finding(page, 'duplicate-id', `The id "${id}" stands more than once; give each its own.`)];
    seen.add(id);
    return [];
  });
}

/** Where a link leads, as opposed to what a page needs in order to be shown. */
const LINKS: readonly (readonly [tag: string, attribute: string])[] = [
  ['a', 'href'],
  ['area', 'href'],
  ['form', 'action'],
  ['button', 'formaction'],
  ['input', 'formaction'],
];
const RESOURCE_ATTRIBUTES = ['src', 'href', 'poster', 'data', 'xlink:href'] as const;

function addressFindings(tag: Tag, page: Page, site: Site): LinkFinding[] {
  const linkAttribute = LINKS.find(([name, attribute]) => name === tag.name && attributeOf(tag, attribute) !== undefined);
  if (linkAttribute !== undefined) {
    return addressFinding(attributeOf(tag, linkAttribute[1]) ?? '', page, site, true);
  }
  return [...RESOURCE_ATTRIBUTES.flatMap((name) => attributeOf(tag, name) ?? []), ...sourceSet(tag)].flatMap((address) =>
    addressFinding(address, page, site, false),
  );
}

function sourceSet(tag: Tag): string[] {
  const list = attributeOf(tag, 'srcset');
  return list === undefined ? [] : list.split(',').flatMap((entry) => entry.trim().split(/\s+/)[0] ?? []);
}

function addressFinding(address: string, page: Page, site: Site, isLink: boolean): LinkFinding[] {
  if (/^javascript:/i.test(address)) {
    return [finding(page, 'inline-script', `"${address}" is a script in a link; use a button and a script file.`)];
  }
  if (/^(?:https?:)?\/\//i.test(address)) {
    if (isLink && !address.startsWith('//')) return [];
    return [finding(page, 'outside-resource', `"${address}" comes from another host; the book must carry all it needs.`)];
  }
  if (/^[a-z][a-z0-9+.-]*:/i.test(address)) return [];
  if (address.startsWith('/')) {
    return [finding(page, 'root-absolute', `"${address}" counts from the host's root and breaks under a base path.`)];
  }
  return resolveInside(address, page, site);
}

function resolveInside(address: string, page: Page, site: Site): LinkFinding[] {
  const base = new URL(page.path, 'http://book.invalid/depth/');
  const target = new URL(address, base);
  if (!target.pathname.startsWith('/depth/')) {
    return [finding(page, 'broken-link', `"${address}" climbs out of the site.`)];
  }
  const path = decodeURIComponent(target.pathname.slice('/depth/'.length));
  const file = path === '' || path.endsWith('/') ? `${path}index.html` : path;
  if (site.openedFromDisk && file !== path) return [finding(page, 'folder-link', `"${address}" leads to a folder; from disk it must name ${file}.`)];
  if (!site.files.has(file)) return [finding(page, 'broken-link', brokenLinkMessage(address, file, site))];
  return anchorFinding(address, target.hash, page, site.pages.get(file));
}

function brokenLinkMessage(address: string, file: string, site: Site): string {
  if (site.files.has(`${file}/index.html`)) return `"${address}" needs a slash at its end.`;
  return `"${address}" leads to ${file}, which the site does not have.`;
}

function anchorFinding(address: string, hash: string, page: Page, target: Page | undefined): LinkFinding[] {
  const anchor = decodeURIComponent(hash.slice(1));
  if (anchor === '' || anchor === 'top' || target === undefined || target.ids.has(anchor)) return [];
  return [finding(page, 'broken-anchor', `"${address}" points at #${anchor}, and ${target.path} has no such id.`)];
}

const ID_REFERENCES = ['for', 'aria-labelledby', 'aria-describedby', 'list'] as const;

function referenceFindings(tag: Tag, page: Page): LinkFinding[] {
  return ID_REFERENCES.flatMap((name) =>
    (attributeOf(tag, name) ?? '')
      .split(/\s+/)
      .filter((id) => id !== '' && !page.ids.has(id))
      .map((id) => finding(page, 'broken-reference', `${name}="${id}" on <${tag.name}> names an id the page does not have.`)),
  );
}

/** A `script` with one of these types runs; any other type is data, which a policy lets through. */
const SCRIPT_TYPE = /^(?:|module|importmap|speculationrules|(?:text|application)\/(?:x-)?(?:java|ecma)script)$/i;

function policyFindings(tag: Tag, page: Page): LinkFinding[] {
  const findings = tag.attributes.flatMap(({ name }) => {
    if (/^on[a-z]+$/.test(name)) {
      return [finding(page, 'event-handler', `${name} on <${tag.name}>: listen from a script file instead.`)];
    }
    return name === 'style' ? [finding(page, 'inline-style', `style on <${tag.name}>: use a class or an SVG attribute.`)] : [];
  });
  if (tag.name === 'style') findings.push(finding(page, 'inline-style', 'A <style> element: move it to a style sheet.'));
  if (tag.name === 'base') findings.push(finding(page, 'base-element', 'A <base> element would bend every relative link.'));
  const runs = tag.name === 'script' && SCRIPT_TYPE.test((attributeOf(tag, 'type') ?? '').trim());
  if (runs && attributeOf(tag, 'src') === undefined) {
    findings.push(finding(page, 'inline-script', `A script written into the page: "${tag.content.trim().slice(0, 60)}".`));
  }
  return findings;
}

function finding(page: Page, fault: LinkFault, message: string): LinkFinding {
  return { page: page.path, fault, message };
}

/** One line for each finding, grouped by page. */
export function formatLinkFindings(findings: readonly LinkFinding[]): string {
  return findings.map(({ page, fault, message }) => `${page}  ${fault}  ${message}`).join('\n');
}
