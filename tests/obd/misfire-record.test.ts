import { describe, expect, it } from 'vitest';
import { decodeMisfireRecord, weightedAverage } from '../../src/domain/obd/misfire-record.ts';

/** SAE J1979, test 0B: new = 0.1 × count + 0.9 × previous, starting from 0. Each average worked out by hand from that rule. */
describe('average of test 0B', () => {
  it.each([
    ['one cycle', [100], 10],
    ['two', [100, 100], 19],
    ['three', [100, 100, 100], 27.1],
    ['one bad cycle, then one clean', [100, 0], 9],
    ['then two clean', [100, 0, 0], 8.1],
    ['clean, clean, bad', [0, 0, 200], 20],
    ['ten of 50', Array.from({ length: 10 }, () => 50), 32.566078],
    ['ten of 1000', Array.from({ length: 10 }, () => 1000), 651.32156],
    ['none', [], 0],
  ])('%s', (_, counts, expected) => {
    expect(Math.abs(weightedAverage(counts) - expected)).toBeLessThan(1e-6);
  });

  it('starts from what was there', () => expect(weightedAverage([0], 100)).toBeCloseTo(90, 12));
});

describe('decodeMisfireRecord', () => {
  it('leaves the cylinder out for the engine as a whole', () => {
    const record = decodeMisfireRecord('A1 0C 24 02 58 00 00 FF FF');
    expect(record.ok && 'cylinder' in record.value).toBe(false);
  });

  it('tells a limit that limits nothing from one that does', () => {
    const limits = ['FF FF', '00 80'].map((high) => decodeMisfireRecord(`A2 0C 24 00 03 00 00 ${high}`));
    expect(limits.map((record) => record.ok && record.value.withoutLimit)).toEqual([true, false]);
  });
});
