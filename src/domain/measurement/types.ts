import type { UnitId } from '../units/types.ts';

/** How much a meter may be wrong, as its data sheet states it: ± (percent of reading + counts of the last digit). */
export interface Meter {
  readonly name: string;
  /** Percent of the reading, 0 to 100. */
  readonly percent: number;
  /** Counts of the last digit, 0 or more. */
  readonly counts: number;
  /** Size of one count in the unit of the reading; left out, it is taken from the digits that were typed. */
  readonly resolution?: number;
}

/** How the true value moves with temperature: not at all, or as copper does. */
export type TemperatureVariation = 'none' | 'copper';

/** The limits a value is judged against. At least one end is given. */
export interface Limits {
  readonly low?: number;
  readonly high?: number;
  readonly unit: UnitId;
  readonly variation: TemperatureVariation;
  /** The temperature the limits hold at, °C. Needed when `variation` is not `none`. */
  readonly referenceTemperature?: number;
}

/** What was read, in the unit of the limits, and how. */
export interface Reading {
  /** The number on the meter, or `open` for an open circuit. */
  readonly value: number | 'open';
  /** One count of the last digit typed, unit of the limits. */
  readonly resolution: number;
  /** Resistance of the leads touched together, unit of the limits; 0 when the meter was zeroed. */
  readonly leads: number;
  /** Temperature of the part, °C. */
  readonly temperature: number;
  /** How far off that temperature may be, ± K, taken as rectangular. */
  readonly temperatureTolerance: number;
  readonly meter: Meter;
}

export type VerdictWord = 'inside' | 'below' | 'above' | 'too-close-to-call';

/** A reading, corrected and judged. All values are in the unit of the limits. */
export interface Judgement {
  /** Reading less leads, referred to the reference temperature; `open` stays open. */
  readonly corrected: number | 'open';
  /** Combined standard uncertainty (one sigma). */
  readonly standardUncertainty: number;
  /** Two standard uncertainties. */
  readonly expandedUncertainty: number;
  /** Chance that the true value lies below, inside, above the limits. They sum to 1. */
  readonly probabilityBelow: number;
  readonly probabilityInside: number;
  readonly probabilityAbove: number;
  readonly verdict: VerdictWord;
  /** What each part contributes to the standard uncertainty, largest first: it tells what would settle a doubtful reading. */
  readonly contributions: readonly { readonly from: 'meter' | 'leads' | 'temperature'; readonly standardUncertainty: number }[];
}
