import type { Chart } from '../calculators/definition.ts';
import { formatNumber } from '../units/format.ts';
import { unitById } from '../units/table.ts';
import { niceRange, niceTicks } from './scale.ts';
import { roundTenth, shape, type Shape } from './shape.ts';

const width = 340;
const height = 230;
const plot = { left: 46, right: width - 12, top: 26, bottom: height - 42 };

interface Scales {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly xTicks: readonly number[];
  readonly yTicks: readonly number[];
}

function scalesOf(chart: Chart): Scales {
  const points = chart.series.flatMap((series) => series.points);
  const bars = chart.series.some((series) => series.kind === 'bars');
  const xs = [...points, ...chart.marks].map((point) => point.x);
  const ys = [...[...points, ...chart.marks].map((point) => point.y), ...(chart.levels ?? []).map((level) => level.y), ...(bars ? [0] : [])];
  const xRange = bars ? { from: Math.min(...xs) - 0.5, to: Math.max(...xs) + 0.5 } : { from: Math.min(...xs), to: Math.max(...xs) };
  const yRange = niceRange(ys);
  const span = (range: { from: number; to: number }) => range.to - range.from || 1;
  return {
    x: (value) => roundTenth(plot.left + ((value - xRange.from) / span(xRange)) * (plot.right - plot.left)),
    y: (value) => roundTenth(plot.bottom - ((value - yRange.from) / span(yRange)) * (plot.bottom - plot.top)),
    xTicks: bars ? [] : niceTicks(xRange.from, xRange.to, 5),
    yTicks: niceTicks(yRange.from, yRange.to, 5),
  };
}

/** Such as `Current, A`; plain numbers and counts need no unit. */
function axisLabel({ label, unit }: Chart['x']): string {
  const symbol = unitById(unit)?.symbol ?? unit;
  return symbol === '' || unit === '1' || unit === 'count' ? label : `${label}, ${symbol}`;
}

function axes(chart: Chart, scales: Scales): Shape[] {
  return [
    ...scales.yTicks.flatMap((tick) => [
      shape('line', { class: 'chart-rule', x1: plot.left, x2: plot.right, y1: scales.y(tick), y2: scales.y(tick) }),
      shape('text', { class: 'chart-tick', x: plot.left - 6, y: scales.y(tick) + 4, 'text-anchor': 'end' }, formatNumber(tick)),
    ]),
    ...scales.xTicks.map((tick) =>
      shape('text', { class: 'chart-tick', x: Math.min(scales.x(tick), plot.right - 8), y: plot.bottom + 16, 'text-anchor': 'middle' }, formatNumber(tick)),
    ),
    shape('path', { class: 'chart-axis', d: `M${plot.left} ${plot.top}V${plot.bottom}H${plot.right}` }),
    shape('text', { class: 'chart-label', x: plot.left - 40, y: 14 }, axisLabel(chart.y)),
    shape('text', { class: 'chart-label', x: plot.right, y: height - 8, 'text-anchor': 'end' }, axisLabel(chart.x)),
  ];
}

function seriesShapes(chart: Chart, scales: Scales): Shape[] {
  const barSeries = chart.series.filter((series) => series.kind === 'bars');
  return chart.series.flatMap((series, index) => {
    if (series.kind === 'line') {
      const points = series.points.map((point) => `${scales.x(point.x)},${scales.y(point.y)}`).join(' ');
      return [shape('polyline', { class: `chart-line line-${index}`, points })];
    }
    const room = (scales.x(1) - scales.x(0)) * 0.7;
    const wide = Math.min(room / barSeries.length, 46);
    const offset = (barSeries.indexOf(series) - (barSeries.length - 1) / 2) * wide;
    return series.points.flatMap((point) => barShapes(point, scales, { wide, offset, index }));
  });
}

type Point = Chart['series'][number]['points'][number];

function barShapes(point: Point, scales: Scales, bar: { wide: number; offset: number; index: number }): Shape[] {
  const middle = scales.x(point.x) + bar.offset;
  const [top, bottom] = [Math.min(scales.y(point.y), scales.y(0)), Math.max(scales.y(point.y), scales.y(0))];
  return [
    ...(point.odd === undefined ? [] : oddMark(middle, top, point.odd)),
    shape('rect', { class: point.odd === undefined ? `chart-bar bar-${bar.index}` : 'chart-bar bar-odd', x: roundTenth(middle - bar.wide / 2 + 1), y: top, width: roundTenth(bar.wide - 2), height: roundTenth(Math.max(bottom - top, 1)) }),
    shape('text', { class: 'chart-tick', x: roundTenth(middle), y: plot.bottom + 16, 'text-anchor': 'middle' }, point.label ?? formatNumber(point.x)),
  ];
}

/** A pointer above the bar with the word for what is odd about it. */
function oddMark(middle: number, top: number, word: string): Shape[] {
  const tip = top - 4;
  return [
    shape('path', { class: 'chart-odd', d: `M${roundTenth(middle)} ${tip}l-6 -9h12z` }),
    shape('text', { class: 'chart-note strong', x: roundTenth(middle), y: Math.max(tip - 12, 10), 'text-anchor': 'middle' }, word),
  ];
}

function marksAndLevels(chart: Chart, scales: Scales): Shape[] {
  // The words of a level stand at the end where no mark's words are.
  const marksLeft = chart.marks.some((mark) => scales.x(mark.x) <= (plot.left + plot.right) / 2);
  const words = marksLeft ? { x: plot.right, 'text-anchor': 'end' } : { x: plot.left + 4, 'text-anchor': 'start' };
  return [
    ...(chart.levels ?? []).flatMap((level) => [
      shape('line', { class: 'chart-level', x1: plot.left, x2: plot.right, y1: scales.y(level.y), y2: scales.y(level.y) }),
      shape('text', { class: 'chart-note', ...words, y: scales.y(level.y) - 4 }, level.label),
    ]),
    ...chart.marks.flatMap((mark) => {
      const [x, y] = [scales.x(mark.x), scales.y(mark.y)];
      const rightHalf = x > (plot.left + plot.right) / 2;
      return [
        shape('circle', { class: 'chart-mark', cx: x, cy: y, r: 5 }),
        shape('text', { class: 'chart-note strong', x: rightHalf ? x - 9 : x + 9, y: y - 8, 'text-anchor': rightHalf ? 'end' : 'start' }, mark.label),
      ];
    }),
  ];
}

function legend(chart: Chart): Shape[] {
  if (chart.series.length < 2) return [];
  return chart.series.map((series, index) =>
    shape('g', {}, [
      shape('rect', { class: `${series.kind === 'bars' ? 'chart-bar bar' : 'chart-key key'}-${index}`, x: plot.left + 8 + index * 96, y: plot.top - 4, width: 14, height: series.kind === 'bars' ? 10 : 3 }),
      shape('text', { class: 'chart-note', x: plot.left + 26 + index * 96, y: plot.top + 5 }, series.name),
    ]),
  );
}

/** A chart as a drawing: axes with round numbers, lines or bars, limits and the present result. */
export function chartShape(chart: Chart): Shape {
  const scales = scalesOf(chart);
  return shape('svg', { class: 'chart-drawing', viewBox: `0 0 ${width} ${height}`, role: 'img' }, [
    shape('title', {}, chart.title),
    ...axes(chart, scales),
    ...seriesShapes(chart, scales),
    ...marksAndLevels(chart, scales),
    ...legend(chart),
  ]);
}
