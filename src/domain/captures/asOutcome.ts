import { placeById, placesOf } from '../diagnosis/places.ts';
import type { EngineLayout, Place, TestModel } from '../diagnosis/types.ts';
import type { TestDone } from '../jobs/types.ts';

/** A finding said as an outcome of a procedure of the book. */
export interface ProposedOutcome {
  readonly procedure: string;
  readonly outcome: string;
  /** Where the finding holds; nothing where the mechanic must say. */
  readonly cylinder?: number;
  readonly bank?: number;
}

/** What a table of outcomes says of a finding, as a list of none or one. */
export function proposed(table: { readonly procedure: string; readonly outcomes: Readonly<Partial<Record<string, string>>> }, finding: string, where: Omit<ProposedOutcome, 'procedure' | 'outcome'> = {}): readonly ProposedOutcome[] {
  const outcome = table.outcomes[finding];
  return outcome === undefined ? [] : [{ procedure: table.procedure, outcome, ...where }];
}

/** The places of this engine at which the outcome may be written down: one where the finding names it. */
export function placesFor({ cylinder, bank }: ProposedOutcome, test: TestModel, engine: EngineLayout): readonly Place[] {
  const places = placesOf(engine, test.placeKind);
  if (test.placeKind === 'engine') return places;
  if (bank !== undefined) return [placeById(engine, `bank-${bank}`)].filter((place) => place !== undefined);
  // Of a capture without a trigger cylinder 0 is every cylinder.
  return cylinder === undefined || cylinder === 0 ? places : places.filter((place) => place.cylinders.includes(cylinder));
}

/** The entry of a job for it. */
export function outcomeBody({ outcome }: ProposedOutcome, test: TestModel, place: Place, note: string): Omit<TestDone, 'id' | 'sequence' | 'at'> {
  return {
    kind: 'test-done',
    test: test.id,
    title: test.title,
    place: { id: place.id, label: place.label },
    outcomes: { [outcome]: 1 },
    outcome: test.outcomes.find(({ id }) => id === outcome)?.label ?? outcome,
    note,
  };
}
