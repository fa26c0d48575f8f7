/** Typed words outlive an error, a drawing and a closed page. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ScreenMemory } from '../../src/elements/jobs/parts.ts';
import { readDrafts, writeDrafts } from '../../src/elements/storage/drafts.ts';
import { readSettings, writeSettings } from '../../src/elements/storage/settings.ts';

const kept = new Map<string, string>();
const storage = {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => void kept.set(key, value),
  removeItem: (key: string) => void kept.delete(key),
};
beforeEach(() => void vi.stubGlobal('localStorage', storage));
afterEach(() => {
  kept.clear();
  vi.unstubAllGlobals();
});
const refusing = () =>
  vi.stubGlobal('localStorage', {
    getItem: () => {
      throw new DOMException('off', 'SecurityError');
    },
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
  });

describe('ScreenMemory', () => {
  it('forgets one form, and remembers it when it was refused after all', () => {
    const memory = new ScreenMemory();
    memory.setText('note.text', 'typed');
    memory.setText('complaint.text', 'other');
    const remember = memory.forget('note');
    expect([memory.text('note.text'), memory.text('complaint.text')]).toEqual([undefined, 'other']);
    remember();
    expect(memory.text('note.text')).toBe('typed');
  });

  it('is there again on the next visit', () => {
    const visit = () => new ScreenMemory(readDrafts('job-1'), (texts) => writeDrafts('job-1', texts));
    visit().setText('note.text', 'half a sente');
    expect(visit().text('note.text')).toBe('half a sente');
    visit().forget('note');
    expect(kept.size).toBe(0);
  });
});

describe('drafts', () => {
  it.each(['not json', '3', 'null', '{"a":1}'])('damaged (%s): none', (text) => {
    kept.set('ignition-bench-book:draft:job-1', text);
    expect([...readDrafts('job-1')]).toEqual([]);
  });

  it('a browser that keeps nothing does no harm', () => {
    refusing();
    expect([...readDrafts('x')]).toEqual([]);
    expect(() => writeDrafts('x', new Map([['a', 'b']]))).not.toThrow();
  });
});

describe('settings', () => {
  const start = { decimalMark: '.', temperatureUnit: 'C', meter: undefined, toolsNotHad: [], experience: { on: false } };
  it('are kept, one change leaving the others', () => {
    expect(readSettings()).toEqual(start);
    writeSettings({ decimalMark: ',' });
    writeSettings({ meter: { name: 'bench', percent: 0.5, counts: 2 } });
    expect(readSettings()).toEqual({ ...start, decimalMark: ',', meter: { name: 'bench', percent: 0.5, counts: 2 } });
  });

  it.each(['[', 'null', '"x"', '{"decimalMark":";","temperatureUnit":"K","meter":{"name":"x","percent":200,"counts":1}}'])('out of shape (%s): start values', (text) => {
    kept.set('ignition-bench-book:settings', text);
    expect(readSettings()).toEqual(start);
  });

  it('a browser that keeps nothing is said', () => {
    refusing();
    expect(readSettings()).toEqual(start);
    expect(writeSettings({ decimalMark: ',' })).toMatchObject({ ok: false, error: { code: 'not-kept' } });
  });
});
