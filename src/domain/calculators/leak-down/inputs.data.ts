import type { InputDefinition, OutputDefinition } from '../definition.ts';
import { aboveZero, quantity } from '../quantity.ts';

/** Testers run on shop air; a figure beyond this is a slip of digit or unit. */
const mostSupply = 200;

export const inputs: readonly InputDefinition[] = [
  quantity('supply', 'Supply gauge', 'pressure', 'psi', {
    ...aboveZero(mostSupply),
    hint: 'The gauge on the side of the air line. The published method uses 80 psi (552 kPa).',
  }),
  quantity('cylinder', 'Cylinder gauge', 'pressure', 'psi', {
    minimum: 0,
    maximum: mostSupply,
    hint: 'The gauge on the side of the cylinder, piston at the top of compression, crank held.',
  }),
  {
    name: 'escapes',
    label: 'Where the air comes out',
    kind: 'choice',
    optional: true,
    choices: [
      { value: 'exhaust', label: 'Exhaust pipe' },
      { value: 'intake', label: 'Throttle or air filter' },
      { value: 'exhaust-and-intake', label: 'Exhaust and throttle together' },
      { value: 'crankcase', label: 'Oil filler, dipstick or breather' },
      { value: 'coolant', label: 'Bubbles in the coolant' },
      { value: 'neighbour', label: 'Next plug hole' },
    ],
    hint: 'The place where it is loudest.',
  },
  {
    name: 'others',
    label: 'Cylinder gauge on the other cylinders',
    kind: 'quantity-list',
    dimension: 'pressure',
    unit: 'psi',
    optional: true,
    minimum: 0,
    maximum: mostSupply,
    hint: 'At the same supply, parted by blanks: a cylinder is judged best against its fellows.',
  },
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'leakage', label: 'Leakage', kind: 'quantity', unit: '%', decimals: 1, main: true },
  {
    name: 'verdict',
    label: 'By the bands of the trade',
    kind: 'word',
    words: {
      good: 'Good: to 10 %',
      serviceable: 'Serviceable: over 10 to 20 %',
      worn: 'Worn: over 20 to 30 %',
      repair: 'Needs repair: over 30 %',
    },
  },
  { name: 'within25', label: 'Not over the 25 % of the published method', kind: 'word' },
  {
    name: 'pattern',
    label: 'Points to',
    kind: 'word',
    words: {
      'exhaust-valve': 'Exhaust valve',
      'inlet-valve': 'Inlet valve',
      'both-valves': 'Exhaust and inlet valve',
      'rings-or-bore': 'Rings, piston or bore',
      'head-gasket-or-crack': 'Head gasket or a crack',
      'gasket-between-cylinders': 'Gasket between the cylinders',
      'not-at-top-dead-centre': 'Piston not at the top of compression',
    },
  },
  { name: 'aboveOthers', label: 'Worse than its fellows by, points', kind: 'quantity', unit: '%', decimals: 1 },
];
