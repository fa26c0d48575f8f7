import { describe, expect, it } from 'vitest';
import { suspicionSentence } from '../../src/domain/jobs/suspicion.ts';

describe('suspicionSentence', () => {
  it.each([
    { label: 'one stands out', shares: [0.1, 0.1, 0.62, 0.1], says: 'Most suspected: cylinder 3, 62 %.' },
    { label: 'companions stand level', shares: [0.81, 0.02, 0.02, 0.81], says: 'Most suspected: cylinders 1 and 4, 81 %.' },
    { label: 'three within a hundredth', shares: [0.5, 0.505, 0.497, 0.1], says: 'Most suspected: cylinders 1, 2 and 3, 51 %.' },
    { label: 'all alike', shares: [0.23, 0.23, 0.23, 0.23], says: 'No cylinder is suspected more than the others.' },
    { label: 'nothing at any', shares: [0, 0, 0, 0], says: 'No cylinder is suspected more than the others.' },
  ])('$label', ({ shares, says }) => {
    expect(suspicionSentence(new Map(shares.map((share, index) => [index + 1, share])))).toBe(says);
  });
});
