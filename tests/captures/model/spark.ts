/** One firing as it is. kV and ms. */
export interface SparkTruth {
  readonly firing: number;
  /** How long the voltage takes to rise to breakdown. */
  readonly rise: number;
  /** At the start of the burn line. */
  readonly burn: number;
  /** kV per ms. */
  readonly slope: number;
  readonly burnTime: number;
  /** kHz. */
  readonly frequency: number;
  /** Full swings until a tenth of the height is left. */
  readonly swings: number;
  /** Sine part over cosine part of the swing: what current is left when the spark goes out. */
  readonly kick: number;
}

/**
 * Voltage so long after switching off, rest at zero: a rise like the first part of a sine, a sudden fall to the burn line that settles
 * with a time constant of 6 µs, a straight burn line, then the free swing of a damped second-order system (underdamped case of the
 * standard textbook solution, recalled), without a step at the join.
 */
export function voltageOf(spark: SparkTruth, since: number): number {
  if (since < 0) return 0;
  if (since < spark.rise) return spark.firing * Math.sin(((Math.PI / 3) * since) / spark.rise) / Math.sin(Math.PI / 3);
  const burning = since - spark.rise;
  if (burning < spark.burnTime) return spark.burn + spark.slope * burning + 0.15 * spark.firing * Math.exp(-burning / 0.006);
  const after = burning - spark.burnTime;
  const last = spark.burn + spark.slope * spark.burnTime;
  const angle = 2 * Math.PI * spark.frequency * after;
  const decay = Math.exp((-Math.LN10 * spark.frequency * after) / spark.swings);
  return decay * last * (Math.cos(angle) + spark.kick * Math.sin(angle));
}
