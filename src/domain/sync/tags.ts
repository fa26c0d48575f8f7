/** A strong entity tag (RFC 9110, 8.8.3): only such a one may stand in If-Match. */
export function isStrong(tag: string | undefined): tag is string {
  return tag !== undefined && /^"[^"]*"$/.test(tag);
}

/**
 * Do both tags name the same copy? A server may call a young file's tag weak and the same tag strong a second later, and a packed
 * answer adds to it; neither is a change. Without a tag on either side nobody can tell, so the answer is no.
 */
export function sameTag(one: string | undefined, other: string | undefined): boolean {
  return one !== undefined && other !== undefined && bare(one) === bare(other);
}

function bare(tag: string): string {
  return tag.replace(/^W\//, '').replace(/^"|"$/g, '').replace(/-gzip$/, '');
}
