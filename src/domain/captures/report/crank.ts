import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { chartShape } from '../../drawing/chart.ts';
import { wheelOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import { readCrank } from '../crank/contributions.ts';
import type { CrankReading, CrankWish } from '../crank/contributions.ts';
import { toothTimes } from '../crank/teeth.ts';
import { crankNamed, crankWords } from '../wording.data.ts';
import { channelsOf, wishFrom } from './channels.ts';
import type { CaptureInput } from './channels.ts';
import { cylinderBars } from './drawings.ts';
import { penOf } from './format.ts';
import { needsEngine } from './starter.ts';
import type { CaptureReport } from './types.ts';

/** Turns drawn by interval: more run into each other. */
const drawnIntervals = 120;
/** Turns with a tooth too few or too many, as a share, from which the wheel or its sensor is in question. Common practice. */
const brokenShare = 0.05;

/** Crank sensor: what each cylinder adds to the speed. */
export function reportCrank(input: CaptureInput): Result<CaptureReport, Refusal> {
  const channels = channelsOf(input, 'crank-sensor', 'Crank sensor');
  if (!channels.ok) return channels;
  const { wish, trouble } = wishFrom(input);
  if (wish === undefined) return needsEngine();
  const [{ trace }] = channels.value;
  const teeth = toothTimes(trace);
  if (!teeth.ok) return teeth;
  const { firstTopDeadCentre } = input.answers;
  const crankWish: CrankWish = { ...wish, ...(firstTopDeadCentre === undefined ? {} : { firstTopDeadCentre }) };
  const read = readCrank(teeth.value, crankWish);
  if (!read.ok) return read;
  return success(reportOf(read.value, input, trouble));
}

function reportOf(read: CrankReading, { answers }: CaptureInput, trouble: string | undefined): CaptureReport {
  const { wheel, ranking, intervals, finding, named } = read;
  const pen = penOf(answers);
  const weak = finding === 'one-weak' ? ranking?.weakest : undefined;
  const turns = wheel.angles.findLast((angle) => !Number.isNaN(angle)) ?? 0;
  const isBroken = wheel.brokenTurns > brokenShare * (turns / 360);
  const main = `${weak === undefined ? '' : `Cylinder ${weak}: `}${crankWords[finding]}`;
  const speed = intervals.reduce((sum, interval) => sum + interval.speed, 0) / intervals.length;
  return {
    kind: 'crank-sensor',
    sentences: [
      main,
      crankNamed[named],
      ...(trouble === undefined ? [] : [trouble]),
      `The wheel has ${wheel.places} places, ${wheel.missing} of them without a tooth; mean speed ${pen.number(speed, 0)} rpm.`,
      ...(wheel.brokenTurns > 0 ? [`In ${wheel.brokenTurns} turns a tooth too few or too many was seen. Look at the wheel, the sensor’s gap and its cable.`] : []),
    ],
    tables: [{ caption: 'What each cylinder adds to the square of the crank’s speed in its interval, against the mean of its cycle', head: ['Cylinder', 'Against the mean, %', 'Cycles'], rows: (ranking?.cylinders ?? []).map(({ cylinder, against, rounds }) => [`Cylinder ${cylinder}`, pen.figure(against, 100), String(rounds)]) }],
    drawings: [speedDrawing(read), cylinderBars('What each cylinder adds, percent against the mean', { label: 'Against the mean', unit: '%' }, (ranking?.cylinders ?? []).map(({ cylinder, against }) => ({ cylinder, value: 100 * against.value, ...(cylinder === weak ? { odd: 'weak' } : {}) })))],
    outcomes: proposed(wheelOutcomes, isBroken ? 'broken' : ''),
    kept: [{ name: 'finding', label: 'Finding', text: `${main} ${crankNamed[named]}` }, ...(ranking?.cylinders ?? []).map(({ cylinder, against }) => ({ name: `cylinder-${cylinder}`, label: `Cylinder ${cylinder}`, text: `${pen.figure(against, 100)} % against the mean` }))],
  };
}

function speedDrawing({ intervals, finding, ranking }: CrankReading) {
  const shown = intervals.slice(0, drawnIntervals);
  const weak = finding === 'one-weak' ? ranking?.weakest : undefined;
  const marks = shown.slice(0, 24).filter(({ cylinder }) => cylinder === weak);
  return chartShape({
    title: `Speed of the crank by firing interval; the first ${shown.length} of ${intervals.length}.`,
    x: { label: 'Time', unit: 's' },
    y: { label: 'Engine speed', unit: 'rpm' },
    series: [{ name: 'Speed', kind: 'line', points: shown.map(({ at, speed }) => ({ x: at, y: speed })) }],
    marks: marks.map(({ at, speed, cylinder }) => ({ x: at, y: speed, label: String(cylinder) })),
  });
}
