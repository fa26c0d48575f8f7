import type { Finding } from '../finding.ts';
import { entryRule } from './rule.ts';
import type { Complaint, Rule } from './rule.ts';

const why = 'A reading can only be judged in a unit of the same kind as the limits; ohms against millimetres mean nothing.';
const name = 'unit-fits-quantity';

function unknownUnit(unit: string): Complaint {
  return { found: `"${unit}"`, expected: 'the id of a unit in src/domain/units', example: 'unit: ohm' };
}

const unitsOfQuantities = entryRule('quantities', name, why, (quantity, report, _book, context) => {
  if (context.unitById(quantity.unit) === undefined) report(['unit'], unknownUnit(quantity.unit));
});

const unitsOfRanges = entryRule('ranges', name, why, (range, report, book, context) => {
  const unit = context.unitById(range.unit);
  if (unit === undefined) return report(['unit'], unknownUnit(range.unit));
  const quantityUnit = context.unitById(book.quantities.get(range.quantity)?.unit ?? '');
  if (quantityUnit === undefined || quantityUnit.dimension === unit.dimension) return;
  report(['unit'], {
    found: `"${range.unit}", which measures ${unit.dimension}`,
    expected: `a unit of ${quantityUnit.dimension}, as ${range.quantity} is taken in ${quantityUnit.id}`,
  });
});

export const unitFitsQuantity: Rule = {
  name,
  why,
  scope: 'entry',
  check: (book, context): Finding[] => [...unitsOfQuantities.check(book, context), ...unitsOfRanges.check(book, context)],
};
