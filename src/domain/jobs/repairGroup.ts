import { hypothesesOf } from '../diagnosis/prior.ts';
import { repairName } from '../diagnosis/repairs.ts';
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
  const hypotheses = hypothesesOf(book, engine);
  const done = hypotheses.find(({ id }) => id === hypothesis);
  const name = done && repairName(done);
  const others = name === undefined ? [] : hypotheses.filter((one) => one.id !== hypothesis && repairName(one) === name);
  return [hypothesis, ...others.map(({ id }) => id)].map(splitHypothesis);
}
