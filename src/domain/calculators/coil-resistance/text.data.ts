import type { VerdictWord } from '../../measurement/types.ts';
import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`R_{\mathrm{ref}} = (R - R_{\mathrm{L}})\,\frac{1+\alpha\,(t_{\mathrm{ref}}-20)}{1+\alpha\,(t-20)}`,
    plain: 'R_ref = (R − R_L) × (1 + α (t_ref − 20)) / (1 + α (t − 20))',
    symbols: [
      { tex: String.raw`R_{\mathrm{ref}}`, meaning: 'winding resistance at the temperature of the limits' },
      { tex: 'R', meaning: 'meter reading' },
      { tex: String.raw`R_{\mathrm{L}}`, meaning: 'resistance of the leads alone' },
      { tex: String.raw`\alpha`, meaning: 'temperature coefficient of copper at 20 °C, 0.00393 per kelvin' },
      { tex: 't', meaning: 'temperature of the winding, °C' },
      { tex: String.raw`t_{\mathrm{ref}}`, meaning: 'temperature the limits hold at, °C' },
    ],
    sources: [{ id: 'iec-60028', place: 'temperature coefficient at 20 °C, recalled' }],
  },
  {
    tex: String.raw`u = \sqrt{\frac{a_1^2 + a_2^2 + a_3^2}{3}} \qquad U = 2\,u`,
    plain: 'u = √((a1² + a2² + a3²) / 3) and U = 2 u',
    symbols: [
      { tex: 'u', meaning: 'standard uncertainty of the corrected value' },
      { tex: 'U', meaning: 'expanded uncertainty, k = 2' },
      { tex: 'a_1', meaning: 'half-width from the meter: percent of reading plus counts' },
      { tex: 'a_2', meaning: 'half-width from the reading of the leads' },
      { tex: 'a_3', meaning: 'half-width from the temperature not being known exactly' },
    ],
    sources: [{ id: 'jcgm-100', place: '4.3.7 and 5.1, recalled' }],
  },
  {
    tex: String.raw`P = \Phi\left(\frac{H - R_{\mathrm{ref}}}{u}\right) - \Phi\left(\frac{L - R_{\mathrm{ref}}}{u}\right)`,
    plain: 'P = Φ((H − R_ref) / u) − Φ((L − R_ref) / u)',
    symbols: [
      { tex: 'P', meaning: 'chance that the true value lies inside the limits' },
      { tex: String.raw`\Phi`, meaning: 'cumulative normal distribution' },
      { tex: 'L', meaning: 'lower limit' },
      { tex: 'H', meaning: 'upper limit' },
      { tex: String.raw`R_{\mathrm{ref}}`, meaning: 'corrected reading' },
      { tex: 'u', meaning: 'standard uncertainty' },
    ],
    sources: [{ id: 'jcgm-106', place: '7.3 and 7.4, recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A warm coil that looks too high',
    inputs: { reading: '0.92 ohm', leadResistance: '0.20 ohm', readingTemperature: '80 C', low: '0.5', high: '0.8' },
    says: 'Referred to 20 °C the winding has 0.583 Ω: inside the range.',
  },
  {
    title: 'A secondary winding with the meter at its limit',
    inputs: { reading: '9.4 kohm', readingTemperature: '25 C', low: '6 kohm', high: '9.4 kohm' },
    says: 'Referred to 20 °C the winding has 9220 Ω: too close to call.',
  },
];

export const table: TableDefinition = {
  caption: 'What a winding of copper that reads 1.00 Ω has at 20 °C, by its own temperature',
  rows: ['-10', '0', '10', '20', '30', '40', '60', '80', '100'].map((readingTemperature) => ({
    reading: '1.00',
    readingTemperature,
  })),
  columns: ['readingTemperature', 'reading', 'corrected'],
};

/** What the verdict means and what to do next. */
export const verdictNotes: Readonly<Record<VerdictWord | 'open', string>> = {
  inside:
    'The winding is sound when cold and at rest. That does not clear the coil: insulation breaks down only under high tension and heat, so swap it with another cylinder or load it before passing it.',
  below:
    'Too low: turns are shorted, or the probes are on the wrong pins. Check the pins and compare with a coil of the same engine before condemning it.',
  above:
    'Too high: a bad joint or corroded contact, or a winding that is breaking. Clean the contacts, read again, and compare with a coil of the same engine.',
  'too-close-to-call':
    'The reading is too near a limit for this meter and this temperature. Do not condemn or pass the coil on it.',
  open: 'Open circuit: the winding is broken, or the probes do not touch it. A diode or a built-in driver also reads open: such a coil cannot be judged with an ohmmeter.',
};

export const noLimitsNote =
  'Without limits there is no verdict. Type the engine maker’s limits, or compare with the other coils of this engine: they should agree.';
