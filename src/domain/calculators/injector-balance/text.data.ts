import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`v_i = 100\,\frac{d_i - M}{M}`,
    plain: 'v_i = 100 × (d_i − M) / M',
    symbols: [
      { tex: 'v_i', meaning: 'one injector against the mean, percent' },
      { tex: 'd_i', meaning: 'pressure drop of that injector' },
      { tex: 'M', meaning: 'mean of all the drops' },
    ],
    sources: [{ id: 'common-practice' }, { id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'One lazy injector',
    inputs: { drops: '42 30 43 41' },
    says: 'Injector 2 lies −23.08 % from the mean of 39.00 kPa: one passes too little.',
  },
  {
    title: 'One that passes too much',
    inputs: { drops: '40 41 55 42 kPa' },
    says: 'Injector 3 lies +23.60 % from the mean of 44.50 kPa: one passes too much.',
  },
];

export const table: TableDefinition = {
  caption: 'Four injectors, three with a drop of 40 kPa and one that differs, allowed 20 % either way',
  rows: ['20', '25', '28', '30', '34', '37', '40', '44', '48', '52', '56', '60'].map((drop) => ({ drops: `40 40 ${drop} 40 kPa` })),
  columns: ['drops', 'mean', 'deviations', 'verdict'],
};

/** What to do next. Common practice. */
export const verdictNotes = {
  inside: 'They pass alike. Spray shape and weeping at rest are not proved by it: look for a wet plug after standing.',
  below: 'The odd one passes less than its fellows: clogged, sticking or weakly driven. Check its wiring and resistance, then clean it or swap it with a neighbour and see whether the misfire moves.',
  above: 'The odd one passes more than its fellows or does not shut: look for a wet, sooty plug and fuel in the oil, and watch whether the rail holds its pressure.',
} as const;

export const notes = {
  onlyTwo: 'The two differ by more than is allowed, but of two each lies as far from the mean as the other. Compare with the maker’s figure, or swap them, to tell which is odd.',
  method: 'Same pulses, same starting pressure, engine off, pump off while each is pulsed. Other workshops allow 10 kPa either way instead of a percentage. Common practice.',
  safety: 'Port injection only, with the engine cool and no spark near: each pulse puts fuel into the cylinder, so do not repeat it many times before cranking with the plugs in. Never gauge the high-pressure side of direct injection.',
} as const;
