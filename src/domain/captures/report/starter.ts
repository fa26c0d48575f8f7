import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { compressionOutcomes } from '../asOutcome.data.ts';
import { proposed } from '../asOutcome.ts';
import { compareCompression } from '../starter/relativeCompression.ts';
import type { RelativeCompression } from '../starter/relativeCompression.ts';
import { readStarterCurrent } from '../starter/starterCurrent.ts';
import type { StarterTrace } from '../starter/starterCurrent.ts';
import { compressionWords } from '../wording.data.ts';
import { assignmentWords, channelsOf, wishFrom } from './channels.ts';
import type { CaptureInput } from './channels.ts';
import { cylinderBars, traceDrawing } from './drawings.ts';
import { penOf } from './format.ts';
import type { Pen } from './format.ts';
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
  const compared = compareCompression(read.value, wish.firingOrder.length);
  const pen = penOf(input.answers);
  const { sentences, weak, speed } = wordsOf(read.value, compared, pen);
  const cylinders = compared.ranking?.cylinders ?? [];
  const rows = cylinders.map(({ cylinder, against, rounds }) => [`Cylinder ${cylinder}`, pen.figure(against, 100), String(rounds)]);
  return success({
    kind: 'starter-current',
    sentences: [...sentences, ...assignmentWords(read.value.assignment.by, trouble)],
    tables: [{ caption: 'Height of each cylinder’s hump against the mean of its round; 100 % is the mean, and no pressure follows from it.', head: ['Cylinder', 'Height, %', 'Rounds'], rows }],
    drawings: [
      traceDrawing(trace, read.value.humps.map(({ at }, place) => ({ at, label: String(read.value.assignment.cylinders[place] ?? '') })), { title: 'Starter current', y: 'Starter current', unit: 'A' }),
      cylinderBars('Height of the humps by cylinder, percent of the mean', { label: 'Height', unit: '%' }, cylinders.map(({ cylinder, against }) => ({ cylinder, value: 100 * against.value, ...(cylinder === weak ? { odd: 'low' } : {}) }))),
    ],
    outcomes: proposed(compressionOutcomes, compared.finding, weak === undefined || !compared.named ? {} : { cylinder: weak }),
    kept: [{ name: 'finding', label: 'Finding', text: sentences[0] ?? '' }, { name: 'speed', label: 'Cranking speed', text: `${speed} rpm` }, ...rows.map(([label = '', text = '']) => ({ name: label.toLowerCase().replace(' ', '-'), label, text: `${text} % of the mean hump` }))],
  });
}

/** What the humps say: the finding first, with the weak cylinder where there is one. */
function wordsOf(trace: StarterTrace, { finding, ranking, named }: RelativeCompression, pen: Pen): { readonly sentences: readonly string[]; readonly weak: number | undefined; readonly speed: string } {
  const speed = pen.figure(trace.speed);
  const turned = `Cranking speed ${speed} rpm over ${trace.humps.length} humps.`;
  if (finding !== 'one-weak' || ranking === undefined) return { sentences: [compressionWords[finding], turned], weak: undefined, speed };
  const { weakest, sureness } = ranking;
  const name = named ? `Cylinder ${weakest}` : `Cylinder ${weakest}, if the first hump was counted right`;
  const sure = `That no other cylinder is weaker is sure to ${pen.number(Math.floor(sureness * 1000) / 10)} % or more.`;
  return { sentences: [`${name}: ${compressionWords[finding]}`, sure, turned], weak: weakest, speed };
}
