import { pinArrangements, type PinArrangement, type PinCount } from './connector.data.ts';
import type { Shape } from './shape.ts';
import { box, path, picture, words, type Illustration } from './sketch.ts';

const width = 300;
const faceBottom = 84;
const tableTop = 100;
const rowHeight = 44;
const pitch: Readonly<Record<PinCount, number>> = { 2: 100, 3: 86, 4: 72 };
const countWord: Readonly<Record<PinCount, string>> = { 2: 'two', 3: 'three', 4: 'four' };

function places(count: PinCount): readonly number[] {
  return Array.from({ length: count }, (_, index) => width / 2 + (index - (count - 1) / 2) * pitch[count]);
}

function face(count: PinCount): Shape[] {
  const xs = places(count);
  const left = (xs[0] ?? 0) - 30;
  const body = width - 2 * left;
  return [
    path(`M${left + 8} 20H${left + body - 8}L${left + body} 28V${faceBottom}H${left}V28Z`, 'body'),
    path(`M${width / 2 - 20} 20V8H${width / 2 + 20}V20M${width / 2 - 12} 14H${width / 2 + 12}`, 'ink'),
    path(`M${left + 6} 33V78H${left + body - 6}V33Z`, 'thin'),
    ...xs.flatMap((x, index) => [
      box({ x: x - 11, y: 50 }, { width: 22, height: 22 }),
      path(`M${x - 4} 56H${x + 4}V66H${x - 4}Z`, 'solid'),
      words(String(index + 1), { x, y: 46 }, 'middle', 'strong'),
      path(`M${x} 72V${tableTop}`, 'thin'),
    ]),
  ];
}

function row(arrangement: PinArrangement, index: number, count: PinCount): Shape[] {
  const top = tableTop + index * rowHeight;
  return [
    path(`M4 ${top}H${width - 4}`, 'thin'),
    words(arrangement.name, { x: 4, y: top + 16 }, 'start', 'faint'),
    ...places(count).map((x, pin) => words(arrangement.pins[pin] ?? '', { x, y: top + 34 }, 'middle')),
  ];
}

/** The wiring's half of a connector seen from the front, and below each contact what it is on common arrangements. */
export function connectorFace(count: PinCount): Illustration {
  const arrangements = pinArrangements[count];
  const title = `Connector with ${countWord[count]} pins, and what each pin is on common arrangements`;
  const bottom = tableTop + arrangements.length * rowHeight;
  return {
    title,
    note: 'Looking into the half on the wiring, latch up. The order and the numbers of the pins differ from make to make; check them on the wiring diagram of the car.',
    points: arrangements.map(({ name, pins, meaning }) => ({
      label: name,
      text: `${pins.map((pin, index) => `${index + 1} ${pin}`).join(', ')}. Here ${meaning}`,
    })),
    panels: [picture({ width, height: bottom + 2 }, title, [...face(count), ...arrangements.flatMap((one, index) => row(one, index, count)), path(`M4 ${bottom}H${width - 4}`, 'ink')])],
  };
}
