import { formatValue, shortestDecimals } from '../units/format.ts';
import type { UnitId } from '../units/types.ts';

const digits = 6;

/** A figure as it was given or is likely to be copied: six digits, without closing noughts. `180 psi`, `12.4106 bar`. */
export function showFigure(value: number, unit: UnitId): string {
  return formatValue(value, unit, { decimals: shortestDecimals(Number(value.toPrecision(digits))) });
}
