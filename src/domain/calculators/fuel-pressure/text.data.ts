import type { VerdictWord } from '../../measurement/types.ts';
import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`\Delta p = p_g + b - m`,
    plain: 'Δp = p_g + b − m',
    symbols: [
      { tex: String.raw`\Delta p`, meaning: 'pressure across the injector' },
      { tex: 'p_g', meaning: 'rail pressure, gauge' },
      { tex: 'b', meaning: 'barometer, absolute' },
      { tex: 'm', meaning: 'manifold pressure, absolute' },
    ],
    sources: [{ id: 'computed' }],
  },
  {
    tex: String.raw`l = 100\,\frac{p_g - q}{p_g} \qquad s = \frac{p_g - q}{t}`,
    plain: 'l = 100 × (p_g − q) / p_g and s = (p_g − q) / t',
    symbols: [
      { tex: 'l', meaning: 'lost while standing, percent of the start' },
      { tex: 'p_g', meaning: 'rail pressure at the start, gauge' },
      { tex: 'q', meaning: 'rail pressure after standing, gauge' },
      { tex: 's', meaning: 'lost each minute' },
      { tex: 't', meaning: 'time it stood, minutes' },
    ],
    sources: [{ id: 'computed' }, { id: 'common-practice' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A fixed regulator at idle',
    inputs: { rail: '300 kPa', manifoldPressure: '35 kPa', barometer: '101.3 kPa' },
    says: 'With 300 kPa on the gauge and 35 kPa in the manifold the injector feels 366.3 kPa.',
  },
  {
    title: 'Pressure held for five minutes',
    inputs: { rail: '3.80 bar', after: '3.42 bar', minutes: '5', low: '3.5 bar', high: '4.1 bar' },
    says: 'The rail is inside its limits and lost 10.0 % in 5 minutes, 7.6 kPa each minute: it holds.',
  },
];

export const table: TableDefinition = {
  caption: 'Pressure across the injector by rail and manifold pressure, barometer 101.325 kPa',
  rows: ['250', '300', '380'].flatMap((rail) => ['30', '50', '75', '101.325', '150'].map((manifoldPressure) => ({ rail: `${rail} kPa`, manifoldPressure: `${manifoldPressure} kPa` }))),
  columns: ['rail', 'manifoldPressure', 'acrossInjector'],
};

/** What the verdict means and what to do next. Common practice. */
export const verdictNotes: Readonly<Record<VerdictWord, string>> = {
  inside: 'The pressure is right here. It does not prove the flow: watch it with the throttle snapped open or under load.',
  below: 'Too low: weak pump, blocked filter, low voltage at the pump, or a regulator that passes. Measure voltage and earth at the pump before fitting one.',
  above: 'Too high: regulator stuck, its vacuum pipe off, or the return pinched. The engine runs rich.',
  'too-close-to-call': 'The gauge was read too coarsely for these limits. Read it to a finer step, or use a better gauge.',
};

export const notes = {
  across: 'What counts for the fuel is the pressure across the injector. A regulator with a vacuum pipe keeps that steady, so its rail falls by 40 to 60 kPa at idle; one in the tank does not.',
  boosted: 'The manifold stands above the barometer: that happens only under boost. On an engine without a charger one of the two figures is wrong.',
  noLimits: 'Without limits there is no verdict. Type the engine maker’s; port injection usually has 250 to 400 kPa on the gauge, many 300 or 380. Common practice.',
  noTime: 'Type the time it stood as well, to get the loss each minute.',
  leaks: 'More than about 50 kPa in five minutes is worth looking into: check valve in the pump, regulator, or an injector that weeps. Find which by the engine maker’s method. Common practice.',
  holds: 'No more than about 50 kPa in five minutes: it holds as usual. One injector may still weep too slowly to show. Common practice.',
  none: 'No pressure at all: listen for the pump, then check its fuse, relay, supply and earth. An empty tank and the crash switch come before any part.',
  safety:
    'Relieve the pressure by the engine maker’s method before any joint is undone, with the engine cool and no spark near. On direct injection never open the high-pressure side: read it from live data.',
} as const;
