/**
 * A number from 0 up to 1 that depends on nothing but the words it is asked for: the same job, test and place give the same draw to
 * every policy, so that policies are compared on the same cars with the same luck. FNV-1a over the words, then the finaliser of
 * MurmurHash3; both are published in the public domain, recalled from memory.
 */
export function drawFor(...words: readonly (string | number)[]): number {
  let hash = 0x811c9dc5;
  for (const character of words.join('\u0000')) {
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
  }
  hash ^= hash >>> 16;
  hash = Math.imul(hash, 0x85ebca6b);
  hash ^= hash >>> 13;
  hash = Math.imul(hash, 0xc2b2ae35);
  hash ^= hash >>> 16;
  return (hash >>> 0) / 2 ** 32;
}

/** Position drawn from weights that need not sum to 1. `draw` from 0 up to 1. The last position when rounding runs over. */
export function drawIndex(weights: ArrayLike<number>, draw: number): number {
  let total = 0;
  for (let index = 0; index < weights.length; index += 1) total += weights[index] ?? 0;
  let left = draw * total;
  for (let index = 0; index < weights.length; index += 1) {
    left -= weights[index] ?? 0;
    if (left < 0) return index;
  }
  return weights.length - 1;
}
