/**
 * A drawing as plain data: the page maker turns it into SVG text and browser code into SVG elements,
 * so that one definition draws both. Colours are class names, never values.
 */
export interface Shape {
  readonly tag: 'svg' | 'g' | 'line' | 'rect' | 'circle' | 'path' | 'polyline' | 'text' | 'title';
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children?: readonly Shape[];
  readonly text?: string;
}

export function shape(tag: Shape['tag'], attributes: Shape['attributes'], content?: readonly Shape[] | string): Shape {
  if (typeof content === 'string') return { tag, attributes, text: content };
  return content ? { tag, attributes, children: content } : { tag, attributes };
}

/** Coordinates in a drawing need no more than a tenth of a pixel. */
export function roundTenth(value: number): number {
  return Math.round(value * 10) / 10;
}
