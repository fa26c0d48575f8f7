import { hypothesesOf } from '../diagnosis/prior.ts';
import type { EngineLayout } from '../diagnosis/types.ts';
import { undoneIds } from '../jobs/account.ts';
import type { JobBook } from '../jobs/book.ts';
import { minutesSpent } from '../jobs/minutes.ts';
import { proofState } from '../jobs/proof.ts';
import { splitHypothesis } from '../jobs/repairGroup.ts';
import { inventedSource } from '../jobs/types.ts';
import type { Job, JobEvent, ReturnedMisfire } from '../jobs/types.ts';

/** A fault that was found, put right and handed over as proven. */
export interface ProvenFinding {
  readonly fault: string;
  /** When the car was handed over, ISO 8601. */
  readonly finishedAt: string;
  /** Minutes worked until then, since the hand-over before it where there was one. */
  readonly minutes: number;
  /** Is the car back since? `same`: with the misfire of before, so the finding did not hold. */
  readonly cameBack: ReturnedMisfire | undefined;
  /** What it adds to the count of its fault; see `countForOneJob`. 0 where the book no longer holds the fault for this engine. */
  readonly counts: number;
}

/** What one job found. Empty while it is unfinished or unproven, and always for a job that was made up to show the book. */
export function provenFindings(job: Job, book: JobBook): readonly ProvenFinding[] {
  const finished = job.events.some((event) => event.kind === 'handed-over');
  if (!finished || job.source.startsWith(inventedSource)) return [];
  const undone = undoneIds(job.events);
  const visits = visitsOf(job.events.filter((event) => !undone.has(event.id)));
  return visits.flatMap((visit, index) => findingOf(visit, visits[index - 1]?.events ?? [], book));
}

interface Visit {
  /** All events from the start of the job to the hand-over that ends this visit. */
  readonly events: readonly JobEvent[];
  readonly cameBack: ReturnedMisfire | undefined;
}

/** A car that came back is in for another visit; a visit without a hand-over is not finished. */
function visitsOf(live: readonly JobEvent[]): readonly Visit[] {
  const ends = [...live.flatMap((event, index) => (event.kind === 'came-back' ? [{ index, misfire: event.misfire }] : [])), { index: live.length, misfire: undefined }];
  return ends.flatMap(({ index, misfire }, position) => {
    const handedOverAt = live.slice(0, index).findLastIndex((event) => event.kind === 'handed-over');
    const isOfThisVisit = handedOverAt > (ends[position - 1]?.index ?? -1);
    return isOfThisVisit ? [{ events: live.slice(0, handedOverAt + 1), cameBack: misfire }] : [];
  });
}

function findingOf({ events, cameBack }: Visit, before: readonly JobEvent[], book: JobBook): readonly ProvenFinding[] {
  const handedOver = events.at(-1);
  const finding = events.findLast((event) => event.kind === 'finding-made');
  const engine = events.findLast((event) => event.kind === 'engine-chosen');
  if (handedOver?.kind !== 'handed-over' || handedOver.unproven !== undefined || !proofState(events).proven) return [];
  if (finding === undefined || engine === undefined) return [];
  const { fault } = splitHypothesis(finding.hypothesis);
  const minutes = minutesSpent(events, book) - minutesSpent(before, book);
  return [{ fault, finishedAt: handedOver.at, minutes, cameBack, counts: countForOneJob(book, engine.layout, fault) }];
}

/**
 * What one finished job adds to the count of its fault. A weight holds at each place: an engine with six plugs has the weight of a
 * plug's fault six times. So a job on a plug says less about one plug than a job on the fuel pump says about the pump:
 * (sum of the weights over all faults and places of this engine) / (sum over all faults of the book) / (places of this fault).
 * With it the chance of a fault on such an engine, over all its places, comes out as the mean of the Dirichlet distribution over jobs.
 */
export function countForOneJob(book: JobBook, engine: EngineLayout, fault: string): number {
  const hypotheses = hypothesesOf(book.diagnosis, engine);
  const places = hypotheses.filter((hypothesis) => hypothesis.fault?.id === fault).length;
  const total = book.diagnosis.faults.reduce((sum, { weight }) => sum + weight, 0);
  if (places === 0 || total === 0) return 0;
  const overPlaces = hypotheses.reduce((sum, hypothesis) => sum + (hypothesis.fault?.weight ?? 0), 0);
  return overPlaces / total / places;
}
