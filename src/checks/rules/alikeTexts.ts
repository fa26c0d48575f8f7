import type { Book, ContentKind } from '../../schemas/index.ts';
import { groupBy } from '../finding.ts';
import type { Finding } from '../finding.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'no-two-texts-alike';

interface OwnText {
  readonly id: string;
  readonly field: string;
  readonly text: string;
  /** Entries of one family may say the same: one quantity at several heights, threads or under several rules. */
  readonly family: string;
}

function ownTexts(book: Book): readonly (readonly [ContentKind, readonly OwnText[]])[] {
  const texts = <Item>(entries: ReadonlyMap<string, Item>, field: string, textOf: (entry: Item) => string, familyOf?: (entry: Item) => string): OwnText[] =>
    [...entries].map(([id, entry]) => ({ id, field, text: textOf(entry), family: familyOf?.(entry) ?? id }));
  return [
    ['quantities', texts(book.quantities, 'meaning', (entry) => entry.meaning)],
    ['ranges', texts(book.ranges, 'inside', (entry) => entry.inside, (entry) => entry.quantity)],
    ['procedures', [...texts(book.procedures, 'summary', (entry) => entry.summary), ...texts(book.procedures, 'worthIt', (entry) => entry.worthIt)]],
    ['faults', texts(book.faults, 'meaning', (entry) => entry.meaning)],
    ['codes', texts(book.codes, 'meaning', (entry) => entry.meaning)],
    ['cautions', [...texts(book.cautions, 'short', (entry) => entry.short), ...texts(book.cautions, 'hazard', (entry) => entry.hazard)]],
    ['parts', texts(book.parts, 'summary', (entry) => entry.summary)],
    ['glossary', texts(book.glossary, 'meaning', (entry) => entry.meaning)],
  ];
}

/** Letters and figures alone: what differs in capitals, blanks and stops only is the same text. */
function normalised(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
}

function repeated(kind: ContentKind, texts: readonly OwnText[], context: RuleContext): Finding[] {
  const groups = groupBy(texts, ({ field, text }) => `${field}: ${normalised(text)}`);
  return [...groups.values()].flatMap(([first, ...others]) =>
    others
      .filter(({ family }) => family !== first?.family)
      .map(({ id, field }) => {
        const found = `the same words as ${first?.id ?? ''}`;
        return findingAt(name, context, { kind, id, path: [field] }, { found, expected: `words of its own: what sets this apart from ${first?.id ?? ''}` });
      }),
  );
}

export const noTwoTextsAlike: Rule = {
  name,
  why: 'Words copied from another entry and left as they were describe the wrong thing.',
  scope: 'entry',
  check: (book, context) => ownTexts(book).flatMap(([kind, texts]) => repeated(kind, texts, context)),
};
