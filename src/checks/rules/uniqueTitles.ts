import type { Book, ContentKind } from '../../schemas/index.ts';
import { contentKinds } from '../../schemas/index.ts';
import type { Finding } from '../finding.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'titles-are-unique';

/** Calculators have their titles in code. */
function titleOf(entry: object): { field: string; title: string } | undefined {
  if ('title' in entry && typeof entry.title === 'string') return { field: 'title', title: entry.title };
  if ('term' in entry && typeof entry.term === 'string') return { field: 'term', title: entry.term };
  return undefined;
}

function repeated(book: Book, kind: ContentKind, context: RuleContext): Finding[] {
  const owners = new Map<string, string>();
  return [...book[kind]].flatMap(([id, entry]) => {
    const named = titleOf(entry);
    if (named === undefined) return [];
    const key = named.title.toLowerCase().replace(/\s+/g, ' ');
    const owner = owners.get(key);
    owners.set(key, owner ?? id);
    if (owner === undefined) return [];
    const found = `"${named.title}", which ${owner} is called too`;
    return [findingAt(name, context, { kind, id, path: [named.field] }, { found, expected: `a ${named.field} that no other of the ${kind} has` })];
  });
}

export const titlesAreUnique: Rule = {
  name,
  why: 'Two search results with the same name cannot be told apart.',
  scope: 'entry',
  check: (book, context) => contentKinds.flatMap((kind) => repeated(book, kind, context)),
};
