import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const class5 = 'computed: resistance of IEC 60228 class 5 (public reproductions) × length × current; not a published number';
const gauge = 'computed: d = 0.127 mm × 92^((36 − n)/39) (ASTM B258, quoted), solid copper at 20 °C with 17.241 Ω·mm²/km';

/** mm², m, A; V. */
const drops = [
  ['2.5', '4', '20', 0.6384],
  ['1.5', '2.5', '8', 0.266],
  ['6', '3', '60', 0.594],
  ['0.5', '3', '0.5', 0.0585],
  ['1.0', '2', '5', 0.195],
  ['25', '1.5', '150', 0.1755],
  ['4', '6', '15', 0.4455],
  ['0.75', '5', '3', 0.39],
] as const;

/** Gauge and Ω/km, over one kilometre at 1 A. The print used 17.241 for 1000/58 = 17.24138, 22 parts in a million less. */
const gauges = [
  ['20', 33.308],
  ['18', 20.948],
  ['16', 13.174],
  ['14', 8.2853],
  ['12', 5.2107],
  ['10', 3.277],
  ['8', 2.0609],
  ['6', 1.2961],
  ['4', 0.8152],
] as const;
/** Rounded chart in circulation, Ω/km. */
const chart = [
  ['20', 33.3],
  ['16', 13.2],
  ['12', 5.21],
  ['10', 3.28],
  ['4', 0.815],
] as const;

const run = { current: '15', length: '3' };

export const cases: readonly CalculatorCase[] = [
  ...drops.map(
    ([area, length, current, drop]): CalculatorCase => ({
      label: `${area} mm², ${length} m, ${current} A`,
      inputs: { area, length, current },
      expected: { drop: [drop, 'V', 1e-9], resistance: [drop / Number(current), 'ohm', 1e-9] },
      absent: ['areaNeeded', 'nextSize'],
      source: class5,
    }),
  ),
  ...gauges.map(([awg, resistance]): CalculatorCase => ({ label: `gauge ${awg}, a kilometre`, inputs: { awg, length: '1000', current: '1' }, expected: { resistance: [resistance, 'ohm', resistance * 6e-5] }, source: gauge })),
  ...chart.map(([awg, resistance]): CalculatorCase => ({ label: `gauge ${awg} as charts round it`, inputs: { awg, length: '1 km', current: '1' }, expected: { resistance: [resistance, 'ohm', resistance * 2e-3] }, source: 'public chart of American wire gauge, rounded to three digits' })),
  { label: 'gauge 14, 3 m out and 3 m back', inputs: { awg: '14', length: '3', current: '10', returnPath: 'yes' }, expected: { drop: [0.49712, 'V', 2e-5] }, source: gauge },
  { label: 'gauge 36 is 0.127 mm thick', inputs: { awg: '36', length: '1', current: '1' }, expected: { resistance: [1.36107, 'ohm', 1e-4] }, source: 'ASTM B258 definition; computed: (1/58)/(π/4 × 0.127²)' },
  { label: 'gauge 0000 is 0.4600 inch thick', inputs: { awg: '-3', length: '1000', current: '1' }, expected: { resistance: [0.1608035, 'ohm', 1e-5] }, source: 'ASTM B258 definition; computed: (1/58)/(π/4 × 11.684²) × 1000' },
  {
    label: '1.5 mm² at 80 °C',
    inputs: { area: '1.5', length: '2.5', current: '8', temperature: '80' },
    expected: { drop: [0.32871, 'V', 5e-6], resistance: [0.041089, 'ohm', 5e-7] },
    source: 'computed: 13.3 × 314.5/254.5 mΩ/m (IEC 60228 correction, recalled)',
  },
  {
    label: 'the coefficient of copper at 20 °C agrees to a part in ten thousand',
    inputs: { area: '1.5', length: '2.5', current: '8', temperature: '80' },
    expected: { drop: [0.266 * 1.2358, 'V', 3.3e-5] },
    source: 'computed: 0.266 V × (1 + 0.00393 × 60), IEC 60028, recalled',
  },
  {
    label: 'size for 0.2 V: copper needed and next listed size',
    inputs: { ...run, allowed: '0.2' },
    expected: { areaNeeded: [3.879, 'mm2', 5e-4], nextSize: [4, 'mm2', 0], sureSize: [6, 'mm2', 0] },
    absent: ['drop', 'resistance'],
    source: 'computed: 0.017241 × 15 × 3/0.2; 4 mm² at 4.95 mΩ/m would lose 0.22 V, 6 mm² at 3.30 mΩ/m 0.15 V',
  },
  { label: 'a return doubles it', inputs: { ...run, allowed: '0.2', returnPath: 'yes' }, expected: { areaNeeded: [7.7586, 'mm2', 1e-4], nextSize: [10, 'mm2', 0] }, source: 'computed: twice 3.8793' },
  { label: 'not a listed size: solid copper', inputs: { ...run, area: '2' }, expected: { resistance: [3 / 116, 'ohm', 1e-12] }, says: /not a listed size/, source: 'computed: 3/(58 × 2), IEC 60028, recalled' },
  { label: 'resistance per length typed', inputs: { ...run, resistancePerMetre: '12.7 mohm/m' }, expected: { drop: [0.5715, 'V', 1e-9] }, source: 'computed: 0.0127 × 3 × 15' },
  { label: 'no current, no drop', inputs: { current: '0', length: '3', area: '1', allowed: '0.2' }, expected: { drop: [0, 'V', 0], areaNeeded: [0, 'mm2', 0], nextSize: [0.5, 'mm2', 0] }, source: contract },
  { label: 'larger than any listed size', inputs: { current: '1000', length: '20', allowed: '0.1' }, expected: { areaNeeded: [3448.2759, 'mm2', 1e-3] }, absent: ['nextSize', 'sureSize'], says: /No listed size/, source: 'computed: 1000 × 20/(58 × 0.1)' },
  { label: 'too thin is said', inputs: { ...run, area: '1', allowed: '0.2' }, says: /too thin or too long/, source: contract },
  { label: 'feet and square centimetres', inputs: { current: '20', length: '13.1233596 ft', area: '0.025 cm2' }, expected: { drop: [0.6384, 'V', 1e-7] }, source: `${class5}; 0.3048 m per foot (NIST SP 811)` },
  { label: 'area and gauge', inputs: { ...run, area: '2.5', awg: '14' }, refusal: { input: 'awg', code: 'two-given' }, source: contract },
  { label: 'area and resistance', inputs: { ...run, area: '2.5', resistancePerMetre: '0.01' }, refusal: { input: 'resistancePerMetre', code: 'two-given' }, source: contract },
  { label: 'no wire and no limit', inputs: run, refusal: { input: 'area', code: 'missing' }, source: contract },
  { label: 'nothing typed', inputs: {}, refusal: { input: 'current', code: 'missing' }, source: contract },
  { label: 'half a gauge', inputs: { ...run, awg: '14.5' }, refusal: { input: 'awg', code: 'not-whole' }, source: contract },
  { label: 'no such gauge', inputs: { ...run, awg: '50' }, refusal: { input: 'awg', code: 'too-high' }, source: contract },
  { label: 'no cross-section', inputs: { ...run, area: '0' }, refusal: { input: 'area', code: 'too-low' }, source: contract },
  { label: 'diameter for area', inputs: { ...run, area: '1.5 mm' }, refusal: { input: 'area', code: 'wrong-dimension' }, source: contract },
  { label: 'no drop allowed at all', inputs: { ...run, allowed: '0' }, refusal: { input: 'allowed', code: 'too-low' }, source: contract },
  { label: 'perhaps a return', inputs: { ...run, area: '1', returnPath: 'maybe' }, refusal: { input: 'returnPath', code: 'not-a-choice' }, source: contract },
  { label: 'current below zero', inputs: { ...run, current: '-5', area: '1' }, refusal: { input: 'current', code: 'too-low' }, source: contract },
];
