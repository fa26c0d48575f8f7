/** Share of the supply that is lost, percent, from two gauge pressures of the same unit. The supply is above zero. */
export function leakagePercent(supply: number, cylinder: number): number {
  return (100 * (supply - cylinder)) / supply;
}

/** Pressures in another unit come with noise in their last digits; a figure on a limit must not fall over it for that. */
function withoutNoise(percent: number): number {
  return Number(percent.toFixed(9));
}

/** Limit of the published method; exactly so much is not over it. Source: FAA AC 43.13-1B, chapter 8. */
export const publishedLimit = 25;
export function isOverPublishedLimit(percent: number): boolean {
  return withoutNoise(percent) > publishedLimit;
}

/** So many points worse than its fellows a cylinder deserves a look whatever the figure. Common practice. */
export const pointsApart = 10;
export function isFarFromFellows(points: number): boolean {
  return withoutNoise(points) >= pointsApart;
}

/** From here on as good as everything is lost. */
export const nearlyAll = 90;

export type LeakageVerdict = 'good' | 'serviceable' | 'worn' | 'repair';

/** Upper ends of the bands for car engines, percent. Common practice. */
const bands: readonly (readonly [upTo: number, verdict: LeakageVerdict])[] = [
  [10, 'good'],
  [20, 'serviceable'],
  [30, 'worn'],
];

export function leakageVerdict(percent: number): LeakageVerdict {
  return bands.find(([upTo]) => withoutNoise(percent) <= upTo)?.[1] ?? 'repair';
}

export type LeakagePattern =
  | 'exhaust-valve'
  | 'inlet-valve'
  | 'both-valves'
  | 'rings-or-bore'
  | 'head-gasket-or-crack'
  | 'gasket-between-cylinders'
  | 'not-at-top-dead-centre';

const patterns: ReadonlyMap<string, LeakagePattern> = new Map([
  ['exhaust', 'exhaust-valve'],
  ['intake', 'inlet-valve'],
  ['exhaust-and-intake', 'both-valves'],
  ['crankcase', 'rings-or-bore'],
  ['coolant', 'head-gasket-or-crack'],
  ['neighbour', 'gasket-between-cylinders'],
]);

/** What the place where the air comes out points to; nothing for a place that is not in the list. */
export function leakagePattern(escapes: string, percent: number): LeakagePattern | undefined {
  if (escapes === 'exhaust-and-intake' && percent >= nearlyAll) return 'not-at-top-dead-centre';
  return patterns.get(escapes);
}
