import type { Book, ContentKind } from '../../schemas/index.ts';
import { valuesAt } from '../fieldValues.ts';
import { fieldName } from '../finding.ts';
import type { FieldPath, Finding } from '../finding.ts';
import { readabilityGrade, sentencesIn, withoutMarkup, wordsIn } from '../sentences.ts';
import { entryRule } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'prose-within-reach';

/**
 * School grade by the Automated Readability Index that no text read at the bench may pass. Apprentices come at about
 * sixteen, which is grade 10, and many mechanics read English as a second language. The book's hardest text stands at 9.5.
 */
export const highestGrade = 10;
/** A handful of words has no grade: one long term decides it. The index was made on samples of running text. */
const fewestWords = 40;

/** A sentence with its address. */
interface Placed {
  readonly text: string;
  readonly file: string;
  readonly line: number;
  readonly field: string;
}

/** Sentences that are read in one go, and what a mechanic would call them. */
interface Passage {
  readonly called: string;
  readonly sentences: readonly Placed[];
}

type Address = readonly [kind: ContentKind, id: string];

function inFields([kind, id]: Address, entry: unknown, patterns: readonly string[], context: RuleContext): Placed[] {
  const texts = patterns.flatMap((pattern) => valuesAt(entry, pattern));
  return texts.flatMap(({ path, value }: { readonly path: FieldPath; readonly value: unknown }) =>
    sentencesIn(String(value)).map(({ text }) => ({ text, ...context.place(kind, id, path), field: fieldName(path) })),
  );
}

function inProse([kind, id]: Address, context: RuleContext): Placed[] {
  const body = context.bodies.get(`${kind}/${id}`);
  if (body === undefined) return [];
  const { file } = context.place(kind, id, []);
  return sentencesIn(withoutMarkup(body.text)).map(({ text, index }) => {
    const line = body.firstLine + body.text.slice(0, index).split('\n').length - 1;
    return { text, file, line, field: 'the prose' };
  });
}

function passagesOf(book: Book, context: RuleContext): Passage[] {
  const procedures = [...book.procedures].flatMap(([id, entry]): Passage[] => {
    const at: Address = ['procedures', id];
    return [
      { called: 'steps', sentences: inFields(at, entry, ['steps.[].text', 'steps.[].where'], context) },
      { called: 'outcomes', sentences: inFields(at, entry, ['outcomes.[].label', 'outcomes.[].meaning'], context) },
      { called: 'prose', sentences: inProse(at, context) },
    ];
  });
  const cautions = [...book.cautions].map(([id, entry]): Passage => {
    const patterns = ['short', 'hazard', 'whoIsAtRisk', 'do.[]', 'stopFor.[]', 'defersTo'];
    return { called: 'caution', sentences: inFields(['cautions', id], entry, patterns, context) };
  });
  return [...procedures, ...cautions];
}

/** The hardest sentence that is more than a few words; a short one is hard for its one long word only. */
function hardest(sentences: readonly Placed[]): Placed | undefined {
  const full = sentences.filter(({ text }) => wordsIn(text).length >= 8);
  return [...(full.length > 0 ? full : sentences)].sort((a, b) => readabilityGrade([b.text]) - readabilityGrade([a.text]))[0];
}

function complaintOf({ called, sentences }: Passage): Finding[] {
  const texts = sentences.map(({ text }) => text);
  const worst = hardest(sentences);
  if (worst === undefined || texts.flatMap(wordsIn).length < fewestWords) return [];
  const grade = readabilityGrade(texts);
  if (grade <= highestGrade) return [];
  const { text, ...address } = worst;
  const found = `${called} of grade ${grade.toFixed(1)}, whose hardest sentence is "${text}"`;
  const expected = `grade ${highestGrade} at most by the Automated Readability Index: shorter sentences, shorter words`;
  return [{ ...address, found, expected, rule: name }];
}

export const proseWithinReach: Rule = {
  name,
  why: 'A mechanic reads this with one hand on the car; what needs reading twice is not done as it says.',
  scope: 'entry',
  check: (book, context) => passagesOf(book, context).flatMap(complaintOf),
};

/** Words in one sentence of a step; beyond it the reader has lost the verb before the end. */
export const mostWordsInAStep = 35;

export const stepSentencesAreShort = entryRule(
  'procedures',
  'step-sentences-are-short',
  'A step is read, then done without the book; nobody keeps a long sentence in mind on the way to the engine.',
  (procedure, report) => {
    procedure.steps.forEach((step, index) => {
      for (const { text } of sentencesIn(step.text)) {
        const words = wordsIn(text).length;
        if (words <= mostWordsInAStep) continue;
        report(['steps', index, 'text'], { found: `a sentence of ${words} words: "${text}"`, expected: `at most ${mostWordsInAStep} words: two sentences, or two steps` });
      }
    });
  },
);
