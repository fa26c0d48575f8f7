import type { CoilFinding } from './coil/compareCoils.ts';
import type { CrankReading } from './crank/contributions.ts';
import type { InjectorFinding } from './injector/compareInjectors.ts';
import type { AirFlowReading } from './logged/airFlow.ts';
import type { ProofRefusal } from './logged/proofDrive.ts';
import type { SparkFinding } from './spark/compareSparks.ts';
import type { CompressionFinding } from './starter/relativeCompression.ts';
import type { Confidence } from './columns/match.ts';

/*
 * What each finding says to the mechanic, apart from the reckoning. What a pattern points to is common practice, no source; the engine
 * maker's procedure comes first.
 */

export const coilWords: Readonly<Record<CoilFinding, string>> = {
  alike: 'Charges like its fellows. The primary side of this coil is cleared at this warmth.',
  'shorted-turns': 'The current climbs much faster than in the fellows, or jumps up at once, while the top stays what resistance allows: turns of the winding are shorted. Renew the coil, and look whether its driver was overloaded.',
  'added-resistance': 'It starts like its fellows but flattens early: there is resistance in this circuit, in a pin, a wire, the earth or the switch. Measure the voltage drop before a coil is renewed.',
  'low-supply': 'The climb is slower from the start with the bend unchanged: this coil gets less voltage than its fellows. Measure the supply at the coil while it charges.',
  'cut-short': 'It charges like its fellows but is switched off sooner. Look at the order to charge: trigger wire, control unit, or a limit that steps in.',
  different: 'It differs from its fellows in a way no single cause explains. Measure the winding and the supply.',
  'too-close-to-call': 'The difference is within what this trace can show. Record more charges, with a smaller range on the clamp.',
};

export const sparkWords: Readonly<Record<SparkFinding, string>> = {
  alike: 'Fires and burns like its fellows.',
  'no-spark-across': 'The voltage goes up and no burn line follows: no spark gets across. Look for an open lead or boot, or a gap far too wide. Do not run it so: the coil’s insulation bears the whole voltage.',
  'resistance-in-series': 'The burn line falls off steeply: something in series with the gap takes voltage. Measure lead, boot spring and plug resistor.',
  'wide-gap': 'A high firing line and a short burn time: the gap asks for much. Look at the plug gap first, then at compression and mixture.',
  'easy-way': 'A low firing line with a long burn line: the current finds an easy way. Look for a fouled or closed plug, a cracked insulator, a leaking boot, or low compression.',
  'lean-or-unsteady': 'Burn times vary from firing to firing and are short: the charge in the gap changes. Look at the mixture of this cylinder: injector, air leak, or unsteady filling.',
  'few-swings': 'Fewer swings than its fellows after the spark: energy is lost in the coil. Compare its current ramp and resistance.',
  different: 'It differs from its fellows in a way no single cause explains. Swap coil and plug one at a time and record again.',
  'too-close-to-call': 'The difference is within what this trace can show. Record more firings.',
  'nothing-to-compare': 'One is told by its fellows, and fewer than two others are in this record. Record the other cylinders the same way.',
};

export const injectorWords: Readonly<Record<InjectorFinding, string>> = {
  alike: 'Its current is like that of its fellows. The electrical side of this injector is cleared at this warmth.',
  low: 'Its current ends clearly lower than that of its fellows: resistance in its circuit or winding. Measure both.',
  high: 'Its current ends clearly higher than that of its fellows: turns of its winding are shorted, or another injector is fitted. Measure its resistance.',
  'no-kink': 'The current rises like that of its fellows, but the kink of the moving valve does not show: the valve may stick. Listen to it, then swap it.',
  'too-close-to-call': 'The difference is within what this trace can show. Record more pulses, with a smaller range on the clamp.',
  'nothing-to-compare': 'One is told by its fellows, and fewer than two others are in this record. Record the other injectors the same way.',
};

export const compressionWords: Readonly<Record<CompressionFinding, string>> = {
  even: 'The humps are alike: no cylinder seals much worse than the rest. All low alike would look the same; a gauge on one settles it.',
  'one-weak': 'One hump is low in every round. Measure that cylinder with the gauge, then find out where the pressure goes.',
  'too-close-to-call': 'The humps differ less than they scatter. Crank for longer with a well-charged battery and record again.',
  'too-short': 'Fewer than three whole rounds were recorded. Crank for at least five seconds.',
};

export const crankWords: Readonly<Record<CrankReading['finding'], string>> = {
  even: 'Every cylinder drives the crank alike, within what this record shows.',
  'one-weak': 'One cylinder adds clearly less than its fellows.',
  'too-close-to-call': 'The cylinders differ less than they scatter. Record for longer at a steady idle, with consumers off.',
  'too-short': 'Fewer than three whole cycles were recorded. Record at least ten turns.',
};

export const crankNamed: Readonly<Record<CrankReading['named'], string>> = {
  cylinder: 'The trigger tells which cylinder is which.',
  pair: 'Without a trigger the two turns of a cycle look alike: the cylinder named may also be its companion.',
  place: 'The place of the top dead centre on the wheel was not given: the order is right, but not which cylinder is which.',
};

export const airFlowWords: Readonly<Record<AirFlowReading['finding'], string>> = {
  likely: 'The air-flow meter shows what an engine of this size takes in at this manifold pressure.',
  low: 'The air-flow meter shows less than an engine of this size takes in at this manifold pressure. Check for air that passes the meter by, and the meter.',
  high: 'The air-flow meter shows more than the cylinders can take in. Check the size given, then the meter.',
  unknown: 'Air flow, engine speed, manifold pressure and intake temperature are needed together.',
};

export const proofWords: Readonly<Record<ProofRefusal, string>> = {
  'no-time': 'The table has no column of times. Choose it by hand, or log again with the time.',
  'no-speed': 'Engine speed was not logged. Without it no one can tell whether the conditions were similar.',
  'no-load': 'Calculated load was not logged. Without it no one can tell whether the conditions were similar.',
  'no-coolant': 'Coolant temperature was not logged. Without it no one can tell whether the engine was warm.',
};

export const confidenceWords: Readonly<Record<Confidence, string>> = {
  'words-and-unit': 'by its heading and unit',
  words: 'by its heading; check the unit',
  unit: 'by its unit alone; check it',
  'by-hand': 'chosen by hand',
};
