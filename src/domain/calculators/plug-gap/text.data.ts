import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`p = p_1\,r^{n} \qquad T = T_1\,r^{n-1}`,
    plain: 'p = p1 × r^n and T = T1 × r^(n − 1)',
    symbols: [
      { tex: 'p', meaning: 'pressure at the gap at top dead centre, absolute' },
      { tex: 'p_1', meaning: 'intake pressure, absolute' },
      { tex: 'T', meaning: 'temperature at the gap, kelvin' },
      { tex: 'T_1', meaning: 'intake temperature, kelvin' },
      { tex: 'r', meaning: 'compression ratio; 1 in open air' },
      { tex: 'n', meaning: 'polytropic index' },
    ],
    sources: [{ id: 'openstax-university-physics-2', place: 'section 3.6, adiabatic process' }],
  },
  {
    tex: String.raw`x = d\,\frac{p}{101.325\,\mathrm{kPa}}\cdot\frac{293\,\mathrm{K}}{T}`,
    plain: 'x = d × (p / 101.325 kPa) × (293 K / T)',
    symbols: [
      { tex: 'x', meaning: 'relative-density gap: the gap in open air that is as hard to jump, centimetres' },
      { tex: 'd', meaning: 'plug gap, centimetres' },
      { tex: 'p', meaning: 'pressure at the gap, kilopascals absolute' },
      { tex: 'T', meaning: 'temperature at the gap, kelvin' },
    ],
    sources: [{ id: 'naidu-kamaraju', place: 'chapter 2' }],
  },
  {
    tex: String.raw`U = 24.22\,x + 6.08\,\sqrt{x}`,
    plain: 'U = 24.22 x + 6.08 √x',
    symbols: [
      { tex: 'U', meaning: 'breakdown voltage in a uniform field, kilovolts' },
      { tex: 'x', meaning: 'relative-density gap, centimetres' },
    ],
    sources: [{ id: 'naidu-kamaraju', place: 'chapter 2' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A 0.8 mm gap at full throttle',
    inputs: {
      gap: '0.8 mm',
      compressionRatio: '10.5',
      intakePressure: '95 kPa',
      intakeTemperature: '310 K',
      available: '30 kV',
    },
    says: 'At the end of compression the gap asks for 23.3 kV at most; a coil that gives 30 kV could jump 1.06 mm.',
  },
  {
    title: 'A 1 mm gap in open air',
    inputs: { gap: '1 mm', intakeTemperature: '293 K' },
    says: 'In open air 1 mm jumps at 4.3 kV.',
  },
];

export const table: TableDefinition = {
  caption: 'Voltage at most needed at the end of compression, full throttle, 20 °C intake air, index 1.3',
  rows: ['0.6', '0.7', '0.8', '0.9', '1.0', '1.1', '1.2'].flatMap((gap) =>
    ['9', '10.5', '12'].map((compressionRatio) => ({ gap: `${gap} mm`, compressionRatio })),
  ),
  columns: ['gap', 'compressionRatio', 'pressure', 'breakdown'],
};
