import { channel, valuesOf } from '../columns/match.ts';
import type { ColumnMatch } from '../columns/match.ts';
import { median } from '../numbers/sample.ts';
import type { LoggedTable } from '../table/types.ts';
import { secondsOf } from './weights.ts';

/** A time at which a counter went up. */
export interface CounterRise {
  readonly row: number;
  /** Seconds; the row when the table has no time. */
  readonly at: number;
  readonly by: number;
  readonly speed: number | undefined;
  readonly load: number | undefined;
  readonly coolant: number | undefined;
}

export interface CounterReading {
  /** Cylinder by the heading; nothing for a counter of the whole engine. */
  readonly cylinder: number | undefined;
  /** Misfires counted in the record: all rises together. A counter that falls was set back, and what it then shows counts anew. */
  readonly total: number;
  /** The largest rises, at most 200, in order of time. */
  readonly rises: readonly CounterRise[];
  /** Middle of speed, load and coolant over the rises, each misfire counted once: the conditions under which it misses. */
  readonly typical: { readonly speed: number | undefined; readonly load: number | undefined; readonly coolant: number | undefined } | undefined;
  readonly setBack: number;
}

const mostRises = 200;
/** For medians each misfire counts, but not more often than this in one row. */
const mostRepeats = 20;

interface Surroundings {
  readonly at: Float64Array | undefined;
  readonly speed: Float64Array | undefined;
  readonly load: Float64Array | undefined;
  readonly coolant: Float64Array | undefined;
}

function known(values: Float64Array | undefined, row: number): number | undefined {
  const value = values?.[row];
  return value === undefined || Number.isNaN(value) ? undefined : value;
}

function riseAt(row: number, by: number, around: Surroundings): CounterRise {
  return { row, at: known(around.at, row) ?? row, by, speed: known(around.speed, row), load: known(around.load, row), coolant: known(around.coolant, row) };
}

function typicalOf(rises: readonly CounterRise[], pick: (rise: CounterRise) => number | undefined): number | undefined {
  const values = rises.flatMap((rise) => {
    const value = pick(rise);
    return value === undefined ? [] : new Array<number>(Math.min(mostRepeats, Math.max(1, Math.round(rise.by)))).fill(value);
  });
  return values.length === 0 ? undefined : median(values);
}

/** Goes through a counter and tells each rise. A counter that falls was set back, and what it then shows counts anew. Returns how often it was. */
function eachRise(values: Float64Array, tell: (row: number, by: number) => void): number {
  let [before, setBack] = [Number.NaN, 0];
  for (let row = 0; row < values.length; row += 1) {
    const now = values[row] ?? Number.NaN;
    if (Number.isNaN(now)) continue;
    if (now < before) setBack += 1;
    const by = now >= before ? now - before : Number.isNaN(before) ? 0 : now;
    if (by > 0) tell(row, by);
    before = now;
  }
  return setBack;
}

/** Misfires counted in the rows that are marked with 1, over all counters. Nothing when no counter was logged. */
export function misfiresIn(table: LoggedTable, matches: readonly ColumnMatch[], rows: Uint8Array): number | undefined {
  const counters = matches.filter((match) => match.quantity === 'misfire-count');
  if (counters.length === 0) return undefined;
  let sum = 0;
  for (const match of counters) eachRise(valuesOf(table, match), (row, by) => (sum += rows[row] === 1 ? by : 0));
  return sum;
}

function readCounter(values: Float64Array, around: Surroundings): Omit<CounterReading, 'cylinder'> {
  const rises: CounterRise[] = [];
  let total = 0;
  const setBack = eachRise(values, (row, by) => {
    total += by;
    rises.push(riseAt(row, by, around));
    // Twice as many as are kept, then the smallest go: memory stays bounded.
    if (rises.length >= 2 * mostRises) rises.sort((one, other) => other.by - one.by).splice(mostRises);
  });
  const kept = rises.sort((one, other) => other.by - one.by).slice(0, mostRises).sort((one, other) => one.row - other.row);
  const typical = kept.length === 0 ? undefined : { speed: typicalOf(kept, (rise) => rise.speed), load: typicalOf(kept, (rise) => rise.load), coolant: typicalOf(kept, (rise) => rise.coolant) };
  return { total, rises: kept, typical, setBack };
}

/** Every misfire counter of the table: by how much it rose, when, and under which conditions. Cylinders in rising order. */
export function readCounters(table: LoggedTable, matches: readonly ColumnMatch[]): readonly CounterReading[] {
  const around: Surroundings = {
    at: table.time?.seconds,
    speed: channel(table, matches, 'engine-speed'),
    load: channel(table, matches, 'load'),
    coolant: channel(table, matches, 'coolant-temperature'),
  };
  return matches
    .filter((match) => match.quantity === 'misfire-count')
    .map((match) => ({ cylinder: match.index, ...readCounter(valuesOf(table, match), around) }))
    .sort((one, other) => (one.cylinder ?? 0) - (other.cylinder ?? 0));
}

/** When the engine lamp was on: seconds (rows, without a time), and how often it came on. */
export function readLamp(table: LoggedTable, matches: readonly ColumnMatch[]): { readonly secondsOn: number; readonly cameOn: number } | undefined {
  const lamp = channel(table, matches, 'lamp');
  if (lamp === undefined) return undefined;
  const seconds = secondsOf(table);
  let [secondsOn, cameOn, before] = [0, 0, Number.NaN];
  lamp.forEach((state, row) => {
    if (Number.isNaN(state)) return;
    if (state > 0) secondsOn += seconds[row] ?? 0;
    if (state > 0 && before === 0) cameOn += 1;
    before = state > 0 ? 1 : 0;
  });
  return { secondsOn, cameOn };
}
