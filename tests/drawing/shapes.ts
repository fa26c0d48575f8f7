import type { Shape } from '../../src/domain/drawing/shape.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The shape and everything inside it. */
export function allShapes(shape: Shape): readonly Shape[] {
  return [shape, ...(shape.children ?? []).flatMap(allShapes)];
}

export function wordsIn(shape: Shape): readonly Shape[] {
  return allShapes(shape).filter(({ tag }) => tag === 'text');
}

export function viewBoxOf(shape: Shape): Box {
  const [left = Number.NaN, top = Number.NaN, width = Number.NaN, height = Number.NaN] = String(shape.attributes['viewBox']).split(' ').map(Number);
  return { left, top, right: left + width, bottom: top + height };
}

/** Mean width of a letter at 12 px in a wide sans serif, measured in DejaVu Sans, which is wider than what most devices have. */
const letterWidth = { plain: 6.9, strong: 7.8 };

/** The room that words take, roughly: they stand on their line and reach 9 px above it and 2 px below. */
export function wordBox(word: Shape): Box {
  const strong = String(word.attributes['class']).includes('strong');
  const width = (word.text ?? '').length * (strong ? letterWidth.strong : letterWidth.plain);
  const [x, y] = [Number(word.attributes['x']), Number(word.attributes['y'])];
  const anchor = word.attributes['text-anchor'];
  const left = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x;
  return { left, right: left + width, top: y - 9, bottom: y + 2 };
}

export function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

const argumentCount: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, q: 4, c: 6, a: 7, z: 0 };

interface Pen {
  x: number;
  y: number;
  startX: number;
  startY: number;
}

/** Where one command of a path takes the pen. Control points are left out: the curves here are slight. */
function moved(pen: Pen, command: string, values: readonly number[]): Pen {
  const kind = command.toLowerCase();
  const [baseX, baseY] = command === kind ? [pen.x, pen.y] : [0, 0];
  if (kind === 'z') return { ...pen, x: pen.startX, y: pen.startY };
  const first = values[0] ?? Number.NaN;
  const x = kind === 'v' ? pen.x : baseX + (kind === 'h' ? first : (values.at(-2) ?? Number.NaN));
  const y = kind === 'h' ? pen.y : baseY + (values.at(-1) ?? Number.NaN);
  return kind === 'm' ? { x, y, startX: x, startY: y } : { ...pen, x, y };
}

/** The corners of a path. A command or a count of numbers that is unknown gives NaN, so that no path passes unread. */
export function pathCorners(d: string): readonly { readonly x: number; readonly y: number }[] {
  const corners: { x: number; y: number }[] = [];
  let pen: Pen = { x: 0, y: 0, startX: 0, startY: 0 };
  for (const [, command = '', rest = ''] of d.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const values = (rest.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
    const count = argumentCount[command.toLowerCase()];
    if (count === undefined || (count === 0 ? values.length > 0 : values.length % count !== 0 || values.length === 0)) return [{ x: Number.NaN, y: Number.NaN }];
    for (let from = 0; from < Math.max(values.length, 1); from += Math.max(count, 1)) {
      pen = moved(pen, command, values.slice(from, from + count));
      corners.push({ x: pen.x, y: pen.y });
    }
  }
  return corners;
}

/** The outermost points of a shape that has ink; words by their box. */
export function cornersOf({ tag, attributes, ...rest }: Shape): readonly { readonly x: number; readonly y: number }[] {
  const at = (name: string): number => Number(attributes[name]);
  if (tag === 'path') return pathCorners(String(attributes['d']));
  if (tag === 'polyline') return String(attributes['points']).split(' ').map((pair) => ({ x: Number(pair.split(',')[0]), y: Number(pair.split(',')[1]) }));
  if (tag === 'circle') return [{ x: at('cx') - at('r'), y: at('cy') - at('r') }, { x: at('cx') + at('r'), y: at('cy') + at('r') }];
  if (tag === 'rect') return [{ x: at('x'), y: at('y') }, { x: at('x') + at('width'), y: at('y') + at('height') }];
  if (tag === 'text') {
    const box = wordBox({ tag, attributes, ...rest });
    return [{ x: box.left, y: box.top }, { x: box.right, y: box.bottom }];
  }
  return [];
}
