import { figureOf } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { combine, deviationOf, median, meanFigure, oddOnes, quantileOfSorted, sorted } from '../numbers/sample.ts';
import { byCylinder } from '../trace/assign.ts';
import type { SparkEvent, SparkTrace } from './sparkVoltage.ts';

/** All firings of one cylinder. Voltages in the unit of the trace, times in ms. */
export interface SparksOfCylinder {
  /** 0 where no firing order was given. */
  readonly cylinder: number;
  readonly firings: number;
  readonly missing: number;
  /** Firings without a burn line. */
  readonly withoutBurn: number;
  /** Firings whose top the trace does not show; `firing` is then too low. */
  readonly cutOff: number;
  /** Medians over the firings, and means with what uncertainty the scatter gives. */
  readonly firing: { readonly median: number; readonly mean: Figure; readonly deviation: number };
  readonly burnTime: { readonly median: number; readonly mean: Figure; readonly deviation: number } | undefined;
  readonly burnVoltage: Figure | undefined;
  readonly burnSlope: Figure | undefined;
  readonly swings: Figure | undefined;
  /** Places among the cylinder's firings that stand apart in firing line or burn time. */
  readonly odd: readonly number[];
}

function several(figures: readonly Figure[]): { readonly median: number; readonly mean: Figure; readonly deviation: number } {
  const values = figures.map(({ value }) => value);
  const [only] = figures;
  const mean = figures.length === 1 && only !== undefined ? only : meanFigure(values);
  return { median: median(values), mean, deviation: deviationOf(values) };
}

const oddShare = 0.2;

function ofCylinder(cylinder: number, events: readonly SparkEvent[], missing: number): SparksOfCylinder {
  const burns = events.map(({ burn }) => burn).filter((burn) => burn !== undefined);
  const firing = several(events.map((event) => event.firing));
  const times = events.map(({ burn }) => burn?.time.value ?? 0);
  const odd = [...oddOnes(events.map((event) => event.firing.value), oddShare * firing.median), ...oddOnes(times, oddShare * median(times))];
  const swings = burns.map(({ swing }) => swing?.swingsToATenth).filter((figure) => figure !== undefined);
  const has = burns.length > 0;
  return {
    cylinder,
    firings: events.length,
    missing,
    withoutBurn: events.length - burns.length,
    cutOff: events.filter((event) => event.firingAtLeast).length,
    firing,
    burnTime: has ? several(burns.map(({ time }) => time)) : undefined,
    burnVoltage: has ? combine(burns.map(({ voltage }) => voltage)) : undefined,
    burnSlope: has ? combine(burns.map(({ slope }) => slope)) : undefined,
    swings: swings.length > 0 ? combine(swings) : undefined,
    odd: [...new Set(odd)].sort((one, other) => one - other),
  };
}

/** The firings of each cylinder together, cylinders in rising order. */
export function sparksOf(trace: SparkTrace): readonly SparksOfCylinder[] {
  return byCylinder(trace.events, trace.assignment.cylinders).map(([cylinder, events]) => ofCylinder(cylinder, events, trace.assignment.missing.get(cylinder) ?? 0));
}

export type SparkFinding =
  | 'alike'
  | 'no-spark-across'
  | 'resistance-in-series'
  | 'wide-gap'
  | 'easy-way'
  | 'lean-or-unsteady'
  | 'few-swings'
  | 'different'
  | 'too-close-to-call'
  | 'nothing-to-compare';

export interface SparkVerdict {
  readonly cylinder: number;
  readonly finding: SparkFinding;
  /** Against the middle of the other cylinders, as ratios. */
  readonly against: { readonly firing: Figure; readonly burnTime: Figure | undefined; readonly burnVoltage: Figure | undefined } | undefined;
}

/** Firing lines within 20 % of each other are taken as alike, and burn times too. Common practice. */
const usualScatter = 0.2;
const usualBurnScatter = 0.15;
/** Burn times of a lean or badly moving charge vary from firing to firing at least so many times as those of its fellows. Common practice. */
const unsteady = 2.5;
/** A resistance in series makes the burn line fall by this share of its height per ms more than its fellows'. Common practice. */
const steep = 0.25;

/** Ratio of independent figures. */
function ratio(one: Figure | undefined, other: number | undefined, others: readonly (Figure | undefined)[]): Figure | undefined {
  if (one === undefined || other === undefined || !(other > 0)) return undefined;
  // The middle of several is about as sure as the middle one of them; one that is very unsure does not make it so.
  const uncertain = middleOf(others.map((figure) => figure && figure.standardUncertainty / Math.abs(figure.value))) ?? 0;
  const value = one.value / other;
  return figureOf(value, { normal: Math.abs(value) * Math.hypot(one.standardUncertainty / one.value, uncertain) });
}

type Way = 'up' | 'down' | 'same' | 'unsure';

/** A ratio may be known so badly that nothing follows; one without an uncertainty from a single firing is never sure. */
function wayOf(figure: Figure | undefined, scatter: number): Way {
  if (figure === undefined || !Number.isFinite(figure.halfWidth95)) return 'unsure';
  if (figure.value - figure.halfWidth95 > 1 + scatter) return 'up';
  if (figure.value + figure.halfWidth95 < 1 - scatter) return 'down';
  return figure.value - figure.halfWidth95 > 1 - 1.5 * scatter && figure.value + figure.halfWidth95 < 1 + 1.5 * scatter ? 'same' : 'unsure';
}

function middleOf(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((value) => value !== undefined);
  return known.length === 0 ? undefined : quantileOfSorted(sorted(known), 0.5);
}

/** How steeply the burn line falls, as a share of its height per ms. Falls count positive. */
function fall({ burnSlope, burnVoltage }: SparksOfCylinder): number | undefined {
  return burnSlope && burnVoltage ? -burnSlope.value / burnVoltage.value : undefined;
}

/**
 * What the figures point to; common practice of reading the trace. Most firings without a burn line: no spark gets across, or the line
 * is open. Burn line steeper than its fellows' with a high firing line: a resistance in series. High and short: a wide gap. Low
 * and long: an easy way beside or across the gap. Burn times that scatter, short ones at that: a lean or badly mixed charge. Few
 * swings with everything else alike: energy is lost in the coil.
 */
function findingFrom(own: SparksOfCylinder, others: readonly SparksOfCylinder[], against: NonNullable<SparkVerdict['against']>): SparkFinding {
  if (2 * own.withoutBurn > own.firings) return 'no-spark-across';
  const [firing, time] = [wayOf(against.firing, usualScatter), wayOf(against.burnTime, usualBurnScatter)];
  if (firing !== 'down' && fallsSteeply(own, others)) return 'resistance-in-series';
  const unsteadyBurn = isUnsteady(own, others);
  if (firing === 'up' && time === 'down') return unsteadyBurn ? 'lean-or-unsteady' : 'wide-gap';
  if (firing === 'down' && time !== 'down') return 'easy-way';
  if (unsteadyBurn && time !== 'up') return 'lean-or-unsteady';
  return findingFromTheRest(firing, time, wayOf(against.burnVoltage, usualScatter), hasFewSwings(own, others));
}

function findingFromTheRest(firing: Way, time: Way, voltage: Way, fewSwings: boolean): SparkFinding {
  const isApart = [firing, time].some((way) => way === 'up' || way === 'down');
  if (isApart) return voltage === 'down' ? 'easy-way' : 'different';
  if (fewSwings) return 'few-swings';
  return firing === 'unsure' || time === 'unsure' ? 'too-close-to-call' : 'alike';
}

function fallsSteeply(own: SparksOfCylinder, others: readonly SparksOfCylinder[]): boolean {
  const [ownFall, usualFall] = [fall(own), middleOf(others.map(fall))];
  return ownFall !== undefined && usualFall !== undefined && ownFall - usualFall > steep;
}

function isUnsteady(own: SparksOfCylinder, others: readonly SparksOfCylinder[]): boolean {
  const usual = middleOf(others.map(({ burnTime }) => burnTime && burnTime.deviation / burnTime.median));
  const time = own.burnTime;
  return usual !== undefined && time !== undefined && own.firings >= 5 && time.deviation / time.median > Math.max(unsteady * usual, 0.05);
}

function hasFewSwings(own: SparksOfCylinder, others: readonly SparksOfCylinder[]): boolean {
  const usual = middleOf(others.map(({ swings }) => swings?.value));
  return usual !== undefined && own.swings !== undefined && own.swings.value + own.swings.halfWidth95 < 0.6 * usual;
}

/** Each cylinder's sparks beside its fellows'. With fewer than two others there is nothing to hold one against. */
export function compareSparks(cylinders: readonly SparksOfCylinder[]): readonly SparkVerdict[] {
  return cylinders.map((own) => {
    const others = cylinders.filter((other) => other !== own);
    const firing = ratio(own.firing.mean, middleOf(others.map((one) => one.firing.median)), others.map((one) => one.firing.mean));
    if (others.length < 2 || firing === undefined) return { cylinder: own.cylinder, finding: 'nothing-to-compare', against: undefined };
    const against = {
      firing,
      burnTime: ratio(own.burnTime?.mean, middleOf(others.map((one) => one.burnTime?.median)), others.map((one) => one.burnTime?.mean)),
      burnVoltage: ratio(own.burnVoltage, middleOf(others.map((one) => one.burnVoltage?.value)), others.map((one) => one.burnVoltage)),
    };
    return { cylinder: own.cylinder, finding: findingFrom(own, others, against), against };
  });
}
