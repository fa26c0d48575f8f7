import type { Points } from '../numbers/fit.ts';
import { extremesOf } from './trace.ts';
import type { Rest, Stretch, Trace } from './trace.ts';

/** Standard deviations of noise that make a rise or a fall more than noise. */
export const sureDeviations = 5;

/** The last sample before the current is switched off: the fall itself may hold a few samples. */
export function lastOnRamp({ values }: Trace, { from, to }: Stretch, rest: Rest): number {
  const top = extremesOf(values, { from, to }).highest;
  const falls = Math.max(sureDeviations * rest.noise, 0.01 * (top - rest.level));
  const half = rest.level + (top - rest.level) / 2;
  let last = to - 1;
  while (last > from && !((values[last] ?? Number.NaN) > half)) last -= 1;
  while (last > from + 2 && (values[last - 1] ?? 0) - (values[last] ?? 0) > falls) last -= 1;
  return last;
}

/** Back from a place on the ramp to the first sample that is more than noise. */
export function firstRise({ values }: Trace, from: number, rest: Rest): number {
  let place = from;
  while (place > 0 && (values[place - 1] ?? 0) > rest.level + 3 * rest.noise) place -= 1;
  return place;
}

export function hasLostSamples({ values }: Trace, from: number, to: number): boolean {
  let lost = 0;
  for (let place = from; place < to; place += 1) if (Number.isNaN(values[place])) lost += 1;
  return lost > 0.2 * (to - from);
}

/** Averaging blocks lowers the noise of a point. */
export function noiseOfPoint(rest: Rest, samples: number, points: Points): number {
  return rest.noise / Math.sqrt(Math.max(1, Math.floor(samples / Math.max(1, points.x.length))));
}
