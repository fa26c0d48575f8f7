import { describe, expect, test } from 'vitest';
import { covers, placeById, placesOf, relation } from '../../src/domain/diagnosis/places.ts';
import type { EngineLayout, Place, PlaceKind } from '../../src/domain/diagnosis/types.ts';
import { hypothesisLabel } from '../../src/domain/diagnosis/labels.ts';
import { eightCylinders, fault, fourCylinders, layoutOf, oneCylinder } from '../fixtures/diagnosisBook.ts';

const four = layoutOf(fourCylinders);
const fourPaired = layoutOf(fourCylinders, 'wasted-spark');
const fourDistributor = layoutOf(fourCylinders, 'distributor');
const eight = layoutOf(eightCylinders);

function at(engine: EngineLayout, id: string): Place {
  const place = placeById(engine, id);
  if (!place) throw new Error(`no place ${id}`);
  return place;
}

// What the layout of the engine itself says: written out by hand from cylinders, banks and firing order 1-3-4-2 / 1-8-4-3-6-5-7-2.
const lists: readonly { label: string; engine: EngineLayout; kind: PlaceKind; ids: string[]; labels: string[] }[] = [
  { label: 'cylinders', engine: four, kind: 'cylinder', ids: ['cylinder-1', 'cylinder-2', 'cylinder-3', 'cylinder-4'], labels: ['cylinder 1', 'cylinder 2', 'cylinder 3', 'cylinder 4'] },
  { label: 'coil per plug', engine: four, kind: 'coil', ids: ['coil-1', 'coil-2', 'coil-3', 'coil-4'], labels: ['coil of cylinder 1', 'coil of cylinder 2', 'coil of cylinder 3', 'coil of cylinder 4'] },
  { label: 'wasted spark', engine: fourPaired, kind: 'coil', ids: ['coil-1-4', 'coil-2-3'], labels: ['coil for 1 and 4', 'coil for 2 and 3'] },
  { label: 'distributor', engine: fourDistributor, kind: 'coil', ids: ['coil'], labels: ['the coil'] },
  { label: 'neighbours in line', engine: four, kind: 'neighbours', ids: ['neighbours-1-2', 'neighbours-2-3', 'neighbours-3-4'], labels: ['cylinders 1 and 2', 'cylinders 2 and 3', 'cylinders 3 and 4'] },
  { label: 'neighbours in a V8 numbered across', engine: eight, kind: 'neighbours', ids: ['neighbours-1-3', 'neighbours-3-5', 'neighbours-5-7', 'neighbours-2-4', 'neighbours-4-6', 'neighbours-6-8'], labels: ['cylinders 1 and 3', 'cylinders 3 and 5', 'cylinders 5 and 7', 'cylinders 2 and 4', 'cylinders 4 and 6', 'cylinders 6 and 8'] },
  { label: 'a single has no neighbours', engine: layoutOf(oneCylinder), kind: 'neighbours', ids: [], labels: [] },
  { label: 'banks', engine: eight, kind: 'bank', ids: ['bank-1', 'bank-2'], labels: ['bank 1', 'bank 2'] },
  { label: 'engine', engine: eight, kind: 'engine', ids: ['engine'], labels: ['the whole engine'] },
];

describe('placesOf', () => {
  test.each(lists)('$label', ({ engine, kind, ids, labels }) => {
    const places = placesOf(engine, kind);
    expect(places.map((place) => place.id)).toEqual(ids);
    expect(places.map((place) => place.label)).toEqual(labels);
    expect(places.every((place) => placeById(engine, place.id)?.label === place.label)).toBe(true);
  });

  test('an unknown place is undefined', () => {
    expect(placeById(four, 'cylinder-5')).toBeUndefined();
    expect(placeById(four, 'coil-1-4')).toBeUndefined();
  });

  test('covers', () => {
    expect(covers(at(fourPaired, 'coil-1-4'), 4)).toBe(true);
    expect(covers(at(fourPaired, 'coil-1-4'), 2)).toBe(false);
  });
});

const relations: readonly { label: string; engine: EngineLayout; fault: string; tested: string; partner?: string; expected: string }[] = [
  { label: 'coil fault at its cylinder', engine: four, fault: 'coil-3', tested: 'cylinder-3', expected: 'here' },
  { label: 'shared coil, tested at one of its cylinders', engine: fourPaired, fault: 'coil-1-4', tested: 'cylinder-4', expected: 'here' },
  { label: 'shared coil, tested at another', engine: fourPaired, fault: 'coil-1-4', tested: 'cylinder-2', expected: 'elsewhere' },
  { label: 'fault where the part went', engine: four, fault: 'cylinder-2', tested: 'cylinder-3', partner: 'cylinder-2', expected: 'partner' },
  { label: 'fault at both: the test place counts', engine: four, fault: 'neighbours-2-3', tested: 'cylinder-3', partner: 'cylinder-2', expected: 'here' },
  { label: 'fault at neither', engine: four, fault: 'cylinder-1', tested: 'cylinder-3', partner: 'cylinder-2', expected: 'elsewhere' },
  { label: 'engine fault is always here', engine: eight, fault: 'engine', tested: 'cylinder-5', partner: 'cylinder-2', expected: 'here' },
  { label: 'bank fault at a cylinder of it', engine: eight, fault: 'bank-2', tested: 'cylinder-4', expected: 'here' },
  { label: 'bank fault at the other bank', engine: eight, fault: 'bank-2', tested: 'cylinder-3', expected: 'elsewhere' },
  { label: 'any fault, tested on the whole engine', engine: eight, fault: 'cylinder-7', tested: 'engine', expected: 'here' },
  { label: 'one coil for all', engine: fourDistributor, fault: 'coil', tested: 'cylinder-2', expected: 'here' },
];

describe('relation', () => {
  test.each(relations)('$label', (row) => {
    const partner = row.partner === undefined ? undefined : at(row.engine, row.partner);
    expect(relation(at(row.engine, row.fault), at(row.engine, row.tested), partner)).toBe(row.expected);
  });
});

describe('hypothesisLabel', () => {
  const rows: readonly { engine: EngineLayout; place: string; expected: string }[] = [
    { engine: four, place: 'cylinder-3', expected: 'Spark plug gap worn wide at cylinder 3' },
    { engine: fourPaired, place: 'coil-1-4', expected: 'Spark plug gap worn wide, coil for 1 and 4' },
    { engine: fourDistributor, place: 'coil', expected: 'Spark plug gap worn wide' },
    { engine: four, place: 'neighbours-2-3', expected: 'Spark plug gap worn wide, cylinders 2 and 3' },
    { engine: eight, place: 'bank-2', expected: 'Spark plug gap worn wide at bank 2' },
    { engine: eight, place: 'engine', expected: 'Spark plug gap worn wide' },
  ];
  test.each(rows)('$place: $expected', ({ engine, place, expected }) => {
    const model = fault('x', at(engine, place).kind, { title: 'Spark plug gap worn wide' });
    expect(hypothesisLabel({ id: 'x', fault: model, place: at(engine, place) })).toBe(expected);
  });

  test('none of these', () => {
    expect(hypothesisLabel({ id: 'none-of-these', fault: undefined, place: undefined })).toBe('None of these');
  });
});
