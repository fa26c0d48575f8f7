import type { ContentKind } from '../../schemas/index.ts';
import { referencesIn, seeReferences } from '../references.ts';
import { findingAt } from './rule.ts';
import type { Rule } from './rule.ts';

const name = 'nothing-orphaned';

/** Kinds that a reader reaches through other entries. The others are entered by an index or a search of their own. */
const reached: readonly ContentKind[] = ['ranges', 'cautions', 'faults', 'parts', 'sources', 'procedures'];

export const nothingOrphaned: Rule = {
  name,
  why: 'What nothing points at is not found at the bench, and is forgotten when it should be corrected.',
  scope: 'book',
  check(book, context) {
    const pointedAt = new Set([
      ...[...referencesIn(book), ...seeReferences(book)]
        .filter(({ fromKind, fromId, toKind, toId }) => fromKind !== toKind || fromId !== toId)
        .map(({ toKind, toId }) => `${toKind}/${toId}`),
      ...context.domainSources.map(({ id }) => `sources/${id}`),
    ]);
    return reached.flatMap((kind) =>
      [...book[kind].keys()]
        .filter((id) => !pointedAt.has(`${kind}/${id}`))
        .map((id) => findingAt(name, context, { kind, id, path: [] }, { found: 'nothing in the book points at it', expected: 'at least one entry that names it, or no such entry' })),
    );
  },
};
