import { nearestClause } from '../nearest.ts';
import { findingAt } from './rule.ts';
import type { Rule } from './rule.ts';

const name = 'calculators-have-prose';

export const calculatorsHaveProse: Rule = {
  name,
  why: 'A result without words on when to use it and where its model ends invites a wrong repair.',
  scope: 'book',
  check(book, context) {
    const withoutProse = context.calculatorIds
      .filter((id) => !book.calculators.has(id))
      .map((id) => ({
        file: `content/calculators/${id}.mdx`,
        line: 1,
        field: 'the whole file',
        found: `no file for the calculator ${id}`,
        expected: 'a page with whenToUse, limits, sources and prose',
        rule: name,
      }));
    const withoutCalculator = [...book.calculators.keys()]
      .filter((id) => !context.calculatorIds.includes(id))
      .map((id) =>
        findingAt(name, context, { kind: 'calculators', id, path: [] }, { found: `prose for "${id}"`, expected: `the id of a calculator in src/domain/calculators${nearestClause(id, context.calculatorIds)}` }),
      );
    const emptyProse = [...book.calculators.keys()]
      .filter((id) => (context.bodies.get(`calculators/${id}`)?.text.trim() ?? '') === '')
      .map((id) => findingAt(name, context, { kind: 'calculators', id, path: [] }, { found: 'fields without prose', expected: 'prose after the fields: what the result means' }));
    return [...withoutProse, ...withoutCalculator, ...emptyProse];
  },
};
