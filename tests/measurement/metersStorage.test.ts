/** The meters of a device: what cannot be read is never written over, and every failure is a value. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { UserMeter } from '../../src/domain/measurement/meters.ts';
import { mostMeters } from '../../src/domain/measurement/meters.ts';
import { exportMeters } from '../../src/domain/measurement/metersFile.ts';
import { keptMeters } from '../../src/elements/storage/meters.ts';

const key = 'ignition-bench-book:meters';
const gauge: UserMeter = { id: 'gauge', name: 'Gauge', ranges: [{ quantity: 'pressure', unit: 'psi', upTo: 300, percent: 2, counts: 0 }] };
let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal('localStorage', {
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, text: string) => void kept.set(name, text),
    removeItem: (name: string) => void kept.delete(name),
  });
});
afterEach(() => vi.unstubAllGlobals());

describe('meters on the device', () => {
  it('start empty, and come back as they were kept', () => {
    expect(keptMeters.read()).toEqual({ ok: true, value: [] });
    expect(keptMeters.change(() => [gauge])).toEqual({ ok: true, value: [gauge] });
    expect(keptMeters.read()).toEqual({ ok: true, value: [gauge] });
    expect(kept.get(key)).toBe(exportMeters([gauge]));
  });

  it('are changed as they stand at that moment, whatever another window wrote', () => {
    keptMeters.change(() => [gauge]);
    kept.set(key, exportMeters([gauge, { ...gauge, id: 'other' }]));
    expect(keptMeters.change((meters) => meters.filter(({ id }) => id !== 'gauge'))).toEqual({ ok: true, value: [{ ...gauge, id: 'other' }] });
  });

  it.each([
    { label: 'damaged', text: '{"type":' },
    { label: 'of a newer book', text: exportMeters([gauge]).replace('"version": 1', '"version": 2') },
    { label: 'hostile', text: exportMeters([gauge]).replace('"name":', '"__proto__": {}, "name":') },
  ])('$label: told, left as they are, and free to be saved or forgotten', ({ text }) => {
    kept.set(key, text);
    expect(keptMeters.read()).toMatchObject({ ok: false, error: { code: 'damaged' } });
    expect(keptMeters.change(() => [gauge])).toMatchObject({ ok: false, error: { code: 'damaged' } });
    expect(kept.get(key)).toBe(text);
    expect(keptMeters.text()).toEqual({ ok: true, value: text });
    expect(keptMeters.forget().ok).toBe(true);
    expect(keptMeters.read()).toEqual({ ok: true, value: [] });
  });

  it('never keep what could not be read again', () => {
    keptMeters.change(() => [gauge]);
    const tooMany = Array.from({ length: mostMeters + 1 }, (_, index) => ({ ...gauge, id: `g${index}` }));
    expect(keptMeters.change(() => tooMany)).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(keptMeters.read()).toEqual({ ok: true, value: [gauge] });
  });

  it('a full device and one that keeps nothing are told apart', () => {
    const refuse = (name: string) => () => {
      throw new DOMException('no', name);
    };
    vi.stubGlobal('localStorage', { getItem: () => null, setItem: refuse('QuotaExceededError') });
    expect(keptMeters.change(() => [gauge])).toMatchObject({ ok: false, error: { code: 'full' } });
    vi.stubGlobal('localStorage', { getItem: () => null, setItem: refuse('SecurityError') });
    expect(keptMeters.change(() => [gauge])).toMatchObject({ ok: false, error: { code: 'unavailable' } });
    vi.stubGlobal('localStorage', { getItem: refuse('SecurityError'), removeItem: refuse('SecurityError') });
    expect(keptMeters.read()).toMatchObject({ ok: false, error: { code: 'unavailable' } });
    expect(keptMeters.forget()).toMatchObject({ ok: false, error: { code: 'unavailable' } });
  });
});
