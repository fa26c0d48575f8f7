import type { ColumnChoice, ColumnMatch } from '../../domain/captures/columns/match.ts';
import type { CaptureAnswers, CaptureKind, CaptureReport } from '../../domain/captures/report/types.ts';
import type { TableProblem } from '../../domain/captures/table/types.ts';
import type { UnitId } from '../../domain/units/types.ts';

/** What the page asks of the worker that reads and analyses a file. The rows never leave the worker. */
export type CaptureRequest =
  | { readonly kind: 'read'; readonly file: Blob; readonly decimalMark?: '.' | ',' }
  | ({ readonly kind: 'columns' } & ByHand)
  | ({ readonly kind: 'analyse'; readonly capture: CaptureKind; readonly answers: CaptureAnswers } & ByHand);

/** What was corrected by hand. */
export interface ByHand {
  readonly choices: readonly ColumnChoice[];
  /** The column that holds the time, and its unit. */
  readonly time?: { readonly column: number; readonly unit: UnitId };
}

export interface ColumnFound {
  readonly heading: string;
  readonly unitText: string;
  /** The first cells that hold something. */
  readonly first: readonly string[];
}

export interface TableFound {
  readonly columns: readonly ColumnFound[];
  readonly rows: number;
  readonly decimalMark: '.' | ',';
  readonly decimalMarkUnsure: boolean;
  readonly time: { readonly column: number; readonly unitAssumed: boolean; readonly seconds: number } | undefined;
  readonly problems: readonly TableProblem[];
  readonly problemCount: number;
  readonly matches: readonly ColumnMatch[];
  readonly proposed: CaptureKind | undefined;
}

export type CaptureAnswer =
  | { readonly kind: 'progress'; readonly share: number; readonly rows: number }
  | { readonly kind: 'table'; readonly table: TableFound }
  | { readonly kind: 'report'; readonly report: CaptureReport }
  | { readonly kind: 'refused'; readonly message: string; readonly input: string };
