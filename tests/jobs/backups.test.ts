/** When a job is due to be saved to a file: after 7 days or 30 entries, and only when something came in since. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { appendEvent } from '../../src/domain/jobs/edit.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { backupReminder, forgetSavedToFile, readSavedToFile, writeSavedToFile } from '../../src/elements/storage/backups.ts';
import { askToKeep, roomUsed } from '../../src/elements/storage/room.ts';
import { readSettings, writeSettings } from '../../src/elements/storage/settings.ts';
import { roomWords } from '../../src/elements/jobs/safeKeeping.ts';
import { jobOf, startTime } from './jobBook.ts';

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

const withNotes = (count: number): Job =>
  Array.from({ length: count }).reduce<Job>((job, _, index) => appendEvent(job, { kind: 'note', text: '' }, `n${index}`, startTime), jobOf());
const dayAfterStart = (days: number): string => new Date(Date.parse(startTime) + days * 86_400_000).toISOString();

describe('the reminder', () => {
  it.each([
    { label: 'new, few entries', entries: 29, saved: undefined, day: 6.9, says: undefined },
    { label: 'never saved for 7 days', entries: 1, saved: undefined, day: 7, says: 'This job was never saved to a file: 1 entry is on this device only' },
    { label: 'never saved, 30 entries', entries: 30, saved: undefined, day: 0, says: 'never saved to a file' },
    { label: 'saved, nothing since, a year later', entries: 40, saved: 40, day: 365, says: undefined },
    { label: 'saved, one entry since, 6 days', entries: 41, saved: 40, day: 6.9, says: undefined },
    { label: 'saved, one entry since, 8 days', entries: 41, saved: 40, day: 8, says: 'last saved to a file 8 days ago, 1 entry came in' },
    { label: 'saved, 29 entries since', entries: 69, saved: 40, day: 1, says: undefined },
    { label: 'saved, 30 entries since', entries: 70, saved: 40, day: 1, says: 'last saved to a file a day ago, 30 entries came in' },
  ])('$label', ({ entries, saved, day, says }) => {
    const reminder = backupReminder(withNotes(entries), saved === undefined ? undefined : { at: startTime, entries: saved }, dayAfterStart(day));
    if (says === undefined) expect(reminder).toBeUndefined();
    else expect(reminder).toContain(says);
  });

  it('is not for a job made up to show the book', () => {
    expect(backupReminder({ ...withNotes(40), source: 'Invented for demonstration' }, undefined, dayAfterStart(30))).toBeUndefined();
  });

  it('rests on what is kept of the last file', () => {
    const job = withNotes(30);
    expect(readSavedToFile(job.id)).toBeUndefined();
    writeSavedToFile(job, startTime);
    expect(readSavedToFile(job.id)).toEqual({ at: startTime, entries: 30 });
    forgetSavedToFile(job.id);
    expect(readSavedToFile(job.id)).toBeUndefined();
  });

  it.each(['{', 'null', '[]', '{"at":"yesterday","entries":3}', '{"at":"2026-03-04T09:00:00.000Z"}'])('damage is taken as never saved: %s', (text) => {
    kept.set('ignition-bench-book:saved-to-file:job-1', text);
    expect(readSavedToFile('job-1')).toBeUndefined();
  });
});

describe('settings of the shop', () => {
  it('start with every tool there and the experience off', () => {
    expect(readSettings()).toMatchObject({ toolsNotHad: [], experience: { on: false } });
  });

  it('are kept beside the others', () => {
    writeSettings({ decimalMark: ',' });
    writeSettings({ toolsNotHad: ['borescope'] });
    writeSettings({ experience: { on: true, since: startTime } });
    expect(readSettings()).toMatchObject({ decimalMark: ',', toolsNotHad: ['borescope'], experience: { on: true, since: startTime } });
  });

  it.each([
    ['names that are no tool', { toolsNotHad: ['borescope', 'crystal ball', 3] }, ['borescope'], { on: false }],
    ['no list', { toolsNotHad: 'borescope', experience: 'yes' }, [], { on: false }],
    ['a switch that is neither', { experience: { on: 'true', since: 'today' } }, [], { on: false }],
  ])('%s are left out', (_label, settings, toolsNotHad, experience) => {
    kept.set('ignition-bench-book:settings', JSON.stringify(settings));
    expect(readSettings().toolsNotHad).toEqual(toolsNotHad);
    expect(readSettings().experience).toEqual(experience);
  });
});

describe('room on the device', () => {
  it('is told in plain words', async () => {
    vi.stubGlobal('navigator', { storage: { estimate: async () => ({ usage: 12_400_000, quota: 2_500_000_000 }), persisted: async () => true } });
    const room = await roomUsed();
    expect(room).toEqual({ used: 12_400_000, given: 2_500_000_000, keptFast: true });
    expect(room && roomWords(room)).toBe('The book and its jobs take about 12 MB of the 2.5 GB this browser gives. The browser has promised to clear none of it by itself.');
  });

  it.each([
    ['a browser without it', {}],
    ['a browser that refuses', { storage: { estimate: () => Promise.reject(new Error('no')), persist: () => Promise.reject(new Error('no')) } }],
  ])('%s says nothing and breaks nothing', async (_label, navigator) => {
    vi.stubGlobal('navigator', navigator);
    expect(await roomUsed()).toBeUndefined();
    await askToKeep();
  });
});
