import type { Calculation, FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';
import type { LeakagePattern, LeakageVerdict } from './leakage.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`q = 100\,\frac{p_s - p_c}{p_s}`,
    plain: 'leakage = 100 × (supply − cylinder) / supply',
    symbols: [
      { tex: 'q', meaning: 'leakage, percent of the supply' },
      { tex: 'p_s', meaning: 'supply gauge' },
      { tex: 'p_c', meaning: 'cylinder gauge' },
    ],
    sources: [{ id: 'faa-ac-43-13-1b', place: 'chapter 8, paragraphs 8-14 and 8-15' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Just over the published limit',
    inputs: { supply: '80 psi', cylinder: '59 psi', escapes: 'exhaust' },
    says: 'The cylinder loses 26.3 % of the supply. Air at the exhaust pipe points to the exhaust valve.',
  },
  {
    title: 'One against its fellows',
    inputs: { supply: '100 psi', cylinder: '78 psi', escapes: 'crankcase', others: '92 94 91' },
    says: 'It loses 22.0 %, which is 14.3 points more than its fellows: rings, piston or bore.',
  },
];

export const table: TableDefinition = {
  caption: 'Leakage at a supply of 80 psi and of 100 psi',
  rows: [
    ...['80', '72', '64', '60', '59', '56', '40'].map((cylinder) => ({ supply: '80 psi', cylinder: `${cylinder} psi` })),
    ...['100', '92', '90', '80', '75', '70', '68', '50'].map((cylinder) => ({ supply: '100 psi', cylinder: `${cylinder} psi` })),
  ],
  columns: ['supply', 'cylinder', 'leakage', 'verdict', 'within25'],
};

export const verdictNotes: Readonly<Record<LeakageVerdict, string>> = {
  good: 'The cylinder seals well. If it still misfires, look at spark, fuel and what happens hot or at speed.',
  serviceable: 'The cylinder seals well enough to run evenly. Compare it with its fellows before going deeper.',
  worn: 'The cylinder is worn or a valve leaks a little. Find where the air comes out and compare with its fellows.',
  repair: 'The cylinder loses too much to fire evenly. Find where the air comes out before anything is taken apart.',
};

/** Where the air comes out and what that means: FAA AC 43.13-1B for the valves and rings; gasket and timing are common practice. */
export const patternNotes: Readonly<Record<LeakagePattern, string>> = {
  'exhaust-valve': 'Air at the exhaust pipe passes the exhaust valve: burnt, bent, tight clearance, or dirt under it. With the air off, turn the engine over a few times and repeat before you take off the head: dirt may clear.',
  'inlet-valve': 'Air at the throttle passes the inlet valve: burnt, bent, tight clearance, or carbon under it.',
  'both-valves': 'Air at exhaust and throttle together. Make sure that the piston is at the top of compression; if it is, both valves leak or the cam timing is out.',
  'rings-or-bore': 'Air at the oil filler passes the rings. Some is usual in every engine; a roar against a whisper on the others is not. The oil test of the compression should agree.',
  'head-gasket-or-crack': 'Bubbles in the coolant mean a path into the water jacket: head gasket or a crack. Let the engine cool before the cap comes off, and do not run it on.',
  'gasket-between-cylinders': 'Air at the next plug hole means that the gasket between the two is burnt through. Both will be low on compression.',
  'not-at-top-dead-centre': 'Nearly all is lost at exhaust and throttle together: the piston is not at the top of compression, so valves are open. Set it again and repeat.',
};

/** Things true of every leak-down figure. */
export const generalNote =
  'Figures depend on the orifice in the tester, so compare only readings of the same tester. The bands are common practice for car engines; the 25 % is from a method for aircraft engines.';

const gasket = { page: 'faults/head-gasket-between-cylinders', label: 'Head gasket between cylinders' } as const;
const valve = { page: 'faults/valve-leaking', label: 'Valve leaking' } as const;

/** Where to go next by pattern. */
export const patternLinks: Readonly<Record<LeakagePattern, NonNullable<Calculation['next']>>> = {
  'exhaust-valve': [valve],
  'inlet-valve': [valve],
  'both-valves': [valve],
  'rings-or-bore': [
    { page: 'procedures/compression-wet', label: 'Compression test with oil' },
    { page: 'faults/rings-or-bore', label: 'Rings or bore' },
  ],
  'head-gasket-or-crack': [gasket],
  'gasket-between-cylinders': [gasket, { page: 'procedures/compression-dry', label: 'Compression test' }],
  'not-at-top-dead-centre': [],
};
