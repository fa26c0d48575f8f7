import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { listFiles } from '../files.ts';
import { decodeReferences } from '../html.ts';

const CONFIG = `import mdx from '@astrojs/mdx';
export default { integrations: [mdx()], devToolbar: { enabled: false } };
`;
const COLLECTION = `import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
export const collections = { pages: defineCollection({ loader: glob({ base: './pages', pattern: '**/*.mdx' }) }) };
`;
const ROUTE = `---
import { getCollection, render } from 'astro:content';
export async function getStaticPaths() {
  return (await getCollection('pages')).map((page) => ({ params: { slug: page.id }, props: { page } }));
}
const { page } = Astro.props;
const { Content } = await render(page);
---
<html lang="en">
  <head><meta charset="utf-8" /><title>{page.data.title}</title></head>
  <body><main><h1>{page.data.title}</h1><Content /></main></body>
</html>
`;

/**
 * Writes a minimal project of Astro and MDX with a page for each page of a built site, and the same text on it: one layout, one route, no
 * checks, no search, no scripts. Returns the number of pages.
 */
export function writePlainSite(built: string, target: string, modules: string): number {
  const write = (path: string, text: string): void => {
    mkdirSync(dirname(join(target, path)), { recursive: true });
    writeFileSync(join(target, path), text);
  };
  write('package.json', JSON.stringify({ name: 'plain', private: true, type: 'module' }));
  write('astro.config.mjs', CONFIG);
  write('src/content.config.ts', COLLECTION);
  write('src/pages/[...slug].astro', ROUTE);
  symlinkSync(modules, join(target, 'node_modules'));
  const pages = listFiles(built).filter((path) => path.endsWith('.html'));
  for (const path of pages) {
    const html = readFileSync(join(built, path), 'utf8');
    write(join('pages', path.replace(/(?:\/index)?\.html$/, '.mdx')), pageText(html));
  }
  return pages.length;
}

/** The text of a finished page as MDX: headings and paragraphs. */
export function pageText(html: string): string {
  const title = decodeReferences(/<title>([^<]*)<\/title>/.exec(html)?.[1] ?? 'Untitled');
  const main = /<main[^>]*>([\s\S]*)<\/main>/.exec(html)?.[1] ?? '';
  const blocks = main
    .replace(/<h([2-6])[^>]*>/g, (_tag, level: string) => `\n${'#'.repeat(Number(level))} `)
    .replace(/<\/?(?:p|h\d|li|ul|ol|dl|dt|dd|div|section|table|tr|td|th|option|label|summary|details|text|title)\b[^>]*>/g, '\n')
    .replace(/<[^>]*>/g, '')
    .split('\n')
    .map((block) => escaped(decodeReferences(block.trim())))
    .filter((block) => block !== '' && !/^#+$/.test(block));
  return `---\ntitle: ${JSON.stringify(title)}\n---\n\n${blocks.join('\n\n')}\n`;
}

/** Plain text stays plain text: what MDX would take for markup or for code is escaped. */
function escaped(block: string): string {
  const [heading = ''] = /^#+ /.exec(block) ?? [];
  const text = block.slice(heading.length).replace(/[\\`*_{}[\]<&~|]/g, '\\$&');
  // At its beginning, a block could also be a list, a quotation, or an import of code.
  const begun = text.replace(/^[-+>=#]/, '\\$&').replace(/^(\d+)([.)])/, '$1\\$2');
  return heading + begun.replace(/^(?:import|export)\b/, '<>{"$&"}</>');
}
