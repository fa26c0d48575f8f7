import { describe, expect, it } from 'vitest';
import { matchColumns, channel, wordsOf } from '../../src/domain/captures/columns/match.ts';
import type { ColumnChoice } from '../../src/domain/captures/columns/match.ts';
import { readAirFlow } from '../../src/domain/captures/logged/airFlow.ts';
import { readCounters, readLamp } from '../../src/domain/captures/logged/counters.ts';
import { missingForProof, readProofDrive } from '../../src/domain/captures/logged/proofDrive.ts';
import { readTrims } from '../../src/domain/captures/logged/trims.ts';
import { readTable } from '../../src/domain/captures/table/builder.ts';
import { drawFrom } from './model/random.ts';

type Row = readonly (string | number)[];

function tableOf(headings: readonly string[], rows: readonly Row[]) {
  const table = readTable([headings, ...rows.map((row) => row.map(String))]);
  if (!table.ok) throw new Error(table.error.message);
  return table.value;
}

function matched(headings: readonly string[], rows: readonly Row[], choices?: readonly ColumnChoice[]) {
  const table = tableOf(headings, rows);
  return { table, matches: matchColumns(table, choices) };
}

/** Headings as the trade writes them; what a mechanic would say they are. */
const headings: [heading: string, quantity: string | undefined, index?: number][] = [
  ['Engine speed (rpm)', 'engine-speed'],
  ['Engine RPM', 'engine-speed'],
  ['n (rpm)', 'engine-speed'],
  ['Vehicle speed (km/h)', 'road-speed'],
  ['Calculated load (%)', 'load'],
  ['Absolute load (%)', undefined],
  ['Short term fuel trim bank 1 (%)', 'short-trim', 1],
  ['LTFT B2 (%)', 'long-trim', 2],
  ['Long trim (%)', 'long-trim'],
  ['Mass air flow (g/s)', 'air-flow'],
  ['Intake manifold absolute pressure (kPa)', 'manifold-pressure'],
  ['Coolant temperature (°F)', 'coolant-temperature'],
  ['Intake air temp (°C)', 'intake-air-temperature'],
  ['Lambda', 'lambda'],
  ['O2 sensor voltage B1 (V)', 'oxygen-sensor', 1],
  ['Misfire count cylinder 3', 'misfire-count', 3],
  ['Misfires cyl 12', 'misfire-count', 12],
  ['Engine lamp', 'lamp'],
  ['Coil current (A)', 'coil-current'],
  ['Secondary voltage (kV)', 'ignition-voltage'],
  ['Starter current (A)', 'starter-current'],
  ['Injector current (A)', 'injector-current'],
  ['Injector voltage (V)', 'injector-voltage'],
  ['Crankshaft sensor (V)', 'crank-sensor'],
  ['Battery voltage (V)', 'battery-voltage'],
  ['Desired idle speed (rpm)', undefined],
  ['Coolant fan speed (rpm)', undefined],
  ['Tyre pressure (kPa)', undefined],
];

describe('columns by the words of the trade', () => {
  it.each(headings)('%s: %s', (heading, quantity, index) => {
    const { matches } = matched(['Time (s)', heading], [[0, 1], [1, 2], [2, 3]]);
    const match = matches.find(({ column }) => column === 1);
    expect(match?.quantity).toBe(quantity);
    if (index !== undefined) expect(match?.index).toBe(index);
  });
  it('a unit of another kind speaks against the words', () => {
    expect(matched(['Time (s)', 'Coil current (V)'], [[0, 1], [1, 2]]).matches.map(({ quantity }) => quantity)).not.toContain('coil-current');
  });
  it('the hand of the reader goes before everything', () => {
    const rows: Row[] = [[0, 1], [1, 2]];
    expect(matched(['Time (s)', 'A1'], rows, [{ column: 1, quantity: 'coil-current', unit: 'mA' }]).matches).toEqual([{ column: 1, quantity: 'coil-current', index: undefined, unit: 'mA', confidence: 'by-hand' }]);
    expect(matched(['Time (s)', 'Engine speed (rpm)'], rows, [{ column: 1, quantity: 'nothing' }]).matches).toEqual([]);
  });
  it('values come in the unit of the book: 212 °F is 100 °C, 5 bar is 500 kPa', () => {
    const { table, matches } = matched(['Time (s)', 'Coolant (°F)', 'Manifold pressure (bar)'], [[0, 212, 5], [1, 32, 1]]);
    expect([...(channel(table, matches, 'coolant-temperature') ?? [])]).toEqual([100, 0]);
    expect([...(channel(table, matches, 'manifold-pressure') ?? [])]).toEqual([500, 100]);
  });
  it('words of a heading', () => {
    expect(wordsOf('ShortTrim_B1 (Temp)')).toEqual(['short', 'trim', 'b', '1', 'temperature']);
  });
});

const trimHeadings = ['Time (s)', 'Engine speed (rpm)', 'Load (%)', 'Short trim B1 (%)', 'Long trim B1 (%)', 'Short trim B2 (%)', 'Long trim B2 (%)', 'Coolant (°C)'];

/** A minute of idle, then a minute of cruise, warm, one row a second, trims of ± 1 % scatter about their mean. */
function drive(idle: readonly [number, number], cruise: readonly [number, number], coolant = 90): readonly Row[] {
  const draw = drawFrom(9);
  return Array.from({ length: 121 }, (_, second) => {
    const atIdle = second < 60;
    const [one, two] = atIdle ? idle : cruise;
    const scatter = () => draw.between(-1, 1);
    return [second, atIdle ? 750 : 2500, atIdle ? 22 : 35, (one / 2 + scatter()).toFixed(3), one / 2, (two / 2 + scatter()).toFixed(3), two / 2, coolant];
  });
}

/** What each pattern points to is common practice; the patterns are those of the book's fuel-trim page. */
const patterns = [
  { label: 'unmetered air', idle: [16, 16], cruise: [2, 3], pattern: 'adding-at-idle' },
  { label: 'fuel that falls short under load', idle: [1, 2], cruise: [15, 16], pattern: 'adding-with-load' },
  { label: 'lean everywhere', idle: [14, 14], cruise: [15, 15], pattern: 'adding-everywhere' },
  { label: 'rich everywhere', idle: [-16, -16], cruise: [-13, -13], pattern: 'removing-everywhere' },
  { label: 'one bank', idle: [15, 1], cruise: [14, 1], pattern: 'one-bank-adding' },
  { label: 'nothing wrong', idle: [2, 1], cruise: [-1, 2], pattern: 'within-usual-band' },
] as const;

describe('trims', () => {
  it.each(patterns)('$label: $pattern', ({ idle, cruise, pattern }) => {
    const { table, matches } = matched(trimHeadings, drive(idle, cruise));
    const read = readTrims(table, matches);
    expect(read.pattern).toBe(pattern);
    expect(Math.abs((read.banks[0]?.idle?.sum ?? 99) - idle[0])).toBeLessThan(0.3);
    expect(Math.abs((read.banks[1]?.cruise?.sum ?? 99) - cruise[1])).toBeLessThan(0.3);
    expect(read.banks[0]?.idle?.seconds).toBe(60);
  });
  it('the map knows how long each cell was visited, and what was found there', () => {
    const { table, matches } = matched(trimHeadings, drive([12, 0], [4, 0]));
    const map = readTrims(table, matches).banks[0]?.map ?? [];
    const visited = map.filter(({ seconds }) => seconds > 0);
    expect(visited.map(({ speedFrom, loadFrom, seconds }) => [speedFrom, loadFrom, seconds])).toEqual([[0, 20, 60], [2500, 30, 60]]);
    expect(visited[0]?.mean).toBeCloseTo(12, 0);
    // Evenly spread over ± 1: a deviation of 1/√3.
    expect(Math.abs((visited[0]?.deviation ?? 9) - 1 / Math.sqrt(3))).toBeLessThan(0.1);
    expect(map.filter(({ mean }) => mean === undefined).length).toBe(map.length - 2);
  });
  it('a cold engine does not count', () => {
    const { table, matches } = matched(trimHeadings, drive([16, 16], [2, 3], 40));
    expect(readTrims(table, matches).pattern).toBeUndefined();
  });
});

describe('counters', () => {
  const names = ['Time (s)', 'Engine speed (rpm)', 'Load (%)', 'Coolant (°C)', 'Misfires cylinder 2', 'Misfires cylinder 3', 'Lamp'];
  const rows: Row[] = [
    [0, 800, 20, 90, 5, 0, 'off'], [1, 2000, 60, 91, 5, 0, 'off'], [2, 2100, 65, 91, 8, 0, 'on'], [3, 2050, 62, 92, 12, 0, 'on'], [4, 800, 20, 92, 12, 0, 'off'], [5, 800, 20, 92, 0, 0, 'off'], [6, 2000, 61, 92, 2, 0, 'on'], [7, 800, 20, 92, 2, 0, 'off'],
  ];
  const { table, matches } = matched(names, rows);
  it('what rose, when and under which conditions; a counter set back counts anew', () => {
    const [two, three] = readCounters(table, matches);
    expect([two?.cylinder, two?.total, two?.setBack]).toEqual([2, 9, 1]);
    expect(two?.rises.map(({ at, by, speed, load }) => [at, by, speed, load])).toEqual([[2, 3, 2100, 65], [3, 4, 2050, 62], [6, 2, 2000, 61]]);
    expect(two?.typical).toEqual({ speed: 2050, load: 62, coolant: 92 });
    expect([three?.cylinder, three?.total, three?.typical]).toEqual([3, 0, undefined]);
  });
  it('the lamp: two times on, three seconds', () => {
    expect(readLamp(table, matches)).toEqual({ secondsOn: 3, cameOn: 2 });
  });
});

describe('proof drive', () => {
  // 13 CCR 1968.2, recalled: within 375 rpm, within 20 % of load, same warm-up state. Stored 2000 rpm, 40 %, warm.
  const stored = { speed: 2000, load: 40, warm: true };
  const names = ['Time (s)', 'Engine speed (rpm)', 'Load (%)', 'Coolant (°C)', 'Misfires cylinder 1'];
  const part = (from: number, seconds: number, speed: number, load: number, coolant: number, misfires: number): readonly Row[] => Array.from({ length: seconds }, (_, second) => [from + second, speed, load, coolant, misfires]);
  const rows = [...part(0, 60, 2375, 40, 90, 0), ...part(60, 30, 2376, 40, 90, 1), ...part(90, 20, 2000, 50, 90, 1), ...part(110, 10, 2000, 40, 20, 1), ...part(120, 30, 1625, 45, 90, 1), ...part(150, 6, 2000, 65, 90, 3)];
  const { table, matches } = matched(names, rows);
  const drove = readProofDrive(table, matches, stored, 3000);
  it('counts what is similar, to the second and the turn', () => {
    // 375 rpm off is similar, 376 is not; 45 % is, 65 % is not, 50 % is by one reading of the rule only.
    expect(drove).toMatchObject({ seconds: 90, unsettledSeconds: 20, longest: 60, misfires: 0, longEnough: true });
    // 60 s at 2375 and 30 s at 1625 rpm.
    expect(drove?.revolutions).toBeCloseTo(2375 + 1625 / 2, 6);
    expect(drove?.missedOnly).toEqual({ speed: 30, load: 5, 'warm-up state': 10 });
  });
  it('says which column is missing', () => {
    const other = matched(['Time (s)', 'Engine speed (rpm)', 'Coolant (°C)'], [[0, 800, 90], [1, 800, 90]]);
    expect(missingForProof(other.table, other.matches)).toBe('no-load');
    expect(readProofDrive(other.table, other.matches, stored)).toBeUndefined();
  });
});

describe('air flow', () => {
  /**
   * Expected flows worked out from p·V·n/(R·T·120) for a 2.0 l engine (R 287.05 J/(kg·K); Heywood, 2.10, recalled): idle 33 kPa, 40 °C,
   * 750 rpm at 0.8 is 3.671 g/s; cruise 55 kPa, 40 °C, 2200 rpm at 0.85 is 19.070 g/s.
   */
  const names = ['Time (s)', 'Engine speed (rpm)', 'Mass air flow (g/s)', 'Manifold pressure (kPa)', 'Intake air temperature (°C)'];
  const at = (share: number): readonly Row[] => Array.from({ length: 20 }, (_, second) => (second < 10 ? [second, 750, 3.671 * share, 33, 40] : [second, 2200, 19.07 * share, 55, 40]));
  it.each([
    { share: 1, finding: 'likely' },
    { share: 0.5, finding: 'low' },
    { share: 1.5, finding: 'high' },
  ])('a meter that shows $share of the flow: $finding', ({ share, finding }) => {
    const { table, matches } = matched(names, at(share));
    const read = readAirFlow(table, matches, 2);
    expect(read.finding).toBe(finding);
    expect(read.bands.map(({ efficiency }) => Number(efficiency.value.toFixed(3)))).toEqual([Number((0.8 * share).toFixed(3)), Number((0.85 * share).toFixed(3))]);
  });
  it('without manifold pressure nothing is said', () => {
    const { table, matches } = matched(names.slice(0, 3), at(1).map((row) => row.slice(0, 3)));
    expect(readAirFlow(table, matches, 2).finding).toBe('unknown');
  });
});
