import { mkdtempSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeLinksRelative, rewriteLinks, rewriteStyleLinks } from '../../src/build/relativeLinks.ts';

// Expected values follow from how a browser resolves a relative reference (RFC 3986, section 5.2); the second block
// below holds the results against the platform's own URL parser.
const cases: readonly { label: string; page: string; input: string; expected: string }[] = [
  { label: 'from the start page', page: 'index.html', input: '<a href="/procedures/">', expected: '<a href="./procedures/">' },
  { label: 'start page to itself', page: 'index.html', input: '<a href="/">', expected: '<a href="./">' },
  { label: 'from one level down', page: 'search/index.html', input: '<a href="/">', expected: '<a href="../">' },
  {
    label: 'from two levels down',
    page: 'procedures/swap-coils/index.html',
    input: '<link rel="stylesheet" href="/assets/base.css">',
    expected: '<link rel="stylesheet" href="../../assets/base.css">',
  },
  { label: 'page at the root that is no folder', page: '404.html', input: '<a href="/contents/">', expected: '<a href="./contents/">' },
  { label: 'query and anchor stay', page: 'a/index.html', input: '<a href="/b/?q=1&amp;r=2#c">', expected: '<a href="../b/?q=1&amp;r=2#c">' },
  { label: 'single quotes', page: 'a/index.html', input: "<a href='/b/'>", expected: "<a href='../b/'>" },
  { label: 'no quotes', page: 'a/index.html', input: '<a href=/b/>', expected: '<a href=../b/>' },
  { label: 'capital letters and spaces', page: 'a/index.html', input: '<A HREF = "/b/">', expected: '<A HREF = "../b/">' },
  { label: 'form action', page: 'a/index.html', input: '<form action="/search/">', expected: '<form action="../search/">' },
  { label: 'script source', page: 'a/index.html', input: '<script src="/assets/x.js"></script>', expected: '<script src="../assets/x.js"></script>' },
  { label: 'poster', page: 'a/index.html', input: '<video poster="/p.png">', expected: '<video poster="../p.png">' },
  { label: 'root of the site for scripts', page: 'a/index.html', input: '<html data-root="/">', expected: '<html data-root="../">' },
  { label: 'an own address attribute', page: 'a/index.html', input: '<b data-range-href="/r/">', expected: '<b data-range-href="../r/">' },
  { label: 'source set', page: 'a/index.html', input: '<img srcset="/x.png 1x, /y.png 2x">', expected: '<img srcset="../x.png 1x, ../y.png 2x">' },
  { label: 'several in one tag', page: 'a/index.html', input: '<a href="/b/" data-root="/">', expected: '<a href="../b/" data-root="../">' },
  { label: 'a greater-than sign in an attribute', page: 'a/index.html', input: '<a title="x > y" href="/b/">', expected: '<a title="x > y" href="../b/">' },
];

const untouched: readonly { label: string; input: string }[] = [
  { label: 'relative already', input: '<a href="../b/">' },
  { label: 'anchor', input: '<a href="#c">' },
  { label: 'other host', input: '<a href="https://example.org/x">' },
  { label: 'host without scheme', input: '<a href="//example.org/x">' },
  { label: 'a figure that begins with a stroke', input: '<b data-unit="/min" title="/x">' },
  { label: 'text between tags', input: '<p>href="/b/" is written so</p>' },
  { label: 'comment', input: '<!-- <a href="/b/"> -->' },
  { label: 'inside a script', input: '<script type="application/json">{"a":"<a href=\\"/b/\\">"}</script>' },
];

describe('rewriteLinks', () => {
  it.each(cases)('$label', ({ page, input, expected }) => expect(rewriteLinks(input, page)).toBe(expected));
  it.each(untouched)('leaves alone: $label', ({ input }) => expect(rewriteLinks(input, 'a/index.html')).toBe(input));

  const targets = ['/', '/a/', '/a/b/#c', '/search/?q=4.7', '/assets/x.css'];
  const pages = ['index.html', 'a/index.html', 'a/b/index.html', '404.html'];
  const bases = ['/', '/tools/ignition/'];
  const combinations = targets.flatMap((target) => pages.flatMap((page) => bases.map((base) => ({ target, page, base }))));
  it.each(combinations)('$target from $page under $base leads where the browser says', ({ target, page, base }) => {
    const link = /href="([^"]*)"/.exec(rewriteLinks(`<a href="${target}">`, page))?.[1] ?? '';
    const pageAddress = `http://host.invalid${base}${page.replace(/index\.html$/, '')}`;
    expect(new URL(link, pageAddress).href).toBe(`http://host.invalid${base}${target.slice(1)}`);
  });
});

describe('rewriteStyleLinks', () => {
  it.each([
    ['url(/icons/a.svg)', 'url(../icons/a.svg)'],
    ['url("/icons/a.svg")', 'url("../icons/a.svg")'],
    ['url(data:image/svg+xml;base64,AA==)', 'url(data:image/svg+xml;base64,AA==)'],
    ['url(#marker)', 'url(#marker)'],
  ])('%s', (input, expected) => expect(rewriteStyleLinks(input, 'assets/base.css')).toBe(expected));
});

describe('makeLinksRelative', () => {
  it('changes pages and style sheets in place, a second run changes nothing', () => {
    const folder = mkdtempSync(join(tmpdir(), 'links-'));
    mkdirSync(join(folder, 'a'));
    writeFileSync(join(folder, 'a/index.html'), '<a href="/">');
    writeFileSync(join(folder, 'a/x.css'), 'b{background:url(/c.svg)}');
    writeFileSync(join(folder, 'a/x.js'), 'const a = "url(/c.svg)"');
    expect(makeLinksRelative(folder)).toBe(2);
    expect(readFileSync(join(folder, 'a/index.html'), 'utf8')).toBe('<a href="../">');
    expect(readFileSync(join(folder, 'a/x.css'), 'utf8')).toBe('b{background:url(../c.svg)}');
    expect(readFileSync(join(folder, 'a/x.js'), 'utf8')).toBe('const a = "url(/c.svg)"');
    expect(makeLinksRelative(folder)).toBe(0);
    rmSync(folder, { recursive: true });
  });
});
