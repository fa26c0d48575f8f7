import { pressureAtAltitude, pressureFactorAtAltitude, temperatureAtAltitude } from '../../atmosphere.ts';
import { ZERO_CELSIUS } from '../../constants.ts';
import { success } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, ParsedInputs } from '../definition.ts';
import { inchesOfMercury } from '../pressures.ts';
import { samples } from '../samples.ts';
import { examples, formulas, table } from './text.data.ts';

/** The lowest dry land lies at about −430 m. */
const lowest = -500;
/** The layer ends at 11 000 m of geopotential height, which is a little more as maps give it. */
const highest = 11_000;

const inputs: readonly InputDefinition[] = [
  {
    name: 'altitude',
    label: 'Height above the sea',
    kind: 'quantity',
    dimension: 'length',
    unit: 'm',
    optional: false,
    minimum: lowest,
    maximum: highest,
    hint: 'As a map gives it, in metres or feet.',
  },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'pressure', label: 'Outside pressure, absolute', kind: 'quantity', unit: 'kPa', decimals: 2, main: true },
  { name: 'pressureMercury', label: 'The same on a mercury scale', kind: 'quantity', unit: 'inHg', decimals: 2 },
  { name: 'factor', label: 'Part of the pressure at sea level', kind: 'quantity', unit: '1', decimals: 4 },
  { name: 'temperature', label: 'Outside temperature of the standard air', kind: 'quantity', unit: 'C', decimals: 1 },
];

function compute(given: ParsedInputs) {
  const altitude = given.number('altitude');
  const [pressure, factor] = [pressureAtAltitude(altitude), pressureFactorAtAltitude(altitude)];
  const expected = formatValue(100 * factor, '%', { decimals: 1 });
  return success<Calculation>({
    outputs: {
      pressure: { value: pressure, unit: 'kPa' },
      pressureMercury: { value: inchesOfMercury(pressure), unit: 'inHg' },
      factor: { value: factor, unit: '1' },
      temperature: { value: temperatureAtAltitude(altitude) - ZERO_CELSIUS, unit: 'C' },
    },
    notes: [
      `A cranking compression read on a gauge here comes to about ${expected} of the sea-level figure. The lowest over the highest cylinder needs no correction.`,
      'Weather moves the true pressure a few kilopascals either way. Where a barometer on the spot or the manifold sensor with the engine off can be read, use that instead.',
      'Do not use a weather forecast’s pressure as the pressure on the spot: it is referred to the sea and hides the height.',
    ],
    next: [
      { page: 'calculators/manifold-vacuum', label: 'Judge a manifold vacuum at this height' },
      { page: 'procedures/compression-dry', label: 'Dry compression test' },
    ],
  });
}

const chartPoints = 40;

function chart(given: ParsedInputs): Chart {
  const altitude = given.number('altitude');
  const [from, to] = [Math.min(0, altitude), Math.max(4000, 1.25 * altitude)];
  const top = Math.min(to, highest);
  return {
    title: 'Outside pressure against height',
    x: { label: 'Height', unit: 'm' },
    y: { label: 'Pressure, absolute', unit: 'kPa' },
    series: [{ name: 'Standard atmosphere', kind: 'line', points: samples(from, top, chartPoints, pressureAtAltitude) }],
    marks: [{ x: altitude, y: pressureAtAltitude(altitude), label: 'Here' }],
  };
}

/** Pressure and temperature of the standard atmosphere at a height as maps give it, −500 to 11 000 m. U.S. Standard Atmosphere 1976. */
export const standardAtmosphere: CalculatorDefinition = {
  id: 'standard-atmosphere',
  title: 'Outside pressure by height',
  summary: 'How high is the outside pressure at this height above the sea, and how much less will a gauge show?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['altitude', 'elevation', 'barometric pressure', 'barometer', 'baro', 'standard atmosphere', 'mountain', 'altitude correction', 'geopotential'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => standardAtmosphere;
