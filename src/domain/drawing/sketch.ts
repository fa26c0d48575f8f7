import { roundTenth, shape, type Shape } from './shape.ts';

/** One thing that a picture shows, in words: the label as it stands in the picture and what it means. */
export interface CaptionPoint {
  readonly label: string;
  readonly text: string;
}

/** A picture of the book with everything it says also in words, for those who cannot see it and for the printed sheet. */
export interface Illustration {
  /** What is shown; no stop at the end. */
  readonly title: string;
  /** How to look at it, in whole sentences. */
  readonly note: string;
  readonly points: readonly CaptionPoint[];
  /** One drawing, or several of the same size that stand side by side where there is room. */
  readonly panels: readonly Shape[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export type Anchor = 'start' | 'middle' | 'end';
export type Weight = 'plain' | 'strong' | 'faint';
export type Line = 'ink' | 'thin' | 'dash' | 'accent' | 'body' | 'solid' | 'soft';

export function words(text: string, at: Point, anchor: Anchor = 'start', weight: Weight = 'plain'): Shape {
  return shape('text', { class: `drawn-words drawn-${weight}-words`, x: roundTenth(at.x), y: roundTenth(at.y), 'text-anchor': anchor }, text);
}

/** A path: `body` is paper with an inked edge, `solid` is all ink, `soft` a tint; the others are lines alone. */
export function path(d: string, line: Line = 'ink'): Shape {
  return shape('path', { class: `drawn-${line}`, d });
}

export function dot(at: Point, radius: number, line: Line): Shape {
  return shape('circle', { class: `drawn-${line}`, cx: roundTenth(at.x), cy: roundTenth(at.y), r: radius });
}

export function box(at: Point, size: Size, line: Line = 'body'): Shape {
  return shape('rect', { class: `drawn-${line}`, x: roundTenth(at.x), y: roundTenth(at.y), width: roundTenth(size.width), height: roundTenth(size.height) });
}

export function curve(points: readonly Point[], line: Line = 'ink'): Shape {
  return shape('polyline', { class: `drawn-${line}`, points: points.map(({ x, y }) => `${roundTenth(x)},${roundTenth(y)}`).join(' ') });
}

/** A straight line that ends in an arrowhead. */
export function arrow(from: Point, to: Point, line: 'ink' | 'accent' = 'ink'): Shape {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const barb = (turn: number) => `${roundTenth(to.x - 7 * Math.cos(angle + turn))} ${roundTenth(to.y - 7 * Math.sin(angle + turn))}`;
  return path(`M${from.x} ${from.y}L${to.x} ${to.y}M${barb(0.5)}L${to.x} ${to.y}L${barb(-0.5)}`, line);
}

/** A thin line from a label to what it names, with a dot at the far end. */
export function leader(from: Point, to: Point): readonly Shape[] {
  return [path(`M${from.x} ${from.y}L${to.x} ${to.y}`, 'thin'), dot(to, 1.8, 'solid')];
}

/** A bracket below a stretch of a trace, with its name under it. */
export function stretch(from: number, to: number, y: number, name: string): readonly Shape[] {
  return [path(`M${from} ${y - 5}V${y}H${to}V${y - 5}`, 'thin'), words(name, { x: (from + to) / 2, y: y + 14 }, 'middle')];
}

export function picture(size: Size, title: string, shapes: readonly Shape[]): Shape {
  return shape('svg', { class: 'drawn-picture', viewBox: `0 0 ${size.width} ${size.height}`, role: 'img' }, [shape('title', {}, title), ...shapes]);
}
