import type { MisfireCodeRule } from '../../obd/misfire.ts';
import type { Calculation, FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`E = \frac{z\,N}{2}`,
    plain: 'E = z × N / 2',
    symbols: [
      { tex: 'E', meaning: 'firings in the window' },
      { tex: 'z', meaning: 'cylinders' },
      { tex: 'N', meaning: 'crankshaft revolutions; each cylinder of a four-stroke engine fires once in two' },
    ],
    sources: [{ id: 'computed' }],
  },
  {
    tex: String.raw`r = 100\,\frac{M}{E} \qquad s_i = 100\,\frac{m_i}{M}`,
    plain: 'r = 100 × M / E and s_i = 100 × m_i / M',
    symbols: [
      { tex: 'r', meaning: 'misfire rate, percent of firings' },
      { tex: 's_i', meaning: 'share of one cylinder in the misfires, percent' },
      { tex: 'm_i', meaning: 'misfires of that cylinder' },
      { tex: 'M', meaning: 'misfires of all cylinders' },
      { tex: 'E', meaning: 'firings in the window' },
    ],
    sources: [
      { id: 'ccr-1968-2', place: '(e)(3.1.3), single and multiple-cylinder codes' },
      { id: 'ccr-1968-2', place: '(e)(3.2.1) and (e)(3.2.2), windows and lowest limits, recalled' },
    ],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'One cylinder does nearly all the missing',
    inputs: { cylinders: '4', revolutions: '200', counts: '1 0 19 0' },
    says: '20 of 400 firings are missed, 5.00 %: the limit for the catalyst is reached, and the code of one cylinder may stand alone.',
  },
  {
    title: 'Two cylinders share it',
    inputs: { cylinders: '6', revolutions: '1000', counts: '22 0 0 23 0 0', order: '1-2-3-4-5-6' },
    says: '45 of 3000 firings are missed, 1.50 %: the lower limit is reached, and the code for several cylinders is compulsory.',
  },
];

export const table: TableDefinition = {
  caption: 'One dead cylinder, counted over 200 revolutions',
  rows: ['1', '2', '3', '4', '5', '6', '8', '10', '12'].map((cylinders) => ({
    cylinders,
    revolutions: '200',
    counts: '100',
  })),
  columns: ['cylinders', 'revolutions', 'counts', 'events', 'rate', 'floorReached'],
};

/** What follows from the shares. Source of the rule: 13 CCR 1968.2(e)(3.1.3). */
export const codeRuleNotes: Readonly<Record<MisfireCodeRule, string>> = {
  'no misfire counted':
    'No misfire was counted. Run the engine in the conditions that bring it on before ruling it out.',
  'single-cylinder code allowed':
    'One cylinder has more than 90 % of the misfires: start with its plug, boot, coil and injector, and swap one at a time.',
  'multiple-cylinder code compulsory':
    'Two or more cylinders have more than 10 % each: look at what they share (coil pair, bank, fuel, air, supply) before any single part.',
  'multiple-cylinder code by the base rule':
    'No cylinder has more than 90 %, and no two have more than 10 % each: the general code stands, though one cylinder leads. Test that cylinder first, then what it shares.',
};

type Links = NonNullable<Calculation['next']>;

const swapCoils = { page: 'procedures/swap-coils', label: 'Swap coils' } as const;
const plugs = { page: 'procedures/plug-removal-and-reading', label: 'Take out and read the plugs' } as const;
const counters = { page: 'procedures/misfire-counters', label: 'Misfire counters by cylinder' } as const;
const trims = { page: 'procedures/fuel-trims', label: 'Fuel trims' } as const;
const supply = { page: 'procedures/coil-supply-volt-drop', label: 'Volt drop of the coil supply' } as const;
const compression = { page: 'procedures/compression-dry', label: 'Compression test' } as const;

/** Without counts by cylinder the first thing is to get them. */
export const linksWithoutCylinders: Links = [counters];

export const codeRuleLinks: Readonly<Record<MisfireCodeRule, Links>> = {
  'no misfire counted': [counters, { page: 'procedures/read-and-note-codes', label: 'Read and note codes' }],
  'single-cylinder code allowed': [swapCoils, plugs, { page: 'procedures/swap-injectors', label: 'Swap injectors' }],
  'multiple-cylinder code compulsory': [trims, supply, compression],
  'multiple-cylinder code by the base rule': [plugs, trims, compression],
};
