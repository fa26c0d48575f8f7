import type { Book, ContentKind } from '../../schemas/index.ts';
import { contentKinds } from '../../schemas/index.ts';
import { valuesAt } from '../fieldValues.ts';
import type { Finding } from '../finding.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'other-words-differ';

function asSearched(word: unknown): string {
  return String(word).toLowerCase().replace(/\s+/g, ' ').trim();
}

function repeated(book: Book, kind: ContentKind, context: RuleContext): Finding[] {
  return [...book[kind]].flatMap(([id, entry]) => {
    const seen = new Set<string>();
    return valuesAt(entry, 'otherWords.[]').flatMap(({ path, value }) => {
      const word = asSearched(value);
      if (!seen.has(word)) {
        seen.add(word);
        return [];
      }
      const complaint = { found: `"${String(value)}" a second time`, expected: 'each word once, whatever its capitals' };
      return [{ ...findingAt(name, context, { kind, id, path }, complaint), repair: { path, change: 'take-out-entry' as const } }];
    });
  });
}

export const otherWordsDiffer: Rule = {
  name,
  why: 'A search word given twice weighs twice, and lifts its page above the one that fits better.',
  scope: 'entry',
  check: (book, context) => contentKinds.flatMap((kind) => repeated(book, kind, context)),
};
