/** A switched injector as it is. V, Ω, mH, ms. */
export interface InjectorTruth {
  readonly voltage: number;
  readonly resistance: number;
  readonly inductance: number;
  readonly width: number;
  /** The pintle begins to move, and meets its stop. */
  readonly moves: number;
  readonly stops: number;
  /** Voltage the motion drives against the current when the pintle meets its stop, V. */
  readonly motion: number;
}

/**
 * Current at steps of 1 µs: L·dI/dt = V − R·I − E(t), with E rising as the square of the way from the first motion to the stop, and
 * nothing after it. Solved step by step (Heun's method), which owes nothing to the closed form under test.
 */
export function injectorCurrents(truth: InjectorTruth): Float64Array {
  const step = 0.001;
  const currents = new Float64Array(Math.ceil(truth.width / step) + 1);
  const motion = (time: number) => (time < truth.moves || time >= truth.stops ? 0 : truth.motion * ((time - truth.moves) / (truth.stops - truth.moves)) ** 2);
  const slope = (time: number, current: number) => (truth.voltage - truth.resistance * current - motion(time)) / truth.inductance;
  for (let place = 1; place < currents.length; place += 1) {
    const [time, current] = [(place - 1) * step, currents[place - 1] ?? 0];
    const first = slope(time, current);
    currents[place] = current + (step * (first + slope(time + step - 1e-9, current + step * first))) / 2;
  }
  return currents;
}

export function injectorCurrentOf(currents: Float64Array, width: number, time: number): number {
  if (time < 0) return 0;
  if (time <= width) {
    const place = Math.min(currents.length - 2, Math.floor(time * 1000));
    const share = time * 1000 - place;
    return (currents[place] ?? 0) * (1 - share) + (currents[place + 1] ?? 0) * share;
  }
  const last = currents.at(-1) ?? 0;
  return last * Math.max(0, 1 - (time - width) / 0.03);
}
