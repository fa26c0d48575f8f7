import type { Draw } from './random.ts';

/** A coil and its driver as they are. V, Ω, mH, ms, A. */
export interface CoilTruth {
  readonly voltage: number;
  readonly resistance: number;
  readonly inductance: number;
  readonly dwell: number;
  /** The driver holds the current here. */
  readonly limit?: number;
  /** From here on the core is full and the inductance is a third. */
  readonly saturation?: number;
  /** Part of the final current that flows at once, as shorted turns let it. */
  readonly jump?: number;
}

/**
 * Current so long after switching on: the solution of L·dI/dt = V − R·I, piece by piece (OpenStax, University Physics Volume 2,
 * section 14.4). Written with the time constant and the final current, unlike the code under test.
 */
export function currentOf(coil: CoilTruth, time: number): number {
  if (time < 0 || time > coil.dwell) return 0;
  const final = coil.voltage / coil.resistance;
  const constant = coil.inductance / coil.resistance;
  const plain = final * (1 - Math.exp(-time / constant)) + (coil.jump ?? 0) * final;
  if (coil.limit !== undefined) return Math.min(plain, coil.limit);
  if (coil.saturation !== undefined && plain > coil.saturation) {
    const kneeTime = kneeTimeOf(coil, coil.saturation);
    return final - (final - coil.saturation) * Math.exp((-3 * (time - kneeTime)) / constant);
  }
  return plain;
}

export function kneeTimeOf({ voltage, resistance, inductance }: CoilTruth, current: number): number {
  return (-inductance / resistance) * Math.log(1 - (current * resistance) / voltage);
}

export interface Scope {
  /** ms between samples. */
  readonly interval: number;
  readonly noise: number;
  /** Height of one step of the converter. */
  readonly step: number;
  readonly offset: number;
  /** Highest value that can be shown. */
  readonly ceiling?: number;
  /** Chance that a sample is lost. */
  readonly lost?: number;
}

/** The signal as a scope writes it: noise, offset, steps, ceiling and lost samples. Signal takes ms, the trace is in seconds. */
export function record(signal: (time: number) => number, length: number, scope: Scope, draw: Draw) {
  const count = Math.floor(length / scope.interval);
  const times = new Float64Array(count);
  const values = new Float64Array(count);
  const phase = draw.between(0, 1);
  for (let place = 0; place < count; place += 1) {
    const time = (place + phase) * scope.interval;
    times[place] = time / 1000;
    const value = signal(time) + scope.offset + scope.noise * draw.normal();
    const stepped = scope.step > 0 ? Math.round(value / scope.step) * scope.step : value;
    const shown = Math.min(stepped, scope.ceiling ?? Infinity);
    values[place] = draw.between(0, 1) < (scope.lost ?? 0) ? Number.NaN : shown;
  }
  return { times, values };
}

/** Charges one after the other, each beginning at its time; a fall of 8 µs after switching off. */
export function chargesOf(charges: readonly { readonly at: number; readonly coil: CoilTruth }[]) {
  const fall = 0.008;
  return (time: number): number => {
    // Charges are sorted; the last one begun is the one that flows.
    let [low, high] = [0, charges.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((charges[middle]?.at ?? 0) <= time) low = middle + 1;
      else high = middle;
    }
    const charge = charges[low - 1];
    if (charge === undefined) return 0;
    const since = time - charge.at;
    if (since <= charge.coil.dwell) return currentOf(charge.coil, since);
    return currentOf(charge.coil, charge.coil.dwell) * Math.max(0, 1 - (since - charge.coil.dwell) / fall);
  };
}
