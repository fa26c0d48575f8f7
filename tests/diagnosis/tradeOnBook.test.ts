/** What every mechanic concludes, held against the whole book and not only against a small one. Source of all: common practice, no published source. */
import { describe, expect, test } from 'vitest';
import { readCommandBook, commandEngine } from '../../src/build/commands/commandBook.ts';
import { believe } from '../../src/domain/diagnosis/belief.ts';
import { judgeFinding } from '../../src/domain/diagnosis/finding.ts';
import { repairName } from '../../src/domain/diagnosis/repairs.ts';
import type { Belief, CodeAtPlace, Evidence, IgnitionArrangement } from '../../src/domain/diagnosis/types.ts';

const read = readCommandBook();
if (!read.ok) throw new Error(read.error);
const { book, diagnosis } = read.value;

function beliefs(ignition: IgnitionArrangement, codes: readonly CodeAtPlace[], evidence: readonly Evidence[]): readonly Belief[] {
  const engine = commandEngine(book, 'four-inline-1342', ignition, 'port');
  if (!engine.ok) throw new Error(engine.error);
  return believe({ book: diagnosis, engine: engine.value, signs: [], codes, evidence });
}

/** Belief in one repair: all that the same part at the same cylinders puts right. */
function inRepair(all: readonly Belief[], hypothesis: string): number {
  const name = all.flatMap((belief) => (belief.hypothesis.id === hypothesis ? [repairName(belief.hypothesis)] : []))[0];
  if (name === undefined) throw new Error(`The book has no ${hypothesis}.`);
  return all.filter((belief) => repairName(belief.hypothesis) === name).reduce((sum, { probability }) => sum + probability, 0);
}

const misfireAt = (...cylinders: readonly number[]): readonly CodeAtPlace[] =>
  cylinders.map((number) => ({ code: `P030${number}`, family: 'misfire-cylinder', number }));
const did = (id: string, place: string, outcome: string, partner?: string): Evidence => ({
  kind: 'test',
  test: id,
  place,
  outcomes: { [outcome]: 1 },
  ...(partner === undefined ? {} : { partner }),
});

describe('on the whole book', () => {
  test('coil swapped, misfire moved: the coil', () => {
    const before = inRepair(beliefs('coil-per-plug', misfireAt(3), []), 'coil-winding@coil-3');
    const after = beliefs('coil-per-plug', misfireAt(3), [did('swap-coils', 'coil-3', 'moved', 'coil-1')]);
    expect(inRepair(after, 'coil-winding@coil-3')).toBeGreaterThan(0.75);
    expect(inRepair(after, 'coil-winding@coil-3')).toBeGreaterThan(2 * before);
  });

  test('coil swapped, misfire stayed: not the coil', () => {
    const before = inRepair(beliefs('coil-per-plug', misfireAt(3), []), 'coil-winding@coil-3');
    const after = inRepair(beliefs('coil-per-plug', misfireAt(3), [did('swap-coils', 'coil-3', 'stayed', 'coil-1')]), 'coil-winding@coil-3');
    expect(after).toBeLessThan(before / 5);
  });

  test('plugs swapped, misfire moved: the plug', () => {
    const after = beliefs('coil-per-plug', misfireAt(2), [did('swap-plugs', 'cylinder-2', 'moved', 'cylinder-4')]);
    expect(after[0]?.hypothesis.fault?.part).toBe('spark-plugs');
    expect(after[0]?.hypothesis.place?.cylinders).toEqual([2]);
  });

  test('codes for cylinders 1 and 4 on a shared coil: that coil', () => {
    const [top] = beliefs('wasted-spark', misfireAt(1, 4), []);
    expect(top?.hypothesis.place?.id).toBe('coil-1-4');
  });

  test('every coil reported with its circuit: their common supply, not four coils', () => {
    const codes = [1, 2, 3, 4].map((number) => ({ code: `P035${number}`, family: 'coil-circuit', number }));
    const [top] = beliefs('coil-per-plug', [...codes, ...misfireAt(1, 2, 3, 4)], []);
    expect(top?.hypothesis.place?.id).toBe('engine');
    expect(top?.hypothesis.id).toMatch(/^(coil-supply|coil-earth)@engine$/);
  });

  test('two neighbours low on compression: the gasket between them', () => {
    const [top] = beliefs('coil-per-plug', misfireAt(2, 3), [did('compression-dry', 'cylinder-2', 'low-with-neighbour'), did('compression-dry', 'cylinder-3', 'low-with-neighbour')]);
    expect(top?.hypothesis.id).toBe('head-gasket-between-cylinders@neighbours-2-3');
  });

  test('no part is condemned on codes alone, however many', () => {
    const engine = commandEngine(book, 'four-inline-1342', 'coil-per-plug', 'port');
    if (!engine.ok) throw new Error(engine.error);
    const codes = [...misfireAt(3), { code: 'P0353', family: 'coil-circuit', number: 3 }, { code: 'P2306', family: 'coil-control-low', number: 3 }];
    const input = { book: diagnosis, engine: engine.value, signs: [], codes, evidence: [] };
    const top = believe(input)[0]?.hypothesis.id ?? '';
    expect(judgeFinding(input, top)).toMatchObject({ allowed: false, supportedBy: [] });
  });
});
