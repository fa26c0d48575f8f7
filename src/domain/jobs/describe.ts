import { complaintWords, opinionWords, perCent } from '../diagnosis/labels.ts';
import type { AccessState, IgnitionArrangement, InjectionArrangement } from '../diagnosis/types.ts';
import { limitsText, verdictWord } from '../measurement/sentence.ts';
import type { SentenceOptions } from '../measurement/sentence.ts';
import { formatNumber, formatValue, shortestDecimals } from '../units/format.ts';
import { durationWords } from './minutes.ts';
import type { FigureNoted, FrameRead, JobEvent, LampNoted, ProofCheck, ProofChecked, ProofRun, ReadingTaken, ReturnedMisfire } from './types.ts';

export const ignitionWords: Readonly<Record<IgnitionArrangement, string>> = {
  'coil-per-plug': 'coil on each plug',
  'coil-per-plug-built-in-driver': 'coil on each plug, driver built in',
  'wasted-spark': 'wasted spark, one coil for two cylinders',
  distributor: 'distributor, one coil',
};

export const injectionWords: Readonly<Record<InjectionArrangement, string>> = { port: 'port injection', direct: 'direct injection' };

export const lampWords: Readonly<Record<LampNoted, string>> = {
  off: 'engine lamp off',
  on: 'engine lamp on',
  flashed: 'engine lamp flashed now and then',
  'flashed-long': 'engine lamp flashed for minutes on end',
};

export const accessWords: Readonly<Record<AccessState, string>> = {
  'cover-off': 'engine cover off',
  'plugs-out': 'plugs out',
  raised: 'car raised',
};

export const checkWords: Readonly<Record<ProofCheck, string>> = { trims: 'Fuel trims', monitors: 'Monitors', catalyst: 'Catalyst' };

const checkStateWords: Readonly<Record<ProofCheck, Readonly<Record<ProofChecked['state'], string>>>> = {
  trims: { good: 'back in their band', bad: 'not back in their band', 'not-yet': 'not settled yet', 'not-needed': 'not needed' },
  monitors: { good: 'complete', bad: 'completed with a fault', 'not-yet': 'not complete yet', 'not-needed': 'not needed' },
  catalyst: { good: 'looked at, in order', bad: 'looked at, not in order', 'not-yet': 'not settled yet', 'not-needed': 'not needed' },
};

const misfireWords: Readonly<Record<ReturnedMisfire, string>> = {
  same: 'The same misfire as before',
  different: 'Another misfire than before: a second fault stands behind the first',
};

/** An event in words: what happened, and the particulars a line each. */
export interface Description {
  readonly title: string;
  readonly lines: readonly string[];
}

type Describer<Event> = (event: Event, options: SentenceOptions) => Description;
type Describers = { readonly [Kind in JobEvent['kind']]: Describer<Extract<JobEvent, { kind: Kind }>> };

const describers: Describers = {
  'engine-chosen': ({ layout, description, customerReference }) => ({
    title: `Engine: ${layout.title}`,
    lines: given(
      description,
      customerReference && `Reference: ${customerReference}`,
      `${capital(ignitionWords[layout.ignition])}; ${injectionWords[layout.injection]}; firing order ${layout.firingOrder.join('-')}`,
    ),
  }),
  complaint: ({ text, signs, lamp }) => ({
    title: 'Complaint',
    lines: given(text, signs.length > 0 && capital(signs.map((sign) => complaintWords[sign]).join(', ')), lamp && capital(lampWords[lamp])),
  }),
  'codes-read': (event) =>
    event.notRead === undefined
      ? { title: 'Codes read', lines: codeLines(event, 'No codes stored') }
      : { title: 'Codes not read', lines: [event.notRead] },
  'codes-reread': (event) => ({ title: 'Codes read again', lines: codeLines(event, 'None came back') }),
  'codes-cleared': () => ({ title: 'Codes cleared', lines: [] }),
  'test-done': ({ title, place, partner, outcome, note, minutes }) => ({
    title: `${title}, ${place.label}${partner ? ` with ${partner.label}` : ''}`,
    lines: given(outcome, note, minutes !== undefined && `Took ${durationWords(minutes)}`),
  }),
  'test-not-possible': ({ title, place, reason }) => ({
    title: `Not possible: ${title}${place ? `, ${place.label}` : ''}`,
    lines: given(reason),
  }),
  'reading-taken': (event, options) => ({
    title: `Reading: ${event.title}${event.place ? `, ${event.place.label}` : ''}`,
    lines: [
      `${readingWords(event, options)}: ${verdictWord(event.verdict)}`,
      `Limits ${readingLimits(event, options)} (${event.limits.sourceLabel})`,
      conditionWords(event, options),
    ],
  }),
  'finding-made': ({ label, belief, supportedBy }) => ({
    title: `Finding: ${label}`,
    lines: [`Belief ${perCent(belief)}`, ...supportedBy.map((support) => `Rests on: ${support}`)],
  }),
  'part-matched': ({ title, ticks, answers = [], renewedWith = [] }) => ({
    title: `Part compared: ${title}`,
    lines: [
      ...ticks.map(({ feature, matches }) => `${feature}: ${matches ? 'matches' : 'not confirmed'}`),
      ...answers.map(({ question, answer, from }) => `${question} ${answer}${from && ` (from: ${from})`}`),
      ...given(renewedWith.length > 0 && `Renewed in the same visit: ${renewedWith.join(', ')}`),
    ],
  }),
  'repair-done': ({ what, minutes }) => ({ title: 'Repair', lines: [what, minutesWords(minutes)] }),
  'misfires-counted': ({ misfires, revolutions, how }) => ({
    title: 'Misfires counted',
    lines: given(`${misfires} in ${revolutions} revolutions`, how),
  }),
  'proof-run': (event, options) => ({
    title: event.result === 'quiet' ? 'Proof run: quiet' : 'Proof run: the misfire came back',
    lines: runLines(event, options),
  }),
  'handed-over': ({ to, unproven }) => ({
    title: unproven === undefined ? 'Handed over, repair proven' : 'Handed over, repair not proven',
    lines: given(to && `To: ${to}`, unproven),
  }),
  note: ({ text }) => ({ title: 'Note', lines: [text] }),
  calculation: ({ title, inputs, outputs, address }) => ({
    title: `${address.startsWith('captures/') ? 'Log or trace' : 'Calculation'}: ${title}`,
    lines: given(...outputs.map(figureWords), inputs.length > 0 && `From ${inputs.map(figureWords).join('; ')}`),
  }),
  opinion: ({ label, weight, reason }) => ({
    title: `Opinion: ${label}`,
    lines: given(`${capital(opinionWords[weight])}; no finding rests on it`, reason && `Because: ${reason}`),
  }),
  access: ({ open }) => ({ title: 'How far the car is open', lines: [open.length === 0 ? 'Closed up' : capital(open.map((state) => accessWords[state]).join(', '))] }),
  'frame-read': (event, options) => ({ title: `Stored frame${event.code && ` of ${event.code}`}`, lines: [frameWords(event, options)] }),
  picture: ({ caption }) => ({ title: caption === '' ? 'Picture' : `Picture: ${caption}`, lines: [] }),
  'proof-check': (event) => ({ title: checkSentence(event), lines: given(event.note) }),
  'came-back': ({ text, misfire }) => ({ title: 'The car came back', lines: given(text, misfireWords[misfire]) }),
  renamed: ({ title }) => ({ title: `Job renamed: ${title}`, lines: [] }),
  undone: () => ({ title: 'An entry was undone', lines: [] }),
};

/** What an event says, for the timeline and the sheet. */
export function describeEvent(event: JobEvent, options: SentenceOptions = {}): Description {
  // The table holds for every kind the describer of just that kind; the compiler cannot pair the two by itself.
  const describe = describers[event.kind] as Describer<JobEvent>;
  return describe(event, options);
}

/** `0.62 ± 0.03 Ω` at the temperature of the limits, or `open circuit`. */
export function readingWords(event: ReadingTaken, options: SentenceOptions = {}): string {
  if (event.corrected === 'open') return 'Open circuit';
  const format = { ...options, uncertainty: event.expandedUncertainty };
  const value = formatNumber(event.corrected, format);
  return event.expandedUncertainty > 0
    ? `${value} ± ${formatValue(event.expandedUncertainty, event.unit, format)}`
    : formatValue(event.corrected, event.unit, options);
}

export function readingLimits(event: ReadingTaken, options: SentenceOptions = {}): string {
  const { low, high, referenceTemperature } = event.limits;
  const limits = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }), unit: event.unit, variation: 'none' as const };
  const at = referenceTemperature === undefined ? '' : ` at ${formatValue(referenceTemperature, 'C', options)}`;
  return limitsText(limits, options) + at;
}

/** How the reading was taken: `Typed "0,9"; meter ±0.8 % ±3 digits; leads 0.2 Ω; at 85 °C`. */
export function conditionWords(event: ReadingTaken, options: SentenceOptions = {}): string {
  const { leads, limits } = event;
  return given(
    `Typed “${event.text}”`,
    meterWords(event, options),
    leads !== 0 && `leads ${formatValue(leads, event.unit, options)}`,
    limits.referenceTemperature !== undefined && `taken at ${formatValue(event.temperature, 'C', options)}`,
  ).join('; ');
}

function meterWords({ meter, unit }: ReadingTaken, options: SentenceOptions): string {
  const size = meter.resolution === undefined ? '' : ` of ${formatValue(meter.resolution, unit, { ...options, decimals: shortestDecimals(meter.resolution) })}`;
  return `meter ${meter.name ? `${meter.name}, ` : ''}±${formatNumber(meter.percent, options)} % ±${formatNumber(meter.counts)} digits${size}`;
}

/** `Fuel trims: back in their band`. */
export function checkSentence({ check, state }: ProofChecked): string {
  return `${checkWords[check]}: ${checkStateWords[check][state]}`;
}

function minutesWords(minutes: number): string {
  return `${formatNumber(minutes)} ${minutes === 1 ? 'minute' : 'minutes'}`;
}

function runLines(run: ProofRun, options: SentenceOptions): readonly string[] {
  const { revolutions, minutes, misfires, similarConditions, result, speed, load, misfire } = run;
  const held = given(speed !== undefined && formatValue(speed, 'rpm', options), load !== undefined && `${formatNumber(load, options)} % load`);
  return given(
    `${revolutions} revolutions, ${minutesWords(minutes)}, ${misfires} ${misfires === 1 ? 'misfire' : 'misfires'} counted`,
    held.length > 0 && `Held at ${held.join(', ')}`,
    `Run under the conditions of the fault: ${similarConditions === 'unknown' ? 'not known' : similarConditions}`,
    result === 'returned' && misfire && misfireWords[misfire],
  );
}

/** `2200 rpm, 45 % load, coolant at 88 °C, engine warm`. */
function frameWords({ speed, load, coolant, warm }: FrameRead, options: SentenceOptions): string {
  return given(
    formatValue(speed, 'rpm', options),
    load !== undefined && `${formatNumber(load, options)} % load`,
    coolant !== undefined && `coolant at ${formatValue(coolant, 'C', options)}`,
    warm === 'unknown' ? 'warmth not known' : warm === 'yes' ? 'engine warm' : 'engine cold',
  ).join(', ');
}

/** `Spark plug gap: 1.1 mm`. */
function figureWords({ label, text }: FigureNoted): string {
  return `${label}: ${text}`;
}

function codeLines(event: { readonly codes: readonly { readonly code: string; readonly title: string }[]; readonly refused: readonly string[] }, none: string): readonly string[] {
  const codes = event.codes.map(({ code, title }) => `${code}: ${title}`);
  const refused = event.refused.length > 0 ? [`Not understood: ${event.refused.join(', ')}`] : [];
  return codes.length + refused.length > 0 ? [...codes, ...refused] : [none];
}

/** The pieces that say something. */
function given(...pieces: readonly (string | false | undefined)[]): readonly string[] {
  return pieces.filter((piece): piece is string => typeof piece === 'string' && piece !== '');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
