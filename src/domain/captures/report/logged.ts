import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { patternNotes } from '../../calculators/fuel-trim/text.data.ts';
import { counterOutcomes, trimOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import type { ProposedOutcome } from '../asOutcome.ts';
import { readAirFlow } from '../logged/airFlow.ts';
import { readCounters, readLamp } from '../logged/counters.ts';
import type { CounterReading } from '../logged/counters.ts';
import { missingForProof, readProofDrive } from '../logged/proofDrive.ts';
import { readTrims } from '../logged/trims.ts';
import type { TrimsReading } from '../logged/trims.ts';
import { airFlowWords, proofWords } from '../wording.data.ts';
import type { CaptureInput } from './channels.ts';
import { cylinderBars } from './drawings.ts';
import { penOf } from './format.ts';
import type { Pen } from './format.ts';
import { trimMapDrawing, trimMapTable } from './trimMap.ts';
import type { CaptureAnswers, CaptureReport } from './types.ts';

/** One part of the report of a log. */
type Part = Omit<CaptureReport, 'kind'>;
const nothing: Part = { sentences: [], tables: [], drawings: [], outcomes: [], kept: [] };

/** Misfires from which a counter's share means something, and the share by which one cylinder stands out. Common practice. */
const fewestMisfires = 20;
const standsOut = 0.6;

/** A logged table: trims, counters, lamp, air flow and the proof drive, each as far as its columns are there. */
export function reportLogged(input: CaptureInput): Result<CaptureReport, Refusal> {
  const pen = penOf(input.answers);
  const parts = [trimsPart(readTrims(input.table, input.matches), input.answers, pen), countersPart(input, pen), proofPart(input, pen), airPart(input, pen)];
  const told = parts.some(({ sentences }) => sentences.length > 0);
  const all = <Key extends keyof Part>(key: Key) => parts.flatMap((part) => part[key] as readonly unknown[]) as unknown as Part[Key];
  return success({
    kind: 'logged',
    sentences: told ? all('sentences') : ['Neither trims nor misfire counters were found. Say among the columns which hold them, or log them.'],
    tables: all('tables'),
    drawings: all('drawings'),
    outcomes: all('outcomes'),
    kept: all('kept'),
  });
}

function trimsPart({ banks, pattern }: TrimsReading, answers: CaptureAnswers, pen: Pen): Part {
  if (banks.length === 0) return nothing;
  const rows = banks.flatMap(({ bank, idle, cruise }) => [['idle', idle] as const, ['cruise', cruise] as const].map(([state, totals]) => [`Bank ${bank}, ${state}`, pen.signed(totals?.short), pen.signed(totals?.long), pen.signed(totals?.sum), pen.number(totals?.seconds, 0)]));
  const sentence = pattern === undefined ? 'The engine neither idled nor cruised warm for ten seconds, so no pattern of the trims can be told.' : `Fuel trims: ${patternNotes[pattern]}`;
  return {
    sentences: [sentence],
    tables: [{ caption: 'Mean trims, percent, of the warm engine at idle (below 1100 rpm) and at cruise (2000 to 3000 rpm)', head: ['Where', 'Short', 'Long', 'Total', 'Time there, s'], rows }, ...banks.filter(({ map }) => map.length > 0).map((bank) => trimMapTable(bank, answers))],
    drawings: banks.filter(({ map }) => map.some(({ seconds }) => seconds > 0)).map((bank) => trimMapDrawing(bank, answers)),
    outcomes: pattern === undefined ? [] : proposed(trimOutcomes, pattern, banks.length === 1 && banks[0] ? { bank: banks[0].bank } : {}),
    kept: [{ name: 'trims', label: 'Fuel trims', text: sentence }, ...rows.map(([label = '', , , total = '']) => ({ name: label.toLowerCase().replace(/[^a-z0-9]+/g, '-'), label, text: `total ${total} %` }))],
  };
}

function countersPart({ table, matches }: CaptureInput, pen: Pen): Part {
  const counters = readCounters(table, matches);
  const lamp = readLamp(table, matches);
  const lampWords = lamp === undefined ? [] : [lamp.secondsOn > 0 ? `The engine lamp was on for ${pen.number(lamp.secondsOn, 0)} s and came on ${lamp.cameOn === 1 ? 'once' : `${lamp.cameOn} times`}.` : 'The engine lamp stayed off.'];
  if (counters.length === 0) return { ...nothing, sentences: lampWords };
  const total = counters.reduce((sum, counter) => sum + counter.total, 0);
  const first = counters.reduce((most, one) => (one.total > most.total ? one : most));
  const isOne = counters.length > 1 && total >= fewestMisfires && first.total >= standsOut * total;
  const rows = counters.map((one) => [one.cylinder === undefined ? 'All' : `Cylinder ${one.cylinder}`, pen.number(one.total, 0), pen.number(one.typical?.speed, 0), pen.number(one.typical?.load, 0), pen.number(one.typical?.coolant, 0)]);
  return {
    sentences: [...counterWords(counters, first, total, isOne, pen), ...lampWords],
    tables: [{ caption: 'Misfires counted in this record, and the middle of the conditions under which they came', head: ['Cylinder', 'Misfires', 'Speed, rpm', 'Load, %', 'Coolant, °C'], rows }],
    drawings: [cylinderBars('Misfires by cylinder', { label: 'Misfires', unit: 'count' }, counters.map((one) => ({ cylinder: one.cylinder ?? 0, value: one.total, ...(isOne && one === first ? { odd: 'most' } : {}) })))],
    outcomes: counterOutcome(counters, first, total, isOne),
    kept: rows.map(([label = '', text = '']) => ({ name: `misfires-${label.toLowerCase().replace(' ', '-')}`, label: `Misfires, ${label.toLowerCase()}`, text })),
  };
}

function counterWords(counters: readonly CounterReading[], first: CounterReading, total: number, isOne: boolean, pen: Pen): readonly string[] {
  if (total === 0) return ['No counter rose in this record.'];
  const where = first.typical === undefined ? '' : ` They came at about ${pen.number(first.typical.speed, 0)} rpm, load ${pen.number(first.typical.load, 0)} %, coolant ${pen.number(first.typical.coolant, 0)} °C.`;
  const setBack = counters.some((one) => one.setBack > 0) ? ['A counter was set back within the record; what it showed after that was counted anew.'] : [];
  if (isOne && first.cylinder !== undefined) return [`Cylinder ${first.cylinder} counted ${first.total} of ${total} misfires.${where}`, ...setBack];
  return [`${total} misfires were counted, and no single cylinder stands out.${where}`, ...setBack];
}

function counterOutcome(counters: readonly CounterReading[], first: CounterReading, total: number, isOne: boolean): readonly ProposedOutcome[] {
  if (isOne && first.cylinder !== undefined) return proposed(counterOutcomes, 'one', { cylinder: first.cylinder });
  return counters.length > 1 && total >= fewestMisfires && counters.filter((one) => one.total > 0).length > 1 ? proposed(counterOutcomes, 'several') : [];
}

function proofPart({ table, matches, answers: { stored } }: CaptureInput, pen: Pen): Part {
  if (stored === undefined) return nothing;
  const missing = missingForProof(table, matches);
  if (missing !== undefined) return { ...nothing, sentences: [`Similar conditions: ${proofWords[missing]}`] };
  const drive = readProofDrive(table, matches, stored);
  if (drive === undefined) return nothing;
  const misfires = drive.misfires === undefined ? 'no counter was logged' : `${drive.misfires} misfires were counted in it`;
  const told = `The engine ran under similar conditions for ${pen.number(drive.seconds, 0)} s and ${pen.number(drive.revolutions, 0)} turns, ${pen.number(drive.longest, 0)} s of it without a break; ${misfires}.`;
  const other = Object.entries(drive.missedOnly).filter(([, seconds]) => seconds > 0).map(([what, seconds]) => `${what} alone for ${pen.number(seconds, 0)} s`);
  return { ...nothing, sentences: [told, ...(other.length > 0 ? [`Not similar by ${other.join(', by ')}.`] : [])], kept: [{ name: 'proof', label: 'Similar conditions', text: told }] };
}

function airPart({ table, matches, answers: { displacement } }: CaptureInput, pen: Pen): Part {
  if (displacement === undefined) return nothing;
  const { bands, efficiency, finding } = readAirFlow(table, matches, displacement);
  if (finding === 'unknown') return { ...nothing, sentences: [`Air flow: ${airFlowWords.unknown}`] };
  const rows = bands.map((band) => [`${band.speedFrom}–${band.speedTo}`, pen.figure(band.efficiency, 100), String(band.rows)]);
  return {
    ...nothing,
    sentences: [airFlowWords[finding]],
    tables: [{ caption: 'Filling by the air-flow meter, percent of cylinders filled whole at manifold pressure', head: ['Speed, rpm', 'Filling, %', 'Rows'], rows }],
    kept: [{ name: 'air-flow', label: 'Air-flow meter', text: `${airFlowWords[finding]} Filling ${pen.figure(efficiency, 100)} %.` }],
  };
}
