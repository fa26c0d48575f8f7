import { contentKinds } from '../../schemas/index.ts';
import type { Finding } from '../finding.ts';
import { nearestClause } from '../nearest.ts';
import { referencesIn, seeReferences } from '../references.ts';
import type { Reference } from '../references.ts';
import { findingAt } from './rule.ts';
import type { Rule, RuleContext } from './rule.ts';

const name = 'ids-resolve';

function unresolved(reference: Reference, context: RuleContext): Finding[] {
  const { fromKind: kind, fromId: id, path, toKind, toId } = reference;
  if (!contentKinds.includes(toKind)) {
    const expected = `one of the kinds ${contentKinds.join(', ')}${nearestClause(toKind, contentKinds)}`;
    return [findingAt(name, context, { kind, id, path }, { found: `"${toKind}/${toId}"`, expected })];
  }
  if (context.has(toKind, toId)) return [];
  const expected = `the name of a file in content/${toKind}${nearestClause(toId, context.idsOf(toKind))}`;
  return [findingAt(name, context, { kind, id, path }, { found: `"${toId}"`, expected })];
}

function unresolvedInDomain(context: RuleContext): Finding[] {
  const lost = context.domainSources.filter((source) => !context.has('sources', source.id));
  return lost.map(({ usedBy, id }) => ({
    file: usedBy,
    line: 1,
    field: 'source',
    found: `"${id}"`,
    expected: `the name of a file in content/sources${nearestClause(id, context.idsOf('sources'))}`,
    rule: name,
  }));
}

export const idsResolve: Rule = {
  name,
  why: 'A link to an entry that does not exist leaves the mechanic at a dead end in the middle of a job.',
  scope: 'entry',
  check: (book, context) => [
    ...[...referencesIn(book), ...seeReferences(book)].flatMap((reference) => unresolved(reference, context)),
    ...unresolvedInDomain(context),
  ],
};
