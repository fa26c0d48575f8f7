import { problemInFigure, problemWithRange } from '../../domain/figures/problem.ts';
import type { FigureRange } from '../../domain/figures/types.ts';
import type { Book, Entry } from '../../schemas/index.ts';
import { figuresOf } from '../../schemas/shopFigures.ts';
import { entryRule } from './rule.ts';
import type { RuleContext } from './rule.ts';

export const makerFiguresFitTheirRange = entryRule(
  'engines',
  'maker-figures-fit-their-range',
  "The engine maker's figure stands before the book's, so one with its ends swapped or in the wrong unit condemns good parts.",
  (engine, report, book, context) => {
    figuresOf(engine).forEach((figure, index) => {
      const range = rangeOf(figure.range, book, context);
      // A range that does not exist is told by the rule on ids.
      const found = problemInFigure(figure) ?? (range === undefined ? undefined : problemWithRange(figure, [range]));
      if (found) report(['makerFigures', index, found.field], { found: `${found.field} ${found.problem}`, expected: expected[found.field] });
    });
  },
);

const expected = {
  range: 'the id of a range of the book',
  low: 'low, high or both, low at most as large as high',
  high: 'low, high or both, low at most as large as high',
  unit: 'a unit of the same kind as that of the range',
  from: 'where the figure was read: document, edition, page',
  enteredBy: 'who entered the figure',
  enteredOn: 'the day it was entered, such as 2026-03-04',
} as const;

function rangeOf(id: string, book: Book, context: RuleContext): FigureRange | undefined {
  const range: Entry<'ranges'> | undefined = book.ranges.get(id);
  const dimension = range && context.unitById(range.unit)?.dimension;
  return range && dimension && { id, title: range.title, unit: range.unit, dimension };
}
