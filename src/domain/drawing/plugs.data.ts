import type { Line, Point } from './sketch.ts';

/** One mark on a plug: a path and how it is inked. */
export interface PlugMark {
  readonly d: string;
  readonly line: Line;
}

/** How one plug looks. The firing end is drawn with the gap below, the ceramic with the terminal on top. */
export interface PlugLook {
  readonly name: string;
  readonly part: 'firing-end' | 'ceramic';
  /** Ground strap and centre electrode are drawn worn away. */
  readonly worn?: true;
  readonly marks: readonly PlugMark[];
  readonly feature: { readonly text: string; readonly at: Point; readonly mark: Point };
  readonly meaning: string;
}

/** A hanging drop with its tip at a point. */
function drop(x: number, y: number): string {
  return `M${x} ${y}c-2 4 -4 6 -4 9a4 4 0 0 0 8 0c0 -3 -2 -5 -4 -9z`;
}

/** A round spot. */
function spot(x: number, y: number, radius: number): string {
  return `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${radius * 2} 0a${radius} ${radius} 0 1 0 ${-radius * 2} 0z`;
}

/** Soot is dots and oil is lines, not a filled nose: on a dark page a filled nose would be a light one. */
const soot = [
  [33, 51], [38, 51], [43, 51], [48, 51], [53, 51], [35, 55], [40, 55], [45, 55], [50, 55], [55, 54], [34, 59], [38, 59], [43, 59], [48, 59], [53, 59],
  [36, 63], [41, 63], [46, 63], [51, 63], [37, 67], [42, 67], [47, 67], [51, 67], [38, 71], [43, 71], [48, 71], [37, 75], [41, 75], [46, 75], [50, 75],
  [41, 80], [46, 81], [42, 85], [47, 86], [42, 89], [66, 60], [65, 70], [67, 78], [65, 87], [67, 94], [44, 102], [51, 102], [58, 102], [64, 101], [39, 102],
] as const;
const blisters = [[37, 60], [45, 64], [50, 57], [40, 72], [48, 76], [43, 53]] as const;

export const plugLooks = {
  normal: {
    name: 'Normal',
    part: 'firing-end',
    marks: [],
    feature: { text: 'even gap', at: { x: 84, y: 98 }, mark: { x: 50, y: 95 } },
    meaning: 'a dry nose of light brown to grey, square edges, an even gap. It clears nothing by itself.',
  },
  worn: {
    name: 'Worn, wide gap',
    part: 'firing-end',
    worn: true,
    marks: [],
    feature: { text: 'wide gap', at: { x: 84, y: 96 }, mark: { x: 49, y: 92 } },
    meaning: 'edges rounded, strap hollowed, a wide gap. It asks for more voltage than the coil can spare under load.',
  },
  sooty: {
    name: 'Sooty',
    part: 'firing-end',
    marks: soot.map(([x, y]) => ({ d: spot(x, y, 1.1), line: 'solid' })),
    feature: { text: 'dry soot', at: { x: 84, y: 70 }, mark: { x: 54, y: 64 } },
    meaning: 'dry soot, black and dull, that comes off on the finger. Too rich, too cold, or too weak a spark for too long.',
  },
  oily: {
    name: 'Oily',
    part: 'firing-end',
    marks: [
      { d: 'M33 49q2 8 3 15q1 6 3 14M36 49q1 8 2 15q1 8 2 14M39 49q1 8 1 29M42 49v42M45 49v42M48 49q-1 10 -1 29M51 49q-2 10 -3 29M54 49q-2 10 -4 24', line: 'ink' },
      { d: drop(28, 46), line: 'soft' },
      { d: drop(44, 106), line: 'soft' },
      { d: drop(56, 106), line: 'soft' },
      { d: drop(66, 104), line: 'soft' },
    ],
    feature: { text: 'oil film', at: { x: 84, y: 70 }, mark: { x: 54, y: 62 } },
    meaning: 'a black and shiny oil film. Oil comes past rings or valve stems.',
  },
  petrolWet: {
    name: 'Petrol-wet',
    part: 'firing-end',
    marks: [
      { d: drop(34, 54), line: 'body' },
      { d: drop(45, 66), line: 'body' },
      { d: drop(56, 54), line: 'body' },
      { d: drop(52, 106), line: 'body' },
      { d: drop(66, 107), line: 'body' },
    ],
    feature: { text: 'drops', at: { x: 84, y: 70 }, mark: { x: 47, y: 73 } },
    meaning: 'clear drops that smell of petrol. Fuel arrives and is not lit.',
  },
  overheated: {
    name: 'Overheated',
    part: 'firing-end',
    worn: true,
    marks: [
      ...blisters.map(([x, y]) => ({ d: spot(x, y, 2.4), line: 'body' as const })),
      { d: 'M40 106l3 3l4 -2l3 3l5 -3l3 2', line: 'ink' },
    ],
    feature: { text: 'blisters', at: { x: 84, y: 66 }, mark: { x: 50, y: 58 } },
    meaning: 'a white nose with blisters, burnt electrodes. Lean, loose in its seat, or the wrong heat range.',
  },
  cracked: {
    name: 'Cracked insulator',
    part: 'ceramic',
    marks: [{ d: 'M33 50l6 5l-3 6l8 4l-2 7l9 5l-2 5l7 3', line: 'accent' }],
    feature: { text: 'crack', at: { x: 84, y: 62 }, mark: { x: 43, y: 66 } },
    meaning: 'a crack across the ceramic, from a fall, a tilted socket or heat. The spark takes the crack.',
  },
  tracked: {
    name: 'Flash-over track',
    part: 'ceramic',
    marks: [{ d: 'M47 20l2 9l-3 8l4 10l-3 10l4 9l-2 8l2 8', line: 'accent' }],
    feature: { text: 'burnt line', at: { x: 79, y: 50 }, mark: { x: 49, y: 47 } },
    meaning: 'a thin burnt line lengthways, terminal to shell. The boot has its fellow: renew both.',
  },
  sound: {
    name: 'Sound ceramic',
    part: 'ceramic',
    marks: [{ d: 'M31 78q13 4 26 0v4H31z', line: 'soft' }],
    feature: { text: 'brown ring', at: { x: 78, y: 66 }, mark: { x: 55, y: 80 } },
    meaning: 'white and whole. A brown ring where it meets the shell is corona stain and no fault.',
  },
} as const satisfies Readonly<Record<string, PlugLook>>;

export type PlugLookName = keyof typeof plugLooks;
