import type { Shape } from './shape.ts';
import { arrow, curve, path, picture, stretch, words, type Illustration, type Point } from './sketch.ts';
import { frame } from './traces.ts';

const width = 300;
const pitch = 18;
const firstTooth = 15;
const teeth = 15;
const missing = 7;

function toothLeft(index: number): number {
  return firstTooth + index * pitch;
}

/** Rectangles of a wheel's rim or of a Hall signal: up over each tooth, down between, nothing where the tooth is left out. */
function rim(top: number, bottom: number): Shape {
  const steps = Array.from({ length: teeth }, (_, index) => (index === missing ? '' : `H${toothLeft(index) + 4}V${top}H${toothLeft(index) + 14}V${bottom}`));
  return path(`M${firstTooth - 6} ${bottom}${steps.join('')}H${toothLeft(teeth) + 6}`, 'ink');
}

/** One wave for each tooth. Where the tooth is missing the line comes to rest, and the next wave is a little taller. */
function waves(rest: number, height: number): Point[] {
  return Array.from({ length: teeth * 12 + 1 }, (_, step) => {
    const index = Math.min(Math.floor(step / 12), teeth - 1);
    const strength = index === missing ? 0 : index === missing + 1 ? 1.2 : 1;
    return { x: firstTooth + (step / 12) * pitch, y: rest - height * strength * Math.sin((2 * Math.PI * step) / 12) };
  });
}

/** The rim of a crank wheel and, below it, what an inductive and a Hall sensor make of it. */
export function crankSignal(): Illustration {
  const title = 'Crank wheel with its missing tooth, and the signals of two kinds of sensor';
  const gap = { from: toothLeft(missing), to: toothLeft(missing + 1) };
  return {
    title,
    note: 'A part of one turn. How many teeth are left out, and which way up the signal is, differs from engine to engine.',
    points: [
      { label: 'Wheel', text: 'teeth alike, with a missing tooth where the control unit finds its place. No other may be missing.' },
      { label: 'Inductive sensor', text: 'one tooth, one wave. Height grows with speed; waves of uneven height mean a wheel out of true or damaged.' },
      { label: 'Hall sensor', text: 'one tooth, one step up and down, upright and always of the same height.' },
      { label: 'Missing tooth', text: 'rest in both signals, once each turn. A second one, or one that comes and goes, is the fault.' },
    ],
    panels: [
      picture({ width, height: 226 }, title, [
        path(`M${gap.from} 26V212M${gap.to} 26V212`, 'dash'),
        words('wheel', { x: 4, y: 18 }, 'start', 'faint'),
        words('missing tooth', { x: (gap.from + gap.to) / 2, y: 18 }, 'middle', 'strong'),
        rim(32, 48),
        path(`M${firstTooth - 6} 60H${toothLeft(teeth) + 6}M9 48V60M${toothLeft(teeth) + 6} 48V60`, 'ink'),
        words('inductive sensor', { x: 4, y: 84 }, 'start', 'faint'),
        curve(waves(118, 20), 'accent'),
        ...stretch(toothLeft(11), toothLeft(12), 150, 'one tooth, one wave'),
        words('Hall sensor', { x: 4, y: 176 }, 'start', 'faint'),
        rim(188, 210),
      ]),
    ],
  };
}

const firstHump = 62;
const humpPitch = 19;
const rounds = 3;
/** An example of four cylinders. */
const firingOrder = [1, 3, 4, 2] as const;
const weakCylinder = 4;

function humps(base: number, height: number): Point[] {
  return Array.from({ length: rounds * firingOrder.length * 12 + 1 }, (_, step) => {
    const cylinder = firingOrder[Math.floor(step / 12) % firingOrder.length];
    const strength = cylinder === weakCylinder ? 0.3 : 1;
    return { x: firstHump + (step / 12) * humpPitch, y: base - height * strength * Math.sin((Math.PI * step) / 12) ** 2 };
  });
}

/** Current of the starter over three rounds of a four-cylinder engine, one cylinder weak. */
export function relativeCompression(): Illustration {
  const title = 'Starter current while cranking, with one weak cylinder';
  const number = (index: number): Shape => {
    const cylinder = firingOrder[index % firingOrder.length] ?? 0;
    return words(String(cylinder), { x: firstHump + (index + 0.5) * humpPitch, y: 134 }, 'middle', cylinder === weakCylinder ? 'strong' : 'plain');
  };
  const weak = Array.from({ length: rounds }, (_, round) => firstHump + (round * 4 + firingOrder.indexOf(weakCylinder) + 0.5) * humpPitch);
  return {
    title,
    note: 'An example with firing order 1-3-4-2. The shape only, without a scale.',
    points: [
      { label: 'Starter breaks loose', text: 'the first peak says nothing of compression; leave it out.' },
      { label: 'One round', text: 'each cylinder compresses once, in the firing order counted from the mark of cylinder 1. One hump, one compression.' },
      { label: 'Weak', text: 'the hump of cylinder 4 is low in every round. Low in one round only is no finding.' },
    ],
    panels: [
      picture({ width, height: 176 }, title, [
        ...frame(176, 'current', 118),
        curve([{ x: 6, y: 117 }, { x: 14, y: 117 }, { x: 18, y: 34 }, { x: 23, y: 30 }, { x: 30, y: 62 }, { x: 38, y: 84 }, { x: 48, y: 97 }, ...humps(100, 40)], 'accent'),
        words('starter breaks loose', { x: 30, y: 34 }),
        ...weak.flatMap((x) => [words('weak', { x, y: 54 }, 'middle', 'strong'), arrow({ x, y: 58 }, { x, y: 84 })]),
        ...Array.from({ length: rounds * firingOrder.length }, (_, index) => number(index)),
        ...stretch(firstHump, firstHump + 4 * humpPitch, 144, 'one round'),
      ]),
    ],
  };
}
