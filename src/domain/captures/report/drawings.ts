import type { Chart } from '../../calculators/definition.ts';
import { chartShape } from '../../drawing/chart.ts';
import type { Shape } from '../../drawing/shape.ts';
import type { Trace } from '../trace/trace.ts';
import { extremesOf, placeOfTime } from '../trace/trace.ts';

/** Columns of the drawing: the lowest and the highest reading of each are kept, so that no spike is lost. */
const drawnColumns = 400;
/** Marks beyond this run into each other. */
const mostMarks = 14;

export interface Marked {
  /** Seconds. */
  readonly at: number;
  readonly label: string;
}

/** Places of the lowest and the highest reading of a stretch, in order of time; none where every reading was lost. */
function extremePlaces(values: Float64Array, from: number, to: number): readonly number[] {
  let [low, high] = [-1, -1];
  for (let place = from; place < to; place += 1) {
    const value = values[place] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    if (low < 0 || value < (values[low] ?? 0)) low = place;
    if (high < 0 || value > (values[high] ?? 0)) high = place;
  }
  if (low < 0) return [];
  return low === high ? [low] : [Math.min(low, high), Math.max(low, high)];
}

/** A stretch of a trace, milliseconds across, thinned to what paper can show. */
function thinned({ times, values }: Trace, from: number, to: number): readonly { readonly x: number; readonly y: number }[] {
  const origin = times[0] ?? 0;
  const size = Math.max(1, Math.ceil((to - from) / drawnColumns));
  const points: { x: number; y: number }[] = [];
  for (let start = from; start < to; start += size) {
    for (const place of extremePlaces(values, start, Math.min(to, start + size))) points.push({ x: 1000 * ((times[place] ?? 0) - origin), y: values[place] ?? 0 });
  }
  return points;
}

/** The first events of a trace with what each was taken for. */
export function traceDrawing(trace: Trace, marks: readonly Marked[], words: { readonly title: string; readonly y: string; readonly unit: string }): Shape {
  const shown = marks.slice(0, mostMarks);
  const origin = trace.times[0] ?? 0;
  const [first, last] = [shown[0]?.at ?? origin, shown.at(-1)?.at ?? trace.times.at(-1) ?? 0];
  const margin = Math.max((last - first) / Math.max(1, shown.length - 1), (last - first) / 20, 0.002);
  const from = placeOfTime(trace.times, first - margin);
  const to = placeOfTime(trace.times, last + margin);
  const chart: Chart = {
    title: `${words.title}; the first ${shown.length} of ${marks.length} events, each with its cylinder.`,
    x: { label: 'Time', unit: 'ms' },
    y: { label: words.y, unit: words.unit },
    series: [{ name: words.y, kind: 'line', points: thinned(trace, from, to) }],
    marks: shown.map(({ at, label }) => ({ x: 1000 * (at - origin), y: highestNear(trace, at, margin / 3), label })),
  };
  return chartShape(chart);
}

function highestNear({ times, values }: Trace, at: number, reach: number): number {
  const { highest } = extremesOf(values, { from: placeOfTime(times, at - reach), to: placeOfTime(times, at + reach) });
  return Number.isFinite(highest) ? highest : 0;
}

/** One bar for each cylinder; the odd ones are named above it. */
export function cylinderBars(title: string, y: Chart['y'], bars: readonly { readonly cylinder: number; readonly value: number; readonly odd?: string }[], levels: Chart['levels'] = []): Shape {
  const points = bars.map(({ cylinder, value, odd }, place) => ({ x: place + 1, y: value, label: cylinder === 0 ? 'all' : String(cylinder), ...(odd === undefined ? {} : { odd }) }));
  return chartShape({ title, x: { label: 'Cylinder', unit: 'count' }, y, series: [{ name: y.label, kind: 'bars', points }], marks: [], levels });
}
