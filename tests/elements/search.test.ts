import { describe, expect, it } from 'vitest';
import { otherSpellings, plainQuery, standsIn, wordsOf } from '../../src/elements/search/query.ts';
import { ranked, wordsNowhere } from '../../src/elements/search/ranking.ts';
import { editDistance, nearestWords, otherQueries, putRight } from '../../src/elements/search/words.ts';
import type { Hit } from '../../src/elements/search/fullText.ts';

describe('a query', () => {
  // What the signs mean: U+2212 is the minus, a comma between digits a decimal mark, x or a cross the mark of a thread size.
  it.each([
    { typed: '\u221217,8 °C', plain: '-17.8 °c' },
    { typed: 'M14 × 1,25', plain: 'm14x1.25' },
    { typed: '  Swap   Coils ', plain: 'swap coils' },
    { typed: '４．５', plain: '4.5' },
    { typed: 'gap, plug', plain: 'gap, plug' },
  ])('"$typed" is "$plain"', ({ typed, plain }) => expect(plainQuery(typed)).toBe(plain));

  it.each([
    { query: '1342', others: ['1-3-4-2'] },
    { query: '1000', others: [] },
    { query: 'm14x1.25', others: ['m14'] },
    { query: 'plug torque m14', others: [] },
  ])('"$query" is also spelled $others', ({ query, others }) => expect(otherSpellings(query)).toEqual(others));
});

describe('words of a text', () => {
  it('keep the minus and the point of figures and lose the marks', () => {
    expect(wordsOf('At -12.2 °C, (or 0.45 mm). Coil-on-plug!')).toEqual(['at', '-12.2', 'c', 'or', '0.45', 'mm', 'coil-on-plug', 'coil', 'on', 'plug']);
  });

  it.each([
    { word: 'coils', text: 'a coil', stands: true },
    { word: 'swapp', text: 'swapping', stands: true },
    { word: '4.5', text: '0.45 and 45', stands: false },
    { word: '45', text: '4.5', stands: false },
    { word: 'condensor', text: 'condenser', stands: false },
    { word: 'glass', text: 'gladly', stands: false },
  ])('"$word" in "$text": $stands', ({ word, text, stands }) => expect(standsIn(word, new Set(wordsOf(text)))).toBe(stands));
});

describe('slips', () => {
  // By hand: letters changed, added, left out, or neighbours exchanged.
  it.each([
    { one: 'coil', other: 'coil', slips: 0 },
    { one: 'swpa', other: 'swap', slips: 1 },
    { one: 'kitten', other: 'sitting', slips: 3 },
    { one: 'sparkplug', other: 'spark plug', slips: 1 },
    { one: '', other: 'abc', slips: 3 },
  ])('"$one" to "$other" takes $slips', ({ one, other, slips }) => expect(editDistance(one, other)).toBe(slips));

  it('a figure is never put right', () => expect(nearestWords('p0303x', ['p0303'])).toEqual([]));

  it('only the unknown word is put right, and only where the book has one nearly so', () => {
    expect(putRight('swpa coils', ['swpa'], ['swap', 'coils'])).toBe('swap coils');
    expect(putRight('zzyzx coils', ['zzyzx'], ['swap', 'coils'])).toBeUndefined();
  });
});

describe('other words', () => {
  const terms = [
    { term: 'Catalyst', other: ['catalytic converter', 'converter'] },
    { term: 'Plug lead', other: ['plug wire'] },
    { term: 'Earth', other: ['ground'] },
  ];

  it.each([
    { query: 'catalytic converter', others: ['catalyst'] },
    { query: 'spark plug wires', others: ['spark plug leads'] },
    { query: 'engine ground', others: ['engine earth'] },
    { query: 'groundwork', others: [] },
    { query: 'earth or ground', others: [] },
  ])('"$query" is searched as $others too', ({ query, others }) => expect(otherQueries(query, terms)).toEqual(others));
});

describe('the order', () => {
  const hit = (title: string, part: string, score: number, content = '', names: readonly string[] = []): Hit => ({ title, part, score, content, names, page: title, excerpt: [] });
  const titles = (hits: readonly Hit[], ...queries: string[]): string[] => ranked(hits, queries).map(({ title }) => title);

  it('the page of that very name comes first, though others hold the word oftener', () => {
    expect(titles([hit('Coil primary resistance, coil on plug', 'Ranges', 102), hit('Coil primary resistance', 'Procedures', 97)], 'coil primary resistance')[0]).toBe('Coil primary resistance');
  });

  it('so does a page that is also called so', () => {
    expect(titles([hit('Points of the law', 'Procedures', 20), hit('Contact breaker', 'Procedures', 19, '', ['points'])], 'points')[0]).toBe('Contact breaker');
  });

  it('a page without a word of the query is no answer', () => {
    const hits = [hit('Wiring', 'Procedures', 50, 'connectors and pins')];
    expect(titles(hits, 'zzyzx')).toEqual([]);
    expect(wordsNowhere('wiring zzyzx', hits)).toEqual(['zzyzx']);
  });

  it('without words everything listed stays', () => expect(titles([hit('A', 'Cautions', 1), hit('B', 'Cautions', 1)], '')).toEqual(['A', 'B']));
});
