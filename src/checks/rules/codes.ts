import { expandFamily, runProblem } from '../../domain/obd/families.ts';
import type { Entry } from '../../schemas/index.ts';
import { entryRule, findingAt } from './rule.ts';
import type { Rule } from './rule.ts';

export const codeFamiliesAreComplete = entryRule(
  'codes',
  'code-families-are-complete',
  'A code is only found if its family lists it, and only leads to a cylinder, coil or bank if its number is known.',
  (family, report) => {
    if (family.members.length === 0 && family.run === undefined) {
      report(['members'], { found: 'no codes', expected: 'members, or a run with its first and last code', example: 'run: { first: P0301, last: P0312 }' });
    }
    const problem = family.run === undefined ? undefined : runProblem(family.run);
    if (problem !== undefined) report(['run'], { found: problem, expected: 'a run from a lower to a higher code of one group, in decimal digits' });
    family.members.forEach((member, index) => {
      if (family.counts === 'none' || member.number !== undefined) return;
      report(['members', index], { found: `${member.code} without a number`, expected: `the number of the ${family.counts} it names`, example: 'number: 1' });
    });
  },
);

function codesOf(family: Entry<'codes'>): string[] {
  if (family.run !== undefined && runProblem(family.run) !== undefined) return [];
  return expandFamily(family).map(({ code }) => code);
}

const name = 'codes-stand-in-one-family-only';

export const codesStandInOneFamilyOnly: Rule = {
  name,
  why: 'A code that leads to two pages has two meanings, and one of them is wrong.',
  scope: 'entry',
  check(book, context) {
    const owners = new Map<string, string>();
    return [...book.codes].flatMap(([id, family]) => {
      const path = family.run === undefined ? ['members'] : ['run'];
      return codesOf(family).flatMap((code) => {
        const owner = owners.get(code);
        owners.set(code, owner ?? id);
        if (owner === undefined) return [];
        const found = owner === id ? `${code} twice in this family` : `${code}, which stands in ${owner} too`;
        return [findingAt(name, context, { kind: 'codes', id, path }, { found, expected: 'each code in one family, once' })];
      });
    });
  },
};
