import type { Shape } from '../../drawing/shape.ts';
import type { ProposedOutcome } from '../asOutcome.ts';

/** What a table can be read as. */
export const captureKinds = ['logged', 'coil-current', 'ignition-voltage', 'starter-current', 'crank-sensor', 'injector'] as const;
export type CaptureKind = (typeof captureKinds)[number];

/** What is known beside the file. Everything may be left out; what then cannot be told is said. */
export interface CaptureAnswers {
  /** Each cylinder once, in the order they fire. */
  readonly firingOrder?: readonly number[];
  /** Cylinder of the trigger channel or, without one, of the first event. The first of the order when left out. */
  readonly markedCylinder?: number;
  /** V at the coil while it charges, with its standard uncertainty. */
  readonly supply?: { readonly value: number; readonly standardUncertainty: number };
  /** Standard uncertainty of the clamp's scale, percent. */
  readonly clampPercent?: number;
  readonly side?: 'primary' | 'secondary';
  /** Crank degrees from the first tooth after the gap to the top dead centre of the order's first cylinder. */
  readonly firstTopDeadCentre?: number;
  /** Litres. */
  readonly displacement?: number;
  /** The stored conditions a proof drive has to meet, rpm and percent. */
  readonly stored?: { readonly speed: number; readonly load: number; readonly warm: boolean };
  readonly decimalMark?: '.' | ',';
}

export interface ReportTable {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of a row names it. */
  readonly rows: readonly (readonly string[])[];
}

/** All that a page shows of an analysed capture, in plain data. */
export interface CaptureReport {
  readonly kind: CaptureKind;
  /** What was found, most telling first. */
  readonly sentences: readonly string[];
  readonly tables: readonly ReportTable[];
  readonly drawings: readonly Shape[];
  readonly outcomes: readonly ProposedOutcome[];
  /** The figures worth keeping in a job. */
  readonly kept: readonly { readonly name: string; readonly label: string; readonly text: string }[];
}
