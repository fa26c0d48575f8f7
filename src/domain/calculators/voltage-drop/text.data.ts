import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

const factor = String.raw`\frac{234.5 + t}{254.5}`;
const temperature = { tex: 't', meaning: 'temperature of the wire, °C' };
const length = { tex: 'l', meaning: 'length of wire, metres; out and back where the return is a wire' };

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`U = I\,r\,l\,${factor}`,
    plain: 'U = I × r × l × (234.5 + t) / 254.5',
    symbols: [
      { tex: 'U', meaning: 'voltage drop, volts' },
      { tex: 'I', meaning: 'current, amperes' },
      { tex: 'r', meaning: 'resistance per metre at 20 °C: highest of the table for a listed size, else 1/58 over the area' },
      length,
      temperature,
    ],
    sources: [
      { id: 'iec-60228', place: 'class 5, highest resistance of flexible copper conductors; temperature correction, recalled' },
      { id: 'iec-60028', place: 'resistivity 1/58 ohm mm² per metre, recalled' },
    ],
  },
  {
    tex: String.raw`d = 0.127\cdot 92^{(36 - n)/39}`,
    plain: 'd = 0.127 mm × 92^((36 − n) / 39)',
    symbols: [
      { tex: 'd', meaning: 'diameter of the wire, millimetres' },
      { tex: 'n', meaning: 'American wire gauge' },
    ],
    sources: [{ id: 'astm-b258', place: 'definition of the gauge' }],
  },
  {
    tex: String.raw`A = \frac{I\,l}{58\,U}\cdot ${factor}`,
    plain: 'A = I × l / (58 × U) × (234.5 + t) / 254.5',
    symbols: [
      { tex: 'A', meaning: 'area of copper needed, mm²' },
      { tex: 'I', meaning: 'current, amperes' },
      { tex: 'U', meaning: 'voltage drop allowed, volts' },
      length,
      temperature,
    ],
    sources: [{ id: 'iec-60028', place: 'resistivity 1/58 ohm mm² per metre, recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A coil feed of 1.5 mm² in a hot engine bay',
    inputs: { current: '8 A', length: '2.5 m', area: '1.5 mm2', temperature: '80 C' },
    says: 'The wire has 0.0411 Ω and loses 0.33 V.',
  },
  {
    title: 'What size for 15 A over 3 m?',
    inputs: { current: '15 A', length: '3 m', area: '2.5', allowed: '0.2 V' },
    says: '2.5 mm² would lose 0.36 V. For 0.2 V it takes 3.88 mm² of copper, so 4 mm²; 6 mm² is sure.',
  },
];

export const table: TableDefinition = {
  caption: 'Voltage drop over 3 m one way at 10 A, 20 °C',
  rows: ['0.5', '0.75', '1', '1.5', '2.5', '4', '6', '10'].map((area) => ({ current: '10 A', length: '3 m', area: `${area} mm²` })),
  columns: ['area', 'resistance', 'drop'],
};
