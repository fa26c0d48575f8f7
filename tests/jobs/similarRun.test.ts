/**
 * Similar conditions: within 375 rpm, load within 20 %, same warm-up state (13 CCR 1968.2(c) and (e)(3.4.4), recalled). Whether 20 % means points
 * or a share of the stored load is not settled, so a load similar by only one of the two is "unknown". Limits worked out by hand.
 */
import { describe, expect, it } from 'vitest';
import { meetsFrame, runIsSimilar, windowOfFrame, windowWords } from '../../src/domain/jobs/similarRun.ts';
import type { FrameRead, ProofRun, YesNoUnknown } from '../../src/domain/jobs/types.ts';
import { frame as frameBody, quietRun, startTime } from './jobBook.ts';

const head = { id: 'e1', sequence: 1, at: startTime };
/** 2200 rpm, 50 % load, warm. */
const frame: FrameRead = { ...(frameBody as FrameRead), ...head };
const { load: _load, ...withoutLoad } = frame;
const run = { ...(quietRun as ProofRun), ...head };

describe('windowOfFrame', () => {
  it.each([
    // 50 × 20 % = 10 points, the narrower of 10 and 20
    { label: '2200 rpm, 50 %', given: frame, expected: { speedFrom: 1825, speedTo: 2575, loadFrom: 40, loadTo: 60, warm: 'yes' } },
    { label: 'no load stored', given: withoutLoad, expected: { speedFrom: 1825, speedTo: 2575, warm: 'yes' } },
    { label: 'at the idle, cold', given: { ...frame, speed: 300, load: 20, warm: 'no' as const }, expected: { speedFrom: 0, speedTo: 675, loadFrom: 16, loadTo: 24, warm: 'no' } },
    // 95 × 1.2 = 114, and no engine gives more than 100
    { label: 'near full load', given: { ...frame, load: 95 }, expected: { speedFrom: 1825, speedTo: 2575, loadFrom: 76, loadTo: 100, warm: 'yes' } },
  ])('$label', ({ given, expected }) => {
    expect(windowOfFrame(given)).toEqual(expected);
  });

  it('is said in words', () => {
    expect(windowWords(windowOfFrame(frame))).toBe('speed 1825 to 2575 rpm, load 40 to 60 %, engine warm');
    expect(windowWords(windowOfFrame({ ...withoutLoad, warm: 'unknown' }))).toBe('speed 1825 to 2575 rpm');
  });
});

describe('meetsFrame', () => {
  const cases: readonly { label: string; given?: Partial<FrameRead>; now: { speed: number; load?: number; warm: YesNoUnknown }; expected: YesNoUnknown }[] = [
    { label: 'the same', now: { speed: 2200, load: 50, warm: 'yes' }, expected: 'yes' },
    { label: 'speed just inside', now: { speed: 2575, load: 50, warm: 'yes' }, expected: 'yes' },
    { label: 'speed just outside', now: { speed: 2576, load: 50, warm: 'yes' }, expected: 'no' },
    { label: 'load just inside both readings', now: { speed: 2200, load: 60, warm: 'yes' }, expected: 'yes' },
    { label: 'load inside 20 points only', now: { speed: 2200, load: 61, warm: 'yes' }, expected: 'unknown' },
    { label: 'load outside both', now: { speed: 2200, load: 71, warm: 'yes' }, expected: 'no' },
    { label: 'cold instead of warm', now: { speed: 2200, load: 50, warm: 'no' }, expected: 'no' },
    { label: 'warmth not known', now: { speed: 2200, load: 50, warm: 'unknown' }, expected: 'unknown' },
    { label: 'warmth not stored', given: { warm: 'unknown' }, now: { speed: 2200, load: 50, warm: 'no' }, expected: 'unknown' },
    { label: 'load not known', now: { speed: 2200, warm: 'yes' }, expected: 'unknown' },
    { label: 'load not known and speed off', now: { speed: 3000, warm: 'yes' }, expected: 'no' },
    { label: 'warmth not known and speed off', now: { speed: 1000, load: 50, warm: 'unknown' }, expected: 'no' },
    { label: 'cold as stored cold', given: { warm: 'no' }, now: { speed: 2200, load: 50, warm: 'no' }, expected: 'yes' },
  ];
  it.each(cases)('$label: $expected', ({ given, now, expected }) => {
    expect(meetsFrame({ ...frame, ...given }, now)).toBe(expected);
  });

  it('a frame without a load asks for none', () => {
    expect(meetsFrame(withoutLoad, { speed: 2200, load: 99, warm: 'yes' })).toBe('yes');
    expect(meetsFrame(withoutLoad, { speed: 2200, warm: 'yes' })).toBe('yes');
  });
});

describe('runIsSimilar: figures typed with a run can take the mechanic’s word back and never give it', () => {
  const cases: readonly { label: string; stored?: FrameRead; typed: Partial<ProofRun>; expected: YesNoUnknown }[] = [
    { label: 'no frame', typed: { speed: 9000 }, expected: 'yes' },
    { label: 'nothing typed', stored: frame, typed: {}, expected: 'yes' },
    { label: 'speed inside', stored: frame, typed: { speed: 2400 }, expected: 'yes' },
    { label: 'speed outside', stored: frame, typed: { speed: 3000 }, expected: 'no' },
    { label: 'load outside', stored: frame, typed: { load: 10 }, expected: 'no' },
    { label: 'load not settled', stored: frame, typed: { speed: 2200, load: 65 }, expected: 'unknown' },
    { label: 'both inside', stored: frame, typed: { speed: 2200, load: 55 }, expected: 'yes' },
    { label: 'warmth not stored', stored: { ...frame, warm: 'unknown' }, typed: { speed: 2200 }, expected: 'yes' },
    { label: 'the mechanic says no', stored: frame, typed: { speed: 2200, load: 50, similarConditions: 'no' }, expected: 'no' },
    { label: 'the mechanic does not know', stored: frame, typed: { speed: 2200, load: 50, similarConditions: 'unknown' }, expected: 'unknown' },
  ];
  it.each(cases)('$label: $expected', ({ stored, typed, expected }) => {
    expect(runIsSimilar({ ...run, ...typed }, stored)).toBe(expected);
  });
});
