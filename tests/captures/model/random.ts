/** Random numbers that a seed repeats. */
export interface Draw {
  /** Evenly spread from low to high. */
  between(low: number, high: number): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
  whole(low: number, high: number): number;
  pick<Item>(items: readonly Item[]): Item;
}

/** Mulberry32 (a public-domain generator, recalled) with the Box-Muller transform. */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return {
    between,
    whole,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
    pick: (items) => items[whole(0, items.length - 1)] as (typeof items)[number],
  };
}

/** How often an interval held the truth, and how far values lay off it. */
export class Tally {
  readonly errors: number[] = [];
  held = 0;
  add(truth: number, figure: { readonly value: number; readonly halfWidth95: number }, scale = 1): void {
    if (!Number.isFinite(figure.value) || !Number.isFinite(figure.halfWidth95)) throw new Error(`Not a finite figure: ${figure.value} ± ${figure.halfWidth95}`);
    this.errors.push((figure.value - truth) / scale);
    if (Math.abs(figure.value - truth) <= figure.halfWidth95) this.held += 1;
  }
  get coverage(): number {
    return this.held / this.errors.length;
  }
  get largest(): number {
    return Math.max(...this.errors.map(Math.abs));
  }
  /** Error that 95 of 100 cases stay under. */
  get usual(): number {
    const sizes = this.errors.map(Math.abs).sort((one, other) => one - other);
    return sizes[Math.floor(0.95 * sizes.length)] ?? Number.NaN;
  }
  get mean(): number {
    return this.errors.reduce((sum, error) => sum + error, 0) / this.errors.length;
  }
}
