import { isPortable } from './edition.ts';

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** An HTML element with attributes and children. False and undefined attributes are left out; text is never read as markup. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly (Node | string | undefined)[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    made.setAttribute(name, value === true ? '' : String(value));
  }
  made.append(...children.filter((child) => child !== undefined));
  return made;
}

/** The address of a page or file of the book, from its place under the root: `codes/p0303/`. */
export function bookAddress(place: string): string {
  const address = new URL(place, new URL(document.documentElement.dataset['root'] ?? './', document.baseURI));
  // In a folder on disk, only a file can be opened.
  if (isPortable() && address.pathname.endsWith('/')) address.pathname += 'index.html';
  return address.href;
}
