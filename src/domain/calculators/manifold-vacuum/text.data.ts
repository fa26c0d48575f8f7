import type { VerdictWord } from '../../measurement/types.ts';
import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`v = b - m \qquad v_0 = v + (b_0 - b)`,
    plain: 'v = b − m and v_0 = v + (b_0 − b)',
    symbols: [
      { tex: 'v_0', meaning: 'vacuum the same engine would draw at sea level' },
      { tex: 'v', meaning: 'manifold vacuum' },
      { tex: 'b_0', meaning: 'barometer at sea level, 101.325 kPa or 29.92 inHg' },
      { tex: 'b', meaning: 'barometer here, absolute; by height when it is not known' },
      { tex: 'm', meaning: 'manifold pressure, absolute' },
    ],
    sources: [{ id: 'us-standard-atmosphere-1976', place: 'part 1, layer from 0 to 11 km, recalled' }, { id: 'computed' }],
  },
  {
    tex: String.raw`L = 17 - (b_0 - b) \qquad U = 22 - (b_0 - b)`,
    plain: 'L = 17 − (b_0 − b) and U = 22 − (b_0 − b)',
    symbols: [
      { tex: 'L', meaning: 'lower end of the usual band here, inHg' },
      { tex: 'U', meaning: 'upper end of the usual band here, inHg' },
      { tex: 'b_0', meaning: 'barometer at sea level, inHg' },
      { tex: 'b', meaning: 'barometer here, inHg' },
    ],
    sources: [{ id: 'common-practice' }, { id: 'army-od-1001', place: 'lesson 3: about 20 inHg steady, about 1 inHg less for each 1000 ft' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'From live data',
    inputs: { manifoldPressure: '32.0 kPa', barometer: '99 kPa' },
    says: '32.0 kPa under a barometer of 99 kPa is a vacuum of 19.8 inHg: inside the usual band.',
  },
  {
    title: 'A gauge at 4000 ft',
    inputs: { vacuum: '16.0 inHg', altitude: '4000 ft' },
    says: '16.0 inHg at 4000 ft is as good as 20.1 inHg at sea level.',
  },
];

export const table: TableDefinition = {
  caption: 'What an engine that draws 20 inHg at sea level draws higher up, and the usual band there',
  rows: [
    ['0', '20.00'],
    ['1000', '18.93'],
    ['2000', '17.90'],
    ['3000', '16.90'],
    ['4000', '15.92'],
    ['5000', '14.98'],
    ['7000', '13.17'],
    ['10000', '10.66'],
  ].map(([altitude, vacuum]) => ({ altitude: `${altitude} ft`, vacuum: `${vacuum} inHg` })),
  columns: ['altitude', 'vacuum', 'seaLevelEquivalent', 'expectedLow', 'expectedHigh', 'verdict'],
};

/** What the verdict points to. Army manuals on the vacuum test; common practice. */
export const verdictNotes: Readonly<Record<VerdictWord, string>> = {
  inside: 'Usual for a warm idle. It does not clear a fault that comes only under load.',
  below: 'Low. Steady and low touches all cylinders: an inlet leak, late ignition or cam timing. A regular flick of the needle is one cylinder: valve or head gasket. Falling slowly at speed is a blocked exhaust.',
  above: 'More than usual at idle. Check the gauge, and whether the engine really idles: on the overrun with the throttle shut more is right.',
  'too-close-to-call': 'Too near an end of the usual band for how finely it was read. Read the gauge to a smaller step and watch the needle for flicks.',
};

export const notes = {
  seaLevel: 'Taken at sea level, for neither height nor barometer was typed. Higher up about 1 inHg less for each 1000 ft (305 m) is right.',
  otherEngines: 'The band is common practice; engines that shut the inlet late or have much valve overlap may idle at 13 to 18 inHg. Compare with a sound engine of the same kind; the engine maker’s figure comes first.',
  needle: 'How the needle moves tells more than where it stands: snap the throttle open and shut, and it should fall near 2, swing to about 25 and come back.',
} as const;
