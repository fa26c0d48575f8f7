import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSize, listFiles } from '../files.ts';
import { attributeOf, readTags, type Tag } from '../html.ts';
import type { Measurement } from './measurement.ts';

/** What a page may weigh after gzip, in kB. A page's scripts are all that it names, since all load with it. */
const LIMITS = { html: 14, css: 10, script: 10, formScript: 25, jobsScript: 45 } as const;

interface PageSizes {
  readonly html: number;
  readonly css: number;
  readonly script: number;
  readonly scriptLimit: number;
}

/** The heaviest page of each kind: its HTML, and the style sheets and scripts it names. */
export function measureSizes(folder: string): Measurement[] {
  const pages = listFiles(folder).filter((path) => path.endsWith('index.html'));
  return [...groupByKind(pages)].flatMap(([kind, paths]) => {
    const sizes = paths.map((path) => sizesOf(folder, path));
    const heaviest = (read: (size: PageSizes) => number): number => Math.max(...sizes.map(read)) / 1000;
    const row = (name: string, value: number, limit: number): Measurement => ({ group: kind, name, value, unit: 'kB', limit });
    return [
      row('HTML', heaviest(({ html }) => html), LIMITS.html),
      row('CSS', heaviest(({ css }) => css), LIMITS.css),
      row('scripts', heaviest(({ script }) => script), Math.max(...sizes.map(({ scriptLimit }) => scriptLimit))),
    ];
  });
}

/** Pages by kind: `procedures/…` are one kind, the index `procedures/` another. */
function groupByKind(pages: readonly string[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const path of pages) {
    const [section = '', ...rest] = path.split('/');
    const kind = rest.length === 0 ? 'start page' : rest.length === 1 ? `${section}/` : `${section}/*`;
    groups.set(kind, [...(groups.get(kind) ?? []), path]);
  }
  return groups;
}

function sizesOf(folder: string, path: string): PageSizes {
  const html = readFileSync(join(folder, path));
  const tags = readTags(html.toString('utf8'));
  const sheets = tags.filter((tag) => tag.name === 'link' && attributeOf(tag, 'rel') === 'stylesheet');
  const css = addressesOf(sheets, 'href');
  const scripts = addressesOf(tags.filter(({ name }) => name === 'script'), 'src');
  const total = (addresses: readonly string[]): number =>
    addresses.reduce((sum, address) => sum + gzipSize(readFileSync(join(folder, posix.join(posix.dirname(path), address)))), 0);
  return { html: gzipSize(html), css: total(css), script: total(scripts), scriptLimit: scriptLimit(scripts) };
}

function addressesOf(tags: readonly Tag[], attribute: string): string[] {
  return tags.flatMap((tag) => attributeOf(tag, attribute) ?? []);
}

function scriptLimit(addresses: readonly string[]): number {
  const names = addresses.map((address) => posix.basename(address, '.js'));
  if (names.some((name) => ['jobs', 'bench', 'sheet', 'experience', 'captures'].includes(name))) return LIMITS.jobsScript;
  // Pages that exist to be typed into: they read figures and units, which no page that is only read needs.
  return names.some((name) => name.startsWith('calculator-') || name === 'meters' || name === 'my-engines') ? LIMITS.formScript : LIMITS.script;
}

/** Scripts that no page names: they are fetched when what they serve is touched or opened, or when the browser is idle. */
export function measureScriptsOnDemand(folder: string): Measurement[] {
  return ['reading', 'search', 'bench-later', 'bench-reading', 'keep-in-job', 'wall-chart', 'meter-select', 'shop-figures', 'captures-keep', 'captures-worker', 'shared-jobs'].map((name) => ({
    group: 'scripts on demand',
    name,
    value: gzipSize(readFileSync(join(folder, 'assets', `${name}.js`))) / 1000,
    unit: 'kB',
  }));
}
