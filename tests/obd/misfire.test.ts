import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firingEvents, misfireCodeRule, misfireShares, total, windowOf } from '../../src/domain/obd/misfire.ts';

describe('misfire arithmetic', () => {
  it.each([
    [3, 1000, 1500],
    [4, 200, 400],
    [6, 200, 600],
    [8, 1000, 4000],
    [12, 200, 1200],
  ])(
    '%i cylinders in %i revolutions fire %i times (one firing in two revolutions)',
    (cylinders, revolutions, events) => {
      expect(firingEvents(cylinders, revolutions)).toBe(events);
    },
  );

  it('has shares that sum to 100 %, or to nothing when nothing was counted', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 500 }), { minLength: 1, maxLength: 16 }), (counts) => {
        const sum = total(misfireShares(counts));
        expect(Math.abs(sum - (total(counts) === 0 ? 0 : 100))).toBeLessThan(1e-9);
      }),
    );
  });

  it('never allows the single code and compels the multiple code at once, whatever the order of cylinders', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 500 }), { minLength: 1, maxLength: 16 }), (counts) => {
        expect(misfireCodeRule([...counts].reverse())).toBe(misfireCodeRule(counts));
        const over10 = counts.filter((count) => count / total(counts) > 0.1 + 1e-12).length;
        if (over10 >= 2) expect(misfireCodeRule(counts)).not.toBe('single-cylinder code allowed');
      }),
    );
  });

  it('knows the two windows of 13 CCR 1968.2(e)(3.2) and no other', () => {
    expect(windowOf(200)?.floorPercent).toBe(5);
    expect(windowOf(1000)?.floorPercent).toBe(1);
    expect(windowOf(201)).toBeUndefined();
  });
});
