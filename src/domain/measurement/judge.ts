import { failure, success } from '../result.ts';
import type { Refusal, Result } from '../result.ts';
import { normalCumulative } from './normal.ts';
import { overflow, problemWithLimits, problemWithReading } from './problems.ts';
import { COPPER_COEFFICIENT, copperFactor, referToTemperature } from './temperature.ts';
import type { Judgement, Limits, Meter, Reading, VerdictWord } from './types.ts';

/** An outcome is taken as certain from this chance on (JCGM 106: an agreed conformance probability). */
export const SURE = 0.95;
/** … and as ruled out up to this one. */
export const RULED_OUT = 0.05;

type Contribution = Judgement['contributions'][number];

/**
 * Judges a reading against its limits.
 *
 * The leads are taken off and the rest is referred to the temperature of the limits. Meter, leads and temperature are each taken
 * as evenly spread over their ± half width, with standard uncertainty a/√3 (JCGM 100, 4.3.7), and combined as independent.
 * The chances come from the normal distribution (JCGM 106, clause 7): `inside` from 0.95 up, `below` or `above` when the chance of
 * inside is 0.05 or less, otherwise too close to call. With no uncertainty at all the limits themselves count as inside.
 * An open circuit is above any high limit.
 *
 * Refuses numbers that are not finite or make no sense, limits without an end or crossed, copper without a reference temperature,
 * a temperature below −230 °C, and a resistance that is less than nothing once the leads are off.
 */
export function judge(reading: Reading, limits: Limits): Result<Judgement, Refusal> {
  const problem = problemWithLimits(limits) ?? problemWithReading(reading, limits);
  if (problem) return failure(problem);
  if (reading.value === 'open') return success(openJudgement(limits));
  const net = reading.value - reading.leads;
  const reference = limits.referenceTemperature ?? reading.temperature;
  const corrected = referToTemperature(net, reading.temperature, reference, limits.variation);
  const contributions = contributionsTo(reading, reading.value, corrected, limits);
  const standardUncertainty = Math.hypot(...contributions.map((part) => part.standardUncertainty));
  if (!Number.isFinite(corrected) || !Number.isFinite(standardUncertainty)) return failure(overflow);
  return success(judgementOf(corrected, standardUncertainty, contributions, limits));
}

/** Half the width of what the meter may be off by: percent of the reading and counts of its last digit, in the unit of the reading. */
export function meterHalfWidth(value: number, meter: Meter, resolution: number): number {
  return (Math.abs(value) * meter.percent) / 100 + meter.counts * (meter.resolution ?? resolution);
}

/** Standard uncertainty of a value evenly spread over ± `halfWidth` (JCGM 100, 4.3.7). */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Chances that a value known with this standard uncertainty lies below, inside and above the limits. Sum to 1. */
export function chances(
  value: number,
  standardUncertainty: number,
  limits: Pick<Limits, 'low' | 'high'>,
): { readonly below: number; readonly inside: number; readonly above: number } {
  const low = limits.low ?? -Infinity;
  const high = limits.high ?? Infinity;
  const below = chanceBeyond(low - value, standardUncertainty);
  const above = chanceBeyond(value - high, standardUncertainty);
  return { below, inside: Math.max(0, 1 - below - above), above };
}

/** Chance of lying past a limit that is `distance` away, counted positive when it is already passed. */
function chanceBeyond(distance: number, standardUncertainty: number): number {
  if (standardUncertainty === 0) return distance > 0 ? 1 : 0;
  return normalCumulative(distance / standardUncertainty);
}

function contributionsTo(reading: Reading, value: number, corrected: number, limits: Limits): readonly Contribution[] {
  const scale = limits.variation === 'copper' ? copperFactor(limits.referenceTemperature ?? 0) / copperFactor(reading.temperature) : 1;
  const ofMeter = rectangular(meterHalfWidth(value, reading.meter, reading.resolution)) * scale;
  const parts: Contribution[] = [{ from: 'meter', standardUncertainty: ofMeter }];
  if (reading.leads > 0) {
    const ofLeads = rectangular(meterHalfWidth(reading.leads, reading.meter, reading.resolution)) * scale;
    parts.push({ from: 'leads', standardUncertainty: ofLeads });
  }
  if (limits.variation === 'copper') {
    const perKelvin = Math.abs(corrected * COPPER_COEFFICIENT) / copperFactor(reading.temperature);
    parts.push({ from: 'temperature', standardUncertainty: rectangular(perKelvin * reading.temperatureTolerance) });
  }
  return parts.sort((one, other) => other.standardUncertainty - one.standardUncertainty);
}

function judgementOf(corrected: number, standardUncertainty: number, contributions: readonly Contribution[], limits: Limits): Judgement {
  const { below, inside, above } = chances(corrected, standardUncertainty, limits);
  return {
    corrected,
    standardUncertainty,
    expandedUncertainty: 2 * standardUncertainty,
    probabilityBelow: below,
    probabilityInside: inside,
    probabilityAbove: above,
    verdict: verdictFrom(below, inside, above),
    contributions,
  };
}

/** The verdict that three chances lead to. */
export function verdictFrom(below: number, inside: number, above: number): VerdictWord {
  if (inside >= SURE) return 'inside';
  if (inside > RULED_OUT) return 'too-close-to-call';
  return below > above ? 'below' : 'above';
}

function openJudgement(limits: Limits): Judgement {
  const above = limits.high === undefined ? 0 : 1;
  return {
    corrected: 'open',
    standardUncertainty: 0,
    expandedUncertainty: 0,
    probabilityBelow: 0,
    probabilityInside: 1 - above,
    probabilityAbove: above,
    verdict: above === 1 ? 'above' : 'inside',
    contributions: [],
  };
}
