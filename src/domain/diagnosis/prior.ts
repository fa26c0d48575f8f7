import { placesOf } from './places.ts';
import type { ComplaintSign, DiagnosisBook, EngineLayout, FaultModel, Hypothesis } from './types.ts';

export const noneOfTheseId = 'none-of-these';

/** Share kept, before any test, for a fault that the book does not hold. An estimate. */
export const noneOfTheseShare = 0.05;

const leastComplaintFactor = 0.001;

const noneOfThese: Hypothesis = { id: noneOfTheseId, fault: undefined, place: undefined };

/** Every fault of the book that can happen on these arrangements, at every place of its kind; `none-of-these` stands last. */
export function hypothesesOf(book: DiagnosisBook, engine: EngineLayout): readonly Hypothesis[] {
  const named = book.faults
    .filter((fault) => canHappen(fault, engine))
    .flatMap((fault) =>
      placesOf(engine, fault.placeKind).map((place) => ({ id: hypothesisId(fault.id, place.id), fault, place })),
    );
  return [...named, noneOfThese];
}

export function hypothesisId(fault: string, place: string): string {
  return `${fault}@${place}`;
}

/**
 * Chance of each hypothesis before complaint, codes and tests, in the order given. Sums to 1.
 *
 * A fault carries its whole weight at each of its places: the weight tells how often one such part fails, and an engine with
 * eight plugs has eight that can. Sharing the weight out would make every plug of a V8 half as likely to fail as that of a
 * four against the same fuel pump, which nobody in the trade believes.
 */
export function priorOf(hypotheses: readonly Hypothesis[]): readonly number[] {
  const total = hypotheses.reduce((sum, hypothesis) => sum + (hypothesis.fault?.weight ?? 0), 0);
  if (total === 0) return hypotheses.map((hypothesis) => (hypothesis.fault ? 0 : 1));
  return hypotheses.map((hypothesis) =>
    hypothesis.fault ? ((1 - noneOfTheseShare) * hypothesis.fault.weight) / total : noneOfTheseShare,
  );
}

/**
 * What a sign in the complaint does to the weight of a fault: 1 when the book says nothing. Held at 0.001 or more, so that what a
 * customer tells never rules a fault out.
 */
export function complaintFactor(fault: FaultModel, sign: ComplaintSign): number {
  return Math.max(leastComplaintFactor, fault.complaint[sign] ?? 1);
}

function canHappen(fault: FaultModel, engine: EngineLayout): boolean {
  const ignitionFits = fault.ignition === undefined || fault.ignition.includes(engine.ignition);
  const injectionFits = fault.injection === undefined || fault.injection.includes(engine.injection);
  return ignitionFits && injectionFits;
}
