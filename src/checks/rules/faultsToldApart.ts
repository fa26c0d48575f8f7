import type { Book, Entry } from '../../schemas/index.ts';
import { ignitionArrangements, injectionArrangements } from '../../domain/diagnosis/types.ts';
import { findingAt } from './rule.ts';
import type { Rule } from './rule.ts';

type Fault = Entry<'faults'>;
type Procedure = Entry<'procedures'>;
type Arrangement = readonly [ignition: NonNullable<Fault['ignition']>[number], injection: NonNullable<Fault['injection']>[number]];

const name = 'faults-told-apart';
const arrangements: readonly Arrangement[] = ignitionArrangements.flatMap(
  (ignition) => injectionArrangements.map((injection) => [ignition, injection] as const),
);

function occursOn(entry: Fault | Procedure, [ignition, injection]: Arrangement): boolean {
  return (entry.ignition?.includes(ignition) ?? true) && (entry.injection?.includes(injection) ?? true);
}

/** All that a procedure says about a fault: the chance of each outcome here, at the partner and elsewhere, in one line. */
function signature(procedure: Procedure, fault: string): string {
  const otherwise = procedure.otherwise ?? {};
  const own = procedure.likelihoods.find((likelihood) => likelihood.faults.includes(fault));
  const seenFrom = [own?.here ?? otherwise, own?.partner ?? own?.elsewhere ?? otherwise, own?.elsewhere ?? otherwise];
  return seenFrom.map((chances) => procedure.outcomes.map(({ id }) => chances[id] ?? 0).join(' ')).join('; ');
}

/** For each procedure and fault, its signature. */
function signaturesOf(book: Book): { procedure: Procedure; byFault: ReadonlyMap<string, string> }[] {
  const tests = [...book.procedures.values()].filter((procedure) => procedure.likelihoods.length > 0);
  return tests.map((procedure) => ({
    procedure,
    byFault: new Map([...book.faults.keys()].map((fault) => [fault, signature(procedure, fault)])),
  }));
}

export const faultsToldApart: Rule = {
  name,
  why: 'If every test answers alike for two faults, no amount of work at the bench can choose between them.',
  scope: 'book',
  check(book, context) {
    const tests = signaturesOf(book);
    const faults = [...book.faults];
    return faults.flatMap(([id, fault], position) =>
      faults.slice(0, position).flatMap(([otherId, other]) => {
        const alike = arrangements
          .filter((arrangement) => occursOn(fault, arrangement) && occursOn(other, arrangement))
          .filter((arrangement) => !tests.some(({ procedure, byFault }) => occursOn(procedure, arrangement) && byFault.get(id) !== byFault.get(otherId)));
        if (alike.length === 0) return [];
        const where = alike.map(([ignition, injection]) => `${ignition} with ${injection} injection`).join(', ');
        const expected = 'a procedure that can be done there whose likelihoods differ between the two';
        return [findingAt(name, context, { kind: 'faults', id, path: ['tellsApart'] }, { found: `no procedure that tells it from ${otherId} on ${where}`, expected })];
      }),
    );
  },
};
