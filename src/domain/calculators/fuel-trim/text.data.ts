import type { Calculation, FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';
import type { TrimPattern } from './trims.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`t = S + L`,
    plain: 't = S + L',
    symbols: [
      { tex: 't', meaning: 'total as the trade reckons it, percent' },
      { tex: 'S', meaning: 'short trim, percent' },
      { tex: 'L', meaning: 'long trim, percent' },
    ],
    sources: [{ id: 'common-practice' }],
  },
  {
    tex: String.raw`t' = 100\left(\left(1+\frac{S}{100}\right)\left(1+\frac{L}{100}\right)-1\right)`,
    plain: 't′ = 100 × ((1 + S/100) × (1 + L/100) − 1)',
    symbols: [
      { tex: "t'", meaning: 'total as the control unit applies it, percent' },
      { tex: 'S', meaning: 'short trim, percent' },
      { tex: 'L', meaning: 'long trim, percent' },
    ],
    sources: [{ id: 'sae-j1979', place: 'PIDs 06 to 09, sign and range' }, { id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Lean at idle only',
    inputs: { short: '+20', long: '+15', cruiseShort: '+1', cruiseLong: '+2' },
    says: 'The idle total is +35.0 %, or 38.0 % as applied; at 2500 rpm it falls to 3.0 %: adding fuel at idle, less with load.',
  },
  {
    title: 'Two banks pulling apart',
    inputs: { short: '+10', long: '+10', short2: '-12', long2: '-10' },
    says: 'Bank 1 totals 20.0 % and bank 2 totals −22.0 %: one bank adding, the other taking away, 42.0 % apart.',
  },
];

export const table: TableDefinition = {
  caption: 'Total trims: the plain sum, and as the control unit applies it',
  rows: [
    ['+3', '+5'],
    ['+10', '+10'],
    ['-4', '+12'],
    ['+20', '+15'],
    ['-12', '-10'],
    ['+25', '+25'],
    ['-8', '+8'],
  ].map(([short = '0', long = '0']) => ({ short, long })),
  columns: ['short', 'long', 'sum', 'product', 'pattern'],
};

/** What each pattern points to and what to do next. Common practice. */
export const patternNotes: Readonly<Record<TrimPattern, string>> = {
  'within-usual-band':
    'Every total lies within ±10 %, which is usual; ±5 % is good. The mixture is not the likely cause of the misfire.',
  'adding-fuel':
    'The engine is seen as lean here. Read the trims again at a steady 2500 rpm: if they come back towards zero look for air leaking in; if they grow look at fuel pressure.',
  'adding-at-idle':
    'Air that the meter does not see matters most at low flow: look for an inlet or vacuum leak, with a smoke test where you can.',
  'adding-with-load':
    'Fuel supply falls short as demand grows: check fuel pressure under load, filter and injectors, then whether the air-flow meter reads low.',
  'adding-everywhere':
    'Lean at all times: air-flow meter reading low, low fuel pressure, or an exhaust leak ahead of the oxygen sensor.',
  'removing-fuel':
    'The engine is seen as rich here. Read the trims again at a steady 2500 rpm before looking further: it tells a constant extra, such as purge, from one that grows with load.',
  'removing-at-idle':
    'Extra fuel that matters most at low flow: purge valve passing, leaking injector, pressure regulator diaphragm, or fuel in the oil.',
  'removing-with-load':
    'Rich as flow grows: fuel pressure too high, or the air-flow meter reading high. Measure the pressure first.',
  'removing-everywhere':
    'Rich at all times: purge valve passing, leaking injector, pressure regulator, fuel in the oil, fuel pressure too high or air-flow meter reading high.',
  'one-bank-adding':
    'The cause lies on the bank that adds fuel: an inlet leak, an injector, its oxygen sensor, an exhaust leak, or a cylinder that does not fire.',
  'one-bank-removing':
    'The cause lies on the bank that takes fuel away: a leaking injector or its oxygen sensor first.',
  'banks-opposite':
    'Banks that pull opposite ways suggest oxygen sensors connected to the wrong banks, cam timing of one bank, or a dead cylinder on one bank.',
  'banks-apart':
    'Each bank is within ±10 %, but they differ by more than 10 points: something on one bank only. Compare the banks part by part.',
  mixed: 'The readings make no single pattern. Read them again, engine warm and steady, and take one bank at a time.',
};

type Links = NonNullable<Calculation['next']>;

const smoke = { page: 'procedures/smoke-test', label: 'Smoke test' } as const;
const again = { page: 'procedures/fuel-trims', label: 'Read the trims at idle and at 2500 rpm' } as const;
const injectors = { page: 'procedures/swap-injectors', label: 'Swap injectors' } as const;
const counters = { page: 'procedures/misfire-counters', label: 'Misfire counters by cylinder' } as const;
const pressure = { page: 'ranges/fuel-pressure-port', label: 'Fuel pressure, port injection' } as const;

/** Where to go next by pattern. */
export const patternLinks: Readonly<Record<TrimPattern, Links>> = {
  'within-usual-band': [counters],
  'adding-fuel': [again, smoke],
  'adding-at-idle': [smoke],
  'adding-with-load': [pressure, injectors],
  'adding-everywhere': [smoke, pressure],
  'removing-fuel': [again],
  'removing-at-idle': [injectors],
  'removing-with-load': [pressure],
  'removing-everywhere': [pressure, injectors],
  'one-bank-adding': [counters, smoke, injectors],
  'one-bank-removing': [injectors, counters],
  'banks-opposite': [counters, again],
  'banks-apart': [counters, again],
  mixed: [again],
};
