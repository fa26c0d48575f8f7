import { beyondBookMinutes, partCostMinutes, repairCost, testMinutes } from '../diagnosis/costs.ts';
import type { DiagnosisInput } from '../diagnosis/belief.ts';
import type { TestSite } from '../diagnosis/likelihood.ts';
import { repairName } from '../diagnosis/repairs.ts';
import type { AccessState, Evidence, Hypothesis, TestModel } from '../diagnosis/types.ts';
import { repairGroup } from '../jobs/repairGroup.ts';
import type { Car } from './car.ts';

/** What a policy does next. */
export type Action =
  | { readonly kind: 'test'; readonly test: TestModel; readonly site: TestSite }
  /** `finding`: the repair rests on a finding; otherwise a part is fitted to see whether it helps. */
  | { readonly kind: 'repair'; readonly hypothesis: Hypothesis; readonly finding: boolean }
  /** Nothing in the book is left: others look on. */
  | { readonly kind: 'beyond' };

/** Says what to do next from all that is known and how far the car is opened up. It never sees the fault. */
export type Policy = (input: DiagnosisInput, open: readonly AccessState[]) => Action;

/** One job played to its end. Minutes hold work, proof runs and parts at the shop's rate; `workMinutes` leaves the parts out. */
export interface Played {
  readonly minutes: number;
  readonly workMinutes: number;
  readonly needlessParts: number;
  readonly findings: number;
  readonly wrongFindings: number;
  readonly tests: number;
  readonly repaired: boolean;
}

/** A job longer than this many actions has gone astray; none has been seen near it. */
const mostActions = 1000;

/** Plays one car to a proven repair, or to the end of the book. A right repair cures; a wrong one is seen in its proof run. */
export function play(policy: Policy, start: Omit<DiagnosisInput, 'evidence' | 'codes'>, car: Car): Played {
  const evidence: Evidence[] = [];
  // The engine cover, once off, stays off to the end of the job.
  let open: readonly AccessState[] = [];
  const sum = { minutes: 0, workMinutes: 0, needlessParts: 0, findings: 0, wrongFindings: 0, tests: 0 };
  const spend = (minutes: number, part = 0): void => {
    sum.minutes += minutes;
    sum.workMinutes += minutes - part;
  };
  for (let actions = 0; actions < mostActions; actions += 1) {
    const action = policy({ ...start, codes: car.codes, evidence: [...evidence] }, open);
    if (action.kind === 'beyond') {
      spend(beyondBookMinutes);
      return { ...sum, repaired: false };
    }
    if (action.kind === 'test') {
      const doneElsewhere = evidence.some((one) => one.kind === 'test' && one.test === action.test.id);
      spend(testMinutes(action.test, open, doneElsewhere));
      if (action.test.needsCoverOff) open = ['cover-off'];
      sum.tests += 1;
      evidence.push(seen(action.test, action.site, car));
      continue;
    }
    const { hypothesis, finding } = action;
    const part = hypothesis.fault ? partCostMinutes[hypothesis.fault.partCost] : 0;
    spend(hypothesis.fault ? repairCost(hypothesis.fault) : 0, part);
    const right = repairName(hypothesis) === repairName(car.truth) && car.truth.fault !== undefined;
    if (finding) sum.findings += 1;
    if (right) return { ...sum, repaired: true };
    if (finding) sum.wrongFindings += 1;
    if (part > 0) sum.needlessParts += 1;
    // A part that did not help speaks against everything it would have put right.
    evidence.push(...repairGroup(start.book, start.engine, hypothesis.id).map((answered) => ({ kind: 'failed-repair' as const, ...answered })));
  }
  throw new Error(`Car ${car.number} was not finished in ${mostActions} actions.`);
}

function seen(test: TestModel, { place, partner }: TestSite, car: Car): Evidence {
  const outcomes = { [car.outcome(test, { place, partner })]: 1 };
  const evidence = { kind: 'test', test: test.id, place: place.id, outcomes } as const;
  return partner ? { ...evidence, partner: partner.id } : evidence;
}
