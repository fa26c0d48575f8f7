import type { CameBack, CodesCleared, FindingMade, HandedOver, MisfiresCounted, PartMatched, ProofChecked, ProofRun, RepairDone } from './repairEvents.ts';
import type { AccessNoted, CodesRead, CodesReread, ComplaintTaken, EngineChosen, EventHead, OpinionGiven, ReadingTaken, TestDone, TestNotPossible, FrameRead } from './searchEvents.ts';

export * from './repairEvents.ts';
export * from './searchEvents.ts';

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
  /** Id of the calculator; `captures` for a log or trace. */
  readonly calculator: string;
  readonly title: string;
  /** What went in: typed, or stood in for an empty field. */
  readonly inputs: readonly FigureNoted[];
  readonly outputs: readonly FigureNoted[];
  /** The calculator with these inputs, from the root of the book: `calculators/plug-gap/?gap=1`; `captures/` for a log or trace. */
  readonly address: string;
}

/** A photograph kept small, drawn anew by the browser so that nothing but the picture is left of the camera's file. */
export interface PictureTaken extends EventHead {
  readonly kind: 'picture';
  readonly caption: string;
  readonly width: number;
  readonly height: number;
  /** JPEG in Base64, without the `data:` head. */
  readonly jpeg: string;
}

export interface Renamed extends EventHead {
  readonly kind: 'renamed';
  readonly title: string;
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
  | OpinionGiven
  | AccessNoted
  | FrameRead
  | PictureTaken
  | ProofChecked
  | CameBack
  | Renamed
  | Undone;

export type JobEventKind = JobEvent['kind'];

/** An event as a form gives it: the head is added when it is written into the job. */
export type JobEventBody = DistributiveOmit<JobEvent, keyof EventHead>;
type DistributiveOmit<Union, Key extends PropertyKey> = Union extends unknown ? Omit<Union, Key> : never;
