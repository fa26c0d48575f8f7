import type { ComplaintSign, EngineLayout, OutcomeChances } from '../diagnosis/types.ts';
import type { VerdictWord } from '../measurement/types.ts';

/** What stands in `type` of every job file. */
export const jobType = 'ignition-bench-book/job';
/**
 * The version written today. A file of a newer version is refused untouched; an older one is brought up step by step.
 *
 * Version 2 adds the event `calculation` and the meter's size of one count. A book of version 1 refuses any kind or field that it does
 * not know and would call such a file damaged; by the number it says instead that the file needs a newer book.
 */
export const jobVersion = 2;
/** What stands in `source` of a job that was made up to show the book. */
export const inventedSource = 'Invented for demonstration';

/**
 * One thing that happened. Events are never changed or removed once written; an `undone` event takes one out of account.
 * `sequence` counts up within the job and gives the order, whatever the clock of the device says; two devices may use the
 * same number, and then the id decides.
 */
interface EventHead {
  readonly id: string;
  readonly sequence: number;
  /** ISO 8601 date and time in UTC, such as `2026-03-04T09:30:00.000Z`. */
  readonly at: string;
}

/** The engine maker's own limits for one range of the book; they come before the book's general figure. */
export interface MakerFigure {
  readonly range: string;
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
  /** °C. */
  readonly referenceTemperature?: number;
  /** Where the figure was read. */
  readonly from: string;
}

/** The layout is copied into the job, so that the record still reads when the book changes. */
export interface EngineChosen extends EventHead {
  readonly kind: 'engine-chosen';
  readonly layout: EngineLayout;
  /** The car, in the mechanic's own words. */
  readonly description: string;
  /** What the shop calls the customer or order; free text, may be empty. */
  readonly customerReference: string;
  readonly makerFigures: readonly MakerFigure[];
}

export interface ComplaintTaken extends EventHead {
  readonly kind: 'complaint';
  readonly text: string;
  readonly signs: readonly ComplaintSign[];
}

/** A code as understood when it was typed. `family` is absent when the book gives it no meaning for diagnosis. */
export interface CodeNoted {
  readonly code: string;
  readonly title: string;
  readonly family?: string;
  readonly number?: number;
}

interface CodesHead extends EventHead {
  /** As typed or pasted. */
  readonly text: string;
  readonly codes: readonly CodeNoted[];
  /** Pieces that could not be read as a code. */
  readonly refused: readonly string[];
}

export interface CodesRead extends CodesHead {
  readonly kind: 'codes-read';
  /** Why the memory could not be read. Present, the empty list does not mean that it held nothing. */
  readonly notRead?: string;
}

export interface CodesReread extends CodesHead {
  readonly kind: 'codes-reread';
}

export interface CodesCleared extends EventHead {
  readonly kind: 'codes-cleared';
}

/** Where something was done: the id and the words for it. */
export interface PlaceNoted {
  readonly id: string;
  readonly label: string;
}

export interface TestDone extends EventHead {
  readonly kind: 'test-done';
  readonly test: string;
  readonly title: string;
  readonly place: PlaceNoted;
  readonly partner?: PlaceNoted;
  /** Weight of each outcome; a certain one has weight 1, a doubtful reading shares it. */
  readonly outcomes: OutcomeChances;
  /** The outcome in words. */
  readonly outcome: string;
  readonly note: string;
  /** The reading it rests on: id of a `reading-taken` event. */
  readonly reading?: string;
}

/** A proposed test that cannot be done: at one place, or anywhere when no place is given (a tool the shop has not got). It is not proposed again. */
export interface TestNotPossible extends EventHead {
  readonly kind: 'test-not-possible';
  readonly test: string;
  readonly title: string;
  readonly place?: PlaceNoted;
  readonly reason: string;
}

export interface MeterNoted {
  readonly name: string;
  /** Percent of the reading. */
  readonly percent: number;
  /** Counts of the last digit. */
  readonly counts: number;
  /** Size of one count in the unit of the reading, where the meter's data sheet gave it; otherwise it came from the digits typed. */
  readonly resolution?: number;
}

export interface LimitsNoted {
  readonly low?: number;
  readonly high?: number;
  /** Temperature the limits hold at, °C. */
  readonly referenceTemperature?: number;
  readonly sourceId: string;
  readonly sourceLabel: string;
}

/** A reading with the judgement as it was shown. Numbers are in `unit`, temperatures in °C. */
export interface ReadingTaken extends EventHead {
  readonly kind: 'reading-taken';
  readonly test?: string;
  readonly place?: PlaceNoted;
  readonly range: string;
  readonly title: string;
  /** As typed. */
  readonly text: string;
  readonly value: number | 'open';
  readonly unit: string;
  readonly leads: number;
  readonly temperature: number;
  readonly meter: MeterNoted;
  readonly corrected: number | 'open';
  readonly expandedUncertainty: number;
  readonly verdict: VerdictWord;
  readonly limits: LimitsNoted;
}

export interface FindingMade extends EventHead {
  readonly kind: 'finding-made';
  /** `fault@place`. */
  readonly hypothesis: string;
  readonly label: string;
  /** 0 to 1, when the finding was made. */
  readonly belief: number;
  /** What it rests on, in words. */
  readonly supportedBy: readonly string[];
}

export interface PartMatched extends EventHead {
  readonly kind: 'part-matched';
  readonly part: string;
  readonly title: string;
  readonly ticks: readonly { readonly feature: string; readonly matches: boolean }[];
}

export interface RepairDone extends EventHead {
  readonly kind: 'repair-done';
  readonly what: string;
  readonly hypothesis: string;
  readonly minutes: number;
}

/**
 * Misfires counted while the fault was there, by the control unit's counters or by ear. It may be written down after the repair.
 * It gives the rate that proof is held against.
 */
export interface MisfiresCounted extends EventHead {
  readonly kind: 'misfires-counted';
  readonly misfires: number;
  readonly revolutions: number;
  readonly how: string;
}

export type YesNoUnknown = 'yes' | 'no' | 'unknown';

/** A run after the repair, at the speed, load and warmth at which it used to misfire. */
export interface ProofRun extends EventHead {
  readonly kind: 'proof-run';
  readonly revolutions: number;
  readonly minutes: number;
  /** Misfires counted in the run. */
  readonly misfires: number;
  readonly similarConditions: YesNoUnknown;
  readonly result: 'quiet' | 'returned';
}

export interface HandedOver extends EventHead {
  readonly kind: 'handed-over';
  readonly to: string;
  /** Why the repair is handed over without proof. Absent only when proof is complete. */
  readonly unproven?: string;
}

export interface NoteWritten extends EventHead {
  readonly kind: 'note';
  readonly text: string;
}

/** An input or output of a calculator as it was shown. */
export interface FigureNoted {
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

/** What a calculator gave, kept in words so that the record still reads when the calculator changes. It is evidence of nothing. */
export interface CalculationKept extends EventHead {
  readonly kind: 'calculation';
  /** Id of the calculator. */
  readonly calculator: string;
  readonly title: string;
  /** What went in: typed, or stood in for an empty field. */
  readonly inputs: readonly FigureNoted[];
  readonly outputs: readonly FigureNoted[];
  /** The calculator with these inputs, from the root of the book: `calculators/plug-gap/?gap=1`. */
  readonly address: string;
}

/** Takes another event out of account. The event stays in the record. */
export interface Undone extends EventHead {
  readonly kind: 'undone';
  readonly undoes: string;
}

export type JobEvent =
  | EngineChosen
  | ComplaintTaken
  | CodesRead
  | TestDone
  | TestNotPossible
  | ReadingTaken
  | FindingMade
  | PartMatched
  | RepairDone
  | CodesCleared
  | CodesReread
  | MisfiresCounted
  | ProofRun
  | HandedOver
  | NoteWritten
  | CalculationKept
  | Undone;

export type JobEventKind = JobEvent['kind'];

/** An event as a form gives it: the head is added when it is written into the job. */
export type JobEventBody = DistributiveOmit<JobEvent, keyof EventHead>;
type DistributiveOmit<Union, Key extends PropertyKey> = Union extends unknown ? Omit<Union, Key> : never;

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
