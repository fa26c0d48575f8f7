import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

const source = { id: 'us-standard-atmosphere-1976', place: 'part 1, layer from 0 to 11 km, recalled' } as const;

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`H = \frac{r_0\,Z}{r_0 + Z}`,
    plain: 'H = r0 × Z / (r0 + Z)',
    symbols: [
      { tex: 'H', meaning: 'geopotential height, metres' },
      { tex: 'Z', meaning: 'height as a map gives it, metres' },
      { tex: 'r_0', meaning: 'radius of the earth that the standard takes, 6 356 766 m' },
    ],
    sources: [source],
  },
  {
    tex: String.raw`T = 288.15 - 0.0065\,H \qquad p = p_0\left(\frac{T}{288.15}\right)^{5.25588}`,
    plain: 'T = 288.15 − 0.0065 H and p = p0 × (T / 288.15)^5.25588',
    symbols: [
      { tex: 'T', meaning: 'temperature of the standard air, kelvin' },
      { tex: 'H', meaning: 'geopotential height, metres' },
      { tex: 'p_0', meaning: 'pressure at sea level, 101.325 kPa' },
      { tex: 'p', meaning: 'outside pressure, absolute' },
    ],
    sources: [source],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A workshop at 1500 m',
    inputs: { altitude: '1500 m' },
    says: 'The outside pressure is about 84.56 kPa or 24.97 inHg, 0.8345 of that at sea level, in standard air of 5.3 °C.',
  },
  {
    title: 'A road pass at 10 000 ft',
    inputs: { altitude: '10000 ft' },
    says: 'The outside pressure is about 69.69 kPa, 0.6878 of that at sea level.',
  },
];

export const table: TableDefinition = {
  caption: 'Outside pressure of the standard atmosphere by height as maps give it',
  rows: ['0', '250', '500', '750', '1000', '1250', '1500', '2000', '2500', '3000', '3500', '4000'].map((altitude) => ({ altitude: `${altitude} m` })),
  columns: ['altitude', 'pressure', 'pressureMercury', 'factor', 'temperature'],
};
