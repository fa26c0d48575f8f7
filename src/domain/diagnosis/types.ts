/** How the spark reaches the plugs. */
export const ignitionArrangements = ['coil-per-plug', 'coil-per-plug-built-in-driver', 'wasted-spark', 'distributor'] as const;
export type IgnitionArrangement = (typeof ignitionArrangements)[number];
export const injectionArrangements = ['port', 'direct'] as const;
export type InjectionArrangement = (typeof injectionArrangements)[number];

/** An engine as far as diagnosis needs it. Cylinders are numbered from 1 as the engine numbers them. */
export interface EngineLayout {
  readonly id: string;
  readonly title: string;
  readonly cylinders: number;
  readonly firingOrder: readonly number[];
  /** Cylinder numbers along each bank, front to back; one list for an inline engine. */
  readonly banks: readonly (readonly number[])[];
  readonly form: 'inline' | 'vee' | 'flat';
  readonly ignition: IgnitionArrangement;
  readonly injection: InjectionArrangement;
  /** Cylinders that share a coil (wasted spark). Empty otherwise. */
  readonly coilPairs: readonly (readonly [number, number])[];
}

/** Where a fault can sit. `coil` is whatever one coil serves: a cylinder, a pair, or all; `neighbours` are side by side in a bank. */
export const placeKinds = ['cylinder', 'coil', 'neighbours', 'bank', 'engine'] as const;
export type PlaceKind = (typeof placeKinds)[number];

export interface Place {
  readonly kind: PlaceKind;
  /** Such as `cylinder-3`, `coil-1-4`, `bank-2`, `engine`. */
  readonly id: string;
  /** Such as `cylinder 3`, `coil for 1 and 4`, `bank 2`, `the whole engine`. */
  readonly label: string;
  readonly cylinders: readonly number[];
}

/** Tools that a shop may not have. What every shop has (multimeter, lamp, spanners) is not in the list. */
export const specialTools = [
  'live-data-reader',
  'oscilloscope',
  'low-current-clamp',
  'high-current-clamp',
  'high-tension-pick-up',
  'spark-tester',
  'compression-gauge',
  'leak-down-tester',
  'compressed-air',
  'vacuum-gauge',
  'fuel-pressure-gauge',
  'injector-pulse-tool',
  'back-pressure-gauge',
  'gas-analyser',
  'smoke-machine',
  'borescope',
  'cooling-system-tester',
  'timing-lamp',
  'battery-load-tester',
  'insulation-meter',
  'lift',
  'second-person',
] as const;
export type SpecialTool = (typeof specialTools)[number];

/** How far the car is opened up. */
export const accessStates = ['cover-off', 'plugs-out', 'raised'] as const;
export type AccessState = (typeof accessStates)[number];

/** What a part costs, in steps; `partCostMinutes` says how many minutes of the shop's work each is taken for. */
export const partCosts = ['none', 'low', 'medium', 'high'] as const;
export type PartCost = (typeof partCosts)[number];

/** What the customer can tell that makes some faults likelier. */
export const complaintSigns = [
  'when-cold',
  'when-hot',
  'in-wet',
  'under-load',
  'at-idle',
  'after-plug-work',
  'after-engine-wash',
  'oil-in-plug-wells',
  'plugs-old',
  'after-refuelling',
  'coolant-loss',
  'oil-use',
] as const;
export type ComplaintSign = (typeof complaintSigns)[number];

export interface FaultModel {
  readonly id: string;
  readonly title: string;
  readonly placeKind: PlaceKind;
  /** How common against the others, before anything is known. Above 0. */
  readonly weight: number;
  /** Factor on the weight for each sign the complaint has. 1 when not named. */
  readonly complaint: Readonly<Partial<Record<ComplaintSign, number>>>;
  /** Chance that a code of this family is stored at the fault's own place, 0 to 1. */
  readonly codes: Readonly<Record<string, number>>;
  /** Arrangements it can happen on; all when left out. */
  readonly ignition?: readonly IgnitionArrangement[];
  readonly injection?: readonly InjectionArrangement[];
  /** Minutes to put it right, and the match-and-fit sheet, if a part is fitted. */
  readonly repairMinutes: number;
  readonly partCost: PartCost;
  readonly part?: string;
  /** The sheet where an arrangement has another part. */
  readonly partByIgnition?: Readonly<Partial<Record<IgnitionArrangement, string>>>;
  readonly repairProcedure?: string;
}

/** A kind of code that counts places: misfire by cylinder, coil circuit by coil, lean by bank. */
export interface CodeFamilyModel {
  readonly id: string;
  readonly placeKind: 'cylinder' | 'coil' | 'bank' | 'engine';
  /** Chance that such a code is stored at a place that is not at fault. */
  readonly falseRate: number;
}

/** A code understood: its family and the number of the place it names (cylinder, coil or bank), if it names one. */
export interface CodeAtPlace {
  readonly code: string;
  readonly family: string;
  readonly number?: number;
}

/** Chances of each outcome; they sum to 1. */
export type OutcomeChances = Readonly<Record<string, number>>;

/** Chances of the outcomes for some faults, by where the fault lies seen from where the test was done. */
export interface OutcomeLikelihood {
  readonly faults: readonly string[];
  readonly here: OutcomeChances;
  readonly partner?: OutcomeChances;
  /** Left out, the procedure's default serves. */
  readonly elsewhere?: OutcomeChances;
}

export interface OutcomeModel {
  readonly id: string;
  readonly label: string;
  readonly meaning: string;
  readonly next: readonly string[];
  /** Set on outcomes that a judged reading decides. */
  readonly verdict?: 'inside' | 'below' | 'above' | 'open';
}

export interface TestModel {
  readonly id: string;
  readonly title: string;
  readonly kind: 'look' | 'test' | 'repair' | 'proof';
  readonly placeKind: PlaceKind;
  readonly needsPartner: boolean;
  /** May a finding rest on it? A look or a code alone may not. */
  readonly telling: boolean;
  /** For a mechanic who has done it before, engine cover off, everything else still closed. */
  readonly minutes: number;
  /** At a further place of the same car, everything still set up. Left out where each place is a job of its own. */
  readonly minutesAgain?: number;
  /**
   * One run shows every place of its kind at once: it is noted at the place it speaks of, and the same at another place is the same run
   * looked at again, not fresh evidence.
   */
  readonly showsEveryPlace: boolean;
  /** Tools it cannot be done without. */
  readonly needs: readonly SpecialTool[];
  /** True when the engine cover has to come off first. */
  readonly needsCoverOff: boolean;
  /** Of `minutes`, how many go into opening the car up so far; saved where that is done already. */
  readonly access: Readonly<Partial<Record<Exclude<AccessState, 'cover-off'>, number>>>;
  readonly ignition: readonly IgnitionArrangement[];
  readonly injection: readonly InjectionArrangement[];
  /** Why it is not offered on other arrangements. */
  readonly notPossible?: string;
  readonly outcomes: readonly OutcomeModel[];
  readonly likelihoods: readonly OutcomeLikelihood[];
  /** For every fault not named above, wherever it is. */
  readonly otherwise: OutcomeChances;
  /** Ranges that its readings are judged against. */
  readonly ranges: readonly string[];
  readonly cautions: readonly string[];
}

/** All that diagnosis knows, as content gives it. */
export interface DiagnosisBook {
  readonly faults: readonly FaultModel[];
  readonly codeFamilies: readonly CodeFamilyModel[];
  readonly tests: readonly TestModel[];
}

export interface Hypothesis {
  /** `fault@place`, or `none-of-these`. */
  readonly id: string;
  readonly fault: FaultModel | undefined;
  readonly place: Place | undefined;
}

/**
 * One thing observed. `outcomes` weighs the outcomes: `{moved: 1}` when it is certain; a doubtful reading shares the weight,
 * such as `{inside: 0.7, above: 0.3}`.
 */
export interface TestEvidence {
  readonly kind: 'test';
  readonly test: string;
  readonly place: string;
  readonly partner?: string;
  readonly outcomes: Readonly<Record<string, number>>;
}

/** A repair was done at a place and the misfire came back. */
export interface FailedRepairEvidence {
  readonly kind: 'failed-repair';
  readonly fault: string;
  readonly place: string;
}

/** What the mechanic knows of this engine from elsewhere. It is an opinion: it moves belief, but no finding may rest on it. */
export const opinionWeights = ['much-likelier', 'likelier', 'less-likely', 'much-less-likely'] as const;
export type OpinionWeight = (typeof opinionWeights)[number];

export interface OpinionEvidence {
  readonly kind: 'opinion';
  readonly fault: string;
  /** Left out: wherever it may be. */
  readonly place?: string;
  readonly weight: OpinionWeight;
}

export type Evidence = TestEvidence | FailedRepairEvidence | OpinionEvidence;

export interface Belief {
  readonly hypothesis: Hypothesis;
  readonly probability: number;
}
