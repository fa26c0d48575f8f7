import { describe, expect, it } from 'vitest';
import { matchColumns } from '../../src/domain/captures/columns/match.ts';
import { readTable } from '../../src/domain/captures/table/builder.ts';
import { assignCylinders, byCylinder } from '../../src/domain/captures/trace/assign.ts';
import { marksFrom, traceFrom } from '../../src/domain/captures/trace/fromTable.ts';
import { restOf, roughQuantile, samplingInterval, stretchesAbove } from '../../src/domain/captures/trace/trace.ts';
import { record } from './model/coil.ts';
import { drawFrom } from './model/random.ts';

const firingOrder = [1, 3, 4, 2];
const every = (count: number, step: number, from = 0) => Array.from({ length: count }, (_, number) => from + number * step);

describe('which cylinder an event belongs to', () => {
  it('by counting from the first one on', () => {
    expect(assignCylinders(every(6, 0.02), { firingOrder, markedCylinder: 3 }).cylinders).toEqual([3, 4, 2, 1, 3, 4]);
  });
  it('by counting over a gap', () => {
    const times = every(8, 0.02).filter((_, number) => number !== 5);
    const found = assignCylinders(times, { firingOrder });
    expect(found.cylinders).toEqual([1, 3, 4, 2, 1, 4, 2]);
    expect([...found.missing]).toEqual([[3, 1]]);
  });
  it('by marks, whichever event comes first, and while the speed doubles', () => {
    let time = 0;
    const times = Array.from({ length: 40 }, (_, number) => (time += 0.02 / (1 + number / 40)));
    const marks = times.filter((_, number) => number % 4 === 2).map((mark) => mark - 0.001);
    const { cylinders, by } = assignCylinders(times, { firingOrder, marks, markedCylinder: 4 });
    expect(by).toBe('trigger');
    cylinders.slice(2).forEach((cylinder, number) => expect(cylinder).toBe([4, 2, 1, 3][number % 4]));
  });
  it('without an order nothing is assigned', () => {
    expect(assignCylinders([1, 2], undefined)).toEqual({ cylinders: [undefined, undefined], by: 'none', missing: new Map() });
  });
  it('events are grouped by cylinder in rising order', () => {
    expect(byCylinder(['a', 'b', 'c'], [2, 1, 2])).toEqual([[1, ['b']], [2, ['a', 'c']]]);
  });
});

describe('levels and stretches', () => {
  const draw = drawFrom(8);
  const { times, values } = record((time) => (time % 10 < 7 ? 2 : 9), 1000, { interval: 0.05, noise: 0.1, step: 0.02, offset: 0 }, draw);
  it('rest is where most samples lie, with the noise put in', () => {
    const rest = restOf(values);
    expect(rest.level).toBeCloseTo(2, 2);
    expect(Math.abs(rest.noise - 0.1)).toBeLessThan(0.01);
  });
  it('every stretch is found once', () => {
    expect(stretchesAbove(values, 6, 4).length).toBe(99);
    expect(samplingInterval(times)).toBeCloseTo(0.00005, 9);
  });
  it('a lost sample does not cut a stretch in two', () => {
    const lossy = values.map((value, place) => (place % 37 === 5 ? Number.NaN : value));
    expect(stretchesAbove(lossy, 6, 4).length).toBe(99);
    expect(restOf(lossy).level).toBeCloseTo(2, 2);
  });
  it('rough quantiles of evenly spread values', () => {
    const even = Float64Array.from({ length: 10_001 }, (_, place) => place);
    expect(Math.abs(roughQuantile(even, 0.25) - 2500)).toBeLessThan(20);
    expect(Math.abs(roughQuantile(even, 0.9) - 9000)).toBeLessThan(20);
  });
});

describe('a trace out of a table', () => {
  it('marks are the rises of the trigger', () => {
    const rows = Array.from({ length: 400 }, (_, row) => [(row / 1000).toFixed(3), row % 100 < 50 ? '0' : '5']);
    const table = readTable([['Time (s)', 'Trigger (V)'], ...rows]);
    if (!table.ok) throw new Error(table.error.message);
    const match = matchColumns(table.value).find(({ quantity }) => quantity === 'trigger');
    const trace = match && traceFrom(table.value, match);
    if (trace === undefined) throw new Error('no trace');
    const marks = marksFrom(trace);
    expect(marks.ok && marks.value.map((mark) => Number(mark.toFixed(3)))).toEqual([0.05, 0.15, 0.25, 0.35].map((mark) => Number((mark - 0.0005).toFixed(3))));
  });
});
