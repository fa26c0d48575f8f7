import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { showFigure } from '../show.ts';
import { conductorFactor, copperNeeded, copperResistance, gaugeArea, listedResistance, nextListedSize, sureListedSize } from './conductor.ts';
import { flexibleConductors } from './conductors.data.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, table } from './text.data.ts';

/** The wire as it was given. */
interface Conductor {
  /** Ω/m at 20 °C. */
  readonly perMetre: number;
  /** mm², where it is known. */
  readonly area?: number;
  /** Where its resistance comes from, as a sentence. */
  readonly basis: string;
}

const waysToName = ['area', 'awg', 'resistancePerMetre'] as const;

function conductorOf(given: ParsedInputs): Conductor | undefined {
  const [area, gauge, perMetre] = [given.optionalNumber('area'), given.optionalNumber('awg'), given.optionalNumber('resistancePerMetre')];
  if (perMetre !== undefined) return { perMetre, basis: 'The resistance per length is the one typed, taken at 20 °C.' };
  if (gauge !== undefined) {
    const size = gaugeArea(gauge);
    return { perMetre: copperResistance(size), area: size, basis: `Gauge ${gauge} is ${formatValue(size, 'mm2', { significant: 3 })} of solid copper; stranded wire has up to about 5 % more resistance.` };
  }
  if (area === undefined) return undefined;
  const listed = listedResistance(area);
  if (listed !== undefined) return { perMetre: listed, area, basis: `Taken as flexible copper of ${showFigure(area, 'mm2')} with the highest resistance its standard allows; a good cable has a little less.` };
  return { perMetre: copperResistance(area), area, basis: `${showFigure(area, 'mm2')} is not a listed size: taken as solid copper. Stranded wire has a little more resistance.` };
}

/** Metres of wire that the current passes. */
function wireLength(given: ParsedInputs): number {
  return given.number('length') * (given.text('returnPath') === 'yes' ? 2 : 1);
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const [first, second] = waysToName.filter((name) => given.has(name));
  if (second !== undefined) {
    const label = (name: string | undefined) => inputs.find((input) => input.name === name)?.label ?? '';
    const message = `${label(second)}: the wire is already given by "${label(first)}". Give one of cross-section, gauge and resistance per length, and empty the others.`;
    return { input: second, code: 'two-given', message };
  }
  if (first !== undefined || given.has('allowed')) return undefined;
  const message = 'Cross-section: nothing was typed. Give the cross-section, the gauge or the resistance per length, or the voltage drop allowed to see what size it takes.';
  return { input: 'area', code: 'missing', message };
}

interface Sizes {
  /** mm² of copper. */
  readonly needed: number;
  readonly next?: number;
  readonly sure?: number;
}

function sizesFor(allowed: number, given: ParsedInputs): Sizes {
  const load = given.number('current') * wireLength(given) * conductorFactor(given.number('temperature'));
  const needed = copperNeeded(load, allowed);
  const [next, sure] = [nextListedSize(needed), sureListedSize(allowed / load)];
  return { needed, ...(next === undefined ? {} : { next }), ...(sure === undefined ? {} : { sure }) };
}

function resistanceOf(conductor: Conductor, given: ParsedInputs): number {
  return conductor.perMetre * wireLength(given) * conductorFactor(given.number('temperature'));
}

const size = (area: number) => showFigure(area, 'mm2');

function sizeNote(allowed: number, { next, sure }: Sizes): string {
  const largest = flexibleConductors.at(-1)?.[0] ?? 0;
  if (next === undefined) return `No listed size up to ${size(largest)} keeps within ${showFigure(allowed, 'V')}. Shorten the wire, split the load, or allow more.`;
  if (sure === undefined || sure === next) return `${size(next)} keeps within ${showFigure(allowed, 'V')}, even at the highest resistance its standard allows.`;
  return `${size(next)} has enough copper for ${showFigure(allowed, 'V')}, but at the highest resistance its standard allows it loses a little more. ${size(sure)} keeps within it for certain.`;
}

function dropNote(drop: number, allowed: number | undefined): string {
  const compare = 'If the meter shows clearly more under the same current, the rest is in joints, fuse, switch or a half-broken wire: move the probe along until you find the step.';
  if (allowed === undefined) return compare;
  const found = `The wire alone loses ${formatValue(drop, 'V', { decimals: 2 })} of the ${showFigure(allowed, 'V')} allowed`;
  return drop > allowed ? `${found}: it is too thin or too long for this current.` : `${found}. ${compare}`;
}

const heatNote = 'This finds the volts lost, not the heat. The wire must also carry the current without overheating, and the fuse must suit the wire.';

function outputsOf(conductor: Conductor | undefined, sizes: Sizes | undefined, given: ParsedInputs): Record<string, OutputValue> {
  const values: Record<string, OutputValue> = {};
  if (conductor !== undefined) {
    const resistance = resistanceOf(conductor, given);
    values['resistance'] = { value: resistance, unit: 'ohm' };
    values['drop'] = { value: resistance * given.number('current'), unit: 'V' };
  }
  if (sizes !== undefined) {
    values['areaNeeded'] = { value: sizes.needed, unit: 'mm2' };
    if (sizes.next !== undefined) values['nextSize'] = { value: sizes.next, unit: 'mm2' };
    if (sizes.sure !== undefined) values['sureSize'] = { value: sizes.sure, unit: 'mm2' };
  }
  return values;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const [conductor, allowed] = [conductorOf(given), given.optionalNumber('allowed')];
  const sizes = allowed === undefined ? undefined : sizesFor(allowed, given);
  const drop = conductor === undefined ? undefined : resistanceOf(conductor, given) * given.number('current');
  const notes = [
    ...(conductor === undefined || drop === undefined ? [] : [dropNote(drop, allowed), conductor.basis]),
    ...(allowed === undefined || sizes === undefined ? [] : [sizeNote(allowed, sizes)]),
    heatNote,
  ];
  return success({
    outputs: outputsOf(conductor, sizes, given),
    notes,
    next: [{ page: 'procedures/coil-supply-volt-drop', label: 'Measure the voltage drop of the coil supply' }],
  });
}

/** Sizes from a quarter to four times the one in question. */
const chartSpan = 4;

/** Drop over the listed sizes around the one given or needed. */
function chart(given: ParsedInputs): Chart | undefined {
  if (findProblem(given) !== undefined) return undefined;
  const [conductor, allowed] = [conductorOf(given), given.optionalNumber('allowed')];
  const middle = conductor?.area ?? (allowed === undefined ? undefined : sizesFor(allowed, given).needed);
  if (middle === undefined) return undefined;
  const current = given.number('current');
  const rows = flexibleConductors.filter(([area]) => area >= middle / chartSpan && area <= middle * chartSpan);
  if (rows.length < 2) return undefined;
  const points = rows.map(([area]) => ({ x: area, y: current * resistanceOf({ perMetre: listedResistance(area) ?? 0, basis: '' }, given) }));
  return {
    title: 'Voltage drop by size of wire',
    x: { label: 'Cross-section', unit: 'mm2' },
    y: { label: 'Voltage drop', unit: 'V' },
    series: [{ name: 'Listed sizes', kind: 'line', points }],
    marks: conductor?.area === undefined ? [] : [{ x: conductor.area, y: current * resistanceOf(conductor, given), label: 'This wire' }],
    ...(allowed === undefined ? {} : { levels: [{ y: allowed, label: 'Allowed' }] }),
  };
}

/** Voltage lost along a copper wire, and the size that loses no more than is allowed. */
export const voltageDrop: CalculatorDefinition = {
  id: 'voltage-drop',
  title: 'Voltage drop of a wire',
  summary: 'How many volts does this wire lose, and what size would lose few enough?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['volt drop', 'wire size', 'cable size', 'AWG', 'cross-section', 'mm2', 'wire gauge', 'feed wire', 'earth wire', 'thin wire'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => voltageDrop;
