import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`m = \eta\,\frac{p\,V\,n}{120\,R\,T}`,
    plain: 'm = η × p × V × n / (120 × R × T)',
    symbols: [
      { tex: 'm', meaning: 'air flow, mass each second' },
      { tex: String.raw`\eta`, meaning: 'volumetric efficiency: air taken in over what the displacement holds at p and T' },
      { tex: 'p', meaning: 'pressure of the air, absolute' },
      { tex: 'V', meaning: 'displacement' },
      { tex: 'n', meaning: 'engine speed, revolutions per minute' },
      { tex: 'R', meaning: 'gas constant of air, 287.05 J/(kg K)' },
      { tex: 'T', meaning: 'temperature of the air, kelvin' },
    ],
    sources: [{ id: 'heywood', place: 'section 2.10, recalled' }],
  },
  {
    tex: String.raw`a = 100\,\frac{120\,m}{1.184\,V\,n}`,
    plain: 'a = 100 × 120 × m / (1.184 × V × n)',
    symbols: [
      { tex: 'a', meaning: 'absolute load, percent' },
      { tex: 'm', meaning: 'air flow, g/s' },
      { tex: 'V', meaning: 'displacement, litres' },
      { tex: 'n', meaning: 'engine speed, revolutions per minute' },
    ],
    sources: [{ id: 'sae-j1979', place: 'PID 43, absolute load, with air of 1.184 g/l, recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Idle, from the manifold pressure',
    inputs: { displacement: '2.0 l', speed: '750 rpm', pressure: '33 kPa', temperature: '40 C', volumetricEfficiency: '0.8' },
    says: 'At a volumetric efficiency of 0.8 the meter should show about 3.67 g/s.',
  },
  {
    title: 'Full throttle, held against the barometer',
    inputs: { displacement: '1.6 l', speed: '6000 rpm', pressure: '100 kPa', temperature: '20 C', massFlow: '72 g/s' },
    says: '72.00 g/s out of 95.07 g/s is a volumetric efficiency of 0.757, an absolute load of 76.0 %.',
  },
];

const engines = ['1.0', '1.4', '1.6', '2.0', '2.5', '3.0'];

export const table: TableDefinition = {
  caption: 'Air flow to expect at full throttle, 100 kPa and 20 °C outside, volumetric efficiency 0.85',
  rows: engines.flatMap((displacement) =>
    ['2000', '4000', '6000'].map((speed) => ({ displacement: `${displacement} l`, speed: `${speed} rpm`, pressure: '100 kPa', temperature: '20 °C', volumetricEfficiency: '0.85' })),
  ),
  columns: ['displacement', 'speed', 'theoreticalFlow', 'massFlow'],
};

/** What a volumetric efficiency from a meter says. Common practice. */
export const efficiencyNotes = {
  high: 'More air than the cylinders can take at this pressure: the meter reads high, the displacement or unit is wrong, or the pressure typed is a gauge figure and not absolute.',
  low: 'Little air for this pressure. With outside pressure that is right at idle and cruise, for the throttle is shut; at full throttle the meter reads low, air comes in behind it, or the intake or exhaust is blocked.',
  likely: 'A believable figure. At full throttle an engine without a charger fills to about 0.75 to 1.00 of the outside air; less with the throttle part shut is no fault.',
} as const;

export const notes = {
  expected: 'Hold this against the meter in live data. A meter well below it with plus trims reads low or has air leaking in behind it; well above it, the meter reads high.',
  reference: 'Volumetric efficiency is told against the air whose pressure and temperature you typed: manifold air or outside air. Say which when you compare.',
  idle: 'A quick check at warm idle: 2 to 7 g/s, about 1 g/s or a little more for each litre. Common practice; the engine maker’s figure comes first.',
} as const;
