import { plugLooks, type PlugLook, type PlugLookName } from './plugs.data.ts';
import type { Shape } from './shape.ts';
import { leader, path, picture, words, type Illustration } from './sketch.ts';

const size = { width: 150, height: 142 };

/** Both flanks of a thread as saw teeth, joined by slanting lines. */
function thread(top: number, turns: number): Shape[] {
  const steps = Array.from({ length: turns }, (_, index) => top + index * 8);
  const left = steps.map((y) => `L14 ${y + 4}L18 ${y + 8}`).join('');
  const right = steps.toReversed().map((y) => `L74 ${y + 4}L70 ${y}`).join('');
  return [
    path(`M18 ${top}${left}H70${right}Z`, 'body'),
    path(steps.map((y) => `M14 ${y + 4}L74 ${y + 7}`).join(''), 'thin'),
  ];
}

function firingEnd(look: PlugLook): Shape[] {
  const strap = look.worn
    ? 'M62 48V94Q62 101 56 102Q46 104 37 101V106Q54 110 64 106Q70 102 70 94V48Z'
    : 'M62 48V92Q62 98 56 98H36V106H58Q70 106 70 94V48Z';
  const electrode = look.worn ? 'M39 78V81Q39 84 44 84Q49 84 49 81V78Z' : 'M39 78V91H49V78Z';
  return [
    ...thread(4, 5),
    path('M16 44H72V49H16Z', 'body'),
    path('M30 49L36 78H52L58 49Z', 'body'),
    path(electrode, 'body'),
    path(strap, 'body'),
  ];
}

function ceramic(): Shape[] {
  return [
    path('M38 18V10Q38 4 44 4Q50 4 50 10V18Z', 'body'),
    path('M36 18H52Q57 22 53 27Q58 31 54 36Q58 40 55 45L57 84H31L33 45Q30 40 34 36Q30 31 35 27Q31 22 36 18Z', 'body'),
    path('M24 84H64L74 90V102H14V90Z', 'body'),
    path('M32 88V102M56 88V102', 'thin'),
    ...thread(102, 2),
  ];
}

function panel(look: PlugLook): Shape {
  const { text, at, mark } = look.feature;
  return picture(size, `${look.name}: ${look.meaning}`, [
    ...(look.part === 'firing-end' ? firingEnd(look) : ceramic()),
    ...look.marks.map(({ d, line }) => path(d, line)),
    ...leader({ x: at.x - 2, y: at.y - 4 }, mark),
    words(text, at),
    words(look.name, { x: 8, y: 136 }, 'start', 'strong'),
  ]);
}

/** Plugs side by side, each with the mark that names its state. */
export function plugAppearance(title: string, names: readonly PlugLookName[]): Illustration {
  const looks: readonly PlugLook[] = names.map((name) => plugLooks[name]);
  return {
    title,
    note: 'Drawn for the shape of the marks. Judge the colour beside a plug of a good cylinder of the same engine.',
    points: looks.map(({ name, meaning }) => ({ label: name, text: meaning })),
    panels: looks.map(panel),
  };
}
