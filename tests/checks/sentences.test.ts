import { describe, expect, it } from 'vitest';
import { readabilityGrade, sentencesIn, withoutMarkup, wordsIn } from '../../src/checks/sentences.ts';

const texts = (text: string): string[] => sentencesIn(text).map((sentence) => sentence.text);

describe('sentencesIn', () => {
  it.each<readonly [label: string, text: string, expected: readonly string[]]>([
    ['stops, questions and exclamations', 'Stop. Is it hot? Wait!', ['Stop.', 'Is it hot?', 'Wait!']],
    ['a stop inside a figure or before a small letter', 'Set 0.8 mm. Nominal, approx. half.', ['Set 0.8 mm.', 'Nominal, approx. half.']],
    ['closing marks belong to the sentence before', '(Wait.) “Go.” Then stop.', ['(Wait.)', '“Go.”', 'Then stop.']],
    ['a sentence may open with a figure', 'Read it. 12 V is right.', ['Read it.', '12 V is right.']],
    ['paragraphs and list entries without a stop', 'Why\n\n- one\n- two\n1. three', ['Why', '- one', '- two', '1. three']],
    ['lines of one paragraph are one sentence', 'The spark\njumps.', ['The spark jumps.']],
    ['no letters, no sentence', '12. 34.', []],
  ])('%s', (_label, text, expected) => {
    expect(texts(text)).toEqual(expected);
  });

  it('says where each sentence starts', () => {
    const text = '\nWhy.\n\n  It jumps. It burns.';
    for (const { text: sentence, index } of sentencesIn(text)) expect(text.slice(index, index + sentence.length)).toBe(sentence);
    expect(sentencesIn(text).map(({ index }) => index)).toEqual([1, 9, 19]);
  });
});

describe('withoutMarkup', () => {
  it('leaves words in their place and takes all else away', () => {
    const prose = 'import A from "a";\nA **bold** `code` [link](/x) <Strip a="b" /> $x$ end';
    const plain = withoutMarkup(prose);
    expect(plain).toHaveLength(prose.length);
    expect(wordsIn(plain)).toEqual(['A', 'bold', 'link', 'end']);
    expect(plain.indexOf('end')).toBe(prose.indexOf('end'));
  });
});

// Worked on paper from 4.71 × characters/words + 0.5 × words/sentences − 21.43 (Senter and Smith 1967, recalled).
describe('readabilityGrade', () => {
  it.each<readonly [sentences: readonly string[], expected: number]>([
    // 17 letters, 6 words, 1 sentence: 13.345 + 3 − 21.43.
    [['The cat sat on the mat.'], -5.085],
    // 10 + 10 letters and figures, 2 + 3 words, 2 sentences: 18.84 + 1.25 − 21.43.
    [['Ignition 12.', 'Bore it 1234.'], -1.34],
    // 40 letters, 4 words, 1 sentence: 47.1 + 2 − 21.43.
    [['aaaaaaaaaa bbbbbbbbbb cccccccccc dddddddddd'], 27.67],
  ])('%j is of grade %d', (sentences, expected) => {
    expect(readabilityGrade(sentences)).toBeCloseTo(expected, 6);
  });
});
