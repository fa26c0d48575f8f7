import type { Shape } from './shape.ts';
import { arrow, box, dot, path, picture, words, type Illustration, type Point } from './sketch.ts';

export type SwappedPart = 'coil' | 'plug' | 'lead' | 'injector';

const size = { width: 300, height: 318 };

const leftOver: Readonly<Record<SwappedPart, string>> = {
  coil: 'plug, boot or lead, wiring, fuel, air or compression',
  plug: 'coil, lead or boot, wiring, fuel, air or compression',
  lead: 'plug, coil or cap, fuel, air or compression',
  injector: 'its wiring, spark, air or compression',
};

interface Scene {
  readonly at: Point;
  /** The part over cylinder A, then the one over cylinder B. */
  readonly parts: readonly [string, string];
  readonly misfire: 'A' | 'B';
}

function place(scene: Scene, letter: 'A' | 'B', part: string): Shape[] {
  const x = scene.at.x + (letter === 'A' ? 36 : 108);
  const y = scene.at.y;
  const bad = scene.misfire === letter;
  return [
    path(`M${x} ${y + 22}V${y + 42}`),
    box({ x: x - 32, y: y + 2 }, { width: 64, height: 21 }, 'body'),
    words(part, { x, y: y + 17 }, 'middle'),
    dot({ x, y: y + 62 }, 20, 'body'),
    ...(bad ? [path(`M${x - 26} ${y + 50}l6 5l-4 5l7 5l-5 6l6 5M${x + 26} ${y + 50}l-6 5l4 5l-7 5l5 6l-6 5`, 'accent')] : []),
    words(letter, { x, y: y + 66 }, 'middle', 'strong'),
    words(bad ? 'misfire' : 'runs well', { x, y: y + 97 }, 'middle', bad ? 'strong' : 'plain'),
  ];
}

function scene(one: Scene): Shape[] {
  return [...place(one, 'A', one.parts[0]), ...place(one, 'B', one.parts[1])];
}

/** What a swap of one part between cylinder A, which misfires, and cylinder B, which runs well, can show. */
export function swapDiagram(part: SwappedPart): Illustration {
  const [a, b] = [`${part} A`, `${part} B`] as const;
  const title = `Swapping a ${part} between cylinders A and B, before and after`.replace('a injector', 'an injector');
  return {
    title,
    note: `Before, ${a} is at cylinder A, which has the misfire, and ${b} at cylinder B, which runs well. The two change places, nothing else, and the same run is repeated.`,
    points: [
      { label: 'Moved', text: `the misfire is now at cylinder B, where ${a} went. The ${part} is bad.` },
      { label: 'Stayed', text: `the misfire is still at cylinder A, now with ${b}. The ${part} is good; what is left is ${leftOver[part]}.` },
      { label: 'Gone, or at both', text: 'no answer. A contact was disturbed, or the cause is shared; make it show again first.' },
    ],
    panels: [
      picture(size, title, [
        words('Before', { x: 150, y: 14 }, 'middle', 'strong'),
        ...scene({ at: { x: 78, y: 20 }, parts: [a, b], misfire: 'A' }),
        words('change places', { x: 150, y: 146 }, 'middle', 'faint'),
        arrow({ x: 100, y: 144 }, { x: 78, y: 166 }),
        arrow({ x: 200, y: 144 }, { x: 222, y: 166 }),
        path('M150 174V310', 'thin'),
        words('Moved', { x: 72, y: 184 }, 'middle', 'strong'),
        words('Stayed', { x: 228, y: 184 }, 'middle', 'strong'),
        ...scene({ at: { x: 0, y: 190 }, parts: [b, a], misfire: 'B' }),
        ...scene({ at: { x: 156, y: 190 }, parts: [b, a], misfire: 'A' }),
        words(`The ${part} is bad`, { x: 72, y: 310 }, 'middle'),
        words(`The ${part} is good`, { x: 228, y: 310 }, 'middle'),
      ]),
    ],
  };
}
