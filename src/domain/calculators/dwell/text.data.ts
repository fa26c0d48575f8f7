import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`\alpha = 0.006\,n\,t \qquad \alpha_d = \frac{\alpha}{2}`,
    plain: 'crank angle = 0.006 × speed × time; distributor angle = half of it',
    symbols: [
      { tex: String.raw`\alpha_d`, meaning: 'angle at the distributor or camshaft, degrees: it turns at half speed' },
      { tex: String.raw`\alpha`, meaning: 'angle at the crank, degrees: 360 in 60 000 ms at 1 rpm' },
      { tex: 'n', meaning: 'engine speed, rpm' },
      { tex: 't', meaning: 'time, milliseconds' },
    ],
    sources: [{ id: 'computed' }],
  },
  {
    tex: String.raw`T = \frac{120000}{n\,z} \qquad f = \frac{n\,z}{120}`,
    plain: 'spacing = 120 000 / (speed × cylinders) ms; rate = speed × cylinders / 120 Hz',
    symbols: [
      { tex: 'T', meaning: 'time from one ignition of the engine to the next, milliseconds' },
      { tex: 'f', meaning: 'ignitions of the engine per second' },
      { tex: 'n', meaning: 'engine speed, rpm' },
      { tex: 'z', meaning: 'cylinders of a four-stroke engine' },
    ],
    sources: [{ id: 'computed' }],
  },
  {
    tex: String.raw`s = 100\,\frac{t}{P}`,
    plain: 'share = 100 × time / period of the coil',
    symbols: [
      { tex: 's', meaning: 'share of the coil’s period, percent' },
      { tex: 't', meaning: 'time, milliseconds' },
      { tex: 'P', meaning: 'period of the coil: two turns with a coil for each plug, one turn with a coil for two, T with a distributor' },
    ],
    sources: [{ id: 'computed' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Dwell of a plug coil',
    inputs: { cylinders: '4', speed: '6000 rpm', time: '3.5 ms' },
    says: '3.5 ms at 6000 rpm are 126.0 degrees of the crank, 17.5 % of the coil’s period.',
  },
  {
    title: 'One coil and a distributor',
    inputs: { cylinders: '4', speed: '3000 rpm', time: '4.0 ms', arrangement: 'distributor' },
    says: '4 ms at 3000 rpm are 72.0 degrees at the crank and 36.0 degrees at the distributor, 40.0 % of the coil’s period.',
  },
];

export const table: TableDefinition = {
  caption: 'Dwell of 3 ms on a four-cylinder engine',
  rows: ['coil-per-plug', 'wasted-spark', 'distributor'].flatMap((arrangement) =>
    ['800', '2000', '3000', '4500', '6000'].map((speed) => ({ cylinders: '4', time: '3 ms', speed: `${speed} rpm`, arrangement })),
  ),
  columns: ['arrangement', 'speed', 'angle', 'distributorAngle', 'share', 'eventSpacing'],
};
