import type { Shape } from './shape.ts';
import { arrow, dot, path, picture, words, type Illustration } from './sketch.ts';

const size = { width: 300, height: 304 };

/** Block with the bore and its water jacket, the next bore cut off at the edge, and the crankcase. */
function block(): Shape[] {
  return [
    path('M62 132H104V262H62ZM196 132H220V262H196Z', 'body'),
    path('M72 133H94V236H72Z', 'soft'),
    path('M222 196H296M222 203H296M222 210H296M222 236H296', 'thin'),
    path('M62 262L40 286V300H262V286L220 262', 'ink'),
  ];
}

/** Head with its two ports and the plug's well; both valves are on their seats. */
function head(): Shape[] {
  return [
    path('M62 128V62H92L122 112H136L112 62H140V98H144V118H156V98H160V62H188L164 112H178L208 62H296V128H196L178 116H122L104 128Z', 'body'),
    path('M119 115L138 111M162 111L181 115', 'ink'),
    path('M129 112L106 62M171 112L194 62', 'thin'),
    path('M146 98V112M154 98V112M150 118V122', 'thin'),
    path('M256 62V128M268 62V128', 'thin'),
    path('M62 130H104M196 130H296', 'dash'),
  ];
}

function piston(): Shape[] {
  return [
    path('M145 192L136 296H164L155 192Z', 'body'),
    path('M106 142H194V206H106Z', 'body'),
    path('M106 150H194M106 158H194M106 166H194', 'ink'),
    dot({ x: 150, y: 188 }, 7, 'body'),
  ];
}

/** Where compression can go, each way with the mouth it comes out of. */
export function leakEscapes(): Illustration {
  const title = 'Ways out of a cylinder that does not hold its compression';
  return {
    title,
    note: 'Both valves shut, piston at the top of compression. The mouth where air comes out names the part that does not seal.',
    points: [
      { label: '1 throttle', text: 'the inlet valve leaks.' },
      { label: '2 tail pipe', text: 'the exhaust valve leaks.' },
      { label: '3 oil filler', text: 'past rings, piston or bore into the crankcase. A little always goes this way. Only this leak is sealed for a while by oil.' },
      { label: '4 header tank', text: 'the gasket or a crack lets it into the coolant: bubbles.' },
      { label: '5 next plug hole', text: 'the gasket is burnt through to the neighbour.' },
      { label: '6 plug thread', text: 'thread or seat of the plug is spoiled.' },
    ],
    panels: [
      picture(size, title, [
        ...block(),
        ...head(),
        ...piston(),
        arrow({ x: 114, y: 92 }, { x: 84, y: 40 }, 'accent'),
        arrow({ x: 186, y: 92 }, { x: 216, y: 40 }, 'accent'),
        arrow({ x: 150, y: 92 }, { x: 150, y: 28 }, 'accent'),
        arrow({ x: 105, y: 140 }, { x: 105, y: 250 }, 'accent'),
        path('M105 250Q100 280 60 280', 'accent'),
        arrow({ x: 60, y: 280 }, { x: 24, y: 240 }, 'accent'),
        arrow({ x: 104, y: 134 }, { x: 40, y: 134 }, 'accent'),
        arrow({ x: 196, y: 138 }, { x: 250, y: 146 }, 'accent'),
        words('1 throttle', { x: 70, y: 34 }, 'middle'),
        words('2 tail pipe', { x: 230, y: 34 }, 'middle'),
        words('6 plug thread', { x: 150, y: 18 }, 'middle'),
        words('3 oil', { x: 2, y: 216 }),
        words('filler', { x: 2, y: 230 }),
        words('4 header', { x: 2, y: 104 }),
        words('tank', { x: 2, y: 118 }),
        words('5 next', { x: 226, y: 166 }),
        words('plug hole', { x: 226, y: 180 }),
      ]),
    ],
  };
}
