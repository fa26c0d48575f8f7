import type { Shape } from './shape.ts';
import { arrow, curve, leader, path, picture, stretch, words, type Illustration, type Point } from './sketch.ts';
import { primaryTrace, resistanceRamp, secondaryTrace, shortedRamp, soundRamp } from './traces.data.ts';

const width = 300;
const noScale = 'The shape only, without a scale; compare every point with a cylinder that runs well.';

/** Axes without figures: what goes up, and time across. */
export function frame(height: number, upward: string, floor: number): Shape[] {
  return [
    arrow({ x: 6, y: floor }, { x: 6, y: 18 }),
    path(`M6 ${floor}H${width - 6}`, 'thin'),
    words(upward, { x: 2, y: 12 }, 'start', 'faint'),
    words('time', { x: width - 34, y: height - 4 }, 'end', 'faint'),
    arrow({ x: width - 30, y: height - 8 }, { x: width - 6, y: height - 8 }),
  ];
}

/** What is left in the coil swings out: each swing smaller than the one before. */
function ringing(from: Point, end: number, rest: number, swings: number): Point[] {
  const steps = swings * 12;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const share = step / steps;
    return { x: from.x + share * (end - from.x), y: rest + (from.y - rest) * Math.exp(-3.2 * share) * Math.cos(2 * Math.PI * swings * share) };
  });
}

/** One firing on the high-tension side. */
export function secondaryVoltage(): Illustration {
  const title = 'Shape of the secondary voltage at one firing';
  return {
    title,
    note: `From left to right. ${noScale}`,
    points: [
      { label: 'Charging (dwell)', text: 'the coil is switched on and charges, until the firing line.' },
      { label: 'Dip', text: 'the moment of switching on. A spark must not show here.' },
      { label: 'Firing line', text: 'the voltage that starts the spark. High: a wide gap, an open lead, a lean charge. Low: fouling, a leak, little compression.' },
      { label: 'Burn line', text: 'the spark burns, nearly level. Steep: a resistance in series.' },
      { label: 'Burn time', text: 'how long the spark lasts. Short when the firing line took most of the energy.' },
      { label: 'Swings', text: 'the oscillations of what is left in the coil. Few: shorted turns.' },
    ],
    panels: [
      picture({ width, height: 200 }, title, [
        ...frame(200, 'voltage', 164),
        curve(secondaryTrace, 'accent'),
        curve(ringing({ x: 206, y: 84 }, 290, 128, 5), 'accent'),
        words('firing line', { x: 124, y: 32 }),
        words('burn line', { x: 166, y: 80 }, 'middle'),
        words('swings', { x: 250, y: 90 }, 'middle'),
        words('dip', { x: 32, y: 156 }, 'end'),
        ...stretch(38, 116, 170, 'charging (dwell)'),
        ...stretch(126, 206, 170, 'burn time'),
      ]),
    ],
  };
}

/** One firing on the low-tension side, at the switched terminal. */
export function primaryVoltage(): Illustration {
  const title = 'Shape of the primary voltage at one firing';
  return {
    title,
    note: `At the switched terminal of the coil, from left to right. ${noScale}`,
    points: [
      { label: 'Supply', text: 'the switch is open and the terminal stands at supply voltage.' },
      { label: 'Floor', text: 'the switch is closed. High or sloping: resistance in switch or earth.' },
      { label: 'Charging (dwell)', text: 'the time on the floor.' },
      { label: 'Kick', text: 'the switch opens and the field collapses. Low: a winding that cannot ring, or a coil hardly charged.' },
      { label: 'Burn line', text: 'the spark, seen through the turns of the coil.' },
      { label: 'Burn time', text: 'from the kick to the step at the end of the burn line.' },
      { label: 'Swings', text: 'the oscillations of what is left. Few: shorted turns or a leaking condenser.' },
    ],
    panels: [
      picture({ width, height: 200 }, title, [
        ...frame(200, 'voltage', 164),
        curve(primaryTrace, 'accent'),
        curve(ringing({ x: 206, y: 72 }, 290, 112, 5), 'accent'),
        words('supply', { x: 14, y: 104 }),
        words('floor', { x: 76, y: 148 }, 'middle'),
        words('kick', { x: 124, y: 32 }),
        words('burn line', { x: 166, y: 66 }, 'middle'),
        words('swings', { x: 250, y: 76 }, 'middle'),
        ...stretch(38, 116, 170, 'charging (dwell)'),
        ...stretch(126, 206, 170, 'burn time'),
      ]),
    ],
  };
}

/** Three charges of a coil: sound, with shorted turns, and with resistance in the circuit. */
export function coilCurrent(): Illustration {
  const title = 'Shapes of the current while a coil charges';
  return {
    title,
    note: `Three coils, one after the other. ${noScale}`,
    points: [
      { label: 'Sound', text: 'a slope from zero, perhaps a knee, and a drop straight to zero, where the spark is.' },
      { label: 'Knee, level top', text: 'the driver holds the current back. Coils without this limit drop at the top of the slope.' },
      { label: 'Shorted turns', text: 'a jump at the start, then a climb from there.' },
      { label: 'Resistance', text: 'the slope sags and flattens to a low top: a joint, pin or wire in the circuit.' },
    ],
    panels: [
      picture({ width, height: 204 }, title, [
        ...frame(204, 'current', 160),
        curve(soundRamp, 'accent'),
        curve(shortedRamp, 'accent'),
        curve(resistanceRamp, 'accent'),
        words('knee', { x: 26, y: 52 }, 'middle'),
        ...leader({ x: 42, y: 50 }, { x: 69, y: 60 }),
        words('level top', { x: 88, y: 46 }, 'middle'),
        words('slope', { x: 50, y: 130 }),
        words('drop', { x: 92, y: 118 }),
        words('jump', { x: 128, y: 128 }),
        words('low top', { x: 266, y: 92 }, 'middle'),
        words('sound', { x: 48, y: 178 }, 'middle', 'strong'),
        words('shorted turns', { x: 152, y: 178 }, 'middle', 'strong'),
        words('resistance', { x: 254, y: 178 }, 'middle', 'strong'),
      ]),
    ],
  };
}
