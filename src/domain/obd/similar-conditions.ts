/*
 * Similar conditions: 13 CCR 1968.2(c) and (e)(3.4.4), recalled: engine speed within 375 rpm, load within 20 %, the same warm-up
 * state as when the misfire was stored. Whether 20 % means points or a share of the stored load is not settled by the texts seen.
 */

/** How far the speed may be off, rpm; exactly so far is still similar. */
export const speedTolerance = 375;
/** How far the load may be off: percentage points, or percent of the stored load. */
export const loadTolerance = 20;

export interface RunningConditions {
  /** Engine speed, rpm. */
  readonly speed: number;
  /** Calculated load, percent. */
  readonly load: number;
  readonly warm: boolean;
}

export type ConditionMissed = 'speed' | 'load' | 'warm-up state';

export interface Similarity {
  /** `unsettled`: similar if 20 % means points, not if it means a share of the stored load, or the other way round. */
  readonly similar: boolean | 'unsettled';
  readonly misses: readonly ConditionMissed[];
}

/** Load inside 20 points and inside 20 percent of the stored load: both, one or neither. */
function loadFits(stored: number, now: number): 'both' | 'one' | 'neither' {
  const off = Math.abs(now - stored);
  const fits = [off <= loadTolerance, 100 * off <= loadTolerance * stored].filter((fit) => fit).length;
  return fits === 2 ? 'both' : fits === 1 ? 'one' : 'neither';
}

/** Whether the engine now runs as it did when the misfire was stored, and if not, what differs. */
export function compareConditions(stored: RunningConditions, now: RunningConditions): Similarity {
  const load = loadFits(stored.load, now.load);
  const misses: readonly ConditionMissed[] = [
    ...(Math.abs(now.speed - stored.speed) > speedTolerance ? (['speed'] as const) : []),
    ...(load === 'neither' ? (['load'] as const) : []),
    ...(now.warm === stored.warm ? [] : (['warm-up state'] as const)),
  ];
  if (misses.length > 0) return { similar: false, misses };
  return { similar: load === 'both' ? true : 'unsettled', misses };
}

export interface ConditionWindow {
  readonly speedFrom: number;
  readonly speedTo: number;
  readonly loadFrom: number;
  readonly loadTo: number;
}

/** Speeds and loads that are similar by either reading of the rule: the window to drive in. */
export function sureWindow(stored: RunningConditions): ConditionWindow {
  const load = Math.min(loadTolerance, (loadTolerance * stored.load) / 100);
  return {
    speedFrom: Math.max(0, stored.speed - speedTolerance),
    speedTo: stored.speed + speedTolerance,
    loadFrom: stored.load - load,
    loadTo: stored.load + load,
  };
}
