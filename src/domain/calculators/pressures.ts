import type { Refusal } from '../result.ts';
import { convert } from '../units/convert.ts';
import type { UnitId } from '../units/types.ts';
import type { InputDefinition } from './definition.ts';
import { showFigure } from './show.ts';

/**
 * Above this, kPa gauge, a fuel pressure belongs to direct injection: port injection runs at 250 to 400 kPa, direct injection at
 * 5000 and more. Common practice; the line is drawn in the wide gap between the two.
 */
export const HIGHEST_PORT_INJECTION_PRESSURE = 1500;

/** The outside pressure where the car stands, absolute. Shared by the calculators that set a gauge reading against it. */
export const barometerInput: InputDefinition = {
  name: 'barometer',
  label: 'Barometer, absolute',
  kind: 'quantity',
  dimension: 'pressure',
  unit: 'kPa',
  pressure: 'absolute',
  optional: true,
  minimum: 50,
  maximum: 110,
  hint: 'Outside pressure on the spot: live data with the key on and the engine off. Not the weather forecast’s, which is referred to the sea.',
};

/** Refuses, as `not-absolute`, what cannot be an absolute pressure: nothing at all, or less than nothing. */
export function refuseNotAbsolute(input: string, label: string, value: number, unit: UnitId): Refusal | undefined {
  if (value > 0) return undefined;
  const message = `${label}: ${showFigure(value, unit)} is no absolute pressure, which is always above zero. A gauge reads from the outside pressure: add the barometer to its figure.`;
  return { input, code: 'not-absolute', message };
}

/** Refuses, as `direct-injection-pressure`, a fuel pressure that only direct injection has, with the caution. */
export function refuseDirectInjection(input: string, label: string, value: number | undefined): Refusal | undefined {
  if (value === undefined || value <= HIGHEST_PORT_INJECTION_PRESSURE) return undefined;
  const limit = showFigure(HIGHEST_PORT_INJECTION_PRESSURE, 'kPa');
  const message = `${label}: ${showFigure(value, 'kPa')} is a pressure of direct injection; this sheet is for port injection, up to ${limit}. Stop: never open or gauge the high-pressure side, a jet goes through the skin. Read it from live data only. If this is port injection, check the unit.`;
  return { input, code: 'direct-injection-pressure', message };
}

/** A pressure in kPa as inches of mercury. */
export function inchesOfMercury(kilopascals: number): number {
  const converted = convert(kilopascals, 'kPa', 'inHg');
  return converted.ok ? converted.value : Number.NaN;
}
