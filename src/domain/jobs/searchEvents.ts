import type { AccessState, ComplaintSign, EngineLayout, OpinionWeight, OutcomeChances } from '../diagnosis/types.ts';
import type { VerdictWord } from '../measurement/types.ts';

/* What is taken in and found out, up to the finding. */

/**
 * One thing that happened. Events are never changed or removed once written; an `undone` event takes one out of account.
 * `sequence` counts up within the job and gives the order, whatever the clock of the device says; two devices may use the
 * same number, and then the id decides.
 */
export interface EventHead {
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
  /** What the engine lamp did. Left out: not asked. */
  readonly lamp?: LampNoted;
}

/** `flashed`: now and then. `flashed-long`: for minutes on end, long enough to overheat the catalyst. */
export const lampStates = ['off', 'on', 'flashed', 'flashed-long'] as const;
export type LampNoted = (typeof lampStates)[number];

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
  /** Minutes it took. Left out, the book's figure stands in. */
  readonly minutes?: number;
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

/** What the mechanic knows of this engine. It moves belief and is marked as an opinion; no finding may rest on it. */
export interface OpinionGiven extends EventHead {
  readonly kind: 'opinion';
  readonly fault: string;
  /** Left out: wherever it may be. */
  readonly place?: PlaceNoted;
  /** The fault and the place in words. */
  readonly label: string;
  readonly weight: OpinionWeight;
  readonly reason: string;
}

/** How far the car is opened up from now on. */
export interface AccessNoted extends EventHead {
  readonly kind: 'access';
  readonly open: readonly AccessState[];
}

/** Conditions stored with a misfire code. The proof run has to meet them. */
export interface FrameRead extends EventHead {
  readonly kind: 'frame-read';
  /** The code the frame belongs to; may be empty. */
  readonly code: string;
  /** rpm. */
  readonly speed: number;
  /** Calculated load, percent. Left out where the frame holds none. */
  readonly load?: number;
  /** °C. */
  readonly coolant?: number;
  readonly warm: 'yes' | 'no' | 'unknown';
}
