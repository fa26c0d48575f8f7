import { describe, expect, it } from 'vitest';
import { accessText, sourceSeen, sourceStatus } from '../../src/render/words.ts';
import { sourceSchema } from '../../src/schemas/sources.ts';

const kinds = sourceSchema.shape.kind.options;
const seens = sourceSchema.shape.seen.options;
const published = ['standard', 'regulation', 'textbook', 'guidance', 'open-data'] as const;

describe('sourceStatus', () => {
  it('says what each kind of source is', () => {
    expect(Object.fromEntries(kinds.map((kind) => [kind, sourceStatus({ kind, seen: 'read' })]))).toEqual({
      standard: 'standard',
      regulation: 'regulation',
      textbook: 'textbook',
      guidance: 'guidance',
      'open-data': 'open data',
      computed: 'computed',
      'common-practice': 'common practice, no source',
      memory: 'from memory',
    });
  });

  it.each(published)('says of a %s whose text was not at hand that it is recalled, and of no other', (kind) => {
    expect(sourceStatus({ kind, seen: 'recalled' })).toMatch(/, recalled from memory$/);
    for (const seen of ['read', 'extract'] as const) expect(sourceStatus({ kind, seen })).not.toMatch(/recall|memory/);
  });

  it('says of what has no text that it has none, whatever was put down as seen', () => {
    for (const seen of seens) {
      expect(sourceStatus({ kind: 'memory', seen })).toMatch(/memory/);
      expect(sourceStatus({ kind: 'common-practice', seen })).toMatch(/no source/);
    }
  });
});

describe('sourceSeen', () => {
  it('has words for every way of having seen a text, and names memory for a recalled one alone', () => {
    expect(Object.keys(sourceSeen).sort()).toEqual([...seens].sort());
    expect(seens.filter((seen) => /memory/.test(sourceSeen[seen]))).toEqual(['recalled']);
  });
});

describe('accessText', () => {
  it.each([
    ['nothing to open', false, {}, ''],
    ['the cover alone', true, {}, 'taking the engine cover off not counted'],
    ['cover and plugs', true, { 'plugs-out': 12 }, 'taking the engine cover off not counted; 12 min less if the plugs are out already'],
    ['a raised car', false, { raised: 5 }, '5 min less if the car is raised already'],
  ] as const)('says what comes on top and what is saved: %s', (_label, needsCoverOff, access, words) => {
    expect(accessText({ needsCoverOff, access })).toBe(words);
  });
});
