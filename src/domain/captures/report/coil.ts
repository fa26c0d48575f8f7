import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { coilOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import { readCoilCurrent } from '../coil/coilCurrent.ts';
import type { CoilTrace } from '../coil/coilCurrent.ts';
import { coilsOf, compareCoils } from '../coil/compareCoils.ts';
import type { CoilOfCylinder, CoilSupply, CoilVerdict } from '../coil/compareCoils.ts';
import { coilWords } from '../wording.data.ts';
import { assignmentWords, channelsOf, wishFrom } from './channels.ts';
import type { CaptureInput, Channel } from './channels.ts';
import { cylinderBars, traceDrawing } from './drawings.ts';
import { cylinderWords, listWords, penOf } from './format.ts';
import type { Pen } from './format.ts';
import type { CaptureAnswers, CaptureReport, ReportTable } from './types.ts';

function supplyFrom({ supply, clampPercent }: CaptureAnswers): CoilSupply {
  return { ...(supply === undefined ? {} : { voltage: supply }), ...(clampPercent === undefined ? {} : { clampScale: clampPercent / 100 }) };
}

/** Coil current: one feed for all coils, or a column for each. */
export function reportCoil(input: CaptureInput): Result<CaptureReport, Refusal> {
  const channels = channelsOf(input, 'coil-current', 'Coil current');
  if (!channels.ok) return channels;
  const { wish, trouble } = wishFrom(input);
  const [first] = channels.value;
  const isOneFeed = channels.value.length === 1;
  const read: { channel: Channel; trace: CoilTrace }[] = [];
  for (const channel of channels.value) {
    const trace = readCoilCurrent(channel.trace, isOneFeed ? wish : undefined);
    if (!trace.ok) return trace;
    read.push({ channel, trace: trace.value });
  }
  const supply = supplyFrom(input.answers);
  const coils = read.flatMap(({ channel, trace }, place) => coilsOf(trace, supply).map((coil) => (isOneFeed ? coil : { ...coil, cylinder: channel.cylinder ?? place + 1 })));
  const verdicts = compareCoils(coils);
  const pen = penOf(input.answers);
  const [trace] = read;
  const drawings = trace === undefined ? [] : [drawing(first, trace.trace)];
  const table = tableOf(coils, verdicts, pen);
  return success({
    kind: 'coil-current',
    sentences: [...sentencesOf(coils, verdicts, pen), ...read.flatMap(({ trace: one }) => (one.unread > 0 ? [`${one.unread} charges were seen but could not be read: readings are missing there.`] : [])), ...(isOneFeed && trace ? assignmentWords(trace.trace.assignment.by, trouble) : [])],
    tables: [table],
    drawings: [...drawings, bars(coils, verdicts)],
    outcomes: outcomesOf(coils, verdicts),
    kept: coils.map(({ cylinder }, place) => ({ name: `cylinder-${cylinder}`, label: cylinderWords(cylinder), text: keptWords(coils[place], verdicts[place], pen) })),
  });
}

function keptWords(coil: CoilOfCylinder | undefined, verdict: CoilVerdict | undefined, pen: Pen): string {
  if (coil === undefined) return '';
  return `top ${pen.figure(coil.peak)} A, dwell ${pen.figure(coil.dwell)} ms, slope ${pen.figure(coil.slope)} A/ms. ${verdict ? coilWords[verdict.finding] : ''}`;
}

function sentencesOf(coils: readonly CoilOfCylinder[], verdicts: readonly CoilVerdict[], pen: Pen): readonly string[] {
  if (coils.length < 3) return [`${coils.length === 1 ? 'One coil stands' : 'Two coils stand'} in this record. One is told by its fellows: record at least three to compare them.`, ...coils.map((coil) => `${cylinderWords(coil.cylinder)}: ${coil.charges} charges to ${pen.figure(coil.peak)} A.`)];
  const apart = verdicts.filter(({ finding }) => finding !== 'alike');
  const alike = verdicts.filter(({ finding }) => finding === 'alike').map(({ cylinder }) => cylinder);
  const missing = coils.filter((coil) => coil.missing > 0).map((coil) => `${cylinderWords(coil.cylinder)}: ${coil.missing} of ${coil.charges + coil.missing} charges did not come when their turn was.`);
  const cutOff = coils.filter((coil) => coil.cutOff > 0).map(({ cylinder }) => cylinder);
  return [
    ...apart.map(({ cylinder, finding }) => `${cylinderWords(cylinder)}: ${coilWords[finding]}`),
    ...missing,
    ...(alike.length > 0 ? [`${alike.length === 1 ? 'Cylinder' : 'Cylinders'} ${listWords(alike)}: ${coilWords.alike}`] : []),
    ...(cutOff.length > 0 ? [`The top is cut off by the range at ${listWords(cutOff.map(cylinderWords))}: its current is at least what is shown. Take a larger range.`] : []),
  ];
}

function tableOf(coils: readonly CoilOfCylinder[], verdicts: readonly CoilVerdict[], pen: Pen): ReportTable {
  return {
    caption: 'Coil current by cylinder. After ± stands the half width that holds the true value 95 times in 100.',
    head: ['Cylinder', 'Charges', 'Dwell, ms', 'Top, A', 'Slope at the start, A/ms', 'Slope against the others, %', 'Inductance, mH', 'Resistance of the circuit, Ω', 'Knee'],
    rows: coils.map((coil, place) => [
      cylinderWords(coil.cylinder),
      coil.missing > 0 ? `${coil.charges}, ${coil.missing} missing` : String(coil.charges),
      pen.figure(coil.dwell),
      `${coil.cutOff > 0 ? 'at least ' : ''}${pen.figure(coil.peak)}`,
      pen.figure(coil.slope),
      pen.figure(verdicts[place]?.against?.slope, 100),
      pen.figure(coil.inductance),
      pen.figure(coil.resistance),
      coil.knee === undefined ? 'none' : `${coil.knee.kind === 'limiting' ? 'current held' : 'core full'} at ${pen.figure(coil.knee.current)} A`,
    ]),
  };
}

function drawing({ trace }: Channel, read: CoilTrace) {
  const marks = read.events.map((event, place) => ({ at: event.start + event.dwell.value / 1000, label: String(read.assignment.cylinders[place] ?? place + 1) }));
  return traceDrawing(trace, marks, { title: 'Coil current', y: 'Coil current', unit: 'A' });
}

function bars(coils: readonly CoilOfCylinder[], verdicts: readonly CoilVerdict[]) {
  const isApart = (place: number) => !['alike', 'too-close-to-call'].includes(verdicts[place]?.finding ?? 'alike');
  return cylinderBars('Slope of the coil current at the start, by cylinder', { label: 'Slope, A/ms', unit: '1' }, coils.map((coil, place) => ({ cylinder: coil.cylinder, value: coil.slope.value, ...(isApart(place) ? { odd: 'apart' } : {}) })));
}

function outcomesOf(coils: readonly CoilOfCylinder[], verdicts: readonly CoilVerdict[]) {
  const missing = coils.filter((coil) => coil.missing > 0).map(({ cylinder }) => ({ procedure: coilOutcomes.procedure, outcome: coilOutcomes.missing, cylinder }));
  return [...verdicts.filter(({ finding }) => finding !== 'alike').flatMap(({ cylinder, finding }) => proposed(coilOutcomes, finding, { cylinder })), ...missing, ...verdicts.filter(({ finding }) => finding === 'alike').flatMap(({ cylinder, finding }) => proposed(coilOutcomes, finding, { cylinder }))];
}
