import type { EventHead } from './searchEvents.ts';

/* From the finding to the hand-over, and what comes after it. */

export interface CodesCleared extends EventHead {
  readonly kind: 'codes-cleared';
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
  /** Figures read in the engine maker's data, such as a torque; questions left open are left out. */
  readonly answers?: readonly { readonly question: string; readonly answer: string; readonly from: string }[];
  /** What was renewed in the same visit, as the part's sheet names it. */
  readonly renewedWith?: readonly string[];
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
  /** Where the run was held: rpm, and calculated load in percent. */
  readonly speed?: number;
  readonly load?: number;
  /** After `returned`: was it the misfire of before? Left out means the same. */
  readonly misfire?: ReturnedMisfire;
}

/** `different`: at another cylinder, or another in kind. A second fault then stands behind the first, and what was found before the repair spoke of the first. */
export type ReturnedMisfire = 'same' | 'different';

export interface HandedOver extends EventHead {
  readonly kind: 'handed-over';
  readonly to: string;
  /** Why the repair is handed over without proof. Absent only when proof is complete. */
  readonly unproven?: string;
}

/** One of the looks that belong to a proof beside the quiet run. */
export const proofChecks = ['trims', 'monitors', 'catalyst'] as const;
export type ProofCheck = (typeof proofChecks)[number];
/** `not-yet`: looked at, and not complete. It is printed, but does not hold the proof up. */
export const proofCheckStates = ['good', 'bad', 'not-yet', 'not-needed'] as const;

export interface ProofChecked extends EventHead {
  readonly kind: 'proof-check';
  readonly check: ProofCheck;
  readonly state: (typeof proofCheckStates)[number];
  readonly note: string;
}

/** After the hand-over the car is back with a misfire. */
export interface CameBack extends EventHead {
  readonly kind: 'came-back';
  readonly text: string;
  readonly misfire: ReturnedMisfire;
}
