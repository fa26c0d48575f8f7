/** What a request for an address of the book is answered with. */
export type Answer =
  | { readonly kind: 'file'; readonly key: string }
  | { readonly kind: 'redirect'; readonly key: string }
  | { readonly kind: 'unknown' };

/**
 * Finds the stored file for an address. A page is stored under its folder, `procedures/swap-coils/`, which is how links
 * name it; `…/index.html` gives the same page. Without the slash the answer is a redirect, because the page's relative
 * links count from its folder.
 *
 * @param pathname path of the address, without query, percent-encoded or not
 * @param scopePath path the book stands under, `/` or `/tools/ignition/`
 * @param keys what is stored
 */
export function answerFor(pathname: string, scopePath: string, keys: ReadonlySet<string>): Answer {
  if (!pathname.startsWith(scopePath)) return { kind: 'unknown' };
  const key = keyOf(decoded(pathname.slice(scopePath.length)));
  if (keys.has(key)) return { kind: 'file', key };
  if (keys.has(`${key}/`)) return { kind: 'redirect', key: `${key}/` };
  return { kind: 'unknown' };
}

/** The name a file is stored under: its path, less a closing `index.html`. */
export function keyOf(path: string): string {
  return path.replace(/(^|\/)index\.html$/, '$1');
}

/** The way from an address inside the scope back to the scope: `./`, `../` … */
export function wayToScope(pathname: string, scopePath: string): string {
  return '../'.repeat(pathname.slice(scopePath.length).split('/').length - 1) || './';
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
