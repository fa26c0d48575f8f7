import { describe, expect, it } from 'vitest';
import { idOfTitle, mergeIncoming } from '../../src/domain/figures/incoming.ts';
import { figuresForJob, limitsInUnit, mergeEngines } from '../../src/domain/figures/merge.ts';
import type { ShopFigure } from '../../src/domain/figures/types.ts';
import { coil, gap, ranges, van } from './figures.ts';

const high = (value: number, enteredOn: string): ShopFigure => ({ ...coil, high: value, enteredOn });
const engine = (...figures: readonly ShopFigure[]) => ({ id: 'small-van', title: 'Small van', figures });

/** Expected by the written rule: browser before server before book, whatever the days; within one place the later day. */
describe('of several figures for one engine and range', () => {
  it.each([
    ['browser before server, though older', { device: [engine(high(1, '2020-01-01'))], server: [engine(high(2, '2026-01-01'))] }, 1, 'device'],
    ['server before book, though older', { server: [engine(high(2, '2020-01-01'))], book: [engine(high(3, '2026-01-01'))] }, 2, 'server'],
    ['browser before both', { device: [engine(high(1, '2020-01-01'))], server: [engine(high(2, '2026-01-01'))], book: [engine(high(3, '2026-01-01'))] }, 1, 'device'],
    ['the book where nobody else has one', { device: [engine(gap)], server: [engine()], book: [engine(high(3, '2026-01-01'))] }, 3, 'book'],
    ['the later day in one place', { server: [engine(high(2, '2026-01-02'), high(4, '2025-12-31'))] }, 2, 'server'],
    ['the later day in one place, written last', { server: [engine(high(4, '2025-12-31'), high(2, '2026-01-02'))] }, 2, 'server'],
    ['the last of one day', { server: [engine(high(4, '2026-01-02'), high(2, '2026-01-02'))] }, 2, 'server'],
    ['not one that fits no range', { device: [engine({ ...high(9, '2026-01-02'), unit: 'mm' })], server: [engine(high(2, '2026-01-02'))] }, 2, 'server'],
  ] as const)('%s', (_label, places, wanted, place) => {
    const [merged, ...others] = mergeEngines(places, ranges);
    expect(others).toEqual([]);
    expect(merged?.figures.filter(({ range }) => range === 'coil-primary')).toMatchObject([{ high: wanted, place }]);
  });

  it('title and layout come from the first place that has them', () => {
    const merged = mergeEngines({ device: [{ id: 'small-van', title: 'Our van', figures: [] }], server: [van] }, ranges);
    expect(merged).toMatchObject([{ title: 'Our van', layout: 'three-inline' }]);
  });

  it('engines of different ids stay apart', () => {
    expect(mergeEngines({ device: [van], book: [{ ...van, id: 'other', title: 'A van' }] }, ranges).map(({ id }) => id)).toEqual(['other', 'small-van']);
  });
});

describe('a figure', () => {
  it.each([
    // 1 kohm is 1000 ohm, 1 inch is 25.4 mm exactly (SI, international inch).
    ['kilohms for a range in ohms', { ...coil, low: 0.0004, high: 0.0008, unit: 'kohm' }, 'ohm', { low: 0.4, high: 0.8, referenceTemperature: 20 }],
    ['inches for a range in millimetres', { ...gap, high: 0.035, unit: 'in' }, 'mm', { high: 0.889 }],
    ['no ohms for millimetres', coil, 'mm', undefined],
  ] as const)('%s', (_label, figure, unit, expected) => {
    expect(limitsInUnit(figure, unit)).toEqual(expected);
  });

  it('comes into a job in the unit of its range, with from, by whom and when', () => {
    const [merged] = mergeEngines({ server: [engine({ ...coil, low: 0.0004, high: 0.0008, unit: 'kohm' })] }, ranges);
    const from = "the engine maker's figure, from Invented repair data, page 14; entered by The foreman on 2026-03-04";
    expect(merged && figuresForJob(merged, ranges)).toEqual([{ range: 'coil-primary', low: 0.4, high: 0.8, unit: 'ohm', referenceTemperature: 20, from }]);
    // A line of a job's record takes 400 characters.
    const [long] = mergeEngines({ server: [engine({ ...coil, from: 'x'.repeat(200), enteredBy: 'y'.repeat(80) })] }, ranges);
    expect(long && figuresForJob(long, ranges)[0]?.from.length).toBeLessThanOrEqual(400);
  });
});

describe('figures taken in from a file', () => {
  it.each([
    ['a new engine', [], [van], { added: 2, replaced: 0, older: 0 }],
    ['the same again', [van], [van], { added: 0, replaced: 0, older: 0 }],
    ['one more range', [engine(coil)], [van], { added: 1, replaced: 0, older: 0 }],
    ['a later figure', [engine(high(1, '2026-01-01'))], [engine(high(2, '2026-01-02'))], { added: 0, replaced: 1, older: 0 }],
    ['another of the same day', [engine(high(1, '2026-01-01'))], [engine(high(2, '2026-01-01'))], { added: 0, replaced: 1, older: 0 }],
    ['an older figure', [engine(high(1, '2026-01-02'))], [engine(high(2, '2026-01-01'))], { added: 0, replaced: 0, older: 1 }],
  ] as const)('%s', (_label, here, incoming, expected) => {
    const { added, replaced, older, engines } = mergeIncoming(here, incoming, ranges);
    expect({ added: added.length, replaced: replaced.length, older: older.length }).toEqual(expected);
    expect(mergeIncoming(engines, incoming, ranges).added).toEqual([]);
  });

  it('the older one is left out, the later stays', () => {
    expect(mergeIncoming([engine(high(1, '2026-01-02'))], [engine(high(2, '2026-01-01'))], ranges).engines[0]?.figures).toEqual([high(1, '2026-01-02')]);
  });
});

describe('the id of a title', () => {
  it.each([
    ['Small van, 3 cylinders', 'small-van-3-cylinders'],
    ['  SMALL  VAN ', 'small-van'],
    ['Ménagère', 'menagere'],
    ['!', 'engine-x'],
    ['x'.repeat(300), 'x'.repeat(100)],
  ])('%j is %s', (title, id) => expect(idOfTitle(title)).toBe(id));
});
