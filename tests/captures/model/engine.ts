import type { Draw } from './random.ts';

/** An engine turned by its starter. */
export interface CrankingTruth {
  /** Height of each hump above the friction, A, in the order they come. */
  readonly heights: readonly number[];
  readonly friction: number;
  /** Hump to hump, s. */
  readonly period: number;
  /** Drift of the friction over the record, A. */
  readonly droop: number;
  /** Rush when the starter breaks loose, A. */
  readonly rush: number;
  readonly length: number;
}

/**
 * Starter current, A, so long after switching on, s: friction, a rush that dies away with 40 ms, and for every cylinder a hump shaped
 * like the square of a cosine and one period wide from foot to foot.
 */
export function starterCurrentOf(truth: CrankingTruth, time: number): number {
  if (time < 0 || time > truth.length) return 0;
  const number = Math.round(time / truth.period);
  const phase = time / truth.period - number;
  const height = truth.heights[number % truth.heights.length] ?? 0;
  return truth.friction - (truth.droop * time) / truth.length + truth.rush * Math.exp(-time / 0.04) + height * Math.cos(Math.PI * phase) ** 2;
}

export interface RunningTruth {
  /** Places on the wheel and how many teeth are missing. */
  readonly places: number;
  readonly missing: number;
  /** Mean speed, turns per minute. */
  readonly speed: number;
  /** Gain of each cylinder in the order they fire: change of ω² over its interval as a share of its mean. Sums to nothing. */
  readonly gains: readonly number[];
  /** How the gains vary from cycle to cycle, standard deviation. */
  readonly scatter: number;
  /** Swing of ω² within each interval, as a share: compression slows, combustion drives. */
  readonly swing: number;
  /** Standard deviation of the time of a tooth, s. */
  readonly jitter: number;
  readonly turns: number;
}

/**
 * Times at which the teeth pass. ω² changes evenly over each firing interval by that cylinder's gain, with a swing within it that is the
 * same for all; time is the integral of dθ/ω in small steps of angle. The first tooth after the gap stands at the top dead centre of the
 * first cylinder.
 */
export function toothTimesOf(truth: RunningTruth, draw: Draw): Float64Array {
  const cylinders = truth.gains.length;
  const width = 720 / cylinders;
  const mean = (truth.speed * 6) ** 2;
  const stepsPerTooth = 8;
  const step = 360 / truth.places / stepsPerTooth;
  const times: number[] = [];
  let [time, square, number, gain] = [0, mean, -1, 0];
  let [before, governor] = [0, 0];
  const total = truth.turns * truth.places * stepsPerTooth;
  for (let count = 0; count < total; count += 1) {
    const angle = count * step;
    const interval = Math.floor((angle + 1e-9) / width);
    if (interval !== number) {
      square += gain * mean;
      number = interval;
      gain = (truth.gains[interval % cylinders] ?? 0) + truth.scatter * draw.normal();
      // What scatter adds is taken back slowly, once a cycle and from all cylinders alike, as idle control does.
      if (interval % cylinders === 0) governor = (0.3 * (square / mean - 1)) / cylinders;
      gain -= governor;
      before = square;
    }
    if (count % stepsPerTooth === 0) {
      const tooth = (count / stepsPerTooth) % truth.places;
      if (tooth < truth.places - truth.missing) times.push(time + truth.jitter * draw.normal());
    }
    const share = (angle + step / 2 - interval * width) / width;
    const now = before + mean * (gain * share - truth.swing * Math.sin(2 * Math.PI * share));
    time += step / Math.sqrt(now);
  }
  return Float64Array.from(times);
}
