import { AIR_GAS_CONSTANT, ZERO_CELSIUS } from '../../constants.ts';
import { channel } from '../columns/match.ts';
import type { ColumnMatch } from '../columns/match.ts';
import { figureOf } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { deviationOf, meanOf } from '../numbers/sample.ts';
import type { LoggedTable } from '../table/types.ts';

export interface AirFlowReading {
  /** Volumetric efficiency by the air-flow meter, manifold pressure and intake temperature as reference: mean over each band of speed. */
  readonly bands: readonly { readonly speedFrom: number; readonly speedTo: number; readonly rows: number; readonly efficiency: Figure }[];
  /** Over all rows that count. */
  readonly efficiency: Figure | undefined;
  /** `low` and `high`: outside what cylinders take in; `likely` otherwise. `unknown` when a column is missing. */
  readonly finding: 'likely' | 'low' | 'high' | 'unknown';
}

/** Filling referred to the manifold's own density lies between these for an engine that breathes. Common practice; wide on purpose. */
const lowestLikely = 0.55;
const highestLikely = 1.1;
const edges: readonly number[] = [500, 1000, 1500, 2000, 2500, 3000, 4000, 5000, 7000];
const fewestRows = 5;

function bandFigure(values: readonly number[]): Figure {
  // Neighbouring rows of a log are not independent readings: the scatter itself is stated, and not the scatter over √n.
  return figureOf(meanOf(values), { normal: deviationOf(values) });
}

/**
 * Is the air-flow meter believable? Every row is set against cylinders filled whole at manifold pressure and intake temperature
 * (ideal gas; Heywood, Internal Combustion Engine Fundamentals, 2.10, recalled): g/s = p·V·n/(R·T·120). `displacement` in litres.
 */
export function readAirFlow(table: LoggedTable, matches: readonly ColumnMatch[], displacement: number): AirFlowReading {
  const flow = channel(table, matches, 'air-flow');
  const speed = channel(table, matches, 'engine-speed');
  const pressure = channel(table, matches, 'manifold-pressure');
  const temperature = channel(table, matches, 'intake-air-temperature');
  if (flow === undefined || speed === undefined || pressure === undefined || temperature === undefined) return { bands: [], efficiency: undefined, finding: 'unknown' };
  const byBand = edges.slice(1).map((): number[] => []);
  for (let row = 0; row < table.rows; row += 1) {
    const [now, p, kelvin] = [speed[row] ?? Number.NaN, pressure[row] ?? Number.NaN, (temperature[row] ?? Number.NaN) + ZERO_CELSIUS];
    const whole = (1000 * p * displacement * now) / (AIR_GAS_CONSTANT * kelvin * 120);
    const efficiency = (flow[row] ?? Number.NaN) / whole;
    const band = edges.findLastIndex((edge) => edge <= now);
    if (Number.isFinite(efficiency)) byBand[band]?.push(efficiency);
  }
  const all = byBand.flat();
  if (all.length < fewestRows) return { bands: [], efficiency: undefined, finding: 'unknown' };
  const bands = byBand.flatMap((values, band) =>
    values.length < fewestRows ? [] : [{ speedFrom: edges[band] ?? 0, speedTo: edges[band + 1] ?? Infinity, rows: values.length, efficiency: bandFigure(values) }],
  );
  const efficiency = bandFigure(all);
  return { bands, efficiency, finding: efficiency.value < lowestLikely ? 'low' : efficiency.value > highestLikely ? 'high' : 'likely' };
}
