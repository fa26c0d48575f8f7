import type { Dimension, UnitId } from '../units/types.ts';
import type { InputDefinition } from './definition.ts';

/** An input for a measured quantity: required and without limits unless `rest` says otherwise. */
export function quantity(
  name: string,
  label: string,
  dimension: Dimension,
  unit: UnitId,
  rest: Partial<InputDefinition> = {},
): InputDefinition {
  return { name, label, kind: 'quantity', dimension, unit, optional: false, ...rest };
}

/** Above nothing and at most `maximum`: for what cannot be zero. */
export function aboveZero(maximum: number): Partial<InputDefinition> {
  return { minimum: 0, exclusiveMinimum: true, maximum };
}
