import type { JobEvent } from './events.ts';

export * from './events.ts';

/** What stands in `type` of every job file. */
export const jobType = 'ignition-bench-book/job';
/**
 * The version written today. A file of a newer version is refused untouched; an older one is brought up step by step.
 *
 * Version 2 adds the event `calculation` and the meter's size of one count. A book of version 1 refuses any kind or field that it does
 * not know and would call such a file damaged; by the number it says instead that the file needs a newer book.
 */
export const jobVersion = 3;
/** What stands in `source` of a job that was made up to show the book. */
export const inventedSource = 'Invented for demonstration';

export interface Job {
  readonly type: typeof jobType;
  readonly version: typeof jobVersion;
  readonly id: string;
  /** Counts up by one with every write; two windows never overwrite each other by it. */
  readonly revision: number;
  readonly createdAt: string;
  /** Which edition of the book made it, or `Invented for demonstration`. */
  readonly source: string;
  readonly title: string;
  readonly events: readonly JobEvent[];
}

/** The stages of a job, in order. A job stands at the stage whose work comes next. */
export const stages = ['complaint', 'codes', 'tests', 'finding', 'repair', 'proof', 'hand-over'] as const;
export type Stage = (typeof stages)[number];

export const stageTitles: Readonly<Record<Stage, string>> = {
  complaint: 'Complaint',
  codes: 'Codes',
  tests: 'Tests',
  finding: 'Finding',
  repair: 'Repair',
  proof: 'Proof',
  'hand-over': 'Hand-over',
};
