import type { TemperatureVariation } from './types.ts';

/** Change of copper's resistance for each kelvin, as a part of its resistance at 20 °C, 1/K. IEC 60028, standard annealed copper. */
export const COPPER_COEFFICIENT = 0.00393;

/** The temperature the coefficient holds at, °C. */
const COEFFICIENT_TEMPERATURE = 20;

/**
 * Resistance at `temperature` (°C) over resistance at 20 °C: 1 + α(t − 20).
 * Above zero from −234.4 °C up; below that the law does not hold.
 */
export function copperFactor(temperature: number): number {
  return 1 + COPPER_COEFFICIENT * (temperature - COEFFICIENT_TEMPERATURE);
}

/**
 * What a value read at `from` (°C) would be at `to` (°C): R·(1 + α(to − 20)) / (1 + α(from − 20)) for copper, unchanged otherwise.
 * Both temperatures must lie above −234 °C; `judge` refuses others.
 */
export function referToTemperature(value: number, from: number, to: number, variation: TemperatureVariation): number {
  return variation === 'copper' ? (value * copperFactor(to)) / copperFactor(from) : value;
}
