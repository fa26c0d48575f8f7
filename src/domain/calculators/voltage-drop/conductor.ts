import { COPPER_INFERRED_ZERO, COPPER_RESISTIVITY } from '../../constants.ts';
import { flexibleConductors } from './conductors.data.ts';

/** Gauge 36 is 0.127 mm thick, and 39 steps up gauge 0000 is 92 times that. ASTM B258. */
const gauge36 = 0.127;
const gaugeSteps = 39;
const gaugeSpan = 92;

const ohmPerKilometre = 1e-3;

/** Diameter of a solid wire of an American gauge, mm: 0.127 × 92^((36 − n)/39). Gauges 00, 000 and 0000 are −1, −2 and −3. */
export function gaugeDiameter(gauge: number): number {
  return gauge36 * gaugeSpan ** ((36 - gauge) / gaugeSteps);
}

/** mm². */
export function gaugeArea(gauge: number): number {
  return (Math.PI / 4) * gaugeDiameter(gauge) ** 2;
}

/** Ω/m at 20 °C that the standard allows a listed size, mm², at most; nothing for a size it does not list. */
export function listedResistance(area: number): number | undefined {
  const row = flexibleConductors.find(([listed]) => Math.abs(listed - area) < 1e-9);
  return row === undefined ? undefined : row[1] * ohmPerKilometre;
}

/** Ω/m at 20 °C of a solid copper conductor of this area, mm². */
export function copperResistance(area: number): number {
  return COPPER_RESISTIVITY / area;
}

/** Copper, mm², that loses no more than `allowed` volts at 20 °C, for amperes times metres of wire. */
export function copperNeeded(ampereMetres: number, allowed: number): number {
  return (COPPER_RESISTIVITY * ampereMetres) / allowed;
}

/** The smallest listed size, mm², of at least this area; nothing beyond the list. */
export function nextListedSize(area: number): number | undefined {
  return flexibleConductors.find(([listed]) => listed >= area * (1 - 1e-12))?.[0];
}

/** The smallest listed size, mm², whose highest resistance is no more than this, Ω/m at 20 °C. */
export function sureListedSize(resistance: number): number | undefined {
  return flexibleConductors.find(([, highest]) => highest * ohmPerKilometre <= resistance * (1 + 1e-12))?.[0];
}

const conductorReference = 20;

/** Resistance of a copper conductor at this temperature, °C, over that at 20 °C: (234.5 + t)/254.5, the correction of IEC 60228. */
export function conductorFactor(temperature: number): number {
  return (COPPER_INFERRED_ZERO + temperature) / (COPPER_INFERRED_ZERO + conductorReference);
}
