import { matchColumns } from '../../domain/captures/columns/match.ts';
import { proposeKind } from '../../domain/captures/report/propose.ts';
import { reportCapture } from '../../domain/captures/report/report.ts';
import type { LoggedTable, TableColumn } from '../../domain/captures/table/types.ts';
import { unitById } from '../../domain/units/table.ts';
import type { ByHand, CaptureAnswer, CaptureRequest, ColumnFound, TableFound } from './protocol.ts';
import { readFile } from './readFile.ts';

/** Milliseconds between two reports of progress: more often is seen by no one. */
const progressEvery = 80;
const cellsShown = 3;

/** The table with the time column that was chosen by hand, if one was. */
function withTime(table: LoggedTable, { time }: ByHand): LoggedTable {
  const column = time && table.columns[time.column];
  const factor = (unitById(time?.unit ?? 's')?.factor ?? 1) / (unitById('s')?.factor ?? 1);
  if (time === undefined || column?.kind !== 'numbers') return table;
  return { ...table, time: { column: time.column, seconds: column.values.map((value) => value * factor), unitAssumed: false } };
}

function columnFound(column: TableColumn): ColumnFound {
  const { heading, unitText } = column;
  const cells = column.kind === 'words' ? column.words.slice(0, cellsShown) : Array.from(column.values.subarray(0, 50)).filter((value) => !Number.isNaN(value)).slice(0, cellsShown).map(String);
  return { heading, unitText, first: cells };
}

function tableFound(table: LoggedTable, byHand: ByHand): TableFound {
  const timed = withTime(table, byHand);
  const matches = matchColumns(timed, byHand.choices);
  const { rows, decimalMark, decimalMarkUnsure, problems, problemCount, time } = timed;
  return {
    columns: timed.columns.map(columnFound),
    rows,
    decimalMark,
    decimalMarkUnsure,
    problems,
    problemCount,
    matches,
    time: time && { column: time.column, unitAssumed: time.unitAssumed, seconds: (time.seconds.at(-1) ?? 0) - (time.seconds[0] ?? 0) },
    proposed: proposeKind(matches),
  };
}

/** Answers the requests of a page, one table at a time. `clock` in milliseconds. */
export function captureWork(answer: (message: CaptureAnswer) => void, clock: () => number): (request: CaptureRequest) => Promise<void> {
  let table: LoggedTable | undefined;
  let told = 0;
  const progress = (share: number, rows: number): void => {
    if (clock() - told < progressEvery && share < 1) return;
    told = clock();
    answer({ kind: 'progress', share, rows });
  };
  const read = async ({ file, decimalMark }: CaptureRequest & { kind: 'read' }): Promise<void> => {
    table = undefined;
    const found = await readFile(file, decimalMark === undefined ? {} : { decimalMark }, progress);
    if (!found.ok) return answer({ kind: 'refused', ...found.error });
    table = found.value;
    answer({ kind: 'table', table: tableFound(table, { choices: [] }) });
  };
  return async (request) => {
    if (request.kind === 'read') return read(request);
    if (table === undefined) return answer({ kind: 'refused', input: 'file', message: 'No file has been read yet. Choose one.' });
    if (request.kind === 'columns') return answer({ kind: 'table', table: tableFound(table, request) });
    const timed = withTime(table, request);
    const report = reportCapture(request.capture, { table: timed, matches: matchColumns(timed, request.choices), answers: request.answers });
    answer(report.ok ? { kind: 'report', report: report.value } : { kind: 'refused', message: report.error.message, input: report.error.input });
  };
}
