/** What every mechanic concludes, as cases. Source of all: common practice, no published source. */
import { describe, expect, test } from 'vitest';
import { believe } from '../../src/domain/diagnosis/belief.ts';
import type { DiagnosisInput } from '../../src/domain/diagnosis/belief.ts';
import type { CodeAtPlace, Evidence } from '../../src/domain/diagnosis/types.ts';
import { fourCylinders, layoutOf, smallBook } from '../fixtures/diagnosisBook.ts';

const four = layoutOf(fourCylinders);
const fourPaired = layoutOf(fourCylinders, 'wasted-spark');

function misfireAt(...cylinders: number[]): readonly CodeAtPlace[] {
  return cylinders.map((number) => ({ code: `P030${number}`, family: 'misfire-cylinder', number }));
}

function leader(input: Omit<DiagnosisInput, 'book' | 'signs'>): string | undefined {
  return believe({ book: smallBook, signs: [], ...input })[0]?.hypothesis.id;
}

function swapped(outcome: string): Evidence {
  return { kind: 'test', test: 'swap-coils', place: 'coil-3', partner: 'coil-1', outcomes: { [outcome]: 1 } };
}

const compressionLow = (cylinder: number): Evidence => ({
  kind: 'test',
  test: 'compression',
  place: `cylinder-${cylinder}`,
  outcomes: { low: 1 },
});

describe('what the trade concludes', () => {
  test('coil swapped, misfire moved: that coil', () => {
    expect(leader({ engine: four, codes: misfireAt(3), evidence: [swapped('moved')] })).toBe('coil-winding@coil-3');
  });

  test('coil swapped, misfire stayed: not the coil, something else at that cylinder', () => {
    const input = { book: smallBook, signs: [], engine: four, codes: misfireAt(3), evidence: [] };
    const of = (id: string, evidence: readonly Evidence[]): number =>
      believe({ ...input, evidence }).find((belief) => belief.hypothesis.id === id)?.probability ?? NaN;
    expect(of('coil-winding@coil-3', [swapped('stayed')])).toBeLessThan(of('coil-winding@coil-3', []) / 5);
    expect(leader({ engine: four, codes: misfireAt(3), evidence: [swapped('stayed')] })).toBe('plug-worn@cylinder-3');
  });

  test('P0301 and P0304 on a wasted-spark four: the coil they share', () => {
    expect(leader({ engine: fourPaired, codes: misfireAt(1, 4), evidence: [] })).toBe('coil-winding@coil-1-4');
  });

  test('P0301 and P0304 with a coil per plug: no single coil stands out as it does there', () => {
    expect(leader({ engine: four, codes: misfireAt(1, 4), evidence: [] })).not.toMatch(/^coil-winding/);
  });

  test('all four misfire: the supply of the whole engine', () => {
    const codes = [...misfireAt(1, 2, 3, 4), { code: 'P0300', family: 'misfire-random' }];
    expect(leader({ engine: four, codes, evidence: [] })).toBe('fuel-pressure-low@engine');
  });

  test('two neighbours low on compression: the gasket between them', () => {
    expect(leader({ engine: four, codes: misfireAt(2, 3), evidence: [compressionLow(2), compressionLow(3)] })).toBe(
      'head-gasket@neighbours-2-3',
    );
  });

  test('one cylinder low on compression: its valve', () => {
    expect(leader({ engine: four, codes: misfireAt(2), evidence: [compressionLow(2)] })).toBe('valve-leaking@cylinder-2');
  });
});
