import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { ColumnMatch } from '../columns/match.ts';
import type { QuantityId } from '../columns/quantities.data.ts';
import type { LoggedTable } from '../table/types.ts';
import type { AssignmentWish } from '../trace/assign.ts';
import { marksFrom, traceFrom } from '../trace/fromTable.ts';
import type { Trace } from '../trace/trace.ts';
import type { Assignment } from '../trace/types.ts';
import type { CaptureAnswers } from './types.ts';

/** What an analysis is given. */
export interface CaptureInput {
  readonly table: LoggedTable;
  readonly matches: readonly ColumnMatch[];
  readonly answers: CaptureAnswers;
}

export interface Channel {
  readonly trace: Trace;
  /** Cylinder, where the heading names one. */
  readonly cylinder: number | undefined;
}

/** The columns that hold a quantity, as traces. Refuses a table without times and one without such a column. */
export function channelsOf({ table, matches }: CaptureInput, quantity: QuantityId, label: string): Result<readonly [Channel, ...Channel[]], Refusal> {
  if (table.time === undefined) return failure({ input: 'time', code: 'no-time', message: 'No column of times was found. Choose it among the columns, or save the record again with the time in it.' });
  const channels = matches.filter((match) => match.quantity === quantity).flatMap((match) => {
    const trace = traceFrom(table, match);
    return trace === undefined ? [] : [{ trace, cylinder: match.index }];
  });
  const [first, ...rest] = channels;
  if (first === undefined) return failure({ input: 'columns', code: 'no-column', message: `No column is taken for ${label.toLowerCase()}. Say among the columns which one holds it.` });
  return success([first, ...rest]);
}

/** How events are given their cylinders: with the trigger's marks where one was recorded. The second part says why a trigger could not be used. */
export function wishFrom(input: CaptureInput): { readonly wish: AssignmentWish | undefined; readonly trouble: string | undefined } {
  const { firingOrder, markedCylinder } = input.answers;
  if (firingOrder === undefined) return { wish: undefined, trouble: undefined };
  const trigger = input.matches.find(({ quantity }) => quantity === 'trigger');
  const trace = trigger && traceFrom(input.table, trigger);
  const marks = trace && marksFrom(trace);
  const cylinder = markedCylinder ?? trigger?.index;
  return {
    wish: { firingOrder, ...(marks?.ok ? { marks: marks.value } : {}), ...(cylinder === undefined ? {} : { markedCylinder: cylinder }) },
    trouble: marks === undefined || marks.ok ? undefined : `The trigger was not used. ${marks.error.message}`,
  };
}

const byWords: Readonly<Record<Assignment['by'], string | undefined>> = {
  trigger: undefined,
  counting: 'Which cylinder is which was counted from the first event, taken as the cylinder you named: the order is right; be sure of the start.',
  none: 'No firing order was given, so all events stand together. Choose the engine to tell the cylinders apart.',
};

/** How sure the numbers of the cylinders are. */
export function assignmentWords(by: Assignment['by'], trouble: string | undefined): readonly string[] {
  return [trouble, byWords[by]].filter((words) => words !== undefined);
}
