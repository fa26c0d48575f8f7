import type { DiagnosisBook, EngineLayout } from '../diagnosis/types.ts';
import { drawCar } from './car.ts';
import { adviceFollowed, fixedOrder, partsSwapped } from './policies.ts';
import { play } from './play.ts';
import type { Played, Policy } from './play.ts';

export const policyNames = ['advice', 'fixed-order', 'swap-parts'] as const;
export type PolicyName = (typeof policyNames)[number];

const policies: Readonly<Record<PolicyName, Policy>> = { advice: adviceFollowed, 'fixed-order': fixedOrder, 'swap-parts': partsSwapped };

/** A mean with the interval that holds the true mean in 95 of 100 cases: mean ± 1.96 standard errors. */
export interface Mean {
  readonly mean: number;
  readonly interval: readonly [number, number];
}

export interface Summary {
  readonly minutes: Mean;
  /** Without the parts. */
  readonly workMinutes: Mean;
  readonly needlessParts: Mean;
  readonly tests: Mean;
  /** Findings that were wrong, among all findings made. */
  readonly wrongFindingShare: Mean;
  /** Jobs that ended in a proven repair. */
  readonly repairedShare: Mean;
}

export interface Cars {
  /** What nature draws faults, codes and outcomes from. */
  readonly book: DiagnosisBook;
  readonly engine: EngineLayout;
  readonly seed: number;
  readonly jobs: number;
  /** What the garage reasons with; nature's own when left out. */
  readonly believed?: DiagnosisBook;
}

/** The same cars for every policy, by seed and number. */
export function simulate(policy: PolicyName, cars: Cars): Summary {
  const start = { book: cars.believed ?? cars.book, engine: cars.engine, signs: [] };
  const played = Array.from({ length: cars.jobs }, (_, number) => play(policies[policy], start, drawCar(cars.book, cars.engine, cars.seed, number)));
  return summarise(played);
}

export function summarise(played: readonly Played[]): Summary {
  const over = (figure: (job: Played) => number): Mean => meanOf(played.map(figure));
  return {
    minutes: over((job) => job.minutes),
    workMinutes: over((job) => job.workMinutes),
    needlessParts: over((job) => job.needlessParts),
    tests: over((job) => job.tests),
    wrongFindingShare: shareOf(total(played, (job) => job.wrongFindings), total(played, (job) => job.findings)),
    repairedShare: shareOf(total(played, (job) => (job.repaired ? 1 : 0)), played.length),
  };
}

/** 97.5 % point of the standard normal distribution; any table of it. */
const normal975 = 1.959964;

export function meanOf(figures: readonly number[]): Mean {
  const count = figures.length;
  if (count === 0) return { mean: 0, interval: [0, 0] };
  const mean = figures.reduce((sum, figure) => sum + figure, 0) / count;
  const variance = count > 1 ? figures.reduce((sum, figure) => sum + (figure - mean) ** 2, 0) / (count - 1) : 0;
  const reach = normal975 * Math.sqrt(variance / count);
  return { mean, interval: [mean - reach, mean + reach] };
}

/** A share with the interval of E. B. Wilson (Journal of the American Statistical Association 22, 1927; from memory), which stays between 0 and 1. */
export function shareOf(hits: number, count: number): Mean {
  if (count === 0) return { mean: 0, interval: [0, 1] };
  const share = hits / count;
  const spread = normal975 ** 2 / count;
  const middle = (share + spread / 2) / (1 + spread);
  const reach = (normal975 * Math.sqrt((share * (1 - share)) / count + spread / (4 * count))) / (1 + spread);
  return { mean: share, interval: [Math.max(0, middle - reach), Math.min(1, middle + reach)] };
}

function total(played: readonly Played[], figure: (job: Played) => number): number {
  return played.reduce((sum, job) => sum + figure(job), 0);
}

/** A book whose every weight is wrong by the factor, up or down as the seed has it. */
export function withWrongWeights(book: DiagnosisBook, factor: number, isUp: (fault: string) => boolean): DiagnosisBook {
  return { ...book, faults: book.faults.map((fault) => ({ ...fault, weight: isUp(fault.id) ? fault.weight * factor : fault.weight / factor })) };
}
