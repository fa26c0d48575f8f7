import type { Entry } from '../../schemas/index.ts';
import type { FieldPath } from '../finding.ts';
import { nearestClause } from '../nearest.ts';
import { entryRule } from './rule.ts';

type Procedure = Entry<'procedures'>;
type Chances = Readonly<Record<string, number>>;

/** Sums of decimal fractions such as 0.7 + 0.2 + 0.1 miss 1 by rounding alone. */
const sumTolerance = 1e-9;
const places = ['here', 'partner', 'elsewhere'] as const;

function chancesOf(procedure: Procedure): { path: FieldPath; chances: Chances }[] {
  const named = procedure.likelihoods.flatMap((likelihood, index) =>
    places.flatMap((place) => {
      const chances = likelihood[place];
      return chances === undefined ? [] : [{ path: ['likelihoods', index, place], chances }];
    }),
  );
  return procedure.otherwise === undefined ? named : [...named, { path: ['otherwise'], chances: procedure.otherwise }];
}

export const outcomeChancesSumToOne = entryRule(
  'procedures',
  'outcome-chances-sum-to-one',
  'One of the outcomes always happens; chances that do not sum to 1 bend the belief after every test.',
  (procedure, report) => {
    const outcomes = procedure.outcomes.map((outcome) => outcome.id);
    for (const { path, chances } of chancesOf(procedure)) {
      for (const name of Object.keys(chances).filter((key) => !outcomes.includes(key))) {
        const expected = `one of the outcomes of this procedure: ${outcomes.join(', ')}${nearestClause(name, outcomes)}`;
        report([...path, name], { found: `the outcome "${name}"`, expected });
      }
      const sum = Object.values(chances).reduce((total, chance) => total + chance, 0);
      if (Math.abs(sum - 1) > sumTolerance) {
        report(path, {
          found: `chances that sum to ${Number(sum.toFixed(6))}`,
          expected: `chances of ${outcomes.join(', ')} that sum to 1; an outcome left out counts as 0`,
        });
      }
    }
  },
);

export const partnerChancesOnlyWithAPartner = entryRule(
  'procedures',
  'partner-chances-only-with-a-partner',
  'Chances at a partner are only read when the part was exchanged with a second place, and then they are needed.',
  (procedure, report) => {
    procedure.likelihoods.forEach((likelihood, index) => {
      if (likelihood.partner === undefined || procedure.needsPartner) return;
      report(['likelihoods', index, 'partner'], {
        found: 'chances at a partner in a procedure that has none',
        expected: 'no partner here, or needsPartner: true for a procedure that exchanges a part with a second place',
      });
    });
    const silent = procedure.likelihoods.length > 0 && procedure.likelihoods.every((likelihood) => likelihood.partner === undefined);
    if (procedure.needsPartner && silent) {
      report(['needsPartner'], {
        found: 'true, but no likelihoods with a partner',
        expected: 'partner chances for at least the fault of the part that is exchanged',
      });
    }
  },
);

export const likelihoodsNeedOtherwise = entryRule(
  'procedures',
  'likelihoods-need-otherwise',
  'Without chances for the faults it does not name, an outcome says nothing about them.',
  (procedure, report) => {
    if (procedure.likelihoods.length > 0 && procedure.otherwise === undefined) {
      const expected = 'the chance of each outcome for every fault that is not named in likelihoods';
      report(['likelihoods'], { found: 'likelihoods without otherwise', expected });
    }
  },
);

export const likelihoodsNameAFaultOnce = entryRule(
  'procedures',
  'likelihoods-name-a-fault-once',
  'A fault in two groups would have two different chances for the same outcome.',
  (procedure, report) => {
    const seen = new Set<string>();
    procedure.likelihoods.forEach((likelihood, index) => {
      likelihood.faults.forEach((fault, position) => {
        if (seen.has(fault)) {
          report(['likelihoods', index, 'faults', position], { found: `"${fault}" a second time`, expected: 'each fault in one group only' });
        }
        seen.add(fault);
      });
    });
  },
);
