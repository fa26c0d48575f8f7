import type { StripModel } from '../measurement/strip.ts';
import { roundTenth, shape, type Shape } from './shape.ts';

const width = 340;
const height = 72;
const left = 14;
const right = width - 14;
const bandTop = 22;
const bandHeight = 20;
const middle = bandTop + bandHeight / 2;

export interface StripText {
  /** Symbol of the unit, printed at the right end. */
  readonly symbol: string;
  /** What the strip shows, for those who cannot see it. */
  readonly title: string;
}

function across(fraction: number): number {
  return roundTenth(left + fraction * (right - left));
}

function band(model: StripModel): Shape[] {
  const from = across(model.low ?? 0);
  const to = across(model.high ?? 1);
  const edges = [...(model.low === undefined ? [] : [from]), ...(model.high === undefined ? [] : [to])];
  return [
    shape('rect', { class: 'strip-range', x: from, y: bandTop, width: roundTenth(to - from), height: bandHeight }),
    ...edges.map((x) => shape('line', { class: 'strip-limit', x1: x, x2: x, y1: bandTop - 5, y2: bandTop + bandHeight + 5 })),
  ];
}

function ticks(model: StripModel): Shape[] {
  return model.ticks.map(({ at, label }) =>
    shape('text', { class: 'strip-tick', x: Math.min(Math.max(across(at), left + 8), right - 8), y: height - 10, 'text-anchor': 'middle' }, label),
  );
}

function reading(model: StripModel): Shape[] {
  if (model.value === undefined) return [];
  const x = across(model.value);
  const spread = model.spread
    ? [
        shape('path', {
          class: 'strip-spread',
          d: `M${across(model.spread.from)} ${middle - 6}V${middle + 6}M${across(model.spread.from)} ${middle}H${across(model.spread.to)}M${across(model.spread.to)} ${middle - 6}V${middle + 6}`,
        }),
      ]
    : [];
  const arrow = { left: `M${x} ${middle}l12 -9v18z`, right: `M${x} ${middle}l-12 -9v18z` };
  const mark = model.beyond ? arrow[model.beyond] : `M${x} ${bandTop - 4}l-8 -14h16zM${x} ${bandTop - 4}V${bandTop + bandHeight}`;
  return [...spread, shape('path', { class: 'strip-reading', d: mark })];
}

/** The strip: a ruled scale with the range on it and, once there is one, the reading with its uncertainty. */
export function stripShape(model: StripModel, text: StripText): Shape {
  return shape('svg', { class: 'strip-drawing', viewBox: `0 0 ${width} ${height}`, role: 'img' }, [
    shape('title', {}, text.title),
    shape('line', { class: 'strip-scale', x1: left, x2: right, y1: middle, y2: middle }),
    ...band(model),
    ...reading(model),
    ...ticks(model),
    shape('text', { class: 'strip-unit', x: right, y: 12, 'text-anchor': 'end' }, text.symbol),
  ]);
}
