import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { primaryOutcomes, secondaryOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import { quantities } from '../columns/quantities.data.ts';
import { unitById } from '../../units/table.ts';
import { compareSparks, sparksOf } from '../spark/compareSparks.ts';
import type { SparksOfCylinder, SparkVerdict } from '../spark/compareSparks.ts';
import { readSparkVoltage } from '../spark/sparkVoltage.ts';
import type { SparkTrace } from '../spark/sparkVoltage.ts';
import { sparkWords } from '../wording.data.ts';
import { assignmentWords, channelsOf, wishFrom } from './channels.ts';
import type { CaptureInput, Channel } from './channels.ts';
import { cylinderBars, traceDrawing } from './drawings.ts';
import { cylinderWords, listWords, penOf } from './format.ts';
import type { Pen } from './format.ts';
import type { CaptureReport, ReportTable } from './types.ts';

/** Firing lines above this many volts are those of a secondary winding; a primary kicks to some hundred. */
const surelySecondary = 1500;

/** Volts, or kilovolts where the figures are large. */
interface Scale {
  readonly factor: number;
  readonly symbol: 'V' | 'kV';
}

/** Primary or secondary voltage: one trace of all cylinders, or a column for each. */
export function reportSpark(input: CaptureInput): Result<CaptureReport, Refusal> {
  const channels = channelsOf(input, 'ignition-voltage', 'Ignition voltage');
  if (!channels.ok) return channels;
  const { wish, trouble } = wishFrom(input);
  const isOne = channels.value.length === 1;
  const read: { channel: Channel; trace: SparkTrace }[] = [];
  for (const channel of channels.value) {
    const trace = readSparkVoltage(channel.trace, isOne ? wish : undefined);
    if (!trace.ok) return trace;
    read.push({ channel, trace: trace.value });
  }
  const sparks = read.flatMap(({ channel, trace }, place) => sparksOf(trace).map((one) => (isOne ? one : { ...one, cylinder: channel.cylinder ?? place + 1 })));
  const verdicts = compareSparks(sparks);
  const pen = penOf(input.answers);
  const highest = Math.max(...sparks.map(({ firing }) => firing.median));
  const scale: Scale = highest > surelySecondary ? { factor: 0.001, symbol: 'kV' } : { factor: 1, symbol: 'V' };
  const isSecondary = (input.answers.side ?? (highest > surelySecondary ? 'secondary' : 'primary')) === 'secondary';
  const [first] = read;
  return success({
    kind: 'ignition-voltage',
    sentences: [...sentencesOf(sparks, verdicts), ...(isOne && first ? assignmentWords(first.trace.assignment.by, trouble) : [])],
    tables: [tableOf(sparks, verdicts, pen, scale)],
    drawings: [...(first ? [drawing(first.channel, first.trace)] : []), ...bars(sparks, verdicts, scale)],
    outcomes: verdicts.flatMap(({ cylinder, finding }) => proposed(isSecondary ? secondaryOutcomes : primaryOutcomes, finding, { cylinder })),
    kept: sparks.map((one, place) => ({
      name: `cylinder-${one.cylinder}`,
      label: cylinderWords(one.cylinder),
      text: `firing line ${pen.figure(one.firing.mean, scale.factor)} ${scale.symbol}, burn time ${pen.figure(one.burnTime?.mean)} ms. ${sparkWords[verdicts[place]?.finding ?? 'nothing-to-compare']}`,
    })),
  });
}

function sentencesOf(sparks: readonly SparksOfCylinder[], verdicts: readonly SparkVerdict[]): readonly string[] {
  if (verdicts.every(({ finding }) => finding === 'nothing-to-compare')) return [sparkWords['nothing-to-compare']];
  const alike = verdicts.filter(({ finding }) => finding === 'alike').map(({ cylinder }) => cylinder);
  const cutOff = sparks.filter((one) => one.cutOff > 0).map(({ cylinder }) => cylinder);
  const missing = sparks.filter((one) => one.missing > 0).map((one) => `${cylinderWords(one.cylinder)}: ${one.missing} firings did not come when their turn was.`);
  return [
    ...verdicts.filter(({ finding }) => finding !== 'alike').map(({ cylinder, finding }) => `${cylinderWords(cylinder)}: ${sparkWords[finding]}`),
    ...missing,
    ...(alike.length > 0 ? [`${alike.length === 1 ? 'Cylinder' : 'Cylinders'} ${listWords(alike)}: ${sparkWords.alike}`] : []),
    ...(cutOff.length > 0 ? [`Some firing lines of ${listWords(cutOff.map(cylinderWords))} pass the range or the sampling: they are at least what is shown.`] : []),
  ];
}

function tableOf(sparks: readonly SparksOfCylinder[], verdicts: readonly SparkVerdict[], pen: Pen, { factor, symbol }: Scale): ReportTable {
  return {
    caption: 'Firings by cylinder. After ± stands the half width that holds the true mean 95 times in 100.',
    head: ['Cylinder', 'Firings', `Firing line, ${symbol}`, 'Against the others, %', 'Burn time, ms', `Burn voltage, ${symbol}`, `Burn slope, ${symbol}/ms`, 'Swings'],
    rows: sparks.map((one, place) => [
      cylinderWords(one.cylinder),
      one.withoutBurn > 0 ? `${one.firings}, ${one.withoutBurn} without a burn line` : String(one.firings),
      pen.figure(one.firing.mean, factor),
      pen.figure(verdicts[place]?.against?.firing, 100),
      pen.figure(one.burnTime?.mean),
      pen.figure(one.burnVoltage, factor),
      pen.figure(one.burnSlope, factor),
      pen.figure(one.swings),
    ]),
  };
}

function drawing({ trace }: Channel, read: SparkTrace) {
  const marks = read.events.map(({ at }, place) => ({ at, label: String(read.assignment.cylinders[place] ?? place + 1) }));
  const unit = unitById(quantities.find(({ id }) => id === 'ignition-voltage')?.unit ?? 'V')?.id ?? 'V';
  return traceDrawing(trace, marks, { title: 'Ignition voltage', y: 'Voltage', unit });
}

function bars(sparks: readonly SparksOfCylinder[], verdicts: readonly SparkVerdict[], { factor, symbol }: Scale) {
  const odd = (place: number) => (['alike', 'too-close-to-call', 'nothing-to-compare'].includes(verdicts[place]?.finding ?? 'alike') ? {} : { odd: 'apart' });
  return [
    cylinderBars('Firing line by cylinder', { label: `Firing line, ${symbol}`, unit: '1' }, sparks.map((one, place) => ({ cylinder: one.cylinder, value: one.firing.mean.value * factor, ...odd(place) }))),
    cylinderBars('Burn time by cylinder', { label: 'Burn time', unit: 'ms' }, sparks.map((one, place) => ({ cylinder: one.cylinder, value: one.burnTime?.mean.value ?? 0, ...odd(place) }))),
  ];
}
