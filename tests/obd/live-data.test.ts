import { describe, expect, it } from 'vitest';
import { decodeLiveData, knownPids } from '../../src/domain/obd/live-data.ts';
import { listedItems, scaledItems } from '../../src/domain/obd/live-data.data.ts';
import { unitById } from '../../src/domain/units/table.ts';

/** Lowest and highest value of every scaled item: SAE J1979, worked out from its formula. Items in hexadecimal. */
const ends: readonly (readonly [pids: string, low: number, high: number])[] = [
  ['04 11 45 47 48 49 4A 4B 4C 2C 2E 2F 52', 0, 100],
  ['05 0F 46 5C', -40, 215],
  ['06 07 08 09 2D', -100, 99.21875],
  ['0A', 0, 765],
  ['0B 33 0D 30', 0, 255],
  ['0C', 0, 16383.75],
  ['0E', -64, 63.5],
  ['10', 0, 655.35],
  ['1F 21 31 4D 4E', 0, 65535],
  ['22', 0, 5177.265],
  ['23 59', 0, 655350],
  ['3C 3D 3E 3F', -40, 6513.5],
  ['42', 0, 65.535],
  ['43', 0, 25700],
  ['44', 0, 1.999969],
  ['5E', 0, 3276.75],
];

function valueOf(pid: string, bytes: string): number {
  const data = decodeLiveData(pid, bytes);
  const value = data.ok && data.value.kind === 'quantities' ? data.value.quantities[0]?.value : undefined;
  if (typeof value !== 'number') throw new Error(`${pid} ${bytes}: ${JSON.stringify(data)}`);
  return value;
}

const every = ends.flatMap(([pids, low, high]) => pids.split(' ').map((pid) => ({ pid, low, high })));

describe('scaled items', () => {
  it.each(every)('$pid runs from $low to $high', ({ pid, low, high }) => {
    const length = scaledItems.find((item) => item.pid === Number.parseInt(pid, 16))?.parts[0]?.bytes ?? 0;
    expect(Math.abs(valueOf(pid, '00'.repeat(length)) - low)).toBeLessThan(1e-6);
    expect(Math.abs(valueOf(pid, 'FF'.repeat(length)) - high)).toBeLessThan(1e-6);
  });

  it('are all in this table, but for the sensors of two values and the signed one', () => {
    const tabled = every.map(({ pid }) => Number.parseInt(pid, 16));
    const others = scaledItems.filter(({ pid }) => !tabled.includes(pid)).map(({ pid }) => pid);
    const sensors = [0x14, 0x24, 0x34].flatMap((first) => Array.from({ length: 8 }, (_, index) => first + index));
    expect(others.sort()).toEqual([...sensors, 0x32].sort());
  });

  it('grow with the raw number where it is not signed', () => {
    for (const pid of ['04', '05', '06', '0C', '0E', '44', '43']) {
      const length = scaledItems.find((item) => item.pid === Number.parseInt(pid, 16))?.parts[0]?.bytes ?? 0;
      const values = Array.from({ length: 256 }, (_, byte) => valueOf(pid, byte.toString(16).padStart(2, '0') + '00'.repeat(length - 1)));
      values.slice(1).forEach((value, index) => expect(value).toBeGreaterThan(values[index] ?? Number.NaN));
    }
  });
});

describe('the table', () => {
  it('holds each item once, by known units', () => {
    const pids = [...scaledItems, ...listedItems].map(({ pid }) => pid);
    expect(new Set(pids).size).toBe(pids.length);
    for (const { unit } of scaledItems.flatMap(({ parts }) => parts)) expect(unitById(unit), unit).toBeDefined();
    expect(new Set(knownPids).size).toBe(knownPids.length);
  });

  it('names no item by two names and no two items by one', () => {
    const names = [...scaledItems, ...listedItems].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});
