import type { InputDefinition, OutputDefinition } from '../definition.ts';

function positive(name: string, label: string, dimension: 'pressure' | 'volume-flow' | 'time' | 'rotation', unit: string, maximum?: number): InputDefinition {
  return { name, label, kind: 'quantity', dimension, unit, optional: true, minimum: 0, exclusiveMinimum: true, ...(maximum === undefined ? {} : { maximum }) };
}

export const inputs: readonly InputDefinition[] = [
  { ...positive('ratedFlow', 'Rated flow, held open', 'volume-flow', 'ml/min', 10_000), hint: 'From the data sheet or the flow bench.' },
  { ...positive('ratedPressure', 'Pressure across it at the rating', 'pressure', 'kPa'), hint: 'Usually 300. Across the injector, as on the bench.' },
  { ...positive('pressure', 'Pressure across it now', 'pressure', 'kPa'), hint: 'Rail on the gauge, plus barometer, less manifold pressure absolute.' },
  { ...positive('pulseWidth', 'Pulse width', 'time', 'ms', 1000), hint: 'From live data or a scope.' },
  { ...positive('speed', 'Engine speed', 'rotation', 'rpm', 20_000) },
  {
    name: 'pulsesPerCycle',
    label: 'Pulses in two revolutions',
    kind: 'quantity',
    dimension: 'count',
    unit: 'count',
    optional: true,
    default: '1',
    minimum: 1,
    maximum: 8,
    wholeNumber: true,
    hint: '1 when fired in sequence; 2 when all fire on every revolution.',
    advanced: true,
  },
];

export const outputs: readonly OutputDefinition[] = [
  { name: 'flow', label: 'Flow now, held open', kind: 'quantity', unit: 'ml/min', decimals: 1, main: true },
  { name: 'dutyCycle', label: 'Duty cycle', kind: 'quantity', unit: '%', decimals: 1 },
  { name: 'longestPulse', label: 'Longest pulse there is time for', kind: 'quantity', unit: 'ms', decimals: 2 },
];
