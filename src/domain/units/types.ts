/** What kind of thing a number measures. Values convert only inside one dimension. */
export type Dimension =
  | 'resistance'
  | 'resistance-per-length'
  | 'voltage'
  | 'current'
  | 'inductance'
  | 'capacitance'
  | 'time'
  | 'angle'
  | 'road-speed'
  | 'rotation'
  | 'frequency'
  | 'pressure'
  | 'pressure-rate'
  | 'temperature'
  | 'temperature-difference'
  | 'length'
  | 'area'
  | 'volume'
  | 'volume-flow'
  | 'mass'
  | 'mass-flow'
  | 'density'
  | 'force'
  | 'torque'
  | 'energy'
  | 'power'
  | 'ratio'
  | 'count'
  | 'misfire-rate'
  | 'wear-rate';

/** The short ASCII name of a unit, as authors and the command line write it: `ohm`, `kohm`, `C`, `psi`, `N m`. */
export type UnitId = string;

/**
 * One row of the unit table. A value in this unit is `(value + offset) * factor` in the base unit of its dimension
 * (offset is zero for all but the temperature scales).
 */
export interface Unit {
  readonly id: UnitId;
  /** What people read: `Ω`, `kΩ`, `°C`. */
  readonly symbol: string;
  /** The unit said in full, for screen readers: `kilohm`. */
  readonly name: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset: number;
  /** Other ways people type it; matched without regard to case unless two units differ by case alone. */
  readonly aliases: readonly string[];
  /** Where the factor comes from: an id in `content/sources`. */
  readonly source: string;
}

/** What a person typed, understood. `resolution` is one step of the last digit typed, in the same unit as `value`. */
export interface TypedValue {
  readonly kind: 'value';
  /** In the unit that was asked for. */
  readonly value: number;
  /** One count of the last digit typed, in the unit that was asked for. `0.62` ohm gives 0.01. */
  readonly resolution: number;
  /** The unit asked for. */
  readonly unit: UnitId;
  /** The unit that was typed, or the one asked for where none was. */
  readonly typedUnit: UnitId;
}

/** The meter showed an open circuit (`OL`, `O.L`, `open`, `∞`). */
export interface OpenCircuit {
  readonly kind: 'open';
}

export type ParsedText = TypedValue | OpenCircuit;

export type InputTextCode =
  | 'missing'
  | 'not-a-number'
  | 'ambiguous'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'wrong-pressure'
  | 'open-not-accepted';
