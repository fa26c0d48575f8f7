import type { AdviceOptions } from '../diagnosis/advice.ts';
import { believe } from '../diagnosis/belief.ts';
import type { DiagnosisInput } from '../diagnosis/belief.ts';
import { judgeFinding } from '../diagnosis/finding.ts';
import type { AccessState, Belief, CodeAtPlace } from '../diagnosis/types.ts';
import { isReturn, otherFaultFrom, renamedTo, undoneIds } from './account.ts';
import type { ReasoningBook } from './book.ts';
import { minutesSpent } from './minutes.ts';
import { checksAfterRepair, proofConfidence, proofState } from './proof.ts';
import type { ProofState } from './proof.ts';
import { learntFrom, wereRead } from './searched.ts';
import type { EvidenceWithEvent } from './searched.ts';
import type {
  CodeNoted,
  CodesRead,
  CodesReread,
  ComplaintTaken,
  EngineChosen,
  FindingMade,
  FrameRead,
  Job,
  JobEvent,
  JobEventKind,
  MakerFigure,
  PictureTaken,
  ProofCheck,
  ProofChecked,
  ReadingTaken,
  RepairDone,
  Stage,
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
  /** As last renamed; undefined while the job keeps the title it was opened with. */
  readonly title: string | undefined;
  /** How far the car is opened up. */
  readonly access: readonly AccessState[];
  /** The conditions last read from the misfire's code; not those of a misfire whose cause was put right. */
  readonly frame: FrameRead | undefined;
  readonly pictures: readonly PictureTaken[];
  /** Minutes of tests, repairs and runs; the book's figure stands in for a test whose time was not typed. */
  readonly minutesSpent: number;
  /** Looked at since the last repair; the last answer to each. */
  readonly proofChecks: ReadonlyMap<ProofCheck, ProofChecked>;
  /** Tests and codes laid aside because another misfire showed itself after a repair. */
  readonly setAside: number;
}

export interface DeriveOptions {
  /** How sure a proof must be, between 0 and 1. Left out: 0.95. */
  readonly confidence?: number;
}

/** Works out the state of a job. Pure: the same events, book and options always give the same. */
export function deriveJob(events: Job['events'], book: ReasoningBook, options: DeriveOptions = {}): DerivedJob {
  const undone = undoneIds(events);
  const live = events.filter((event) => !undone.has(event.id));
  const engine = lastOf(live, 'engine-chosen');
  const complaint = lastOf(live, 'complaint');
  const { evidence, codes, setAside } = learntFrom(live, engine, book);
  const diagnosis = engine && diagnosisInput(book, engine, complaint, codes, evidence);
  const beliefs = diagnosis ? believe(diagnosis) : [];
  const repairAt = live.findLastIndex((event) => event.kind === 'repair-done');
  const readings = live.flatMap((event, index) => (event.kind === 'reading-taken' ? [{ event, index }] : []));
  const proof = proofState(live, options.confidence ?? proofConfidence);
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
    title: renamedTo(live),
    access: accessOf(live, book),
    frame: lastOf(live.slice(otherFaultFrom(live)), 'frame-read'),
    pictures: live.filter((event) => event.kind === 'picture'),
    minutesSpent: minutesSpent(live, book),
    proofChecks: checksAfterRepair(live),
    setAside,
  };
}

/** As last said; before anything was said, a test that needs the engine cover off has taken it off. */
function accessOf(live: readonly JobEvent[], book: ReasoningBook): readonly AccessState[] {
  const said = lastOf(live, 'access');
  if (said) return said.open;
  const done = new Set(live.flatMap((event) => (event.kind === 'test-done' ? [event.test] : [])));
  return book.diagnosis.tests.some((test) => test.needsCoverOff && done.has(test.id)) ? ['cover-off'] : [];
}

function lastOf<Kind extends JobEventKind>(events: readonly JobEvent[], kind: Kind): Extract<JobEvent, { kind: Kind }> | undefined {
  return events.findLast((event): event is Extract<JobEvent, { kind: Kind }> => event.kind === kind);
}

function diagnosisInput(
  book: ReasoningBook,
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
  if (!wereRead(codes)) return input;
  return { ...input, codes: codes.codes.flatMap(codeAtPlace) };
}

function codeAtPlace({ code, family, number }: CodeNoted): readonly CodeAtPlace[] {
  if (family === undefined) return [];
  return [number === undefined ? { code, family } : { code, family, number }];
}

/** A finding stands until a misfire comes back, in a run after its repair or after the hand-over. */
function standingFinding(live: readonly JobEvent[]): FindingMade | undefined {
  const failedAt = live.findLastIndex(isReturn);
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
  if (proof.handedOver !== undefined) return 'hand-over';
  if (engine === undefined || complaint === undefined) return 'complaint';
  if (codes === undefined) return 'codes';
  if (finding === undefined) return findingAllowed(facts) ? 'finding' : 'tests';
  if (!repaired) return 'repair';
  return proof.proven ? 'hand-over' : 'proof';
}

/** After a repair that did not hold, something new has to be learnt before the next part is condemned. */
function findingAllowed({ diagnosis, beliefs }: StageFacts): boolean {
  const top = beliefs[0];
  const learnt = diagnosis?.evidence.findLast((piece) => piece.kind !== 'opinion');
  if (learnt?.kind === 'failed-repair') return false;
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
