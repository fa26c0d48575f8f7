import { seaLevelPressure } from '../../atmosphere.ts';
import { ZERO_CELSIUS } from '../../constants.ts';

/** Air at the gap when the spark is called for. */
export interface Air {
  /** Absolute, kPa. */
  readonly pressure: number;
  /** Kelvin. */
  readonly temperature: number;
}

/** The formula below is written for air at 293 K. */
const standardTemperature = 293;
const millimetresPerCentimetre = 10;

/** Coefficients of the uniform-field formula, kV/cm and kV/√cm (Naidu and Kamaraju, High Voltage Engineering, chapter 2). */
const perCentimetre = 24.22;
const perRootCentimetre = 6.08;

/**
 * Intake air squeezed to top dead centre: p·rⁿ and T·rⁿ⁻¹. A ratio of 1 leaves it as it is.
 * @param intakePressure absolute, kPa
 * @param intakeTemperature °C
 */
export function squeeze(
  intakePressure: number,
  intakeTemperature: number,
  compressionRatio: number,
  polytropicIndex: number,
): Air {
  return {
    pressure: intakePressure * compressionRatio ** polytropicIndex,
    temperature: (intakeTemperature + ZERO_CELSIUS) * compressionRatio ** (polytropicIndex - 1),
  };
}

function relativeDensity(air: Air): number {
  return (air.pressure / seaLevelPressure) * (standardTemperature / air.temperature);
}

/** The gap in open air, cm, that would be as hard to jump as this one, mm. */
export function relativeDensityGap(gap: number, air: Air): number {
  return (gap / millimetresPerCentimetre) * relativeDensity(air);
}

/** Breakdown voltage of a uniform field in air, kV, for a relative-density gap in cm. */
export function breakdownVoltage(densityGap: number): number {
  return perCentimetre * densityGap + perRootCentimetre * Math.sqrt(densityGap);
}

/** The gap, mm, that a voltage, kV, can just jump: the same formula solved for the gap. */
export function largestGap(available: number, air: Air): number {
  const root =
    (Math.sqrt(perRootCentimetre ** 2 + 4 * perCentimetre * available) - perRootCentimetre) / (2 * perCentimetre);
  return (root ** 2 / relativeDensity(air)) * millimetresPerCentimetre;
}
