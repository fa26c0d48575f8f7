import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';
import type { GasPattern } from './pattern.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`\lambda = \frac{a + \frac{b}{2} + o + \frac{n}{2} + \left(\frac{h}{4}\cdot\frac{K}{K + \frac{b}{a}} - \frac{x}{2}\right)(a + b)}{\left(1 + \frac{h}{4} - \frac{x}{2}\right)(a + b + k\,c)}`,
    plain: 'λ = [CO2 + CO/2 + O2 + NO/2 + (h/4 × K / (K + CO/CO2) − x/2) × (CO2 + CO)] / [(1 + h/4 − x/2) × (CO2 + CO + k × HC)]',
    symbols: [
      { tex: String.raw`\lambda`, meaning: 'lambda: air supplied over air needed' },
      { tex: 'a', meaning: 'carbon dioxide, CO2, percent by volume' },
      { tex: 'b', meaning: 'carbon monoxide, CO, percent by volume' },
      { tex: 'o', meaning: 'oxygen, O2, percent by volume' },
      { tex: 'n', meaning: 'nitric oxide, NO, percent by volume' },
      { tex: 'c', meaning: 'unburnt fuel, HC, parts per million' },
      { tex: 'h', meaning: 'hydrogen to carbon atoms in the fuel, 1.7261' },
      { tex: 'x', meaning: 'oxygen to carbon atoms in the fuel, 0.0176' },
      { tex: 'K', meaning: 'water-gas constant, 3.5' },
      { tex: 'k', meaning: 'carbon in the HC, percent for each ppm: 0.0006 as hexane, 0.0003 as propane, 0.0001 as methane' },
    ],
    sources: [{ id: 'oiml-r-99', place: 'clause on the calculation of lambda, recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Warm idle, good catalyst',
    inputs: { co: '0.05', co2: '15.2', o2: '0.1', hc: '20' },
    says: 'Lambda is 1.002 and the gases are healthy.',
  },
  {
    title: 'One cylinder of four not firing',
    inputs: { co: '0.5', co2: '11.5', o2: '4.6', hc: '2500' },
    says: 'Lambda reads 1.112, but oxygen and HC are high together: a misfire, not a lean mixture.',
  },
];

/** CO, CO2, HC, O2. */
const gases = [
  ['0.05', '15.2', '20', '0.1'],
  ['0.7', '14.7', '150', '0.7'],
  ['3.0', '12.8', '250', '0.3'],
  ['6.0', '10.8', '450', '0.2'],
  ['0.1', '13.0', '60', '2.9'],
  ['0.1', '13.7', '20', '2.1'],
  ['0.5', '11.5', '2500', '4.6'],
  ['0.1', '11.0', '900', '5.5'],
] as const;

export const table: TableDefinition = {
  caption: 'Lambda and pattern of typical exhaust gases, HC in ppm as hexane',
  rows: gases.map(([co, co2, hc, o2]) => ({ co: `${co} %`, co2: `${co2} %`, hc: `${hc} ppm`, o2: `${o2} %` })),
  columns: ['co', 'co2', 'hc', 'o2', 'lambda', 'pattern'],
};

/** What each pattern points to and what to do next. Common practice. */
export const patternNotes: Readonly<Record<GasPattern, string>> = {
  healthy: 'The gases fit a sound, warm engine. With a hot catalyst look for CO under 0.2, CO2 over 14.5 and O2 under 0.5 %, and HC under 50 ppm; if yours are worse, warm it up and read again.',
  'ahead-of-catalyst': 'Usual for gas ahead of a catalyst or without one. Read at the tail pipe behind a catalyst, it is cold or no longer working.',
  rich: 'Too much fuel for the air. Look for high fuel pressure, a leaking injector, the purge valve, a blocked air filter or a sensor that reads cold.',
  'rich-misfire': 'Either a rich cylinder fails to fire, or a rich engine has air leaking into its exhaust. Close up the exhaust joints first, then pull one cylinder at a time.',
  'lean-or-air-leak': 'Oxygen without unburnt fuel: a lean mixture that still fires, or air that came in behind the cylinders. Test exhaust joints and sample hose with smoke or soapy water, then read again.',
  misfire: 'Oxygen and unburnt fuel together: a charge went through without burning. Find the cylinder, then test its plug, boot, coil, injector and compression. A mixture that is too lean to fire looks the same.',
  'cold-or-oil': 'Unburnt fuel without spare oxygen. Bring engine and catalyst to full heat and read again; if it stays, think of oil vapour or a misfire that comes and goes.',
  'sample-leak': 'Air in the sample, for the CO is not low as it would be in a lean engine. Check probe, hose, filter and water trap before the car.',
  'no-single-pattern': 'Neither oxygen nor CO makes up for the low CO2. Check the analyser on outside air, its filters and the fuel chosen, and read again.',
};

export const notes = {
  rich: 'Lambda lies below 0.97, the lower end that many yearly tests allow at fast idle. Your own country’s rule comes first.',
  lean: 'Lambda lies above 1.03, the upper end that many yearly tests allow at fast idle. Your own country’s rule comes first; an exhaust leak or a misfire shifts it this way.',
  inTest: 'Lambda lies between 0.97 and 1.03, which many yearly tests ask for at fast idle. Your own country’s rule comes first.',
  misfire:
    'A plain misfire leaves lambda where it was if all the HC is seen, for fuel and oxygen pass through together. Analysers see too little of it, so a misfiring car reads lean. Trust two decimals, not three.',
} as const;
