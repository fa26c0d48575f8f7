import type { Refusal, Result } from '../result.ts';
import type { PressureKind } from '../units/pressure.ts';
import type { Dimension, UnitId } from '../units/types.ts';

/** One input of a calculator. Its `name` is the contract: field id, command-line word and address parameter. */
export interface InputDefinition {
  readonly name: string;
  /** What a mechanic would call it. */
  readonly label: string;
  readonly kind: 'quantity' | 'quantity-list' | 'choice' | 'text';
  /** For quantities: what it measures and the unit assumed when none is typed. */
  readonly dimension?: Dimension;
  readonly unit?: UnitId;
  /** For pressures: gauge or absolute. The other kind, when the text names it, is refused. */
  readonly pressure?: PressureKind;
  /** An input may be left empty when it is optional. */
  readonly optional: boolean;
  /** The text that stands in for an empty field, as a person would type it. */
  readonly default?: string;
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
  /** Physical range in `unit`; outside it the input is refused. */
  readonly minimum?: number;
  readonly maximum?: number;
  /** Values equal to `minimum` are refused too. */
  readonly exclusiveMinimum?: boolean;
  readonly wholeNumber?: boolean;
  /** One short line under the field. */
  readonly hint?: string;
  /** Folded away with the other fine adjustments until asked for. */
  readonly advanced?: boolean;
}

export interface OutputDefinition {
  readonly name: string;
  readonly label: string;
  readonly kind: 'quantity' | 'quantity-list' | 'word' | 'word-list';
  readonly unit?: UnitId;
  /** Decimals shown to people where no uncertainty decides it. */
  readonly decimals?: number;
  /** `up` where too little would be unsafe: revolutions for a proof. */
  readonly rounding?: 'up';
  /** Name of the output that holds this one's expanded uncertainty; it decides how many digits are shown. */
  readonly uncertaintyFrom?: string;
  /** For words: what each stands for, as shown to people. */
  readonly words?: Readonly<Record<string, string>>;
  /** The figure the mechanic came for; set large. */
  readonly main?: boolean;
}

export type OutputValue =
  | { readonly value: number; readonly unit: UnitId }
  | { readonly values: readonly number[]; readonly unit: UnitId }
  | string
  | readonly string[]
  | boolean;

export interface Calculation {
  readonly outputs: Readonly<Record<string, OutputValue>>;
  /** Sentences about this result: what it means, what to do next, what limits it. */
  readonly notes: readonly string[];
  /** Pages to go to next: the place under the root of the book without slashes at the ends, and what to call it. */
  readonly next?: readonly { readonly page: string; readonly label: string }[];
}

/** Inputs after parsing: numbers are in the unit of the definition; an empty optional input with no default is absent. */
export interface ParsedInputs {
  /** The value of a quantity that is present for certain (required or defaulted). */
  number(name: string): number;
  optionalNumber(name: string): number | undefined;
  /** One count of the last digit typed, in the unit of the definition. */
  resolution(name: string): number;
  numbers(name: string): readonly number[];
  optionalNumbers(name: string): readonly number[] | undefined;
  text(name: string): string;
  optionalText(name: string): string | undefined;
  has(name: string): boolean;
}

/** A line chart worked out from the inputs: every series shares the two axes. */
export interface Chart {
  readonly title: string;
  readonly x: { readonly label: string; readonly unit: UnitId };
  readonly y: { readonly label: string; readonly unit: UnitId };
  readonly series: readonly {
    readonly name: string;
    readonly kind: 'line' | 'bars';
    /** `odd` marks a bar that stands out, with the word for it: it is drawn open with a mark, never by colour alone. */
    readonly points: readonly { readonly x: number; readonly y: number; readonly label?: string; readonly odd?: string }[];
  }[];
  /** The result of the present inputs, marked on the chart. */
  readonly marks: readonly { readonly x: number; readonly y: number; readonly label: string }[];
  /** Horizontal lines: limits. */
  readonly levels?: readonly { readonly y: number; readonly label: string }[];
}

export interface WorkedExample {
  readonly title: string;
  readonly inputs: Readonly<Record<string, string>>;
  /** The result in a sentence, so that page and test can hold it against the computation. */
  readonly says: string;
}

/** The table printed on the page for reading with scripts off: rows of inputs, outputs named by `columns`. */
export interface TableDefinition {
  readonly caption: string;
  readonly rows: readonly Readonly<Record<string, string>>[];
  /** Names of inputs and outputs to show, in order. */
  readonly columns: readonly string[];
}

export interface FormulaDefinition {
  /** TeX, turned into MathML when the page is made. */
  readonly tex: string;
  /** The same in one line of plain text, for old browsers and the ear. */
  readonly plain: string;
  /** Every symbol in it. */
  readonly symbols: readonly { readonly tex: string; readonly meaning: string }[];
  /** Ids in `content/sources`, with the clause or page. */
  readonly sources: readonly { readonly id: string; readonly place?: string }[];
}

/** One definition drives the form, the table, the formula, the chart, the example, the command line and the search words. */
export interface CalculatorDefinition {
  readonly id: string;
  readonly title: string;
  /** One sentence: the question it answers. */
  readonly summary: string;
  readonly inputs: readonly InputDefinition[];
  readonly outputs: readonly OutputDefinition[];
  readonly formulas: readonly FormulaDefinition[];
  readonly examples: readonly WorkedExample[];
  readonly table: TableDefinition;
  readonly searchWords: readonly string[];
  /** May refuse a combination that single inputs cannot show to be wrong. Never returns NaN. */
  readonly compute: (inputs: ParsedInputs) => Result<Calculation, Refusal>;
  /** One chart, or several that belong together: the cylinders in place and in firing order. */
  readonly chart?: (inputs: ParsedInputs) => Chart | readonly Chart[] | undefined;
}

/** What the book says about a trouble code. */
export interface CodeMeaning {
  readonly meaning: string;
  /** What to look at first, in order. */
  readonly lookFirst: readonly string[];
}

/** The meanings kept in the book's content. Gives nothing for a code the book does not hold. */
export type CodeMeanings = (code: string) => CodeMeaning | undefined;

/** Each calculator's folder exports `calculator`, which makes its definition from what the book's content holds. */
export type CalculatorMaker = (content: { readonly lookUpCode?: CodeMeanings }) => CalculatorDefinition;

/** The charts of a calculator for these inputs, as a list. */
export function chartsOf(definition: CalculatorDefinition, inputs: ParsedInputs): readonly Chart[] {
  const charts = definition.chart?.(inputs);
  if (charts === undefined) return [];
  return 'series' in charts ? [charts] : charts;
}
