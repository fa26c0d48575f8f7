export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Points of a curve for a chart: `steps` equal steps of x, both ends included. */
export function samples(from: number, to: number, steps: number, curve: (x: number) => number): readonly Point[] {
  return Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps).map((x) => ({ x, y: curve(x) }));
}
