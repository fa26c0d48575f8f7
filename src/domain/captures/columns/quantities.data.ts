import type { Dimension, UnitId } from '../../units/types.ts';

/** What a column may hold. Those with a number carry it in `index`: bank, or cylinder. */
export type QuantityId =
  | 'engine-speed'
  | 'load'
  | 'short-trim'
  | 'long-trim'
  | 'air-flow'
  | 'manifold-pressure'
  | 'barometric-pressure'
  | 'coolant-temperature'
  | 'intake-air-temperature'
  | 'lambda'
  | 'oxygen-sensor'
  | 'throttle'
  | 'road-speed'
  | 'battery-voltage'
  | 'misfire-count'
  | 'lamp'
  | 'coil-current'
  | 'ignition-voltage'
  | 'starter-current'
  | 'crank-sensor'
  | 'injector-current'
  | 'injector-voltage'
  | 'trigger';

export interface CapturedQuantity {
  readonly id: QuantityId;
  /** As a mechanic would say it. */
  readonly label: string;
  readonly dimension: Dimension;
  /** Unit all reckoning is done in. */
  readonly unit: UnitId;
  /** Sets of words of the trade: all of one set must stand in the heading. */
  readonly words: readonly (readonly string[])[];
  /** Any of these in the heading speaks against it. */
  readonly not?: readonly string[];
  /** The number it takes from the heading. */
  readonly index?: 'bank' | 'cylinder';
  /** A unit that no other quantity of this list is written in. */
  readonly unitTells?: boolean;
}

/** Words that turn a reading into an order or a limit. */
const wanted = ['desired', 'target', 'requested', 'commanded', 'limit', 'max', 'min', 'setpoint'];

export const quantities: readonly CapturedQuantity[] = [
  { id: 'engine-speed', label: 'Engine speed', dimension: 'rotation', unit: 'rpm', words: [['engine', 'speed'], ['rpm'], ['revs'], ['crank', 'speed'], ['crankshaft', 'speed'], ['engine', 'revolutions']], not: [...wanted, 'idle', 'turbine', 'output', 'input', 'wheel', 'fan'], unitTells: true },
  { id: 'load', label: 'Calculated load', dimension: 'ratio', unit: '%', words: [['load'], ['calculated', 'load'], ['engine', 'load']], not: [...wanted, 'absolute', 'generator', 'alternator'] },
  { id: 'short-trim', label: 'Short fuel trim', dimension: 'ratio', unit: '%', words: [['short', 'trim'], ['stft'], ['shrtft']], index: 'bank', not: ['long', 'secondary'] },
  { id: 'long-trim', label: 'Long fuel trim', dimension: 'ratio', unit: '%', words: [['long', 'trim'], ['ltft'], ['longft']], index: 'bank', not: ['short', 'secondary'] },
  { id: 'air-flow', label: 'Air flow', dimension: 'mass-flow', unit: 'g/s', words: [['air', 'flow'], ['airflow'], ['maf'], ['air', 'mass'], ['mass', 'flow']], not: wanted, unitTells: true },
  { id: 'manifold-pressure', label: 'Manifold pressure', dimension: 'pressure', unit: 'kPa', words: [['manifold', 'pressure'], ['map'], ['manifold', 'absolute'], ['intake', 'pressure']], not: [...wanted, 'barometric', 'fuel', 'temperature'] },
  { id: 'barometric-pressure', label: 'Barometric pressure', dimension: 'pressure', unit: 'kPa', words: [['barometric'], ['barometer'], ['baro'], ['ambient', 'pressure'], ['atmospheric', 'pressure']] },
  { id: 'coolant-temperature', label: 'Coolant temperature', dimension: 'temperature', unit: 'C', words: [['coolant'], ['ect'], ['water', 'temperature'], ['engine', 'temperature']], not: [...wanted, 'oil', 'level', 'fan'] },
  { id: 'intake-air-temperature', label: 'Intake air temperature', dimension: 'temperature', unit: 'C', words: [['intake', 'temperature'], ['intake', 'air', 'temp'], ['air', 'temperature'], ['iat']], not: ['ambient', 'coolant'] },
  { id: 'lambda', label: 'Lambda', dimension: 'ratio', unit: '1', words: [['lambda'], ['equivalence'], ['air', 'fuel', 'ratio']], not: [...wanted, 'voltage', 'heater', 'current'] },
  { id: 'oxygen-sensor', label: 'Lambda sensor voltage', dimension: 'voltage', unit: 'V', words: [['oxygen', 'sensor'], ['o2', 'sensor'], ['o2'], ['lambda', 'voltage'], ['lambda', 'sensor']], index: 'bank', not: ['heater', 'trim', 'current'] },
  { id: 'throttle', label: 'Throttle', dimension: 'ratio', unit: '%', words: [['throttle'], ['tps'], ['throttle', 'position']], not: wanted },
  { id: 'road-speed', label: 'Road speed', dimension: 'road-speed', unit: 'km/h', words: [['road', 'speed'], ['vehicle', 'speed'], ['vss'], ['speed']], not: [...wanted, 'engine', 'crank', 'wheel', 'fan', 'turbine'] },
  { id: 'battery-voltage', label: 'Battery voltage', dimension: 'voltage', unit: 'V', words: [['battery'], ['system', 'voltage'], ['module', 'voltage'], ['supply', 'voltage']], not: ['current', 'temperature'] },
  { id: 'misfire-count', label: 'Misfires', dimension: 'count', unit: 'count', words: [['misfire'], ['misfires'], ['misfire', 'count'], ['misfire', 'counter'], ['missfire']], index: 'cylinder', not: ['threshold', 'monitor', 'enabled'] },
  { id: 'lamp', label: 'Engine lamp', dimension: 'count', unit: 'count', words: [['lamp'], ['mil'], ['engine', 'light'], ['malfunction', 'indicator']], not: ['distance', 'time'] },
  { id: 'coil-current', label: 'Coil current', dimension: 'current', unit: 'A', words: [['coil', 'current'], ['primary', 'current'], ['ignition', 'current'], ['coil', 'clamp'], ['coil']], index: 'cylinder', not: ['secondary', 'voltage'] },
  { id: 'ignition-voltage', label: 'Ignition voltage', dimension: 'voltage', unit: 'V', words: [['secondary'], ['primary', 'voltage'], ['secondary', 'voltage'], ['ignition', 'voltage'], ['kv']], index: 'cylinder', not: ['current', 'battery', 'trim'] },
  { id: 'starter-current', label: 'Starter current', dimension: 'current', unit: 'A', words: [['starter'], ['starter', 'current'], ['cranking', 'current'], ['battery', 'current']], not: ['voltage'] },
  { id: 'crank-sensor', label: 'Crank sensor', dimension: 'voltage', unit: 'V', words: [['crank'], ['crank', 'sensor'], ['crankshaft'], ['ckp'], ['crankshaft', 'position']], not: ['speed', 'current'] },
  { id: 'injector-current', label: 'Injector current', dimension: 'current', unit: 'A', words: [['injector', 'current'], ['injector']], index: 'cylinder', not: ['voltage', 'pulse', 'duty'] },
  { id: 'injector-voltage', label: 'Injector voltage', dimension: 'voltage', unit: 'V', words: [['injector', 'voltage'], ['injector']], index: 'cylinder', not: ['current', 'pulse', 'duty'] },
  { id: 'trigger', label: 'Trigger', dimension: 'voltage', unit: 'V', words: [['trigger'], ['sync'], ['synchronisation'], ['cam', 'sensor'], ['cam'], ['reference']], index: 'cylinder', not: ['current'] },
];
