/** What a job has learnt about the fault: tests, opinions, and repairs after which a misfire came back. */
import type { Evidence, FailedRepairEvidence, OpinionEvidence, TestEvidence } from '../diagnosis/types.ts';
import { isReturn, otherFaultFrom } from './account.ts';
import type { ReasoningBook } from './book.ts';
import { repairGroup, splitHypothesis } from './repairGroup.ts';
import type { CodesRead, CodesReread, EngineChosen, JobEvent, OpinionGiven, RepairDone, TestDone } from './types.ts';

export interface EvidenceWithEvent {
  readonly evidence: Evidence;
  readonly event: string;
}

export interface Learnt {
  readonly evidence: readonly EvidenceWithEvent[];
  /** The codes that speak about the fault looked for now: those read first, or those that came back after a repair. */
  readonly codes: CodesRead | CodesReread | undefined;
  /** Tests and codes laid aside because another misfire showed itself after the repair that they led to. */
  readonly setAside: number;
}

/**
 * Everything the reckoning rests on. Once another misfire has shown itself after a repair, what was tested and read before that repair is laid
 * aside: it spoke of the fault that was put right. Opinions stay, and so does what a repair says of the part it renewed.
 */
export function learntFrom(live: readonly JobEvent[], engine: EngineChosen | undefined, book: ReasoningBook): Learnt {
  const from = otherFaultFrom(live);
  const before = new Set(live.slice(0, from).map((event) => event.id));
  const all = evidenceOf(live, engine, book);
  const evidence = all.filter((piece) => piece.evidence.kind !== 'test' || !before.has(piece.event));
  const codes = lastCodes(live.slice(from));
  const codesAside = wereRead(lastCodes(live.slice(0, from))) ? 1 : 0;
  return { evidence, codes, setAside: all.length - evidence.length + codesAside };
}

/** A memory that could not be read is not an empty one. */
export function wereRead(codes: CodesRead | CodesReread | undefined): codes is CodesRead | CodesReread {
  return codes !== undefined && (codes.kind === 'codes-reread' || codes.notRead === undefined);
}

/** Repairs and proofs are done and noted like tests, but they look for nothing. */
export function isSearch({ test }: TestDone, book: ReasoningBook): boolean {
  const known = book.diagnosis.tests.find((candidate) => candidate.id === test);
  return known?.kind === 'look' || known?.kind === 'test';
}

function lastCodes(live: readonly JobEvent[]): CodesRead | CodesReread | undefined {
  return live.findLast(
    (event): event is CodesRead | CodesReread => event.kind === 'codes-read' || (event.kind === 'codes-reread' && event.codes.length > 0),
  );
}

/**
 * Tests as they were done, opinions, and each repair after which a misfire came back. What was tested after a repair speaks of the
 * repaired engine: it counts only once a misfire has come back, when a fault has shown itself to be there still.
 */
function evidenceOf(live: readonly JobEvent[], engine: EngineChosen | undefined, book: ReasoningBook): readonly EvidenceWithEvent[] {
  const found: EvidenceWithEvent[] = [];
  let sinceRepair: EvidenceWithEvent[] = [];
  let repair: RepairDone | undefined;
  for (const event of live) {
    if (event.kind === 'repair-done') {
      repair = event;
      sinceRepair = [];
    } else if (isReturn(event) && repair) {
      const against = failedRepair(repair, engine, book);
      found.push(...sinceRepair, ...against.map((evidence) => ({ evidence, event: event.id })));
      repair = undefined;
    } else if (event.kind === 'opinion') {
      found.push({ evidence: opinionEvidence(event), event: event.id });
    } else if (event.kind === 'test-done' && isSearch(event, book)) {
      (repair ? sinceRepair : found).push({ evidence: testEvidence(event), event: event.id });
    }
  }
  return found;
}

function testEvidence({ test, place, partner, outcomes }: TestDone): TestEvidence {
  const evidence = { kind: 'test', test, place: place.id, outcomes } as const;
  return partner ? { ...evidence, partner: partner.id } : evidence;
}

function opinionEvidence({ fault, place, weight }: OpinionGiven): OpinionEvidence {
  const evidence = { kind: 'opinion', fault, weight } as const;
  return place ? { ...evidence, place: place.id } : evidence;
}

/** The part that was renewed speaks against every fault it would have put right. */
function failedRepair({ hypothesis }: RepairDone, engine: EngineChosen | undefined, book: ReasoningBook): readonly FailedRepairEvidence[] {
  const group = engine ? repairGroup(book.diagnosis, engine.layout, hypothesis) : [splitHypothesis(hypothesis)];
  return group.map((one) => ({ kind: 'failed-repair', ...one }));
}
