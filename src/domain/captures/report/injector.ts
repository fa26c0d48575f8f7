import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { injectorOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import { compareInjectors, injectorsOf } from '../injector/compareInjectors.ts';
import type { InjectorOfCylinder, InjectorVerdict } from '../injector/compareInjectors.ts';
import { readInjectorCurrent, readInjectorVoltage } from '../injector/injectorTrace.ts';
import type { InjectorTrace } from '../injector/injectorTrace.ts';
import { injectorWords } from '../wording.data.ts';
import { assignmentWords, channelsOf, wishFrom } from './channels.ts';
import type { CaptureInput, Channel } from './channels.ts';
import { cylinderBars, traceDrawing } from './drawings.ts';
import { cylinderWords, listWords, penOf } from './format.ts';
import type { Pen } from './format.ts';
import type { CaptureReport, ReportTable } from './types.ts';

/** Injector current or voltage: width of the pulse, top, and when the valve meets its stop. */
export function reportInjector(input: CaptureInput): Result<CaptureReport, Refusal> {
  const isCurrent = input.matches.some(({ quantity }) => quantity === 'injector-current');
  const channels = channelsOf(input, isCurrent ? 'injector-current' : 'injector-voltage', isCurrent ? 'Injector current' : 'Injector voltage');
  if (!channels.ok) return channels;
  const { wish, trouble } = wishFrom(input);
  const isOne = channels.value.length === 1;
  const read: { channel: Channel; trace: InjectorTrace }[] = [];
  for (const channel of channels.value) {
    const trace = (isCurrent ? readInjectorCurrent : readInjectorVoltage)(channel.trace, isOne ? wish : undefined);
    if (!trace.ok) return trace;
    read.push({ channel, trace: trace.value });
  }
  const injectors = read.flatMap(({ channel, trace }, place) => injectorsOf(trace).map((one) => (isOne ? one : { ...one, cylinder: channel.cylinder ?? place + 1 })));
  const verdicts = compareInjectors(injectors);
  const pen = penOf(input.answers);
  const [first] = read;
  return success({
    kind: 'injector',
    sentences: [...sentencesOf(injectors, verdicts, pen), ...(isOne && first ? assignmentWords(first.trace.assignment.by, trouble) : [])],
    tables: [tableOf(injectors, isCurrent, pen)],
    drawings: [...(first ? [drawing(first.channel, first.trace, isCurrent)] : []), bars(injectors, verdicts, isCurrent)],
    outcomes: isCurrent ? [...verdicts].sort((one, other) => Number(one.finding === 'alike') - Number(other.finding === 'alike')).flatMap(({ cylinder, finding }) => proposed(injectorOutcomes, finding, { cylinder })) : [],
    kept: injectors.map((one) => ({ name: `cylinder-${one.cylinder}`, label: cylinderWords(one.cylinder), text: `pulse ${pen.figure(one.width)} ms${one.peak ? `, top ${pen.figure(one.peak)} A` : ''}${one.opens ? `, valve at its stop after ${pen.figure(one.opens)} ms` : ''}` })),
  });
}

function sentencesOf(injectors: readonly InjectorOfCylinder[], verdicts: readonly InjectorVerdict[], pen: Pen): readonly string[] {
  const alike = verdicts.filter(({ finding }) => finding === 'alike').map(({ cylinder }) => cylinder);
  const nothing = verdicts.every(({ finding }) => finding === 'nothing-to-compare');
  return [
    ...(nothing ? injectors.map((one) => `${cylinderWords(one.cylinder)}: ${one.pulses} pulses of ${pen.figure(one.width)} ms.${one.opens ? ` The valve meets its stop ${pen.figure(one.opens)} ms after switching on.` : ''}`) : []),
    ...(nothing ? [injectorWords['nothing-to-compare']] : verdicts.filter(({ finding }) => finding !== 'alike').map(({ cylinder, finding }) => `${cylinderWords(cylinder)}: ${injectorWords[finding]}`)),
    ...injectors.filter((one) => one.missing > 0).map((one) => `${cylinderWords(one.cylinder)}: ${one.missing} pulses did not come when their turn was.`),
    ...(alike.length > 0 ? [`${alike.length === 1 ? 'Cylinder' : 'Cylinders'} ${listWords(alike)}: ${injectorWords.alike}`] : []),
  ];
}

function tableOf(injectors: readonly InjectorOfCylinder[], isCurrent: boolean, pen: Pen): ReportTable {
  return {
    caption: 'Pulses by cylinder. After ± stands the half width that holds the true value 95 times in 100.',
    head: ['Cylinder', 'Pulses', 'Width, ms', ...(isCurrent ? ['Top, A', 'Valve at its stop after, ms'] : ['Highest voltage after it, V'])],
    rows: injectors.map((one) => [cylinderWords(one.cylinder), String(one.pulses), pen.figure(one.width), ...(isCurrent ? [pen.figure(one.peak), pen.figure(one.opens)] : [pen.figure(one.clamp)])]),
  };
}

function drawing({ trace }: Channel, read: InjectorTrace, isCurrent: boolean) {
  const marks = read.pulses.map(({ start, width }, place) => ({ at: start + width.value / 1000, label: String(read.assignment.cylinders[place] ?? place + 1) }));
  return traceDrawing(trace, marks, isCurrent ? { title: 'Injector current', y: 'Injector current', unit: 'A' } : { title: 'Injector voltage', y: 'Injector voltage', unit: 'V' });
}

function bars(injectors: readonly InjectorOfCylinder[], verdicts: readonly InjectorVerdict[], isCurrent: boolean) {
  const odd = (place: number) => (['low', 'high', 'no-kink'].includes(verdicts[place]?.finding ?? '') ? { odd: 'apart' } : {});
  return cylinderBars(isCurrent ? 'Top of the injector current by cylinder' : 'Width of the pulse by cylinder', isCurrent ? { label: 'Top', unit: 'A' } : { label: 'Width', unit: 'ms' }, injectors.map((one, place) => ({ cylinder: one.cylinder, value: isCurrent ? (one.peak?.value ?? 0) : one.width.value, ...odd(place) })));
}
