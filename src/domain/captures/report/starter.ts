import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { compressionOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import { compareCompression } from '../starter/relativeCompression.ts';
import { readStarterCurrent } from '../starter/starterCurrent.ts';
import { compressionWords } from '../wording.data.ts';
import { assignmentWords, channelsOf, wishFrom } from './channels.ts';
import type { CaptureInput } from './channels.ts';
import { cylinderBars, traceDrawing } from './drawings.ts';
import { penOf } from './format.ts';
import type { CaptureReport } from './types.ts';

/** An analysis that cannot do without the number of cylinders. */
export function needsEngine(): Result<never, Refusal> {
  return failure({ input: 'engine', code: 'missing', message: 'Choose the engine: its cylinders and firing order are needed here.' });
}

/** Starter current: the humps by cylinder. */
export function reportStarter(input: CaptureInput): Result<CaptureReport, Refusal> {
  const channels = channelsOf(input, 'starter-current', 'Starter current');
  if (!channels.ok) return channels;
  const { wish, trouble } = wishFrom(input);
  if (wish === undefined) return needsEngine();
  const [{ trace }] = channels.value;
  const read = readStarterCurrent(trace, wish);
  if (!read.ok) return read;
  const { finding, ranking, named } = compareCompression(read.value, wish.firingOrder.length);
  const pen = penOf(input.answers);
  const weak = finding === 'one-weak' ? ranking?.weakest : undefined;
  const name = (cylinder: number) => (named ? `Cylinder ${cylinder}` : `Cylinder ${cylinder}, if the first hump was counted right`);
  const rows = (ranking?.cylinders ?? []).map(({ cylinder, against, rounds }) => [`Cylinder ${cylinder}`, pen.figure(against, 100), String(rounds)]);
  const speed = pen.figure(read.value.speed);
  const sureness = weak === undefined || ranking === undefined ? [] : [`That no other cylinder is weaker is sure to ${pen.number(Math.floor(ranking.sureness * 1000) / 10)} % or more.`];
  return success({
    kind: 'starter-current',
    sentences: [`${weak === undefined ? '' : `${name(weak)}: `}${compressionWords[finding]}`, ...sureness, `Cranking speed ${speed} rpm over ${read.value.humps.length} humps.`, ...assignmentWords(read.value.assignment.by, trouble)],
    tables: [{ caption: 'Height of each cylinder’s hump against the mean of its round; 100 % is the mean, and no pressure follows from it.', head: ['Cylinder', 'Height, %', 'Rounds'], rows }],
    drawings: [
      traceDrawing(trace, read.value.humps.map(({ at }, place) => ({ at, label: String(read.value.assignment.cylinders[place] ?? '') })), { title: 'Starter current', y: 'Starter current', unit: 'A' }),
      cylinderBars('Height of the humps by cylinder, percent of the mean', { label: 'Height', unit: '%' }, (ranking?.cylinders ?? []).map(({ cylinder, against }) => ({ cylinder, value: 100 * against.value, ...(cylinder === weak ? { odd: 'low' } : {}) }))),
    ],
    outcomes: proposed(compressionOutcomes, finding, weak === undefined || !named ? {} : { cylinder: weak }),
    kept: [{ name: 'finding', label: 'Finding', text: `${weak === undefined ? '' : `${name(weak)}: `}${compressionWords[finding]}` }, { name: 'speed', label: 'Cranking speed', text: `${speed} rpm` }, ...rows.map(([label = '', text = '']) => ({ name: label.toLowerCase().replace(' ', '-'), label, text: `${text} % of the mean hump` }))],
  });
}
