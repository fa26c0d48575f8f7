import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { firingInterval } from '../../diagnosis/layout.ts';
import { fitCurve, polynomial } from '../numbers/fit.ts';
import { rankCylinders } from '../numbers/ranking.ts';
import type { Ranking, Round } from '../numbers/ranking.ts';
import { refuseTrace } from '../trace/checks.ts';
import { placeOfTime } from '../trace/trace.ts';
import type { TraceRefusalCode } from '../trace/types.ts';
import { findWheel } from './teeth.ts';
import type { Wheel } from './teeth.ts';

export interface CrankWish {
  /** Each cylinder once, in the order they fire, at equal distances. */
  readonly firingOrder: readonly number[];
  /** Crank degrees from the first tooth after the gap to the top dead centre at which the first cylinder of the order fires. 0 when left out. */
  readonly firstTopDeadCentre?: number;
  /** Times at which `markedCylinder` fires, seconds, rising: they tell the two turns of a cycle apart. */
  readonly marks?: readonly number[];
  readonly markedCylinder?: number;
}

/** From one firing to the next. */
export interface FiringInterval {
  /** Seconds at its beginning. */
  readonly at: number;
  readonly cylinder: number;
  /** Mean speed over it, turns per minute. */
  readonly speed: number;
  /** Change of the square of the speed over it, as a share of the square: what the cylinder added, less what the load took. */
  readonly gain: number;
}

export interface CrankReading {
  readonly wheel: Wheel;
  readonly intervals: readonly FiringInterval[];
  /** Gain of each cylinder less the mean of its cycle. Nothing when fewer than three whole cycles were recorded. */
  readonly ranking: Ranking | undefined;
  /** `cylinder`: the marks tell the turns apart. `pair`: a cylinder may be its companion. `place`: the top dead centre was not given either. */
  readonly named: 'cylinder' | 'pair' | 'place';
  /** Chance that the weakest truly is, and its gap to the mean clear of the scatter. */
  readonly finding: 'even' | 'one-weak' | 'too-close-to-call' | 'too-short';
}

/** Fewest teeth in a firing interval from which a gain can be read. */
const fewestTeeth = 6;
const sureEnough = 0.95;

/** One cylinder's share of the change is called clear when it lies this many times its 95 % half width from the mean. */
function findingOf(ranking: Ranking | undefined): CrankReading['finding'] {
  if (ranking === undefined) return 'too-short';
  const weakest = ranking.cylinders.find(({ cylinder }) => cylinder === ranking.weakest)?.against;
  if (weakest === undefined) return 'too-short';
  if (ranking.sureness >= sureEnough && -weakest.value > weakest.halfWidth95 + leastGap) return 'one-weak';
  return -weakest.value + weakest.halfWidth95 < 2 * leastGap ? 'even' : 'too-close-to-call';
}

/** Differences of the gain below this share are found on sound engines: spacing of the teeth, mixture. Common practice, no source. */
const leastGap = 0.005;

/**
 * What each cylinder adds to the speed of the crank, from the times its teeth pass (seconds, rising). Over every firing interval a
 * parabola t = a + b·θ + c·θ² is laid through the times (between teeth and across the gap a cubic tells them); with ω = 1/b the square of the speed changes by −4·c·Δθ·ω of itself.
 * Teeth that are unevenly spaced give every turn the same error, which cylinders a turn apart share; the mean of the cycle takes off
 * what is common to all. Refuses a wheel without a missing tooth, fewer than 6 teeth in a firing interval, and times that do not rise.
 */
export function readCrank(times: Float64Array, wish: CrankWish): Result<CrankReading, Refusal<TraceRefusalCode>> {
  const falls = times.findIndex((time, place) => place > 0 && !(time > (times[place - 1] ?? 0)));
  if (falls >= 0) return failure(refuseTrace('times-do-not-rise', `The time does not rise at tooth ${falls + 1}. Give the times of the teeth in order.`));
  const wheel = findWheel(times);
  if (!wheel.ok) return wheel;
  const width = firingInterval(wish.firingOrder.length);
  if ((wheel.value.places * width) / 360 < fewestTeeth) return failure(refuseTrace('setting-wrong', tooFewTeeth(wheel.value, wish), 'firingOrder'));
  if (wish.firingOrder.length % 2 === 1 && (wish.marks?.length ?? 0) === 0) return failure(refuseTrace('setting-wrong', oddWithoutMarks, 'marks'));
  const named = wish.firstTopDeadCentre === undefined ? 'place' : (wish.marks?.length ?? 0) > 0 ? 'cylinder' : 'pair';
  const intervals = readIntervals(times, wheel.value, wish, width);
  const ranking = rankCylinders(roundsOf(intervals, wish.firingOrder), 'difference');
  return success({ wheel: wheel.value, intervals, ranking, named, finding: findingOf(ranking) });
}

const oddWithoutMarks = 'With an odd number of cylinders the top dead centres of the two turns of a cycle lie at different teeth. Record the trigger of one cylinder, or its cam sensor, beside the crank sensor.';

function tooFewTeeth({ places }: Wheel, { firingOrder }: CrankWish): string {
  return `A wheel of ${places} teeth has ${Math.floor((2 * places) / firingOrder.length)} between two firings of ${firingOrder.length} cylinders; at least ${fewestTeeth} are needed to see what one adds.`;
}

function readIntervals(times: Float64Array, wheel: Wheel, wish: CrankWish, width: number): readonly FiringInterval[] {
  const order = wish.firingOrder;
  const origin = originByMarks(times, wheel, wish, width);
  const last = wheel.angles.findLast((angle) => !Number.isNaN(angle)) ?? 0;
  const found: FiringInterval[] = [];
  const before = Math.floor(origin / width);
  for (let number = -before; origin + (number + 1) * width <= last; number += 1) {
    const read = readInterval(times, wheel, origin + number * width, width);
    const cylinder = order[((number % order.length) + order.length) % order.length];
    if (read && cylinder !== undefined) found.push({ ...read, cylinder });
  }
  return found;
}

/**
 * Angle from the first gap at which the first cylinder of the order fires: in this turn or the next, 0 to 720. The marks tell which;
 * without any it is taken as this one.
 */
function originByMarks(times: Float64Array, wheel: Wheel, wish: CrankWish, width: number): number {
  const order = wish.firingOrder;
  const marked = Math.max(0, order.indexOf(wish.markedCylinder ?? order[0] ?? 1));
  const origin = wish.firstTopDeadCentre ?? 0;
  let votes = 0;
  for (const mark of wish.marks ?? []) {
    const angle = wheel.angles[placeOfTime(times, mark)] ?? Number.NaN;
    if (!Number.isNaN(angle)) votes += Math.cos(((angle - marked * width - origin) * Math.PI) / 360);
  }
  return (((votes < 0 ? origin + 360 : origin) % 720) + 720) % 720;
}

/** First place whose angle is at least this; unknown angles are passed over. */
function placeOfAngle(angles: Float64Array, angle: number): number {
  let [low, high] = [0, angles.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    let known = middle;
    while (known < high && Number.isNaN(angles[known])) known += 1;
    if (known < high && (angles[known] ?? 0) < angle) low = known + 1;
    else high = middle;
  }
  return low;
}

/** Time at an angle, from a cubic through the two teeth on either side (Lagrange). NaN where one of the four is unknown. */
function timeAt(times: Float64Array, angles: Float64Array, angle: number): number {
  const next = placeOfAngle(angles, angle);
  const first = Math.min(Math.max(0, next - 2), angles.length - 4);
  let time = 0;
  for (let one = first; one < first + 4; one += 1) {
    let weight = 1;
    for (let other = first; other < first + 4; other += 1) {
      const [own, its] = [angles[one] ?? Number.NaN, angles[other] ?? Number.NaN];
      if (other !== one) weight *= (angle - its) / (own - its);
    }
    time += weight * ((times[one] ?? 0) - (times[first] ?? 0));
  }
  return time + (times[first] ?? 0);
}

/** Points of one firing interval: the same for every interval, wherever its teeth and the gap stand, so that what is common stays common. */
const pointsOfInterval = 25;

function readInterval(times: Float64Array, { angles }: Wheel, from: number, width: number): Omit<FiringInterval, 'cylinder'> | undefined {
  const x = Float64Array.from({ length: pointsOfInterval }, (_, point) => point / (pointsOfInterval - 1) - 0.5);
  const passed = x.map((share) => timeAt(times, angles, from + (share + 0.5) * width));
  const at = passed[0] ?? Number.NaN;
  if (passed.some(Number.isNaN)) return undefined;
  const fit = fitCurve(polynomial, { x, y: passed.map((time) => time - at) }, [0, 0, 0]);
  if (!fit.ok) return undefined;
  const [, duration = 0, bend = 0] = fit.value.parameters;
  return { at, speed: width / 6 / duration, gain: (-4 * bend) / duration };
}

/** Cycles: from each firing of the order's first cylinder on. */
function roundsOf(intervals: readonly FiringInterval[], order: readonly number[]): readonly Round[] {
  const rounds: Map<number, number>[] = [];
  for (const { cylinder, gain } of intervals) {
    const current = rounds.at(-1);
    if (current === undefined || current.size === order.length || current.has(cylinder)) rounds.push(new Map([[cylinder, gain]]));
    else current.set(cylinder, gain);
  }
  return rounds;
}
