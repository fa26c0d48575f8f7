import { describe, expect, test } from 'vitest';
import { companions, firingInterval, makeLayout } from '../../src/domain/diagnosis/layout.ts';
import { eightCylinders, fourCylinders, layoutOf } from '../fixtures/diagnosisBook.ts';

/**
 * Companions follow from the order: half of it further on is one turn of the crank, the same piston position. Status of the
 * orders: S = read in an encyclopaedia list of firing orders, M = from memory of such a list, D = derived. Exact, no tolerance.
 */
const orders: readonly { order: string; interval: number; pairs: string; status: 'S' | 'M' | 'D' }[] = [
  { order: '1-2', interval: 360, pairs: '1+2', status: 'D' },
  { order: '1-2-3', interval: 240, pairs: '', status: 'S' },
  { order: '1-3-4-2', interval: 180, pairs: '1+4 3+2', status: 'S' },
  { order: '1-2-4-3', interval: 180, pairs: '1+4 2+3', status: 'S' },
  { order: '1-3-2-4', interval: 180, pairs: '1+2 3+4', status: 'M' },
  { order: '1-2-4-5-3', interval: 144, pairs: '', status: 'S' },
  { order: '1-5-3-6-2-4', interval: 120, pairs: '1+6 5+2 3+4', status: 'S' },
  { order: '1-2-3-4-5-6', interval: 120, pairs: '1+4 2+5 3+6', status: 'S' },
  { order: '1-6-5-4-3-2', interval: 120, pairs: '1+4 6+3 5+2', status: 'S' },
  { order: '1-4-3-6-2-5', interval: 120, pairs: '1+6 4+2 3+5', status: 'S' },
  { order: '1-4-2-5-3-6', interval: 120, pairs: '1+5 4+3 2+6', status: 'S' },
  { order: '1-6-2-4-3-5', interval: 120, pairs: '1+4 6+3 2+5', status: 'S' },
  { order: '1-8-4-3-6-5-7-2', interval: 90, pairs: '1+6 8+5 4+7 3+2', status: 'S' },
  { order: '1-3-7-2-6-5-4-8', interval: 90, pairs: '1+6 3+5 7+4 2+8', status: 'M' },
  { order: '1-5-4-2-6-3-7-8', interval: 90, pairs: '1+6 5+3 4+7 2+8', status: 'M' },
  { order: '1-8-7-2-6-5-4-3', interval: 90, pairs: '1+6 8+5 7+4 2+3', status: 'M' },
  { order: '1-10-9-4-3-6-5-8-7-2', interval: 72, pairs: '1+6 10+5 9+8 4+7 3+2', status: 'S' },
  { order: '1-6-5-10-2-7-3-8-4-9', interval: 72, pairs: '1+7 6+3 5+8 10+4 2+9', status: 'M' },
  { order: '1-7-5-11-3-9-6-12-2-8-4-10', interval: 60, pairs: '1+6 7+12 5+2 11+8 3+4 9+10', status: 'S' },
  { order: '1-12-5-8-3-10-6-7-2-11-4-9', interval: 60, pairs: '1+6 12+7 5+2 8+11 3+4 10+9', status: 'M' },
];

function pairSet(pairs: string): ReadonlySet<string> {
  return new Set(pairs.split(' ').filter(Boolean).map((pair) => pair.split('+').map(Number).sort((a, b) => a - b).join('+')));
}

describe('firing orders', () => {
  test.each(orders)('$order: interval $interval°, companions $pairs ($status)', ({ order, interval, pairs }) => {
    const numbers = order.split('-').map(Number);
    expect(firingInterval(numbers.length)).toBe(interval);
    expect(new Set(companions(numbers).map((pair) => pair.join('+')))).toEqual(pairSet(pairs));
  });
});

describe('makeLayout', () => {
  test('wasted spark puts companions on one coil', () => {
    expect(layoutOf(fourCylinders, 'wasted-spark').coilPairs).toEqual([[1, 4], [2, 3]]);
  });

  test('no pairs with a coil per plug or a distributor', () => {
    expect(layoutOf(fourCylinders, 'coil-per-plug').coilPairs).toEqual([]);
    expect(layoutOf(eightCylinders, 'distributor').coilPairs).toEqual([]);
  });

  const five = { ...fourCylinders, cylinders: 5, banks: [[1, 2, 3, 4, 5]], firingOrder: [1, 2, 4, 5, 3] };
  const refused = [
    { label: 'order names a cylinder twice', description: { ...fourCylinders, firingOrder: [1, 3, 3, 2] }, code: 'order-wrong', input: 'firingOrder' },
    { label: 'order is short', description: { ...fourCylinders, firingOrder: [1, 3, 4] }, code: 'order-wrong', input: 'firingOrder' },
    { label: 'order names cylinder 5 of 4', description: { ...fourCylinders, firingOrder: [1, 3, 5, 2] }, code: 'order-wrong', input: 'firingOrder' },
    { label: 'a cylinder in no bank', description: { ...fourCylinders, banks: [[1, 2], [3]] }, code: 'banks-wrong', input: 'banks' },
    { label: 'a cylinder in two banks', description: { ...fourCylinders, banks: [[1, 2, 3], [3, 4]] }, code: 'banks-wrong', input: 'banks' },
    { label: 'no cylinder', description: { ...fourCylinders, cylinders: 0, banks: [], firingOrder: [] }, code: 'cylinders-out-of-range', input: 'cylinders' },
    { label: 'half a cylinder', description: { ...fourCylinders, cylinders: 3.5 }, code: 'cylinders-out-of-range', input: 'cylinders' },
    { label: 'wasted spark on five', description: five, code: 'wasted-spark-odd', input: 'ignition' },
    { label: 'wasted spark, uneven fire', description: { ...fourCylinders, evenFire: false }, code: 'wasted-spark-uneven', input: 'ignition' },
  ];
  test.each(refused)('refuses: $label', ({ description, code, input }) => {
    const made = makeLayout(description, 'wasted-spark', 'port');
    expect(made).toMatchObject({ ok: false, error: { code, input } });
  });

  test('five cylinders and uneven fire are fine with a coil per plug', () => {
    expect(makeLayout({ ...five, evenFire: false }, 'coil-per-plug', 'direct').ok).toBe(true);
  });
});
