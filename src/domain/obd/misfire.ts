/** Windows in which misfires are counted and the lowest limits a maker need use (13 CCR 1968.2(e)(3.2.1), (e)(3.2.2)). */
export const misfireWindows = [
  { kind: 'catalyst', revolutions: 200, floorPercent: 5 },
  { kind: 'emission', revolutions: 1000, floorPercent: 1 },
] as const;

/** Share of the misfires above which a cylinder's own code may stand alone. */
export const singleCodeAbovePercent = 90;
/** Share that two cylinders must pass for the multiple-cylinder code to be compulsory. */
export const multipleCodeAbovePercent = 10;

/** Firings of a four-stroke engine: each cylinder fires once in two revolutions. */
export function firingEvents(cylinders: number, revolutions: number): number {
  return (cylinders * revolutions) / 2;
}

/** Share of firings that missed, percent. `events` is above 0. */
export function misfireRate(misfires: number, events: number): number {
  return (100 * misfires) / events;
}

export function total(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}

/** Each cylinder's share of the misfires counted, percent; all zero when none was counted. */
export function misfireShares(counts: readonly number[]): readonly number[] {
  const all = total(counts);
  return counts.map((count) => (all === 0 ? 0 : (100 * count) / all));
}

/** The window of exactly this length, if the rule has one. */
export function windowOf(revolutions: number): (typeof misfireWindows)[number] | undefined {
  return misfireWindows.find((window) => window.revolutions === revolutions);
}

export type MisfireCodeRule =
  | 'no misfire counted'
  | 'single-cylinder code allowed'
  | 'multiple-cylinder code compulsory'
  | 'multiple-cylinder code by the base rule';

/**
 * Which kind of code the shares call for, from misfires counted per cylinder: the single-cylinder code is allowed when one
 * cylinder has more than 90 % of them; the multiple-cylinder code is compulsory when two or more have more than 10 % each; in
 * between the base rule holds, which is the multiple-cylinder code. Source: 13 CCR 1968.2(e)(3.1.3).
 */
export function misfireCodeRule(counts: readonly number[]): MisfireCodeRule {
  const all = total(counts);
  if (all === 0) return 'no misfire counted';
  const above = (percent: number) => counts.filter((count) => 100 * count > percent * all).length;
  if (above(singleCodeAbovePercent) > 0) return 'single-cylinder code allowed';
  return above(multipleCodeAbovePercent) >= 2
    ? 'multiple-cylinder code compulsory'
    : 'multiple-cylinder code by the base rule';
}
