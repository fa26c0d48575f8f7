import type { Refusal } from '../result.ts';
import { formatNumber, formatValue, shortestDecimals } from '../units/format.ts';
import { unitById } from '../units/table.ts';
import type { Limits, Reading } from './types.ts';

/** Finite numbers so large that the arithmetic runs over. */
export const overflow: Refusal = {
  input: 'reading',
  code: 'not-finite',
  message: 'The reading is too large to work with. Type it as a number such as 0.62, with its unit.',
};

/** Copper's straight line ends at −234 °C, where it would have no resistance left. */
const COLDEST = -230;

/** Why these limits cannot be judged against, or nothing. */
export function problemWithLimits(limits: Limits): Refusal | undefined {
  const { low, high, variation, referenceTemperature } = limits;
  if (low === undefined && high === undefined) {
    return { input: 'low', code: 'missing', message: 'No limit is given. Give the lowest value, the highest, or both.' };
  }
  const problem = notFinite([['low', 'The low limit', low], ['high', 'The high limit', high]]);
  if (problem) return problem;
  if (low !== undefined && high !== undefined && low > high) {
    const found = `The low limit, ${formatNumber(low)}, is above the high limit, ${formatNumber(high)}.`;
    return { input: 'low', code: 'limits-crossed', message: `${found} Exchange the two.` };
  }
  if (variation !== 'copper') return undefined;
  return problemWithTemperature('referenceTemperature', 'The temperature the limits hold at', referenceTemperature);
}

/** Why this reading cannot be judged, or nothing. Temperatures count only where the value moves with them. */
export function problemWithReading(reading: Reading, limits: Limits): Refusal | undefined {
  const { value, leads, meter } = reading;
  if (value === 'open') return undefined;
  return (
    notFinite([['reading', 'The reading', value]]) ??
    notNegative([
      ['leadResistance', 'The resistance of the leads', leads],
      ['meterPercent', "The meter's percent of reading", meter.percent],
      ['meterCounts', "The meter's counts", meter.counts],
      ['meterResolution', 'The size of one count', meter.resolution ?? reading.resolution],
    ]) ??
    (limits.variation === 'copper' ? problemWithPartTemperature(reading) : undefined) ??
    problemWithLeads(value, leads, limits)
  );
}

function problemWithPartTemperature(reading: Reading): Refusal | undefined {
  return (
    problemWithTemperature('readingTemperature', 'The temperature of the part', reading.temperature) ??
    notNegative([['temperatureUncertainty', 'How far off the temperature may be', reading.temperatureTolerance]])
  );
}

/** A resistance below nothing means leads that were measured wrong, never a good coil. */
function problemWithLeads(value: number, leads: number, limits: Limits): Refusal | undefined {
  const isResistance = unitById(limits.unit)?.dimension === 'resistance';
  if (value >= leads || (leads === 0 && !isResistance)) return undefined;
  if (leads === 0) {
    const found = `The reading, ${formatNumber(value)}, is less than nothing.`;
    return { input: 'reading', code: 'negative-resistance', message: `${found} A resistance is 0 or more: zero the meter and read again.` };
  }
  const found = `The reading, ${shown(value, limits)}, is less than its leads, ${shown(leads, limits)}.`;
  return { input: 'reading', code: 'less-than-leads', message: `${found} Touch the leads together, note them again, and read again.` };
}

function shown(value: number, limits: Limits): string {
  return formatValue(value, limits.unit, { decimals: shortestDecimals(value) });
}

type Named = readonly [input: string, label: string, value: number | undefined];

function notFinite(named: readonly Named[]): Refusal | undefined {
  const found = named.find(([, , value]) => value !== undefined && !Number.isFinite(value));
  return found && { input: found[0], code: 'not-finite', message: `${found[1]} is not a finite number. Type it as a number such as 0.62.` };
}

function notNegative(named: readonly Named[]): Refusal | undefined {
  const found = named.find(([, , value]) => value !== undefined && value < 0);
  const negative = found && {
    input: found[0],
    code: 'negative',
    message: `${found[1]} is ${formatNumber(found[2] ?? 0)}. Type 0 or more.`,
  };
  return notFinite(named) ?? negative;
}

function problemWithTemperature(input: string, label: string, temperature: number | undefined): Refusal | undefined {
  if (temperature === undefined) {
    return { input, code: 'missing', message: `${label} is not given. Copper's resistance moves with it: give it in °C.` };
  }
  if (!Number.isFinite(temperature)) return notFinite([[input, label, temperature]]);
  if (temperature >= COLDEST) return undefined;
  return { input, code: 'out-of-range', message: `${label} is ${formatNumber(temperature)} °C. Type one from ${formatNumber(COLDEST)} °C up.` };
}
