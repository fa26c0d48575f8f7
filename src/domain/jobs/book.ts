import type {
  ComplaintSign,
  DiagnosisBook,
  IgnitionArrangement,
  InjectionArrangement,
  PartCost,
} from '../diagnosis/types.ts';
import type { TemperatureVariation } from '../measurement/types.ts';
import type { PressureKind } from '../units/pressure.ts';

/**
 * All that the job pages need of the book, published as `data/job-book.json`. It is plain JSON: no dates, maps or functions.
 * Addresses are relative to the root of the book, without a leading slash.
 */
export interface JobBook {
  /** Version of the book, shown in the source of a job. */
  readonly edition: string;
  readonly diagnosis: DiagnosisBook;
  readonly engines: readonly EngineChoice[];
  readonly ranges: readonly JobRange[];
  readonly parts: readonly JobPart[];
  /** Questions of the complaint, in the order asked: `{ id: 'when-hot', label: 'Only when hot' }`. */
  readonly signs: readonly { readonly id: ComplaintSign; readonly label: string }[];
  readonly cautions: readonly JobCaution[];
  /** Codes the book knows, by code in capitals: `P0303`. */
  readonly codes: Readonly<Record<string, JobCode>>;
  /** Procedures, by id. */
  readonly procedures: Readonly<Record<string, JobProcedure>>;
  /** Shown with every belief: what the chances rest on. */
  readonly estimatesNote: string;
}

/** What working out the state of a job needs of the book. */
export type ReasoningBook = Pick<JobBook, 'diagnosis'>;

/** A layout of `content/engines` with the arrangements it is met with. */
export interface EngineChoice {
  readonly id: string;
  readonly title: string;
  readonly cylinders: number;
  readonly form: 'inline' | 'vee' | 'flat';
  readonly banks: readonly (readonly number[])[];
  readonly firingOrder: readonly number[];
  readonly evenFire: boolean;
  readonly ignition: readonly IgnitionArrangement[];
  readonly injection: readonly InjectionArrangement[];
  /** How its cylinders are numbered, one sentence. */
  readonly numbering: string;
}

/** A range of `content/ranges` together with what its quantity says about measuring. */
export interface JobRange {
  readonly id: string;
  readonly title: string;
  /** Title of the quantity. */
  readonly quantity: string;
  readonly low?: number;
  readonly high?: number;
  /** Unit id of the limits, such as `ohm`. */
  readonly unit: string;
  /** °C. Present when `variation` is `copper`. */
  readonly referenceTemperature?: number;
  readonly variation: TemperatureVariation;
  /** Gauge or absolute, where it is a pressure. */
  readonly pressure?: PressureKind;
  readonly usualMeter: { readonly percent: number; readonly counts: number };
  readonly leadsMatter: boolean;
  readonly sourceId: string;
  /** The source as printed, with its place and status: `JIS B 8031, limits (standard, recalled from memory)`, or `common practice, no source`. */
  readonly sourceLabel: string;
  /** The engine maker's figure comes before this one. */
  readonly makerFirst: boolean;
  /** Arrangements it holds for; all when left out. */
  readonly ignition?: readonly IgnitionArrangement[];
  readonly injection?: readonly InjectionArrangement[];
  /** What each verdict means, one or two sentences. */
  readonly inside: string;
  readonly below?: string;
  readonly above?: string;
  readonly open?: string;
  readonly address: string;
}

/** A match-and-fit sheet. */
export interface JobPart {
  readonly id: string;
  readonly title: string;
  readonly match: readonly { readonly feature: string; readonly check: string }[];
  readonly renewWith: readonly JobRenewal[];
  readonly fit: readonly { readonly text: string; readonly caution?: string }[];
  readonly askMaker: readonly { readonly question: string; readonly fallback?: string }[];
  readonly beforeStart: readonly string[];
  readonly cautions: readonly string[];
  readonly address: string;
}

/** A part that is worth renewing in the same visit, and what that costs against a second visit. Estimates, common practice. */
export interface JobRenewal {
  readonly part: string;
  readonly why: string;
  /** Extra minutes when done together with the repair. */
  readonly minutesNow: number;
  /** Minutes of a second visit, opening and closing up again included. */
  readonly minutesLater: number;
  readonly partCost: PartCost;
}

export interface JobCaution {
  readonly id: string;
  readonly title: string;
  readonly short: string;
  readonly severity: 'danger' | 'warning' | 'care';
  readonly address: string;
}

export interface JobCode {
  /** Id of the family in `content/codes`. */
  readonly family: string;
  /** Cylinder, coil or bank. */
  readonly number?: number;
  readonly title: string;
}

export interface JobProcedure {
  readonly title: string;
  readonly address: string;
}
