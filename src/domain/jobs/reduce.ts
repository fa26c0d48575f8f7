import type { AdviceOptions } from '../diagnosis/advice.ts';
import { believe } from '../diagnosis/belief.ts';
import type { DiagnosisInput } from '../diagnosis/belief.ts';
import { judgeFinding } from '../diagnosis/finding.ts';
import type { Belief, CodeAtPlace, Evidence, FailedRepairEvidence, TestEvidence } from '../diagnosis/types.ts';
import type { JobBook } from './book.ts';
import { repairGroup, splitHypothesis } from './repairGroup.ts';
import { proofState } from './proof.ts';
import type { ProofState } from './proof.ts';
import type {
  CodeNoted,
  CodesRead,
  CodesReread,
  ComplaintTaken,
  EngineChosen,
  FindingMade,
  Job,
  JobEvent,
  JobEventKind,
  MakerFigure,
  ReadingTaken,
  RepairDone,
  Stage,
  TestDone,
} from './types.ts';

/** Everything a screen or a sheet needs to know about a job, worked out from its events. */
export interface DerivedJob {
  /** The stage whose work comes next. */
  readonly stage: Stage;
  /** Events in account, in order. */
  readonly live: readonly JobEvent[];
  /** Ids of the events that were undone; they stay in the record. */
  readonly undone: ReadonlySet<string>;
  readonly engine: EngineChosen | undefined;
  readonly complaint: ComplaintTaken | undefined;
  readonly codes: CodesRead | CodesReread | undefined;
  /** Present once the engine is known. */
  readonly diagnosis: DiagnosisInput | undefined;
  /** The event behind each piece of evidence, in the order of the evidence. */
  readonly evidenceEvents: readonly string[];
  /** Highest first; empty while the engine is unknown. */
  readonly beliefs: readonly Belief[];
  readonly readingsBefore: readonly ReadingTaken[];
  readonly readingsAfter: readonly ReadingTaken[];
  /** The finding that stands: made, and not yet contradicted by a failed proof. */
  readonly finding: FindingMade | undefined;
  readonly repairs: readonly RepairDone[];
  readonly proof: ProofState;
  /** What the mechanic said cannot be done, as the advice takes it. */
  readonly notPossible: Required<Pick<AdviceOptions, 'toolsMissing' | 'impossible'>>;
  /** The engine maker's figures by range; the latest typed counts. */
  readonly makerFigures: ReadonlyMap<string, MakerFigure>;
}

/** Works out the state of a job. Pure: the same events and book always give the same. */
export function deriveJob(events: Job['events'], book: JobBook): DerivedJob {
  const undone = undoneIds(events);
  const live = events.filter((event) => !undone.has(event.id));
  const engine = lastOf(live, 'engine-chosen');
  const complaint = lastOf(live, 'complaint');
  const codes = lastCodes(live);
  const evidence = evidenceOf(live, engine, book);
  const diagnosis = engine && diagnosisInput(book, engine, complaint, codes, evidence);
  const beliefs = diagnosis ? believe(diagnosis) : [];
  const repairAt = live.findLastIndex((event) => event.kind === 'repair-done');
  const readings = live.flatMap((event, index) => (event.kind === 'reading-taken' ? [{ event, index }] : []));
  const proof = proofState(live);
  const finding = standingFinding(live);
  const repaired = finding !== undefined && live.indexOf(finding) < repairAt;
  return {
    stage: stageOf({ engine, complaint, codes, diagnosis, beliefs, finding, repaired, proof }),
    live,
    undone,
    engine,
    complaint,
    codes,
    diagnosis,
    evidenceEvents: evidence.map((piece) => piece.event),
    beliefs,
    readingsBefore: readings.filter(({ index }) => repairAt < 0 || index < repairAt).map(({ event }) => event),
    readingsAfter: readings.filter(({ index }) => repairAt >= 0 && index > repairAt).map(({ event }) => event),
    finding,
    repairs: live.filter((event) => event.kind === 'repair-done'),
    proof,
    notPossible: notPossibleOf(live),
    makerFigures: makerFiguresOf(live, engine),
  };
}

/** An undoing can itself be undone, so the last word is read first. */
function undoneIds(events: readonly JobEvent[]): ReadonlySet<string> {
  const undone = new Set<string>();
  for (const event of events.toReversed()) {
    if (event.kind === 'undone' && !undone.has(event.id)) undone.add(event.undoes);
  }
  return undone;
}

function lastOf<Kind extends JobEventKind>(events: readonly JobEvent[], kind: Kind): Extract<JobEvent, { kind: Kind }> | undefined {
  return events.findLast((event): event is Extract<JobEvent, { kind: Kind }> => event.kind === kind);
}

/** The codes that speak about the fault: those read first, or those that came back after a repair. */
function lastCodes(live: readonly JobEvent[]): CodesRead | CodesReread | undefined {
  return live.findLast(
    (event): event is CodesRead | CodesReread => event.kind === 'codes-read' || (event.kind === 'codes-reread' && event.codes.length > 0),
  );
}

interface EvidenceWithEvent {
  readonly evidence: Evidence;
  readonly event: string;
}

/**
 * Tests as they were done, and each repair after which the misfire came back. What was tested after a repair speaks of the
 * repaired engine: it counts only once the misfire has come back, when the fault has shown itself to be there still.
 */
function evidenceOf(live: readonly JobEvent[], engine: EngineChosen | undefined, book: JobBook): readonly EvidenceWithEvent[] {
  const found: EvidenceWithEvent[] = [];
  let sinceRepair: EvidenceWithEvent[] = [];
  let repair: RepairDone | undefined;
  for (const event of live) {
    if (event.kind === 'repair-done') {
      repair = event;
      sinceRepair = [];
    } else if (event.kind === 'proof-run' && event.result === 'returned' && repair) {
      const against = failedRepair(repair, engine, book);
      found.push(...sinceRepair, ...against.map((evidence) => ({ evidence, event: event.id })));
      repair = undefined;
    } else if (event.kind === 'test-done' && isSearch(event, book)) {
      (repair ? sinceRepair : found).push({ evidence: testEvidence(event), event: event.id });
    }
  }
  return found;
}

/** Repairs and proofs are done and noted like tests, but they look for nothing. */
export function isSearch({ test }: TestDone, book: JobBook): boolean {
  const known = book.diagnosis.tests.find((candidate) => candidate.id === test);
  return known?.kind === 'look' || known?.kind === 'test';
}

function testEvidence({ test, place, partner, outcomes }: TestDone): TestEvidence {
  const evidence = { kind: 'test', test, place: place.id, outcomes } as const;
  return partner ? { ...evidence, partner: partner.id } : evidence;
}

/** The part that was renewed speaks against every fault it would have put right. */
function failedRepair({ hypothesis }: RepairDone, engine: EngineChosen | undefined, book: JobBook): readonly FailedRepairEvidence[] {
  const group = engine ? repairGroup(book.diagnosis, engine.layout, hypothesis) : [splitHypothesis(hypothesis)];
  return group.map((one) => ({ kind: 'failed-repair', ...one }));
}

function diagnosisInput(
  book: JobBook,
  engine: EngineChosen,
  complaint: ComplaintTaken | undefined,
  codes: CodesRead | CodesReread | undefined,
  evidence: readonly EvidenceWithEvent[],
): DiagnosisInput {
  const input = {
    book: book.diagnosis,
    engine: engine.layout,
    signs: complaint?.signs ?? [],
    evidence: evidence.map((piece) => piece.evidence),
  };
  if (codes === undefined || (codes.kind === 'codes-read' && codes.notRead !== undefined)) return input;
  return { ...input, codes: codes.codes.flatMap(codeAtPlace) };
}

function codeAtPlace({ code, family, number }: CodeNoted): readonly CodeAtPlace[] {
  if (family === undefined) return [];
  return [number === undefined ? { code, family } : { code, family, number }];
}

/** A finding stands until a run after its repair brings the misfire back. */
function standingFinding(live: readonly JobEvent[]): FindingMade | undefined {
  const failedAt = live.findLastIndex((event) => event.kind === 'proof-run' && event.result === 'returned');
  return lastOf(live.slice(failedAt + 1), 'finding-made');
}

interface StageFacts {
  readonly engine: EngineChosen | undefined;
  readonly complaint: ComplaintTaken | undefined;
  readonly codes: CodesRead | CodesReread | undefined;
  readonly diagnosis: DiagnosisInput | undefined;
  readonly beliefs: readonly Belief[];
  readonly finding: FindingMade | undefined;
  readonly repaired: boolean;
  readonly proof: ProofState;
}

function stageOf(facts: StageFacts): Stage {
  const { engine, complaint, codes, finding, repaired, proof } = facts;
  if (proof.handedOver !== undefined && !proof.failed) return 'hand-over';
  if (engine === undefined || complaint === undefined) return 'complaint';
  if (codes === undefined) return 'codes';
  if (finding === undefined) return findingAllowed(facts) ? 'finding' : 'tests';
  if (!repaired) return 'repair';
  return proof.proven ? 'hand-over' : 'proof';
}

/** After a repair that did not hold, something new has to be learnt before the next part is condemned. */
function findingAllowed({ diagnosis, beliefs }: StageFacts): boolean {
  const top = beliefs[0];
  if (diagnosis?.evidence.at(-1)?.kind === 'failed-repair') return false;
  return diagnosis !== undefined && top !== undefined && judgeFinding(diagnosis, top.hypothesis.id).allowed;
}

function notPossibleOf(live: readonly JobEvent[]): DerivedJob['notPossible'] {
  const said = live.filter((event) => event.kind === 'test-not-possible');
  return {
    toolsMissing: said.flatMap(({ test, place }) => (place === undefined ? [test] : [])),
    impossible: said.flatMap(({ test, place }) => (place === undefined ? [] : [{ test, place: place.id }])),
  };
}

/** Those given with the engine, then those typed with a reading: the later one replaces the earlier. */
function makerFiguresOf(live: readonly JobEvent[], engine: EngineChosen | undefined): ReadonlyMap<string, MakerFigure> {
  const figures = new Map(engine?.makerFigures.map((figure) => [figure.range, figure]));
  for (const event of live) {
    if (event.kind !== 'reading-taken' || event.limits.sourceId !== makerSourceId) continue;
    const { sourceId: _sourceId, sourceLabel: from, ...limits } = event.limits;
    figures.set(event.range, { range: event.range, unit: event.unit, from, ...limits });
  }
  return figures;
}

/** Source of limits that were typed from the engine maker's data. */
export const makerSourceId = 'engine-maker';
