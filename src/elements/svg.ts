import type { Shape } from '../domain/drawing/shape.ts';

const namespace = 'http://www.w3.org/2000/svg';

/** Builds the SVG elements of a drawing. */
export function drawShape(shape: Shape): SVGElement {
  const element = document.createElementNS(namespace, shape.tag);
  for (const [name, value] of Object.entries(shape.attributes)) element.setAttribute(name, String(value));
  if (shape.text !== undefined) element.textContent = shape.text;
  for (const child of shape.children ?? []) element.append(drawShape(child));
  return element;
}
