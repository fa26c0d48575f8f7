import type { TrimPattern } from '../calculators/fuel-trim/trims.ts';
import type { CoilFinding } from './coil/compareCoils.ts';
import type { InjectorFinding } from './injector/compareInjectors.ts';
import type { SparkFinding } from './spark/compareSparks.ts';
import type { CompressionFinding } from './starter/relativeCompression.ts';

/*
 * Which outcome of a procedure of the book a finding is. Findings that no outcome says, or that say less than the outcome does, stand
 * for none: an outcome is evidence, and evidence is never stretched.
 */

/** Id of an outcome, or nothing. */
export type OutcomeOf<Finding extends string> = Readonly<Partial<Record<Finding, string>>>;

export const coilOutcomes: { readonly procedure: string; readonly missing: string; readonly outcomes: OutcomeOf<CoilFinding> } = {
  procedure: 'coil-current-ramp',
  /** Charges that did not come when their turn was. */
  missing: 'drops-out',
  outcomes: { alike: 'normal', 'shorted-turns': 'steep-start', 'added-resistance': 'low-top', 'low-supply': 'low-top', 'cut-short': 'drops-out' },
};

/** `even` also needs the snap of the throttle, which a record at one load does not show. */
export const secondaryOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<SparkFinding> } = {
  procedure: 'secondary-voltage-trace',
  outcomes: { 'no-spark-across': 'nothing', 'resistance-in-series': 'steep-burn', 'wide-gap': 'high-and-short', 'easy-way': 'low-and-long', 'few-swings': 'few-swings' },
};

export const primaryOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<SparkFinding> } = {
  procedure: 'primary-voltage-trace',
  outcomes: { 'resistance-in-series': 'burn-short', 'wide-gap': 'burn-short', 'easy-way': 'burn-long' },
};

export const compressionOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<CompressionFinding> } = {
  procedure: 'relative-compression',
  outcomes: { even: 'even', 'one-weak': 'low-here' },
};

export const injectorOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<InjectorFinding> } = {
  procedure: 'injector-current-trace',
  outcomes: { alike: 'alike', low: 'low-or-slow', high: 'high-or-steep', 'no-kink': 'no-kink' },
};

export const trimOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<TrimPattern> } = {
  procedure: 'fuel-trims',
  outcomes: {
    'within-usual-band': 'normal',
    'adding-at-idle': 'lean-idle',
    'adding-with-load': 'lean-load',
    'adding-everywhere': 'lean-everywhere',
    'removing-everywhere': 'rich',
    'removing-fuel': 'rich',
  },
};

export const counterOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<'one' | 'several'> } = {
  procedure: 'misfire-counters',
  outcomes: { one: 'this-cylinder', several: 'several' },
};

/** A wheel whose teeth do not add up in many turns. */
export const wheelOutcomes: { readonly procedure: string; readonly outcomes: OutcomeOf<'broken'> } = {
  procedure: 'crank-sensor',
  outcomes: { broken: 'teeth' },
};

export const outcomeTables = [coilOutcomes, secondaryOutcomes, primaryOutcomes, compressionOutcomes, injectorOutcomes, trimOutcomes, counterOutcomes, wheelOutcomes] as const;
