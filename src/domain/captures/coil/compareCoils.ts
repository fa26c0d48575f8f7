import type { Figure } from '../numbers/figure.ts';
import { figureOf, scaleFigure, widen } from '../numbers/figure.ts';
import { combine, median, oddOnes } from '../numbers/sample.ts';
import { byCylinder } from '../trace/assign.ts';
import type { CoilEvent, CoilTrace } from './coilCurrent.ts';

/** What is known beside the trace. */
export interface CoilSupply {
  /** Volts at the coil while it charges, with its standard uncertainty. Without it inductance and resistance are not given. */
  readonly voltage?: { readonly value: number; readonly standardUncertainty: number };
  /** Standard uncertainty of the clamp's scale, as a share: 0.01 for 1 %. It is the same for all cylinders. */
  readonly clampScale?: number;
}

/** The charges of one cylinder together. */
export interface CoilOfCylinder {
  /** 0 where no firing order was given. */
  readonly cylinder: number;
  readonly charges: number;
  /** Charges of this cylinder that did not come when their turn was. */
  readonly missing: number;
  /** ms. */
  readonly dwell: Figure;
  /** A, at switching off. */
  readonly peak: Figure;
  /** Charges whose top lies beyond the range; `peak` is then too low. */
  readonly cutOff: number;
  /** A/ms. */
  readonly slope: Figure;
  /** R/L, 1/ms. */
  readonly rate: Figure;
  /** A: current that is there at once. */
  readonly jump: Figure;
  /** mH. */
  readonly inductance: Figure | undefined;
  /** Ω: winding, wires, joints and switch together. */
  readonly resistance: Figure | undefined;
  readonly knee: { readonly kind: 'limiting' | 'saturation'; readonly afterStart: Figure; readonly current: Figure } | undefined;
  /** Places among this cylinder's charges whose top or dwell stands apart from the rest. */
  readonly odd: readonly number[];
}

export type CoilFinding = 'alike' | 'shorted-turns' | 'added-resistance' | 'low-supply' | 'cut-short' | 'different' | 'too-close-to-call';

export interface CoilVerdict {
  readonly cylinder: number;
  readonly finding: CoilFinding;
  /** Against the middle of the other cylinders, as ratios: slope at the start, R/L, dwell, current at switching off. */
  readonly against: { readonly slope: Figure; readonly rate: Figure; readonly dwell: Figure; readonly peak: Figure } | undefined;
}

/** An odd charge differs at least by this share of the usual one, however little the others scatter. */
const oddShare = 0.05;

function oddCharges(events: readonly CoilEvent[]): readonly number[] {
  const values = [events.map((event) => event.peak.value), events.map((event) => event.dwell.value)];
  return [...new Set(values.flatMap((list) => oddOnes(list, oddShare * median(list))))].sort((one, other) => one - other);
}

function relative(figure: Figure, share: number): Figure {
  return widen(figure, share * Math.abs(figure.value));
}

function ofCylinder(cylinder: number, events: readonly CoilEvent[], missing: number, supply: CoilSupply): CoilOfCylinder {
  const odd = oddCharges(events);
  const sound = events.filter((_, place) => !odd.includes(place));
  const scale = supply.clampScale ?? 0;
  const mean = (pick: (event: CoilEvent) => Figure) => combine(sound.map(pick));
  const times = (figure: Figure): Figure | undefined => {
    const volts = supply.voltage;
    return volts && relative(scaleFigure(figure, volts.value), Math.hypot(scale, volts.standardUncertainty / volts.value));
  };
  return {
    cylinder,
    charges: events.length,
    missing,
    dwell: mean((event) => event.dwell),
    peak: relative(mean((event) => event.peak), scale),
    cutOff: events.filter((event) => event.peakAtLeast).length,
    slope: relative(mean((event) => event.slope), scale),
    rate: mean((event) => event.rate),
    jump: mean((event) => event.jump),
    inductance: times(mean((event) => event.perVolt.inductance)),
    resistance: times(mean((event) => event.perVolt.resistance)),
    knee: kneeOf(sound, scale),
    odd,
  };
}

/** The knee, where more than half of the charges have one of the same kind. */
function kneeOf(events: readonly CoilEvent[], scale: number): CoilOfCylinder['knee'] {
  for (const kind of ['limiting', 'saturation'] as const) {
    const knees = events.map((event) => event.knee).filter((knee) => knee?.kind === kind).filter((knee) => knee !== undefined);
    if (2 * knees.length > events.length) {
      return { kind, afterStart: combine(knees.map((knee) => knee.afterStart)), current: relative(combine(knees.map((knee) => knee.current)), scale) };
    }
  }
  return undefined;
}

/** The coil of each cylinder from all of its charges, odd ones left out of the means and named. */
export function coilsOf(trace: CoilTrace, supply: CoilSupply = {}): readonly CoilOfCylinder[] {
  return byCylinder(trace.events, trace.assignment.cylinders).map(([cylinder, events]) =>
    ofCylinder(cylinder, events, trace.assignment.missing.get(cylinder) ?? 0, supply),
  );
}

/** Ratio of independent figures. */
function ratio(one: Figure, other: Figure): Figure {
  const value = one.value / other.value;
  return figureOf(value, { normal: Math.abs(value) * Math.hypot(one.standardUncertainty / one.value, other.standardUncertainty / other.value) });
}

/** The figure in the middle; of an even number the two in the middle together. */
function middle(figures: readonly Figure[]): Figure {
  const rising = [...figures].sort((one, other) => one.value - other.value);
  const half = Math.floor((rising.length - 1) / 2);
  return combine(rising.slice(half, rising.length - half));
}

/** Smaller differences between cylinders are taken as sound: windings of one make scatter so much. Common practice. */
const usualScatter = 0.1;
/** Turns that are shorted take at least this share of the inductance or let this share of the top flow at once. Common practice. */
const clearJump = 0.12;

type Way = 'up' | 'down' | 'same' | 'unsure';

/** Which way a ratio lies off 1, when the usual scatter and the uncertainty are both allowed for. */
function wayOf({ value, halfWidth95 }: Figure, scatter = usualScatter): Way {
  const low = value - halfWidth95;
  const high = value + halfWidth95;
  if (low > 1 + scatter) return 'up';
  if (high < 1 - scatter) return 'down';
  return low >= 1 - 1.5 * scatter && high <= 1 + 1.5 * scatter ? 'same' : 'unsure';
}

/**
 * Slope V/L and rate R/L tell the causes apart. Shorted turns lower L: both rise, or current flows at once. Resistance in the circuit
 * raises R: the slope stays and the rate rises. A low supply lowers V: the slope falls and the rate stays. A shorter dwell with slope
 * and rate unchanged is the order of the control unit and not the coil.
 */
function findingFrom(coil: CoilOfCylinder, against: NonNullable<CoilVerdict['against']>): CoilFinding {
  const [slope, rate, dwell] = [wayOf(against.slope), wayOf(against.rate, 2 * usualScatter), wayOf(against.dwell)];
  if (coil.jump.value - coil.jump.halfWidth95 > clearJump * coil.peak.value) return 'shorted-turns';
  if (slope === 'up') return rate === 'down' ? 'different' : 'shorted-turns';
  if (slope === 'down') return rate === 'up' ? 'different' : 'low-supply';
  if (rate === 'up') return 'added-resistance';
  if (dwell === 'down') return 'cut-short';
  if (slope === 'unsure' || dwell === 'unsure') return 'too-close-to-call';
  return rate === 'down' ? 'different' : 'alike';
}

/** Each cylinder's coil beside its fellows. With fewer than three there is no middle to hold one against, and nothing is compared. */
export function compareCoils(coils: readonly CoilOfCylinder[]): readonly CoilVerdict[] {
  return coils.map((coil) => {
    const others = coils.filter((other) => other !== coil);
    if (others.length < 2) return { cylinder: coil.cylinder, finding: 'too-close-to-call', against: undefined };
    const beside = (pick: (one: CoilOfCylinder) => Figure) => ratio(pick(coil), middle(others.map(pick)));
    const against = {
      slope: beside((one) => one.slope),
      rate: beside((one) => one.rate),
      dwell: beside((one) => one.dwell),
      peak: beside((one) => one.peak),
    };
    return { cylinder: coil.cylinder, finding: findingFrom(coil, against), against };
  });
}
