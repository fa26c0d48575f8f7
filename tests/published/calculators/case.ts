import type { UnitId } from '../../../src/domain/units/types.ts';

/** Value, unit and how far off it may be in that unit. */
export type ExpectedNumber = readonly [value: number, unit: UnitId, tolerance: number];
export interface ExpectedList {
  readonly values: readonly number[];
  readonly unit: UnitId;
  readonly tolerance: number;
}

/** One row of a table of checks against the outside world. Inputs are text as a person types it. */
export interface CalculatorCase {
  readonly label: string;
  readonly inputs: Readonly<Record<string, string>>;
  readonly expected?: Readonly<Record<string, ExpectedNumber | ExpectedList | string | boolean | readonly string[]>>;
  /** Outputs that must be left out. */
  readonly absent?: readonly string[];
  /** Something a note must say. */
  readonly says?: RegExp;
  readonly refusal?: { readonly input: string; readonly code: string };
  /** Where the expected figures come from. */
  readonly source: string;
}

/** The behaviour asked for by the project's own contract, where no outside source can speak. */
export const contract = 'contract of the calculator';
