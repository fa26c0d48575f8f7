import { stripShape, type StripText } from '../domain/drawing/strip.ts';
import type { StripModel } from '../domain/measurement/strip.ts';
import { drawShape } from './svg.ts';

/** The strip of a range with the reading on it, as SVG. */
export function drawStrip(model: StripModel, text: StripText = { symbol: '', title: 'The range and the reading' }): SVGElement {
  return drawShape(stripShape(model, text));
}
