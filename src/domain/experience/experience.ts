import type { JobBook } from '../jobs/book.ts';
import type { Job } from '../jobs/types.ts';
import { provenFindings } from './provenFindings.ts';
import type { ProvenFinding } from './provenFindings.ts';
import { withExperience } from './withExperience.ts';

/** What a shop found of one fault, beside what the book holds. */
export interface FaultExperience {
  readonly fault: string;
  readonly title: string;
  readonly bookWeight: number;
  /** Finished jobs whose repair held so far. */
  readonly found: number;
  /** Weight once the shop's jobs are joined to the book's. */
  readonly joinedWeight: number;
  /** Per finished job; unknown where there is none. */
  readonly meanMinutes: number | undefined;
  /** Cars that were back after this repair, with the same misfire or another. */
  readonly cameBack: number;
}

export interface ShopExperience {
  /** Every fault of the book: most found first, then heaviest. */
  readonly faults: readonly FaultExperience[];
  /** Finished jobs that count. */
  readonly jobs: number;
  /** The book with the joined weights, and with the words that say so. */
  readonly book: JobBook;
}

/**
 * What the jobs finished after `since` (ISO 8601; left out: all) tell about how common each fault is. A repair after which the same
 * misfire came back is listed as come back and not counted as found. Invented and unproven jobs count for nothing.
 */
export function shopExperience(book: JobBook, jobs: readonly Job[], since?: string): ShopExperience {
  const findings = jobs.flatMap((job) => provenFindings(job, book)).filter(({ finishedAt }) => since === undefined || finishedAt > since);
  const held = findings.filter(({ cameBack }) => cameBack !== 'same');
  const counts = new Map<string, number>();
  for (const { fault, counts: count } of held) counts.set(fault, (counts.get(fault) ?? 0) + count);
  const diagnosis = withExperience(book.diagnosis, counts);
  const joined = new Map(diagnosis.faults.map(({ id, weight }) => [id, weight]));
  const faults = book.diagnosis.faults.map(({ id, title, weight }) => ({ fault: id, title, bookWeight: weight, joinedWeight: joined.get(id) ?? weight, ...tally(id, findings) }));
  const counted = held.filter(({ counts: count }) => count > 0).length;
  return { faults: faults.toSorted(byFound), jobs: counted, book: { ...book, diagnosis, estimatesNote: noteWith(book, counted) } };
}

function tally(fault: string, findings: readonly ProvenFinding[]): Pick<FaultExperience, 'found' | 'meanMinutes' | 'cameBack'> {
  const own = findings.filter((finding) => finding.fault === fault);
  const minutes = own.reduce((sum, finding) => sum + finding.minutes, 0);
  return {
    found: own.filter(({ cameBack }) => cameBack !== 'same').length,
    meanMinutes: own.length === 0 ? undefined : minutes / own.length,
    cameBack: own.filter(({ cameBack }) => cameBack !== undefined).length,
  };
}

function byFound(one: FaultExperience, other: FaultExperience): number {
  return other.found - one.found || other.cameBack - one.cameBack || other.bookWeight - one.bookWeight;
}

/** Wherever a belief is shown, it is said that this shop's own jobs are in it. */
function noteWith({ estimatesNote }: JobBook, jobs: number): string {
  if (jobs === 0) return estimatesNote;
  return `${estimatesNote} How common a fault is takes in ${jobs} finished ${jobs === 1 ? 'job' : 'jobs'} of this shop.`;
}
