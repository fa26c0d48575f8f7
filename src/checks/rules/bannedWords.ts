import type { Book, ContentKind } from '../../schemas/index.ts';
import { contentKinds } from '../../schemas/index.ts';
import { textsIn } from '../fieldValues.ts';
import type { Finding } from '../finding.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'banned-words';

interface BannedWords {
  readonly pattern: RegExp;
  readonly instead: string;
}

/** Words that show unfinished work, or that tell the reader nothing. */
export const bannedWords: readonly BannedWords[] = [
  { pattern: /\b(TODO|FIXME|TBD|TBC|XXX)\b/, instead: 'the finished text' },
  { pattern: /\blorem ipsum\b/i, instead: 'the finished text' },
  { pattern: /\?\?+|<(insert|value|figure)[^>]*>/i, instead: 'the finished text' },
  { pattern: /\bas per (the )?manufacturer/i, instead: "what to look for in the engine maker's data, and why it comes first" },
  { pattern: /\b(etc\.?|and so on)(?![\p{L}\p{N}])/iu, instead: 'the things themselves, or no list' },
  { pattern: /\b(click|tap) here\b/i, instead: 'the name of the page that the link leads to' },
  { pattern: /\b(?!had\b|that\b)(\p{L}{2,}) \1\b(?!-)/iu, instead: 'the word once' },
];

function offences(text: string): { word: string; instead: string; index: number }[] {
  return bannedWords.flatMap(({ pattern, instead }) => {
    const match = pattern.exec(text);
    return match === null ? [] : [{ word: match[0], instead, index: match.index }];
  });
}

function inFields(book: Book, kind: ContentKind, context: RuleContext): Finding[] {
  return [...book[kind]].flatMap(([id, entry]) =>
    textsIn(entry).flatMap(({ path, text }) =>
      offences(text).map(({ word, instead }) => findingAt(name, context, { kind, id, path }, { found: `"${word}"`, expected: instead })),
    ),
  );
}

function inProse(context: RuleContext): Finding[] {
  return [...context.bodies].flatMap(([address, { text, firstLine }]) => {
    const [kind, id] = address.split('/') as [ContentKind, string];
    return offences(text).map(({ word, instead, index }) => {
      const line = firstLine + text.slice(0, index).split('\n').length - 1;
      return { file: context.place(kind, id, []).file, line, field: 'the prose', found: `"${word}"`, expected: instead, rule: name };
    });
  });
}

export const noBannedWords: Rule = {
  name,
  why: 'Unfinished text in the book costs the mechanic time and trust.',
  scope: 'entry',
  check: (book, context) => [...contentKinds.flatMap((kind) => inFields(book, kind, context)), ...inProse(context)],
};
