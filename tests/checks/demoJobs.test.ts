import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readDemoJobs } from '../../src/checks/demoJobs.ts';
import { readBook } from '../../src/checks/readBook.ts';

const root = join(import.meta.dirname, '../..');
const book = readBook(root).book;
const right = readFileSync(join(root, 'seeds/jobs/worn-plug-gap.yaml'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'demo-jobs-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What an author would read of this story: line, field and what was found. */
function findingsOf(text: string): readonly string[] {
  mkdirSync(join(folder, 'seeds/jobs'), { recursive: true });
  writeFileSync(join(folder, 'seeds/jobs/worn-plug-gap.yaml'), text);
  return readDemoJobs(folder, book).findings.map(({ file, field, found }) => `${file} ${field}: ${found}`);
}

function changed(from: string, to: string): readonly string[] {
  expect(right).toContain(from);
  return findingsOf(right.replace(from, to));
}

const at = 'seeds/jobs/worn-plug-gap.yaml';

describe('an invented job', () => {
  it('that fits the book has no findings, and a folder without any is no fault', () => {
    expect(findingsOf(right)).toEqual([]);
    expect(readDemoJobs('/nowhere', book)).toEqual({ stories: [], findings: [] });
  });

  it.each([
    ['an unknown test of its story', 'test: first-look', 'test: first-lok', 'story › 2 › test: "first-lok"'],
    ['an unknown outcome of its story', 'outcome: nothing\n', 'outcome: nought\n', 'story › 2 › outcome: "nought"'],
    ['a place that the engine has not got', 'place: cylinder-2 }\ncomplaint', 'place: cylinder-9 }\ncomplaint', 'truth › place: "cylinder-9"'],
    ['a finding that is not the truth', 'kind: finding\n    minute: 112\n    fault: plug-gap-wide', 'kind: finding\n    minute: 112\n    fault: plug-fouled', 'story › 9 › fault: plug-fouled at cylinder-2'],
    ['a meter that it does not describe', 'meter: wireGauge\n  - kind', 'meter: ruler\n  - kind', 'story › 7 › meter: "ruler"'],
    ['an unknown range', 'range: plug-gap-general\n    place', 'range: plug-gap\n    place', 'story › 7 › range: "plug-gap"'],
    ['an unknown part', 'part: spark-plugs', 'part: sparks', 'story › 10 › part: "sparks"'],
    ['an arrangement that the engine is not built with', 'ignition: coil-per-plug', 'ignition: wasted-spark', 'engine › ignition: wasted-spark'],
    ['a swap without its other place', '    partner: coil-1\n', '', 'story › 5 › partner: no partner'],
  ])('is refused for %s', (_label, from, to, said) => {
    expect(changed(from, to)).toContain(`${at} ${said}`);
  });

  it.each([
    ['an unknown test', 'test: wiggle-test,', 'test: wiggle,', /answers › \d+ › test: "wiggle"/],
    ['an unknown outcome', 'test: wiggle-test, outcome: no-change', 'test: wiggle-test, outcome: nothing', /answers › \d+ › outcome: "nothing"/],
    ['a test that nothing answers', '  - { test: wiggle-test, outcome: no-change }\n', '', /answers: no answer to wiggle-test/],
    ['a second answer', '  - { test: wiggle-test, outcome: no-change }\n', '  - { test: wiggle-test, outcome: no-change }\n  - { test: wiggle-test, outcome: no-change }\n', /a second answer to wiggle-test/],
    ['a partner where nothing is exchanged', 'test: wiggle-test,', 'test: wiggle-test, partner: cylinder-1,', /a partner for a test without one/],
    ['a test that this arrangement does not allow', 'test: wiggle-test, outcome: no-change', 'test: ballast-resistor, outcome: good', /answers › \d+ › test: "ballast-resistor"/],
  ])('is refused for answers with %s', (_label, from, to, said) => {
    expect(changed(from, to).join('\n')).toMatch(said);
  });

  it('is refused by its schema and by its YAML with the field', () => {
    expect(changed('invented: true', 'invented: false')).toEqual([`${at} invented: false`]);
    expect(findingsOf('id: [')).not.toEqual([]);
    expect(changed('id: worn-plug-gap\n', 'id: worn-plug\n')).toEqual([`${at} id: "worn-plug"`]);
  });
});
