import type { EngineLayout } from '../diagnosis/types.ts';
import { shape, type Shape } from './shape.ts';

/** What may be written on a cylinder beside its number. */
export interface CylinderMark {
  /** 0 (none) to 1 (full): shaded in steps, with the figure as text, so that colour is never alone. */
  readonly share?: number;
  readonly text?: string;
}

const pitch = 62;
const radius = 25;
const margin = 38;
/** Room above the first row for the word at the front. */
const topRoom = 12;
const bankGap = 86;

type EngineParts = Pick<EngineLayout, 'banks' | 'firingOrder' | 'coilPairs' | 'title' | 'form'>;

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where each cylinder stands: one row for each bank, the front at the left, the second bank half a pitch behind. */
function spots(engine: EngineParts): Map<number, Spot> {
  return new Map(
    engine.banks.flatMap((bank, row) =>
      bank.map((cylinder, index) => [cylinder, { x: margin + index * pitch + row * (engine.banks.length > 1 ? 14 : 0), y: margin + topRoom + row * bankGap }] as const),
    ),
  );
}

function cylinderShape(cylinder: number, spot: Spot, mark: CylinderMark | undefined): Shape {
  const step = mark?.share === undefined ? 0 : Math.min(4, Math.ceil(mark.share * 4 - 1e-9));
  return shape('g', { class: `cylinder shade-${step}` }, [
    shape('circle', { class: 'bore', cx: spot.x, cy: spot.y, r: radius }),
    shape('text', { class: 'cylinder-number', x: spot.x, y: mark?.text ? spot.y + 1 : spot.y + 6, 'text-anchor': 'middle' }, String(cylinder)),
    ...(mark?.text ? [shape('text', { class: 'cylinder-figure', x: spot.x, y: spot.y + 16, 'text-anchor': 'middle' }, mark.text)] : []),
  ]);
}

/** A bracket between two cylinders that share a coil; in one row each pair has a level of its own. */
function pairShape(from: Spot, to: Spot, level: number, bottom: number): Shape {
  if (from.y !== to.y) return shape('path', { class: 'coil-pair', d: `M${from.x} ${from.y + radius}L${to.x} ${to.y - radius}` });
  const depth = bottom + 10 + level * 11;
  return shape('path', { class: 'coil-pair', d: `M${from.x} ${from.y + radius}V${depth}H${to.x}V${to.y + radius}` });
}

/** The engine from above: cylinders in place, coil pairs joined, the firing order written below. */
export function engineShape(engine: EngineParts, marks: ReadonlyMap<number, CylinderMark> = new Map()): Shape {
  const places = spots(engine);
  const xs = [...places.values()].map((spot) => spot.x);
  const lowest = Math.max(...[...places.values()].map((spot) => spot.y)) + radius;
  const pairs = engine.coilPairs.flatMap(([one, other], index) => {
    const [from, to] = [places.get(one), places.get(other)];
    return from && to ? [pairShape(from, to, index, lowest)] : [];
  });
  const pairRoom = engine.coilPairs.length > 0 ? 14 + engine.coilPairs.length * 11 : 6;
  const width = Math.max(...xs) + margin;
  const height = lowest + pairRoom + 26;
  const order = `Firing order ${engine.firingOrder.join('-')}`;
  return shape('svg', { class: 'engine-drawing', viewBox: `0 0 ${Math.max(width, 230)} ${height}`, role: 'img' }, [
    shape('title', {}, `${engine.title}. ${order}.`),
    ...pairs,
    ...[...places].map(([cylinder, spot]) => cylinderShape(cylinder, spot, marks.get(cylinder))),
    shape('text', { class: 'engine-front', x: 4, y: 12 }, 'front'),
    shape('text', { class: 'engine-order', x: 4, y: height - 6 }, order),
  ]);
}
