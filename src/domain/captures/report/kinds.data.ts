import type { QuantityId } from '../columns/quantities.data.ts';
import type { CaptureKind } from './types.ts';

export interface KindOfCapture {
  readonly label: string;
  /** Quantities it is made of; the first is the trace itself. */
  readonly quantities: readonly QuantityId[];
  readonly asks: readonly Question[];
  readonly proves: string;
  readonly doesNotProve: string;
  /** Ids in the book: the first procedure tells how to take the capture. */
  readonly procedures: readonly string[];
  readonly ranges: readonly string[];
  readonly cautions: readonly string[];
}

export type Question = 'engine' | 'marked' | 'supply' | 'clamp' | 'side' | 'top' | 'displacement' | 'stored';

/** What a capture of each kind is, asks and shows. What it proves is common practice, no source. */
export const kindsOfCapture: Readonly<Record<CaptureKind, KindOfCapture>> = {
  logged: {
    label: 'Logged table',
    quantities: ['engine-speed', 'load', 'short-trim', 'long-trim', 'air-flow', 'manifold-pressure', 'misfire-count', 'coolant-temperature', 'lamp'],
    asks: ['displacement', 'stored'],
    proves: 'It shows what the control unit believed, row by row: where the trims stood, when the counters rose, and under which conditions.',
    doesNotProve: 'It does not show why. A trim names no part, and a counter may give a misfire to a neighbour in the firing order.',
    procedures: ['fuel-trims', 'misfire-counters', 'air-meter-plausibility', 'proof-drive'],
    ranges: ['fuel-trim-total-idle', 'fuel-trim-total-cruise'],
    cautions: ['road-test-second-person', 'carbon-monoxide'],
  },
  'coil-current': {
    label: 'Coil current',
    quantities: ['coil-current', 'trigger'],
    asks: ['engine', 'marked', 'supply', 'clamp'],
    proves: 'It shows how each coil charges: supply, winding, wiring and switch of the primary side together, at the warmth of the record.',
    doesNotProve: 'It says nothing of the secondary side: a coil with broken insulation, a leaking boot or a worn plug charges like a sound one.',
    procedures: ['coil-current-ramp', 'coil-primary-resistance', 'coil-supply-volt-drop'],
    ranges: ['peak-coil-current', 'dwell-time'],
    cautions: ['high-tension', 'moving-parts', 'carbon-monoxide'],
  },
  'ignition-voltage': {
    label: 'Primary or secondary voltage',
    quantities: ['ignition-voltage', 'trigger'],
    asks: ['engine', 'marked', 'side'],
    proves: 'It shows what each gap asked for and how long the spark burned, at the load of the record.',
    doesNotProve: 'It does not show what the coil could give at most, nor the same gap under full load. A pick-up without a known scale compares cylinders only.',
    procedures: ['secondary-voltage-trace', 'primary-voltage-trace'],
    ranges: ['firing-voltage-idle', 'burn-voltage', 'burn-time'],
    cautions: ['high-tension', 'moving-parts', 'carbon-monoxide'],
  },
  'starter-current': {
    label: 'Starter current',
    quantities: ['starter-current', 'trigger'],
    asks: ['engine', 'marked'],
    proves: 'It shows which cylinder takes less effort to turn over compression than its fellows.',
    doesNotProve: 'It gives no pressure, does not say where it goes, and all cylinders low alike look the same as all good.',
    procedures: ['relative-compression', 'compression-dry', 'leak-down'],
    ranges: ['compression-below-mean'],
    cautions: ['moving-parts', 'battery', 'fuel-vapour'],
  },
  'crank-sensor': {
    label: 'Crank sensor',
    quantities: ['crank-sensor', 'trigger'],
    asks: ['engine', 'marked', 'top'],
    proves: 'It shows the teeth of the wheel and what each cylinder adds to the speed of the crank.',
    doesNotProve: 'It does not say why a cylinder adds less: spark, fuel and compression look alike here.',
    procedures: ['crank-sensor', 'cylinder-balance'],
    ranges: ['variable-reluctance-sensor-output-running', 'variable-reluctance-sensor-resistance'],
    cautions: ['high-tension', 'moving-parts'],
  },
  injector: {
    label: 'Injector',
    quantities: ['injector-current', 'injector-voltage', 'trigger'],
    asks: ['engine', 'marked', 'clamp'],
    proves: 'It shows how long each injector is driven, and of a current also whether its valve moves and when it meets its stop.',
    doesNotProve: 'It does not show how much fuel comes out: a clogged nozzle moves like a clean one. Injectors with a held or stepped current are not read here.',
    procedures: ['injector-current-trace', 'injector-resistance', 'injector-balance'],
    ranges: ['injector-resistance-high'],
    cautions: ['direct-injection-pressure', 'high-tension', 'moving-parts'],
  },
};
