import { success } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type {
  Calculation,
  CalculatorDefinition, CalculatorMaker,
  Chart,
  InputDefinition,
  OutputDefinition,
  OutputValue,
  ParsedInputs,
} from '../definition.ts';
import { seaLevelPressure } from '../../atmosphere.ts';
import { breakdownVoltage, largestGap, relativeDensityGap, squeeze } from './breakdown.ts';
import type { Air } from './breakdown.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'gap',
    label: 'Plug gap',
    kind: 'quantity',
    dimension: 'length',
    unit: 'mm',
    optional: false,
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 25,
    hint: 'As measured with a wire or blade gauge, not as printed on the box.',
  },
  {
    name: 'compressionRatio',
    label: 'Compression ratio',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    minimum: 1,
    maximum: 25,
    hint: 'Leave empty for a plug or tester in open air.',
  },
  {
    name: 'available',
    label: 'Voltage the coil can give',
    kind: 'quantity',
    dimension: 'voltage',
    unit: 'kV',
    optional: true,
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 100,
    hint: 'From the maker’s data or a scope; gives the widest gap.',
  },
  {
    name: 'intakePressure',
    label: 'Intake pressure, absolute',
    kind: 'quantity',
    dimension: 'pressure',
    unit: 'kPa',
    optional: true,
    default: String(seaLevelPressure),
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 500,
    hint: 'About 30 kPa at idle, outside pressure at full throttle, more with a charger.',
    advanced: true,
  },
  {
    name: 'intakeTemperature',
    label: 'Intake temperature',
    kind: 'quantity',
    dimension: 'temperature',
    unit: 'C',
    optional: true,
    default: '20',
    minimum: -50,
    maximum: 150,
    advanced: true,
  },
  {
    name: 'polytropicIndex',
    label: 'Polytropic index',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    default: '1.3',
    minimum: 1,
    maximum: 1.67,
    hint: '1.2 to 1.35 in a real cylinder, 1.4 without any heat loss.',
    advanced: true,
  },
];

const outputs: readonly OutputDefinition[] = [
  {
    name: 'breakdown',
    label: 'Voltage to jump the gap, at most',
    kind: 'quantity',
    unit: 'kV',
    decimals: 1,
    main: true,
  },
  { name: 'largestGap', label: 'Widest gap the coil can jump', kind: 'quantity', unit: 'mm', decimals: 2 },
  { name: 'pressure', label: 'Pressure at the gap', kind: 'quantity', unit: 'kPa', decimals: 0 },
  { name: 'temperature', label: 'Temperature at the gap', kind: 'quantity', unit: 'K', decimals: 0 },
  { name: 'relativeDensityGap', label: 'Same as a gap in open air of', kind: 'quantity', unit: 'cm', decimals: 3 },
];

/** Without a compression ratio the plug lies in open air: a ratio of 1. */
function airAtGap(inputs: ParsedInputs): Air {
  const ratio = inputs.optionalNumber('compressionRatio') ?? 1;
  return squeeze(
    inputs.number('intakePressure'),
    inputs.number('intakeTemperature'),
    ratio,
    inputs.number('polytropicIndex'),
  );
}

function reserveNote(breakdown: number, available: number): string {
  const left = formatValue(Math.abs(available - breakdown), 'kV', { decimals: 1 });
  return breakdown > available
    ? `The gap may ask ${left} more than the coil can give: expect misfire under load first. Set the gap to the engine maker’s figure or fit new plugs, then test again.`
    : `The coil has at least ${left} to spare at this gap. A misfire under load then points elsewhere: boot, insulator, coil insulation or mixture.`;
}

function notesFor(inputs: ParsedInputs, breakdown: number): readonly string[] {
  const available = inputs.optionalNumber('available');
  return [
    'This is an upper guide. It takes smooth round electrodes and full pressure at top dead centre; a real plug fires earlier, at lower pressure, from sharp edges, and asks for less. Worn, rounded electrodes come nearer to it.',
    ...(available === undefined ? [] : [reserveNote(breakdown, available)]),
    ...(inputs.has('compressionRatio')
      ? []
      : [
          'In open air the same gap jumps far more easily than in the cylinder: a spark seen in the open does not prove the coil.',
        ]),
    'The gap to set is the engine maker’s; this figure only shows what a wrong gap costs.',
  ];
}

function compute(inputs: ParsedInputs) {
  const air = airAtGap(inputs);
  const densityGap = relativeDensityGap(inputs.number('gap'), air);
  const breakdown = breakdownVoltage(densityGap);
  const available = inputs.optionalNumber('available');
  const values: Record<string, OutputValue> = {
    pressure: { value: air.pressure, unit: 'kPa' },
    temperature: { value: air.temperature, unit: 'K' },
    relativeDensityGap: { value: densityGap, unit: 'cm' },
    breakdown: { value: breakdown, unit: 'kV' },
  };
  if (available !== undefined) values['largestGap'] = { value: largestGap(available, air), unit: 'mm' };
  return success<Calculation>({ outputs: values, notes: notesFor(inputs, breakdown) });
}

const chartPoints = 40;

function chart(inputs: ParsedInputs): Chart {
  const air = airAtGap(inputs);
  const gap = inputs.number('gap');
  const available = inputs.optionalNumber('available');
  const demand = (wide: number) => breakdownVoltage(relativeDensityGap(wide, air));
  const widest = Math.max(2, 1.5 * gap);
  const points = Array.from({ length: chartPoints + 1 }, (_, step) => (widest * step) / chartPoints).map((x) => ({
    x,
    y: demand(x),
  }));
  const levels = available === undefined ? {} : { levels: [{ y: available, label: 'What the coil can give' }] };
  return {
    title: 'Voltage to jump the gap',
    x: { label: 'Gap', unit: 'mm' },
    y: { label: 'Voltage', unit: 'kV' },
    series: [{ name: 'At most needed', kind: 'line', points }],
    marks: [{ x: gap, y: demand(gap), label: 'This gap' }],
    ...levels,
  };
}

/** The voltage a plug gap can ask for at most, in open air or at the end of compression. */
export const plugGap: CalculatorDefinition = {
  id: 'plug-gap',
  title: 'Plug gap and voltage',
  summary: 'How much voltage can this plug gap ask for, and how wide may it grow before the coil gives up?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: [
    'spark plug gap',
    'kilovolts',
    'kV',
    'firing voltage',
    'breakdown voltage',
    'ignition demand',
    'coil reserve',
    'feeler gauge',
  ],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => plugGap;
