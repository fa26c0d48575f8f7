import { trimPattern, trimSum } from '../../calculators/fuel-trim/trims.ts';
import type { BankTotals, TrimPattern } from '../../calculators/fuel-trim/trims.ts';
import { channel } from '../columns/match.ts';
import type { ColumnMatch } from '../columns/match.ts';
import type { LoggedTable } from '../table/types.ts';
import { secondsOf } from './weights.ts';

/** Edges of the map's cells. Speeds below the first and above the last are put into the cells at the ends; so are loads. */
export const speedEdges: readonly number[] = [0, 1000, 1500, 2000, 2500, 3000, 4000, 5000, Infinity];
export const loadEdges: readonly number[] = [0, 20, 30, 40, 50, 60, 80, Infinity];

export interface MapCell {
  readonly speedFrom: number;
  readonly speedTo: number;
  readonly loadFrom: number;
  readonly loadTo: number;
  /** How long the engine ran there, seconds (rows, when the table has no time). */
  readonly seconds: number;
  /** Mean total of short and long trim there, percent, weighed by time; its scatter. Nothing where the cell was not visited. */
  readonly mean: number | undefined;
  readonly deviation: number | undefined;
}

export interface StateTotals {
  /** Mean of each over the time the engine was in that state, percent. */
  readonly short: number;
  readonly long: number;
  readonly sum: number;
  readonly seconds: number;
}

export interface BankTrims {
  readonly bank: number;
  /** Cells by rising load within rising speed. Empty when speed or load was not logged. */
  readonly map: readonly MapCell[];
  readonly idle: StateTotals | undefined;
  readonly cruise: StateTotals | undefined;
}

export interface TrimsReading {
  readonly banks: readonly BankTrims[];
  /** The pattern of both states and banks, by the rules of the fuel-trim calculator. Nothing when neither state was run long enough. */
  readonly pattern: TrimPattern | undefined;
}

/** Warm engines idle below this, rpm. Common practice. */
const idleBelow = 1100;
/** Cruise is held near 2500 rpm, as the calculator's second state. Common practice. */
const cruiseFrom = 2000;
const cruiseTo = 3000;
/** Trims mean something on a warm engine only, °C. Common practice. */
const warmFrom = 70;
/** A state that was run for less, s (or rows), is not judged: the trims have not settled. Common practice. */
const leastSeconds = 10;
/** A stalled engine has no trims, rpm. */
const runsFrom = 400;

interface Channels {
  readonly short: Float64Array;
  readonly long: Float64Array;
  readonly speed: Float64Array | undefined;
  readonly load: Float64Array | undefined;
  readonly coolant: Float64Array | undefined;
  readonly seconds: Float64Array;
}

function channelsOf(table: LoggedTable, matches: readonly ColumnMatch[], bank: number): Channels | undefined {
  const [short, long] = [channel(table, matches, 'short-trim', bank), channel(table, matches, 'long-trim', bank)];
  if (short === undefined || long === undefined) return undefined;
  return {
    short,
    long,
    speed: channel(table, matches, 'engine-speed'),
    load: channel(table, matches, 'load'),
    coolant: channel(table, matches, 'coolant-temperature'),
    seconds: secondsOf(table),
  };
}

/** Running, warm as far as that was logged, and both trims read. */
function counts({ short, long, speed, coolant }: Channels, row: number): boolean {
  if (Number.isNaN(short[row]) || Number.isNaN(long[row])) return false;
  if (speed !== undefined && !((speed[row] ?? Number.NaN) >= runsFrom)) return false;
  return coolant === undefined || Number.isNaN(coolant[row]) || (coolant[row] ?? 0) >= warmFrom;
}

function cellOf(edges: readonly number[], value: number): number {
  return Math.max(0, Math.min(edges.length - 2, edges.findLastIndex((edge) => edge <= value)));
}

/** Sums of one pass, by cell. */
function mapOf(channels: Channels): readonly MapCell[] {
  const { short, long, speed, load, seconds } = channels;
  if (speed === undefined || load === undefined) return [];
  const columns = loadEdges.length - 1;
  const [time, sums, squares] = [0, 1, 2].map(() => new Float64Array((speedEdges.length - 1) * columns)) as [Float64Array, Float64Array, Float64Array];
  for (let row = 0; row < short.length; row += 1) {
    const [now, pull, weight] = [speed[row] ?? Number.NaN, load[row] ?? Number.NaN, seconds[row] ?? 0];
    if (!counts(channels, row) || Number.isNaN(now) || Number.isNaN(pull)) continue;
    const cell = cellOf(speedEdges, now) * columns + cellOf(loadEdges, pull);
    const total = trimSum({ short: short[row] ?? 0, long: long[row] ?? 0 });
    time[cell] = (time[cell] ?? 0) + weight;
    sums[cell] = (sums[cell] ?? 0) + weight * total;
    squares[cell] = (squares[cell] ?? 0) + weight * total * total;
  }
  return Array.from(time, (spent, cell) => {
    const [bySpeed, byLoad] = [Math.floor(cell / columns), cell % columns];
    const mean = spent > 0 ? (sums[cell] ?? 0) / spent : undefined;
    return {
      speedFrom: speedEdges[bySpeed] ?? 0,
      speedTo: speedEdges[bySpeed + 1] ?? Infinity,
      loadFrom: loadEdges[byLoad] ?? 0,
      loadTo: loadEdges[byLoad + 1] ?? Infinity,
      seconds: spent,
      mean,
      deviation: mean === undefined ? undefined : Math.sqrt(Math.max(0, (squares[cell] ?? 0) / spent - mean * mean)),
    };
  });
}

function totalsWhere(channels: Channels, isState: (speed: number) => boolean): StateTotals | undefined {
  const { short, long, speed, seconds } = channels;
  if (speed === undefined) return undefined;
  let [time, shortSum, longSum] = [0, 0, 0];
  for (let row = 0; row < short.length; row += 1) {
    if (!isState(speed[row] ?? Number.NaN) || !counts(channels, row)) continue;
    const weight = seconds[row] ?? 0;
    time += weight;
    shortSum += weight * (short[row] ?? 0);
    longSum += weight * (long[row] ?? 0);
  }
  if (time < leastSeconds) return undefined;
  const pair = { short: shortSum / time, long: longSum / time };
  return { ...pair, sum: trimSum(pair), seconds: time };
}

function totalsOf({ idle, cruise }: BankTrims): BankTotals {
  return { ...(idle ? { idle: idle.sum } : {}), ...(cruise ? { cruise: cruise.sum } : {}) };
}

/**
 * Trims by speed and load, and their totals at idle (below 1100 rpm) and cruise (2000 to 3000 rpm) of the warm, running engine, for
 * each bank whose short and long trim were both logged. The pattern is that of the fuel-trim calculator. No banks when none was logged.
 */
export function readTrims(table: LoggedTable, matches: readonly ColumnMatch[]): TrimsReading {
  const banks = [1, 2].flatMap((bank) => {
    const channels = channelsOf(table, matches, bank);
    if (channels === undefined) return [];
    const idle = totalsWhere(channels, (speed) => speed < idleBelow);
    const cruise = totalsWhere(channels, (speed) => speed >= cruiseFrom && speed <= cruiseTo);
    return [{ bank, map: mapOf(channels), idle, cruise }];
  });
  const totals = banks.filter((bank) => bank.idle ?? bank.cruise).map(totalsOf);
  const [first, second] = totals;
  return { banks, pattern: first && trimPattern(first, second) };
}
