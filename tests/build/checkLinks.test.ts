import { describe, expect, it } from 'vitest';
import { checkPages, formatLinkFindings, type LinkFault } from '../../src/build/checkLinks.ts';

const OTHER_PAGE = '<h1 id="top-of-b">B</h1><p id="größe">Size</p>';
const FILES = ['assets/base.css', 'assets/shell.js', 'icon.svg', 'a/index.html', 'b/index.html', 'index.html', '404.html'];

/** Faults found on page `a/` with this body, beside a page `b/` and a few files. */
function faultsOf(body: string): LinkFault[] {
  const pages = new Map([
    ['a/index.html', body],
    ['b/index.html', OTHER_PAGE],
  ]);
  return checkPages(pages, FILES).map(({ fault }) => fault);
}

// Sources: links by RFC 3986 resolution; unique ids and id references by the HTML standard (3.2.6, 4.10.4);
// what a policy without 'unsafe-inline' blocks by Content Security Policy Level 3, section 4.2.3.
const faulty: readonly { label: string; body: string; expected: LinkFault }[] = [
  { label: 'link to a missing page', body: '<a href="../c/">', expected: 'broken-link' },
  { label: 'link without the closing slash', body: '<a href="../b">', expected: 'broken-link' },
  { label: 'link that climbs out of the site', body: '<a href="../../b/">', expected: 'broken-link' },
  { label: 'missing style sheet', body: '<link rel="stylesheet" href="../assets/none.css">', expected: 'broken-link' },
  { label: 'missing script', body: '<script src="../assets/none.js"></script>', expected: 'broken-link' },
  { label: 'missing picture in a source set', body: '<img srcset="../none.png 2x">', expected: 'broken-link' },
  { label: 'form that leads nowhere', body: '<form action="../none/"></form>', expected: 'broken-link' },
  { label: 'missing anchor on the same page', body: '<a href="#none">', expected: 'broken-anchor' },
  { label: 'missing anchor on another page', body: '<a href="../b/#none">', expected: 'broken-anchor' },
  { label: 'anchor and query together', body: '<a href="../b/?x=1#none">', expected: 'broken-anchor' },
  { label: 'label for a missing field', body: '<label for="none">', expected: 'broken-reference' },
  { label: 'description by a missing id', body: '<i id="x"></i><input aria-describedby="x none">', expected: 'broken-reference' },
  { label: 'root-absolute link', body: '<a href="/b/">', expected: 'root-absolute' },
  { label: 'root-absolute script', body: '<script src="/assets/shell.js"></script>', expected: 'root-absolute' },
  { label: 'two elements with one id', body: '<i id="x"></i><b id="x"></b>', expected: 'duplicate-id' },
  { label: 'script from another host', body: '<script src="https://example.org/x.js"></script>', expected: 'outside-resource' },
  { label: 'style sheet from another host', body: '<link rel="stylesheet" href="//example.org/x.css">', expected: 'outside-resource' },
  { label: 'picture from another host', body: '<img src="http://example.org/x.png">', expected: 'outside-resource' },
  { label: 'script in the page', body: '<script>alert(1)</script>', expected: 'inline-script' },
  { label: 'module script in the page', body: '<script type="module">alert(1)</script>', expected: 'inline-script' },
  { label: 'script as a link', body: '<a href="javascript:alert(1)">', expected: 'inline-script' },
  { label: 'style attribute', body: '<p style="color:red">', expected: 'inline-style' },
  { label: 'style element', body: '<style>p{color:red}</style>', expected: 'inline-style' },
  { label: 'event handler', body: '<button onclick="go()">', expected: 'event-handler' },
  { label: 'base element', body: '<base href="../b/">', expected: 'base-element' },
];

const sound: readonly { label: string; body: string }[] = [
  { label: 'page, anchor and query', body: '<a href="../b/?q=4.7#top-of-b">' },
  { label: 'the page itself', body: '<i id="x"></i><a href="#x"><a href="./"><a href="#"><a href="#top">' },
  { label: 'the start page', body: '<a href="../">' },
  { label: 'a percent-encoded anchor', body: '<a href="../b/#gr%C3%B6%C3%9Fe">' },
  { label: 'style sheet, script and icon', body: '<link href="../assets/base.css"><script src="../assets/shell.js"></script><img src="../icon.svg">' },
  { label: 'a link to another host', body: '<a href="https://example.org/">' },
  { label: 'a picture written as data', body: '<img src="data:image/png;base64,AA==">' },
  { label: 'mail', body: '<a href="mailto:nobody@example.org">' },
  { label: 'data that is not a script', body: '<script type="application/json">{"id":"x"}</script>' },
  { label: 'faults inside a comment', body: '<!-- <a href="/none/" onclick="go()"> -->' },
  { label: 'a label for a field', body: '<label for="x"></label><input id="x">' },
  { label: 'a stroke in a value that is no address', body: '<b data-unit="/min">' },
];

describe('checkPages', () => {
  it.each(faulty)('finds: $label', ({ body, expected }) => expect(faultsOf(body)).toEqual([expected]));
  it.each(sound)('lets pass: $label', ({ body }) => expect(faultsOf(body)).toEqual([]));
  it('reports all faults at once, each with its page', () => {
    const findings = checkPages(new Map([['a/index.html', '<a href="/b/"><p style="x">']]), FILES);
    expect(formatLinkFindings(findings).split('\n')).toEqual([
      expect.stringMatching(/^a\/index\.html {2}root-absolute {2}/),
      expect.stringMatching(/^a\/index\.html {2}inline-style {2}/),
    ]);
  });
});
