import { placeById, placesOf } from '../diagnosis/places.ts';
import type { DiagnosisBook, EngineLayout } from '../diagnosis/types.ts';

export interface FaultAtPlace {
  readonly fault: string;
  readonly place: string;
}

/** `coil-winding@coil-3` in its two parts. */
export function splitHypothesis(hypothesis: string): FaultAtPlace {
  const [fault = '', place = ''] = hypothesis.split('@');
  return { fault, place };
}

/**
 * The faults that a repair puts right together: the one it was done for, and every other that the same part answers at the same
 * cylinders. A new coil answers its winding and its insulation alike. The one it was done for comes first.
 */
export function repairGroup(book: DiagnosisBook, engine: EngineLayout, hypothesis: string): readonly FaultAtPlace[] {
  const own = splitHypothesis(hypothesis);
  const part = book.faults.find((fault) => fault.id === own.fault)?.part;
  const cylinders = placeById(engine, own.place)?.cylinders.join();
  if (part === undefined || cylinders === undefined) return [own];
  const others = book.faults
    .filter((fault) => fault.part === part && fault.id !== own.fault)
    .flatMap((fault) => placesOf(engine, fault.placeKind).filter((place) => place.cylinders.join() === cylinders).map((place) => ({ fault: fault.id, place: place.id })));
  return [own, ...others];
}
