/**
 * Reads the tags of finished HTML. It does not repair or nest anything: the pages come from our own renderer, and the
 * build only needs to know which attributes stand where.
 */

export interface Attribute {
  readonly name: string;
  /** As written, character references not decoded. */
  readonly value: string;
  /** Where the value starts and ends in the page; equal when the attribute has no value. */
  readonly start: number;
  readonly end: number;
}

export interface Tag {
  readonly name: string;
  readonly attributes: readonly Attribute[];
  /** Raw text between `<script>` or `<style>` and its end tag; empty for other elements. */
  readonly content: string;
  readonly start: number;
}

const TAG = /<!--[\s\S]*?-->|<([a-zA-Z][^\s/>]*)((?:"[^"]*"|'[^']*'|[^"'>])*)>/g;
const ATTRIBUTE = /([^\s"'<>/=]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'=<>`]+)))?/g;
const RAW_TEXT = new Set(['script', 'style', 'textarea', 'title']);

/** Every start tag of the page in order; comments and the insides of scripts and styles are stepped over. */
export function readTags(html: string): Tag[] {
  const tags: Tag[] = [];
  const pattern = new RegExp(TAG);
  for (let match = pattern.exec(html); match !== null; match = pattern.exec(html)) {
    const written = match[1];
    if (written === undefined) continue;
    const name = written.toLowerCase();
    const attributes = readAttributes(match[2] ?? '', match.index + 1 + written.length);
    const content = RAW_TEXT.has(name) ? rawText(html, name, pattern.lastIndex) : '';
    pattern.lastIndex += content.length;
    tags.push({ name, attributes, content, start: match.index });
  }
  return tags;
}

function readAttributes(source: string, offset: number): Attribute[] {
  return [...source.matchAll(ATTRIBUTE)].map((match) => {
    const value = match[2] ?? match[3] ?? match[4] ?? '';
    const end = offset + match.index + match[0].length - (match[2] === undefined && match[3] === undefined ? 0 : 1);
    return { name: (match[1] ?? '').toLowerCase(), value, start: end - value.length, end };
  });
}

function rawText(html: string, name: string, from: number): string {
  const length = html.slice(from).search(new RegExp(`</${name}[\\s>/]`, 'i'));
  return length === -1 ? html.slice(from) : html.slice(from, from + length);
}

/** The decoded value of an attribute, or undefined when the tag does not carry it. */
export function attributeOf(tag: Tag, name: string): string | undefined {
  const found = tag.attributes.find((attribute) => attribute.name === name);
  return found === undefined ? undefined : decodeReferences(found.value);
}

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'", nbsp: '\u00a0' };

/** Decodes the character references that a renderer writes into attribute values. */
export function decodeReferences(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#([0-9]+)|([a-z]+));/gi, (whole, hexadecimal, decimal, name) => {
    if (hexadecimal !== undefined) return String.fromCodePoint(Number.parseInt(hexadecimal, 16));
    if (decimal !== undefined) return String.fromCodePoint(Number.parseInt(decimal, 10));
    return NAMED[String(name)] ?? whole;
  });
}
