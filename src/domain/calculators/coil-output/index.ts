import { success } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, table } from './text.data.ts';

const voltsPerKilovolt = 1000;

/** Kilovolts from the clamp voltage of the primary and the turns. */
function availableOf(given: ParsedInputs): number {
  return (given.number('turnsRatio') * given.number('clampVoltage')) / voltsPerKilovolt;
}

/** √(2ηE/C) in kilovolts, with E in mJ and C in pF: a millijoule over a picofarad is 10⁹ V², which is 1000 kV². */
function capacitanceLimitOf(given: ParsedInputs): number | undefined {
  const [energy, capacitance] = [given.optionalNumber('energy'), given.optionalNumber('capacitance')];
  if (energy === undefined || capacitance === undefined) return undefined;
  return Math.sqrt((2 * given.number('efficiency') * energy * 1000) / capacitance);
}

/** Common practice: this much in hand, one or the other. */
const enoughReserve = 10;
const enoughPercent = 40;

const show = (kilovolts: number) => formatValue(kilovolts, 'kV', { decimals: 1 });

function reserveNote(available: number, demand: number): string {
  const reserve = available - demand;
  const rule = `Practice keeps at least ${enoughReserve} kV or ${enoughPercent} % in hand`;
  if (reserve < 0) return `The demand is ${show(-reserve)} more than the coil can give: it misfires. Find what raises the demand first: plug gap, lead, boot, weak mixture.`;
  if (reserve >= enoughReserve || (100 * reserve) / available >= enoughPercent) return `${rule}; this coil has that. A misfire then points to insulation, boot or mixture rather than to the coil’s strength.`;
  return `${rule}; this coil has less. Worn plugs, cold damp air or a sagging supply can use it up under load.`;
}

function limitNote(available: number, limit: number, demand: number | undefined): string {
  if (limit >= available) return `The energy would reach ${show(limit)}, so the clamp and the turns set the limit.`;
  const left = demand === undefined ? '' : ` Against this demand that leaves ${show(limit - demand)}, not the reserve shown.`;
  return `The energy lifts this capacitance only to ${show(limit)}: that, and not the turns, is what the coil can give.${left} Look for short dwell, a low supply, or fouling that loads the secondary.`;
}

function notesFor(given: ParsedInputs): readonly string[] {
  const [available, limit, demand] = [availableOf(given), capacitanceLimitOf(given), given.optionalNumber('demand')];
  const oneOfTwo = given.has('energy') !== given.has('capacitance');
  return [
    ...(demand === undefined ? [] : [reserveNote(Math.min(available, limit ?? available), demand)]),
    ...(limit === undefined ? [] : [limitNote(available, limit, demand)]),
    ...(oneOfTwo ? ['Type both the energy and the capacitance to see what the energy can reach.'] : []),
    'This is what the coil could reach with nothing connected. Tens of kilovolts: never let a coil fire into the open, and keep hands off leads and boots while the engine turns.',
  ];
}

function compute(given: ParsedInputs) {
  const [available, limit, demand] = [availableOf(given), capacitanceLimitOf(given), given.optionalNumber('demand')];
  const values: Record<string, OutputValue> = { available: { value: available, unit: 'kV' } };
  if (demand !== undefined) {
    values['reserve'] = { value: available - demand, unit: 'kV' };
    values['reservePercent'] = { value: (100 * (available - demand)) / available, unit: '%' };
  }
  if (limit !== undefined) values['capacitanceLimit'] = { value: limit, unit: 'kV' };
  return success<Calculation>({
    outputs: values,
    notes: notesFor(given),
    next: [
      { page: 'calculators/plug-gap', label: 'What this plug gap asks for' },
      { page: 'procedures/spark-test-fixed-gap', label: 'Spark test with a fixed gap' },
    ],
  });
}

/** Bars: what is asked, what the turns give and what the energy gives; one below the demand stands out. */
function chart(given: ParsedInputs): Chart | undefined {
  const [limit, demand] = [capacitanceLimitOf(given), given.optionalNumber('demand')];
  if (limit === undefined && demand === undefined) return undefined;
  const bars: readonly (readonly [string, number | undefined])[] = [
    ['Turns', availableOf(given)],
    ['Energy', limit],
  ];
  const points = bars.flatMap(([label, y], index) => {
    if (y === undefined) return [];
    return [{ x: index + 1, y, label, ...(demand !== undefined && y < demand ? { odd: 'low' } : {}) }];
  });
  return {
    title: 'What the coil can give',
    x: { label: 'Set by', unit: '1' },
    y: { label: 'Voltage', unit: 'kV' },
    series: [{ name: 'Voltage', kind: 'bars', points }],
    marks: [],
    ...(demand === undefined ? {} : { levels: [{ y: demand, label: 'Asked for' }] }),
  };
}

/** The highest voltage of an ignition coil, from its turns and from its energy, and what is left over the demand. */
export const coilOutput: CalculatorDefinition = {
  id: 'coil-output',
  title: 'Coil output voltage',
  summary: 'What voltage can this coil give, and how much is in hand over what the plug asks?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['kilovolts', 'kV', 'secondary voltage', 'turns ratio', 'ignition reserve', 'clamp voltage', 'coil strength', 'weak spark'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => coilOutput;
