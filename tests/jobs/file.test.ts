/** Files come from anywhere: every one is checked whole before any of it is used. Hostile keys after RFC 8259 §4 (names are arbitrary strings). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalText, mergeJobs, mostPictures } from '../../src/domain/jobs/edit.ts';
import { exportJob, importJob, jobFileName, largestFile } from '../../src/domain/jobs/file.ts';
import { jobVersion } from '../../src/domain/jobs/types.ts';
import type { Job } from '../../src/domain/jobs/types.ts';
import { calculation, cameBack, cleared, codes, complaint, count, engine, finding, jobOf, moved, noneBack, picture, quietRun, reading, renamed, repair, startTime } from './jobBook.ts';
import { anyJob, shared } from './anyJob.ts';

const whole = jobOf(engine, complaint, codes, count, reading, moved, finding, repair, cleared, quietRun, noneBack, { kind: 'undone', undoes: 'e5' }, calculation);

/** The job as a file made by hand: without a checksum, so that what is wrong in it is found by itself. */
const byHand = JSON.stringify(whole, undefined, 2);

/** The same with one thing changed. */
function changed(change: (job: Record<string, unknown>, events: Record<string, unknown>[]) => void): string {
  const job = JSON.parse(byHand) as Record<string, unknown>;
  change(job, job['events'] as Record<string, unknown>[]);
  return JSON.stringify(job);
}
const inLayout = (events: Record<string, unknown>[], change: (layout: Record<string, unknown>) => void) => change(events[0]?.['layout'] as Record<string, unknown>);
const raw = (text: string) => byHand.replace('"title": "Rough when hot"', text);

describe('export and import', () => {
  it('give back the same job', () => {
    expect(importJob(exportJob(whole))).toEqual({ ok: true, value: whole });
  });

  it('give back the same job, whatever is in it', () => {
    fc.assert(fc.property(anyJob, (job) => void expect(importJob(exportJob(job))).toEqual({ ok: true, value: job })));
  });

  it('a mark at the start of the file does no harm', () => {
    expect(importJob(`\uFEFF${exportJob(whole)}`).ok).toBe(true);
  });

  it('never throw, whatever the text', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (text) => void expect(importJob(text).ok).toBe(false)));
  });

  it('the file is named after the job', () => {
    expect(jobFileName({ ...whole, title: 'Rough, when hot!' })).toBe('job-2026-03-04-rough-when-hot.json');
    expect(jobFileName({ ...whole, title: '../../¿' })).toBe('job-2026-03-04.json');
    expect(jobFileName(jobOf(engine, renamed))).toBe('job-2026-03-04-blue-hatchback.json');
    expect(jobFileName(jobOf(engine, renamed, { kind: 'undone', undoes: 'e2' }))).toBe('job-2026-03-04-rough-when-hot.json');
  });
});

describe('the checksum', () => {
  const file = exportJob(whole);
  it('stands in the file, and not in the job', () => {
    expect(file).toMatch(/"checksum": "crc32:[0-9a-f]{8}"/);
    const read = importJob(file);
    expect(read.ok && Object.keys(read.value)).not.toContain('checksum');
  });

  it('is over what the job says, whatever the order of the keys and the spaces between', () => {
    const { checksum, ...rest } = JSON.parse(file) as Record<string, unknown>;
    const turned = Object.fromEntries(Object.entries({ ...rest, checksum }).reverse());
    expect(importJob(JSON.stringify(turned))).toEqual({ ok: true, value: whole });
  });

  it('missing, the file is taken: it was made by hand, or by a book that wrote none', () => {
    expect(importJob(byHand)).toEqual({ ok: true, value: whole });
  });

  it.each([
    { label: 'a reading bent into the range', text: file.replace('"value": 2.4', '"value": 0.4') },
    { label: 'an outcome turned', text: file.replace('"moved": 1', '"stayed": 1') },
    { label: 'an entry taken out', text: JSON.stringify({ ...JSON.parse(file), events: whole.events.slice(0, -1) }) },
    { label: 'a version put back', text: file.replace(`"version": ${jobVersion}`, '"version": 1') },
    { label: 'another checksum', text: file.replace(/crc32:......../, 'crc32:00000000') },
    { label: 'no text', text: JSON.stringify({ ...JSON.parse(file), checksum: 3 }) },
  ])('refuses $label and says what to do', ({ text }) => {
    const result = importJob(text);
    expect(result).toMatchObject({ ok: false, error: { code: 'checksum', input: 'checksum' } });
    expect(result.ok ? '' : result.error.message).toMatch(/Nothing was taken from it\. Fetch the file again/);
  });

  it('a newer version is refused as such, whatever its checksum', () => {
    expect(importJob(file.replace(`"version": ${jobVersion}`, `"version": ${jobVersion + 1}`))).toMatchObject({ ok: false, error: { code: 'newer-version' } });
  });

  it('no single character changed, lost or put in gives back another job', () => {
    const character = fc.oneof(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }), fc.constantFrom('0', '1', '9', '-', '"', ',', '.', '\\', ' ', 'e'));
    fc.assert(
      fc.property(anyJob, fc.nat(), fc.constantFrom(0, 1), fc.oneof(character, fc.constant('')), (job, where, taken, put) => {
        const text = exportJob(job);
        const at = where % text.length;
        const read = importJob(text.slice(0, at) + put + text.slice(at + taken));
        // -0 and 0 are one number in JSON's own words, so jobs are compared by their text.
        if (read.ok) expect(canonicalText(read.value)).toBe(canonicalText(job));
      }),
      { numRuns: 1500 },
    );
  });
});

describe('refusals', () => {
  const deep = `${'['.repeat(40)}${']'.repeat(40)}`;
  const cases: readonly { label: string; text: string; code: string; input?: string }[] = [
    { label: 'empty', text: '', code: 'not-json' },
    { label: 'cut short', text: exportJob(whole).slice(0, 500), code: 'not-json' },
    { label: 'nested beyond reason', text: '['.repeat(100_000), code: 'not-json' },
    { label: 'a number', text: '3', code: 'not-a-job' },
    { label: 'null', text: 'null', code: 'not-a-job' },
    { label: 'a list', text: '[]', code: 'not-a-job' },
    { label: 'some other file', text: '{"type":"shopping-list","version":1}', code: 'not-a-job' },
    { label: 'too large', text: ' '.repeat(largestFile + 1), code: 'too-large' },
    { label: 'a newer version', text: changed((job) => (job['version'] = jobVersion + 1)), code: 'newer-version' },
    { label: 'version zero', text: changed((job) => (job['version'] = 0)), code: 'unknown-version' },
    { label: 'version as text', text: changed((job) => (job['version'] = '1')), code: 'unknown-version' },
    { label: 'no version', text: changed((job) => delete job['version']), code: 'unknown-version' },
    { label: '__proto__ at the top', text: raw('"__proto__": {"polluted": true}'), code: 'forbidden-key' },
    { label: 'constructor at the top', text: raw('"constructor": {"prototype": {}}'), code: 'forbidden-key' },
    { label: 'prototype in an event', text: changed((_job, events) => Object.assign(events[1] ?? {}, { prototype: 1 })), code: 'forbidden-key' },
    { label: '__proto__ as an outcome', text: byHand.replace('"moved": 1', '"__proto__": 1'), code: 'forbidden-key' },
    { label: 'nested too deep', text: raw(`"title": ${deep}`), code: 'too-deep' },
    { label: 'an unknown key', text: changed((job) => (job['extra'] = 1)), code: 'wrong-field', input: 'extra' },
    { label: 'no title', text: changed((job) => delete job['title']), code: 'wrong-field', input: 'title' },
    { label: 'an id with a path in it', text: changed((job) => (job['id'] = '../x')), code: 'wrong-field', input: 'id' },
    { label: 'half a revision', text: changed((job) => (job['revision'] = 1.5)), code: 'wrong-field', input: 'revision' },
    { label: 'a date that is none', text: changed((job) => (job['createdAt'] = '2026-02-30T00:00:00Z')), code: 'wrong-field', input: 'createdAt' },
    { label: 'local time', text: changed((job) => (job['createdAt'] = '2026-02-03T00:00:00+01:00')), code: 'wrong-field', input: 'createdAt' },
    { label: 'events not a list', text: changed((job) => (job['events'] = {})), code: 'wrong-field', input: 'events' },
    { label: 'too many events', text: changed((job) => (job['events'] = Array.from({ length: 10_001 }, () => null))), code: 'wrong-field', input: 'events' },
    { label: 'an event of no kind', text: changed((_job, events) => delete events[2]?.['kind']), code: 'wrong-field', input: 'events[2].kind' },
    { label: 'an unknown kind', text: changed((_job, events) => Object.assign(events[2] ?? {}, { kind: 'teleported' })), code: 'wrong-field', input: 'events[2].kind' },
    { label: 'a kind from the language itself', text: changed((_job, events) => Object.assign(events[2] ?? {}, { kind: 'toString' })), code: 'wrong-field', input: 'events[2].kind' },
    { label: 'an unknown key in an event', text: changed((_job, events) => Object.assign(events[2] ?? {}, { price: 9 })), code: 'wrong-field', input: 'events[2].price' },
    { label: 'the same id twice', text: changed((_job, events) => Object.assign(events[2] ?? {}, { id: 'e1' })), code: 'wrong-field', input: 'events[2].id' },
    { label: 'a sign that is none', text: changed((_job, events) => Object.assign(events[1] ?? {}, { signs: ['haunted'] })), code: 'wrong-field', input: 'events[1].signs[0]' },
    { label: 'a weight above 1', text: byHand.replace('"moved": 1', '"moved": 2'), code: 'wrong-field', input: 'events[5].outcomes.moved' },
    { label: 'too many pictures', text: JSON.stringify(jobOf(...Array.from({ length: mostPictures + 1 }, () => picture))), code: 'wrong-field', input: 'events' },
    { label: 'undoing what is not there', text: changed((_job, events) => Object.assign(events[11] ?? {}, { undoes: 'e99' })), code: 'wrong-field' },
    ...['javascript:alert(1)', 'https://elsewhere.example/calculators/plug-gap/', '//elsewhere.example/', '../calculators/plug-gap/', 'calculators/../jobs/', 'calculators/plug-gap/#x', 'calculators/plug-gap/?a b', ''].map((address) => ({
      label: `a calculation that leads to “${address}”`,
      text: changed((_job, events) => Object.assign(events[12] ?? {}, { address })),
      code: 'wrong-field',
      input: 'events[12].address',
    })),
    { label: 'a calculation without its figures', text: changed((_job, events) => delete events[12]?.['outputs']), code: 'wrong-field', input: 'events[12].outputs' },
    { label: 'a figure that is a number', text: changed((_job, events) => Object.assign(events[12] ?? {}, { inputs: [{ name: 'gap', label: 'Gap', text: 1 }] })), code: 'wrong-field', input: 'events[12].inputs[0].text' },
    { label: 'a count of negative size', text: changed((_job, events) => Object.assign(events[4]?.['meter'] ?? {}, { resolution: -1 })), code: 'wrong-field', input: 'events[4].meter.resolution' },
    { label: 'undoing itself', text: changed((_job, events) => Object.assign(events[11] ?? {}, { undoes: 'e12' })), code: 'wrong-field' },
    { label: 'a firing order short of one', text: changed((_job, events) => inLayout(events, (layout) => (layout['firingOrder'] = [1, 3, 4]))), code: 'wrong-field', input: 'events[0].layout.firingOrder' },
    { label: 'a cylinder in two banks', text: changed((_job, events) => inLayout(events, (layout) => (layout['banks'] = [[1, 2], [2, 3]]))), code: 'wrong-field', input: 'events[0].layout.banks' },
    { label: 'a coil for a cylinder that is not there', text: changed((_job, events) => inLayout(events, (layout) => (layout['coilPairs'] = [[1, 9]]))), code: 'wrong-field', input: 'events[0].layout.coilPairs' },
  ];
  it.each(cases)('$label', ({ text, code, input }) => {
    const result = importJob(text);
    expect(result).toMatchObject({ ok: false, error: { code, ...(input === undefined ? {} : { input }) } });
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  it('say where and what', () => {
    const result = importJob(changed((_job, events) => Object.assign(events[2] ?? {}, { sequence: 0 })));
    expect(result.ok ? '' : result.error.message).toBe(
      'This job file is damaged or was changed by hand: events[2].sequence must lie between 1 and 9007199254740991. Nothing was taken from it.',
    );
  });
});

describe('files of older versions', () => {
  // Each was written by the book while that version was the newest, and never changed since.
  const frozen = (version: number) => readFileSync(join(import.meta.dirname, `../fixtures/jobs/version-${version}.json`), 'utf8');
  const as = (text: string, version: number) => JSON.stringify({ ...(JSON.parse(text) as Job), version });

  it.each([1, 2])('version %i reads as it was written, and is written again as the present version', (version) => {
    const old = JSON.parse(frozen(version)) as Job;
    expect(old.version).toBe(version);
    const read = importJob(frozen(version));
    expect(read).toEqual({ ok: true, value: { ...old, version: jobVersion } });
    expect(read.ok && importJob(exportJob(read.value))).toEqual(read);
  });

  it.each([
    { from: 1, by: 2 },
    { from: 1, by: 3 },
    { from: 2, by: 3 },
  ])('version $from brought up by way of version $by is the same as at once', ({ from, by }) => {
    expect(importJob(as(frozen(from), by))).toEqual(importJob(frozen(from)));
  });

  it.each([1, 2])('a copy of version %i and one brought up since are copies of one job', (version) => {
    const read = importJob(frozen(version));
    if (!read.ok) throw new Error(read.error.message);
    const grown = { ...read.value, revision: 30, events: [...read.value.events, { ...cameBack, id: 'new', sequence: 99, at: startTime }] as Job['events'] };
    const both = mergeJobs(read.value, grown);
    expect(both.ok && both.value.events).toEqual(grown.events);
  });
});

describe('merge', () => {
  const merged = (one: Job, other: Job): Job => {
    const result = mergeJobs(one, other);
    if (!result.ok) throw new Error(result.error.message);
    return result.value;
  };

  it('is the same from either side', () => {
    fc.assert(fc.property(shared, ([one, other]) => void expect(merged(one, other)).toEqual(merged(other, one))));
  });

  it('of a job with itself, or with a copy it already holds, changes nothing', () => {
    fc.assert(
      fc.property(shared, ([one, other]) => {
        expect(merged(one, one)).toEqual(one);
        const both = merged(one, other);
        expect(merged(both, other).events).toEqual(both.events);
        expect(merged(both, both)).toEqual(both);
      }),
    );
  });

  it('of three copies does not depend on the order', () => {
    fc.assert(fc.property(shared, ([one, other, third]) => void expect(merged(merged(one, other), third).events).toEqual(merged(one, merged(other, third)).events)));
  });

  it('drops no event', () => {
    fc.assert(
      fc.property(shared, ([one, other]) => {
        const ids = new Set(merged(one, other).events.map((event) => event.id));
        expect([...one.events, ...other.events].every((event) => ids.has(event.id))).toBe(true);
      }),
    );
  });

  it('refuses two jobs, and two copies that disagree about an event', () => {
    expect(mergeJobs(whole, { ...whole, id: 'other' })).toMatchObject({ ok: false, error: { code: 'different-jobs' } });
    const [first, ...rest] = whole.events;
    const forged = { ...whole, events: first ? [{ ...first, at: '2026-03-05T09:00:00.000Z' }, ...rest] : [] };
    expect(mergeJobs(whole, forged)).toMatchObject({ ok: false, error: { code: 'different-event' } });
  });

  it('refuses copies that together hold more pictures than a job may, since the job could not be opened again', () => {
    const pictures = (from: number, to: number): Job => ({ ...whole, events: Array.from({ length: to - from }, (_, index) => ({ ...picture, id: `p${from + index}`, sequence: from + index, at: startTime }) as Job['events'][number]) });
    expect(mergeJobs(pictures(1, 31), pictures(20, 41))).toMatchObject({ ok: true });
    expect(mergeJobs(pictures(1, 31), pictures(20, 42))).toMatchObject({ ok: false, error: { code: 'too-many-pictures', message: expect.stringContaining('41 pictures') } });
  });
});
