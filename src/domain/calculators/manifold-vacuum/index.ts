import { pressureAtAltitude, seaLevelPressure } from '../../atmosphere.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, ParsedInputs } from '../definition.ts';
import { verdictByResolution } from '../limits.ts';
import { inchesOfMercury, refuseNotAbsolute } from '../pressures.ts';
import { samples } from '../samples.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, notes, table, verdictNotes } from './text.data.ts';

/** Usual band at warm idle and sea level, inHg. Common practice round the 20 of an army ordnance course. */
const usualLow = 17;
const usualHigh = 22;
/** Weather seldom moves the barometer more than 5 kPa from that of the height; further off and one of the two is wrong. Common practice. */
const mostWeather = 8;

/** Outside pressure, kPa: as typed, else that of the standard atmosphere at this height, else at sea level. */
function barometerOf(given: ParsedInputs): number {
  return given.optionalNumber('barometer') ?? pressureAtAltitude(given.optionalNumber('altitude') ?? 0);
}

function findBarometerProblem(given: ParsedInputs): Refusal | undefined {
  const [barometer, altitude] = [given.optionalNumber('barometer'), given.optionalNumber('altitude')];
  if (barometer === undefined || altitude === undefined) return undefined;
  const standard = pressureAtAltitude(altitude);
  if (Math.abs(barometer - standard) <= mostWeather) return undefined;
  const message = `Barometer: ${showFigure(barometer, 'kPa')} does not fit a height of ${showFigure(altitude, 'm')}, where about ${showFigure(Math.round(standard), 'kPa')} is usual. A forecast’s pressure is referred to the sea: give the pressure on the spot, or leave one of the two empty.`;
  return { input: 'barometer', code: 'barometer-against-altitude', message };
}

function findManifoldProblem(manifold: number, barometer: number): Refusal | undefined {
  const notAbsolute = refuseNotAbsolute('manifoldPressure', 'Manifold pressure', manifold, 'kPa');
  if (notAbsolute !== undefined || manifold <= barometer) return notAbsolute;
  const message = `Manifold pressure: ${showFigure(manifold, 'kPa')} is above the barometer of ${showFigure(barometer, 'kPa')}, so there is no vacuum. Only boost does that: read it at warm idle, check the barometer, and check that the unit is right.`;
  return { input: 'manifoldPressure', code: 'above-barometer', message };
}

function findVacuumProblem(vacuum: number, barometer: number): Refusal | undefined {
  const whole = inchesOfMercury(barometer);
  if (vacuum < whole) return undefined;
  const message = `Manifold vacuum: ${showFigure(vacuum, 'inHg')} is as much as the whole barometer of ${showFigure(whole, 'inHg')} or more, which no engine draws. If the gauge shows kPa, mbar or mmHg, type that unit.`;
  return { input: 'vacuum', code: 'more-than-barometer', message };
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const [vacuum, manifold, barometer] = [given.optionalNumber('vacuum'), given.optionalNumber('manifoldPressure'), barometerOf(given)];
  if (vacuum === undefined && manifold === undefined) {
    return { input: 'vacuum', code: 'missing', message: 'Manifold vacuum: nothing was typed. Give the vacuum from a gauge, or the manifold pressure from live data.' };
  }
  if (vacuum !== undefined && manifold !== undefined) {
    const message = `Vacuum ${showFigure(vacuum, 'inHg')} and manifold pressure ${showFigure(manifold, 'kPa')} were both given, but each follows from the other. Clear one of them.`;
    return { input: 'vacuum', code: 'both-given', message };
  }
  return (
    findBarometerProblem(given) ??
    (manifold === undefined ? undefined : findManifoldProblem(manifold, barometer)) ??
    (vacuum === undefined ? undefined : findVacuumProblem(vacuum, barometer))
  );
}

/** The vacuum and one step of its last digit, inHg. */
function readingOf(given: ParsedInputs): { readonly vacuum: number; readonly resolution: number } {
  const vacuum = given.optionalNumber('vacuum');
  if (vacuum !== undefined) return { vacuum, resolution: given.resolution('vacuum') };
  const below = barometerOf(given) - given.number('manifoldPressure');
  return { vacuum: inchesOfMercury(below), resolution: inchesOfMercury(given.resolution('manifoldPressure')) };
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const { vacuum, resolution } = readingOf(given);
  const lost = inchesOfMercury(seaLevelPressure - barometerOf(given));
  const [low, high] = [usualLow - lost, usualHigh - lost];
  const verdict = verdictByResolution(vacuum, resolution, { low, high });
  const assumed = !given.has('barometer') && !given.has('altitude');
  const inHg = (value: number) => ({ value, unit: 'inHg' });
  return success({
    outputs: { vacuum: inHg(vacuum), seaLevelEquivalent: inHg(vacuum + lost), expectedLow: inHg(low), expectedHigh: inHg(high), verdict },
    notes: [verdictNotes[verdict], ...(assumed ? [notes.seaLevel] : []), notes.otherEngines, notes.needle],
    next: [
      { page: 'procedures/manifold-vacuum', label: 'Manifold vacuum test' },
      { page: 'procedures/smoke-test', label: 'Smoke test for air leaks' },
      { page: 'procedures/compression-dry', label: 'Dry compression test' },
    ],
  });
}

const chartTop = 4000;
const chartPoints = 20;

/** The usual band against height; left out where only a barometer is known, for it has no height. */
function chart(given: ParsedInputs): Chart | undefined {
  if ((given.has('barometer') && !given.has('altitude')) || findProblem(given) !== undefined) return undefined;
  const altitude = given.optionalNumber('altitude') ?? 0;
  const [from, to] = [Math.min(0, altitude), Math.max(chartTop, altitude)];
  const line = (name: string, atSea: number) => ({
    name,
    kind: 'line' as const,
    points: samples(from, to, chartPoints, (height) => atSea - inchesOfMercury(seaLevelPressure - pressureAtAltitude(height))),
  });
  return {
    title: 'Usual vacuum at warm idle against height',
    x: { label: 'Height', unit: 'm' },
    y: { label: 'Vacuum', unit: 'inHg' },
    series: [line('From', usualLow), line('To', usualHigh)],
    marks: [{ x: altitude, y: readingOf(given).vacuum, label: 'This engine' }],
  };
}

/** Manifold vacuum from a gauge or from the manifold pressure, allowed for height and held against the usual band at warm idle. */
export const manifoldVacuum: CalculatorDefinition = {
  id: 'manifold-vacuum',
  title: 'Manifold vacuum',
  summary: 'Is this manifold vacuum usual for a warm idle at this height?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['vacuum gauge', 'intake vacuum', 'MAP', 'manifold absolute pressure', 'inches of mercury', 'inHg', 'vacuum leak', 'altitude'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => manifoldVacuum;
