import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '../../src/checks/nearest.ts';

describe('editDistance', () => {
  // The first two are the textbook examples of the Levenshtein distance; the swap counts one in optimal string alignment.
  it.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['lwo', 'low', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('%s to %s is %i', (a, b, expected) => {
    expect(editDistance(a, b)).toBe(expected);
    expect(editDistance(b, a)).toBe(expected);
  });
});

describe('nearest', () => {
  it.each([
    ['lwo', ['low', 'high'], 'low'],
    ['cyl', ['coil', 'cylinder'], 'cylinder'],
    ['Inside', ['inside'], 'inside'],
    ['zebra', ['low', 'high'], undefined],
    ['low', [], undefined],
  ])('of %s', (word, choices, expected) => {
    expect(nearest(word, choices)).toBe(expected);
  });
});
