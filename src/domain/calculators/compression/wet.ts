import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { nameCylinders } from '../cylinders.ts';
import { wetRise, wetRiseClear, wetRiseWeak } from './compare.ts';
import type { CompressionPattern, Finding } from './compare.ts';

/** A cylinder measured without and with oil. */
export interface WetReading {
  readonly cylinder: number;
  readonly dry: number;
  readonly wet: number;
}

/** Which cylinders the wet readings belong to: all, those found low, or the lowest alone. */
function cylindersOf(readings: readonly number[], count: number, finding: Finding): readonly number[] | undefined {
  if (count === readings.length) return readings.map((_, index) => index + 1);
  if (finding.word === 'low' && count === finding.odd.length) return finding.odd;
  return count === 1 ? [readings.indexOf(Math.min(...readings)) + 1] : undefined;
}

function wrongCount(readings: readonly number[], count: number, { odd, word }: Finding): Refusal {
  const low = word === 'low' && odd.length > 1 ? `, ${odd.length} for ${nameCylinders(odd)}` : '';
  const message = `${count} readings with oil were given. Give one for the lowest cylinder${low}, or ${readings.length}, one for every cylinder.`;
  return { input: 'wet', code: 'wrong-number-of-readings', message };
}

/** Each wet reading with its cylinder. Refuses a number that fits no set of cylinders, and a rise from a cylinder that read zero. */
export function matchWet(readings: readonly number[], wet: readonly number[], finding: Finding): Result<readonly WetReading[], Refusal> {
  if (wet.length === 0) return success([]);
  const cylinders = cylindersOf(readings, wet.length, finding);
  if (cylinders === undefined) return failure(wrongCount(readings, wet.length, finding));
  const matched = cylinders.map((cylinder, index) => ({ cylinder, dry: readings[cylinder - 1] ?? 0, wet: wet[index] ?? 0 }));
  const dead = matched.find(({ dry }) => dry === 0);
  if (dead === undefined) return success(matched);
  const message = `Cylinder ${dead.cylinder} read zero without oil, so a rise in percent cannot be worked out. Leave the readings with oil out; a cylinder with no pressure at all has a valve held open or a hole.`;
  return failure({ input: 'wet', code: 'dry-is-zero', message });
}

function isRise(reading: WetReading, from: number, below: number): boolean {
  const rise = wetRise(reading.dry, reading.wet);
  return rise >= from && rise < below;
}

/** What the rises say. How much counts as a clear rise is common practice. */
export function wetNote(readings: readonly WetReading[], pattern: CompressionPattern): readonly string[] {
  const within = (from: number, below: number) => readings.filter((reading) => isRise(reading, from, below)).map(({ cylinder }) => cylinder);
  const [clear, weak, none] = [within(wetRiseClear, Infinity), within(wetRiseWeak, wetRiseClear), within(-Infinity, wetRiseWeak)];
  const cause = pattern === 'two-neighbours-low' ? 'the gasket between them' : 'a valve';
  const say = (cylinders: readonly number[], text: string) => (cylinders.length === 0 ? [] : [`With oil, ${nameCylinders(cylinders)}: ${text}`]);
  return [
    ...say(clear, `up by ${wetRiseClear} % or more. Oil sealed the leak, which points to rings, piston or bore.`),
    ...say(weak, `up by ${wetRiseWeak} to ${wetRiseClear} %, a weak pointer to the rings. A leak-down test settles it.`),
    ...say(none, `hardly changed, under ${wetRiseWeak} %. Where the cylinder is low, this points to ${cause}.`),
  ];
}
