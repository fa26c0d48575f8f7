import { compareConditions, sureWindow } from '../obd/similar-conditions.ts';
import type { FrameRead, ProofRun, YesNoUnknown } from './types.ts';

/** Where a run has to be held to meet a stored frame: rpm, calculated load in percent, and whether the engine was warm. */
export interface RunWindow {
  readonly speedFrom: number;
  readonly speedTo: number;
  /** Left out where the frame holds no load. */
  readonly loadFrom?: number;
  readonly loadTo?: number;
  readonly warm: YesNoUnknown;
}

export interface RunConditions {
  /** rpm. */
  readonly speed: number;
  /** Calculated load, percent. Left out: not known. */
  readonly load?: number;
  readonly warm: YesNoUnknown;
}

type Frame = Pick<FrameRead, 'speed' | 'load' | 'warm'>;

/** The window to drive in: similar by either reading of the 20 % load rule. No load above 100 % is asked for. */
export function windowOfFrame(frame: Frame): RunWindow {
  const { speedFrom, speedTo, loadFrom, loadTo } = sureWindow({ speed: frame.speed, load: frame.load ?? 0, warm: true });
  const speeds = { speedFrom, speedTo, warm: frame.warm };
  return frame.load === undefined ? speeds : { ...speeds, loadFrom, loadTo: Math.min(100, loadTo) };
}

/**
 * Does a run meet the stored frame? `no` as soon as one known figure is off. `unknown` while the load or the warmth of either is not known,
 * or where the load is similar by only one of the two readings of the rule. A frame without a load is held against speed and warmth alone.
 */
export function meetsFrame(frame: Frame, now: RunConditions): YesNoUnknown {
  const warmKnown = frame.warm !== 'unknown' && now.warm !== 'unknown';
  const loadKnown = frame.load === undefined || now.load !== undefined;
  const load = frame.load ?? 0;
  const { similar } = compareConditions(
    { speed: frame.speed, load, warm: frame.warm === 'yes' },
    { speed: now.speed, load: frame.load === undefined ? load : (now.load ?? load), warm: (warmKnown ? now.warm : frame.warm) === 'yes' },
  );
  if (similar === false) return 'no';
  return similar === true && warmKnown && loadKnown ? 'yes' : 'unknown';
}

/**
 * The mechanic's word on a run, held against the frame as far as figures were typed with it. Figures can take a "yes" back, never give one:
 * warmth was not typed, and only the mechanic knows it.
 */
export function runIsSimilar(run: ProofRun, frame: FrameRead | undefined): YesNoUnknown {
  if (frame === undefined || run.similarConditions !== 'yes') return run.similarConditions;
  const load = run.load ?? frame.load;
  return meetsFrame({ ...frame, warm: 'yes' }, { speed: run.speed ?? frame.speed, ...(load === undefined ? {} : { load }), warm: 'yes' });
}

/** `speed 1825 to 2575 rpm, load 40 to 60 %, engine warm`. */
export function windowWords({ speedFrom, speedTo, loadFrom, loadTo, warm }: RunWindow): string {
  const whole = (value: number): string => String(Math.round(value));
  const load = loadFrom === undefined || loadTo === undefined ? [] : [`load ${whole(loadFrom)} to ${whole(loadTo)} %`];
  const warmth = warm === 'unknown' ? [] : [warm === 'yes' ? 'engine warm' : 'engine cold'];
  return [`speed ${whole(speedFrom)} to ${whole(speedTo)} rpm`, ...load, ...warmth].join(', ');
}
