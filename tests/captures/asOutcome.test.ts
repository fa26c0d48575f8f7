import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBook } from '../../src/checks/readBook.ts';
import { outcomeTables } from '../../src/domain/captures/asOutcome.data.ts';
import { outcomeBody, placesFor, proposed } from '../../src/domain/captures/asOutcome.ts';
import { kindsOfCapture } from '../../src/domain/captures/report/kinds.data.ts';
import { captureKinds } from '../../src/domain/captures/report/types.ts';
import { makeLayout } from '../../src/domain/diagnosis/layout.ts';
import type { TestModel } from '../../src/domain/diagnosis/types.ts';
import { checkEvent } from '../../src/domain/jobs/eventShapes.ts';

const { book } = readBook(join(import.meta.dirname, '../..'));

describe('findings as outcomes of the book', () => {
  it.each(outcomeTables.map((table) => ({ table, procedure: table.procedure })))('$procedure has every outcome that is named', ({ table }) => {
    const known = book.procedures.get(table.procedure)?.outcomes.map(({ id }) => id) ?? [];
    const named: string[] = [...Object.values(table.outcomes), ...('missing' in table ? [table.missing] : [])];
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((outcome) => !known.includes(outcome))).toEqual([]);
  });

  it.each(captureKinds.map((kind) => ({ kind })))('$kind names procedures, ranges and cautions that are there', ({ kind }) => {
    const { procedures, ranges, cautions } = kindsOfCapture[kind];
    expect(procedures.filter((id) => !book.procedures.has(id))).toEqual([]);
    expect(ranges.filter((id) => !book.ranges.has(id))).toEqual([]);
    expect(cautions.filter((id) => !book.cautions.has(id))).toEqual([]);
    // What is dangerous to clip on to is said by the procedure too.
    const own = procedures.flatMap((id) => book.procedures.get(id)?.cautions ?? []);
    expect(cautions.filter((id) => !own.includes(id))).toEqual([]);
  });
});

describe('where an outcome may be written down', () => {
  const engine = { id: 'four', title: 'Four in line', cylinders: 4, firingOrder: [1, 3, 4, 2], banks: [[1, 2, 3, 4]], form: 'inline', evenFire: true } as const;
  const test = (placeKind: TestModel['placeKind']): TestModel => ({ id: 'some-test', title: 'Some test', placeKind, outcomes: [{ id: 'bad', label: 'It is bad.', meaning: '' }], ranges: [], cautions: [] }) as unknown as TestModel;
  const layout = (ignition: 'coil-per-plug' | 'wasted-spark') => {
    const made = makeLayout(engine as unknown as Parameters<typeof makeLayout>[0], ignition, 'port');
    if (!made.ok) throw new Error(made.error.message);
    return made.value;
  };
  const at = (where: object) => ({ procedure: 'some-test', outcome: 'bad', ...where });
  it.each([
    { label: 'a coil of its own', ignition: 'coil-per-plug', kind: 'coil', where: { cylinder: 3 }, places: ['coil-3'] },
    { label: 'the coil it shares', ignition: 'wasted-spark', kind: 'coil', where: { cylinder: 3 }, places: ['coil-2-3'] },
    { label: 'its cylinder', ignition: 'coil-per-plug', kind: 'cylinder', where: { cylinder: 4 }, places: ['cylinder-4'] },
    { label: 'any cylinder, where none is named', ignition: 'coil-per-plug', kind: 'cylinder', where: {}, places: ['cylinder-1', 'cylinder-2', 'cylinder-3', 'cylinder-4'] },
    { label: 'none, where the engine has no such cylinder', ignition: 'coil-per-plug', kind: 'cylinder', where: { cylinder: 7 }, places: [] },
    { label: 'its bank', ignition: 'coil-per-plug', kind: 'bank', where: { bank: 1 }, places: ['bank-1'] },
    { label: 'no bank the engine has not got', ignition: 'coil-per-plug', kind: 'bank', where: { bank: 2 }, places: [] },
    { label: 'the whole engine', ignition: 'coil-per-plug', kind: 'engine', where: { cylinder: 2 }, places: ['engine'] },
  ] as const)('$label', ({ ignition, kind, where, places }) => {
    expect(placesFor(at(where), test(kind), layout(ignition)).map(({ id }) => id)).toEqual(places);
  });

  it('the entry is one that a job takes', () => {
    const [place] = placesFor(at({ cylinder: 3 }), test('cylinder'), layout('coil-per-plug'));
    if (place === undefined) throw new Error('No place.');
    const event = { id: 'one', sequence: 1, at: '2026-01-01T00:00:00.000Z', ...outcomeBody(at({}), test('cylinder'), place, 'From a record') };
    expect(checkEvent(event, 'event')).toMatchObject({ ok: true });
    expect(event).toMatchObject({ outcomes: { bad: 1 }, outcome: 'It is bad.', place: { id: 'cylinder-3' } });
  });

  it('a finding that no outcome says stands for none', () => {
    for (const table of outcomeTables) expect(proposed(table, 'too-close-to-call')).toEqual([]);
  });
});

describe('the address of a result in a job', () => {
  const entry = (address: string) => ({ id: 'one', sequence: 1, at: '2026-01-01T00:00:00.000Z', kind: 'calculation', calculator: 'captures', title: 'Coil current', inputs: [], outputs: [], address });
  it.each([
    ['captures/', true],
    ['calculators/plug-gap/?gap=1', true],
    ['captures/?x=1', false],
    ['captures/other/', false],
    ['https://elsewhere.example/captures/', false],
    ['//captures/', false],
  ])('%s: %s', (address, taken) => {
    expect(checkEvent(entry(address), 'event').ok).toBe(taken);
  });
});
