/** Which plugs one coil serves: it decides how often the coil fires. */
export type Arrangement = 'coil-per-plug' | 'wasted-spark' | 'distributor';

/** Degrees that the crank turns in one millisecond at 1 rpm: 360 / 60 000. */
const degreesPerMillisecond = 0.006;

/** Crank angle, degrees, of a time in ms at a speed in rpm. */
export function angleOf(time: number, speed: number): number {
  return degreesPerMillisecond * speed * time;
}

/** Time, ms, of a crank angle in degrees at a speed in rpm above zero. */
export function timeOf(angle: number, speed: number): number {
  return angle / (degreesPerMillisecond * speed);
}

/** Two turns of the crank, ms: in them every cylinder of a four-stroke engine fires once. */
export function cyclePeriod(speed: number): number {
  return 120_000 / speed;
}

/** From one ignition of the engine to the next, ms, even firing. */
export function eventSpacing(speed: number, cylinders: number): number {
  return 120_000 / (speed * cylinders);
}

/** Ignitions of the engine per second. */
export function eventRate(speed: number, cylinders: number): number {
  return (speed * cylinders) / 120;
}

/** From one firing of a coil to its next, ms. A coil for two plugs fires every turn. */
export function coilPeriod(arrangement: Arrangement, speed: number, cylinders: number): number {
  if (arrangement === 'distributor') return eventSpacing(speed, cylinders);
  return arrangement === 'wasted-spark' ? cyclePeriod(speed) / 2 : cyclePeriod(speed);
}
