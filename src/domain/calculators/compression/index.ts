import { seaLevelPressure } from '../../atmosphere.ts';
import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import { nameCylinders } from '../cylinders.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, OutputValue, ParsedInputs } from '../definition.ts';
import { charts } from './charts.ts';
import { belowMeanLimit, compare, evenWithin, expectedGauge, lowestShare, passesShare, wetRise } from './compare.ts';
import { atSeaLevel, readGiven } from './given.ts';
import type { Given } from './given.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, linksAfterOil, patternLinks, patternNotes, table } from './text.data.ts';
import { wetNote } from './wet.ts';

type Verdict = 'inside' | 'below' | 'above';

/** Against the maker's figures, which are for sea level; one cylinder outside is enough. */
function makerVerdict(readings: readonly number[], low: number | undefined, high: number | undefined): Verdict | undefined {
  if (low === undefined && high === undefined) return undefined;
  if (low !== undefined && Math.min(...readings) < low) return 'below';
  return high !== undefined && Math.max(...readings) > high ? 'above' : 'inside';
}

function comparisonOutputs(readings: readonly number[]): Record<string, OutputValue> {
  const compared = compare(readings);
  return {
    lowestOverHighest: { value: compared.lowestOverHighest, unit: '%' },
    within75: passesShare(compared),
    spread: { value: compared.highest - compared.lowest, unit: 'psi' },
    lowestBelowMean: { value: compared.lowestBelowMean, unit: '%' },
    lowestCylinder: { value: compared.lowestCylinder, unit: 'count' },
  };
}

function outputsOf(inputs: ParsedInputs, given: Given): Record<string, OutputValue> {
  const { readings, outside, finding, wet } = given;
  const seaLevel = atSeaLevel(readings, outside);
  const ratio = inputs.optionalNumber('compressionRatio');
  const verdict = makerVerdict(seaLevel, inputs.optionalNumber('low'), inputs.optionalNumber('high'));
  const gauge = (value: number) => expectedGauge(outside ?? seaLevelPressure, value, inputs.number('polytropicIndex'));
  return {
    pattern: finding.pattern,
    ...(readings.length > 1 ? comparisonOutputs(readings) : {}),
    ...(wet.length === 0 ? {} : { wetRise: { values: wet.map((one) => wetRise(one.dry, one.wet)), unit: '%' } }),
    ...(verdict === undefined ? {} : { verdict }),
    ...(outside === undefined ? {} : { seaLevel: { values: seaLevel, unit: 'psi' } }),
    ...(ratio === undefined ? {} : { expectedGauge: { value: gauge(ratio), unit: 'kPa' } }),
  };
}

/** The two published rules side by side, for they do not always agree. */
function ruleNote(readings: readonly number[]): readonly string[] {
  if (readings.length < 2) return [];
  const compared = compare(readings);
  const share = passesShare(compared) ? `passes the rule of at least ${lowestShare} %` : `fails the rule of at least ${lowestShare} %`;
  const below = compared.lowestBelowMean >= belowMeanLimit ? `at or beyond the ${belowMeanLimit} % that asks for a closer look` : `under the ${belowMeanLimit} % that asks for a closer look`;
  const shown = (value: number) => formatValue(value, '%', { decimals: 1 });
  return [`The lowest has ${shown(compared.lowestOverHighest)} of the highest, which ${share}. It lies ${shown(compared.lowestBelowMean)} below the mean, ${below}. The stricter habit of the trade wants all within ${evenWithin} %.`];
}

function limitNote(inputs: ParsedInputs, { outside }: Given): readonly string[] {
  const judged = outside === undefined ? 'The figures read' : 'The readings referred to sea level';
  return [
    ...(inputs.has('low') || inputs.has('high') ? [`${judged} are held against the maker’s figures.`] : []),
    ...(outside === undefined ? [] : ['Thin air lowers every cylinder alike, so the share of lowest in highest needs no correction for height. Some printed tables correct by the density of the air; this one goes by its pressure.']),
    ...(inputs.has('compressionRatio') ? ['What the ratio lets expect is an upper guide: the inlet valve closes late, so real readings are lower. Never fail a cylinder on it.'] : []),
  ];
}

function notesOf(inputs: ParsedInputs, given: Given): readonly string[] {
  const { finding, wet, readings } = given;
  const named = finding.odd.length === 0 ? '' : `${capital(nameCylinders(finding.odd))}: ${finding.word}. `;
  return [`${named}${patternNotes[finding.pattern]}`, ...wetNote(wet, finding.pattern), ...ruleNote(readings), ...limitNote(inputs, given)];
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

function compute(inputs: ParsedInputs): Result<Calculation, Refusal> {
  const given = readGiven(inputs);
  if (!given.ok) return given;
  const { finding, wet } = given.value;
  const next = wet.length > 0 ? linksAfterOil : patternLinks[finding.pattern];
  return success({ outputs: outputsOf(inputs, given.value), notes: notesOf(inputs, given.value), next });
}

/** Compression of all cylinders compared, with the wet test, the height of the workshop and the pattern they make. */
export const compression: CalculatorDefinition = {
  id: 'compression',
  title: 'Compression test',
  summary: 'Are the cylinders even, which one is low, and does oil say rings or valve?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['compression gauge', 'cylinder pressure', '75 percent rule', 'wet test', 'low compression', 'head gasket', 'altitude', 'psi bar', 'firing order'],
  compute,
  chart: (inputs) => {
    const given = readGiven(inputs);
    return given.ok ? charts(given.value, inputs.optionalNumber('low')) : undefined;
  },
};

export const calculator: CalculatorMaker = () => compression;
