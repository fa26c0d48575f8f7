import { figureOf } from '../numbers/figure.ts';
import type { Figure } from '../numbers/figure.ts';
import { combine, median } from '../numbers/sample.ts';
import { byCylinder } from '../trace/assign.ts';
import type { InjectorPulse, InjectorTrace } from './injectorTrace.ts';

/** The pulses of one cylinder together. */
export interface InjectorOfCylinder {
  /** 0 where no firing order was given. */
  readonly cylinder: number;
  readonly pulses: number;
  readonly missing: number;
  /** ms. */
  readonly width: Figure;
  /** A at switching off; of a current only. */
  readonly peak: Figure | undefined;
  /** ms until the pintle meets its stop; where more than half of the pulses show it. */
  readonly opens: Figure | undefined;
  /** V; of a voltage only. */
  readonly clamp: Figure | undefined;
}

export type InjectorFinding = 'alike' | 'low' | 'high' | 'no-kink' | 'too-close-to-call' | 'nothing-to-compare';

export interface InjectorVerdict {
  readonly cylinder: number;
  readonly finding: InjectorFinding;
}

function together(figures: readonly (Figure | undefined)[]): Figure | undefined {
  const known = figures.filter((figure) => figure !== undefined);
  return 2 * known.length > figures.length ? combine(known) : undefined;
}

function ofCylinder(cylinder: number, pulses: readonly InjectorPulse[], missing: number): InjectorOfCylinder {
  return {
    cylinder,
    pulses: pulses.length,
    missing,
    width: combine(pulses.map(({ width }) => width)),
    peak: together(pulses.map(({ peak }) => peak)),
    opens: together(pulses.map(({ opens }) => opens)),
    clamp: together(pulses.map(({ clamp }) => clamp)),
  };
}

export function injectorsOf(trace: InjectorTrace): readonly InjectorOfCylinder[] {
  return byCylinder(trace.pulses, trace.assignment.cylinders).map(([cylinder, pulses]) => ofCylinder(cylinder, pulses, trace.assignment.missing.get(cylinder) ?? 0));
}

/** Tops of sound injectors of one kind lie this close to each other. Common practice. */
const usualScatter = 0.1;

function findingFrom(own: InjectorOfCylinder, others: readonly InjectorOfCylinder[]): InjectorFinding {
  const tops = others.map(({ peak }) => peak?.value).filter((value) => value !== undefined);
  if (others.length < 2 || own.peak === undefined || tops.length < 2) return 'nothing-to-compare';
  const ratio = figureOf(own.peak.value / median(tops), { normal: own.peak.standardUncertainty / median(tops) });
  if (ratio.value - ratio.halfWidth95 > 1 + usualScatter) return 'high';
  if (ratio.value + ratio.halfWidth95 < 1 - usualScatter) return 'low';
  if (own.opens === undefined && others.every(({ opens }) => opens !== undefined)) return 'no-kink';
  return Math.abs(ratio.value - 1) + ratio.halfWidth95 < 1.5 * usualScatter ? 'alike' : 'too-close-to-call';
}

/** Each injector beside its fellows, by the current at switching off and whether the valve is seen to move. Currents only. */
export function compareInjectors(injectors: readonly InjectorOfCylinder[]): readonly InjectorVerdict[] {
  return injectors.map((own) => ({ cylinder: own.cylinder, finding: findingFrom(own, injectors.filter((other) => other !== own)) }));
}
