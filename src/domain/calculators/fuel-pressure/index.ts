import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, OutputValue, ParsedInputs } from '../definition.ts';
import { refuseCrossedLimits, verdictByResolution } from '../limits.ts';
import { refuseDirectInjection, refuseNotAbsolute } from '../pressures.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { examples, formulas, notes, table, verdictNotes } from './text.data.ts';

const unit = 'kPa';
/** A fall of more than this, kPa, in five minutes is looked into. Common practice. */
const usualLossInFiveMinutes = 50;

function show(value: number): string {
  return showFigure(value, unit);
}

function endsOf(given: ParsedInputs) {
  return { low: given.optionalNumber('low'), high: given.optionalNumber('high') };
}

function findManifoldProblem(given: ParsedInputs): Refusal | undefined {
  const manifold = given.optionalNumber('manifoldPressure');
  if (manifold === undefined) return undefined;
  const notAbsolute = refuseNotAbsolute('manifoldPressure', 'Manifold pressure', manifold, unit);
  if (notAbsolute !== undefined) return notAbsolute;
  const [rail, barometer] = [given.number('rail'), given.number('barometer')];
  if (manifold > barometer && given.optionalText('charged') === 'no') {
    const message = `Manifold pressure: ${show(manifold)} is above the barometer of ${show(barometer)}, and without a charger nothing can push it there. Check the barometer for this height, and that both are absolute.`;
    return { input: 'manifoldPressure', code: 'above-barometer', message };
  }
  if (rail + barometer >= manifold) return undefined;
  const message = `Manifold pressure: ${show(manifold)} absolute is more than the fuel behind the injector, ${show(rail + barometer)} absolute, so air would enter the rail. Check which figures are gauge and which absolute.`;
  return { input: 'manifoldPressure', code: 'manifold-above-rail', message };
}

function findHoldProblem(given: ParsedInputs): Refusal | undefined {
  const [rail, after, minutes] = [given.number('rail'), given.optionalNumber('after'), given.optionalNumber('minutes')];
  if (after === undefined) {
    const message = 'Rail pressure after standing: nothing was typed, but a time was. Give the pressure at its end, or clear the time.';
    return minutes === undefined ? undefined : { input: 'after', code: 'missing', message };
  }
  if (rail === 0) {
    return { input: 'rail', code: 'nothing-to-hold', message: 'Rail pressure: 0 kPa at the start leaves nothing to lose. Build the pressure up first, then let it stand.' };
  }
  if (after <= rail) return undefined;
  const message = `Rail pressure after standing: ${show(after)} is more than the ${show(rail)} it started from. A rail warms and can rise a little: start from the highest reading after switching off, or change the two over.`;
  return { input: 'after', code: 'after-above-before', message };
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  return (
    refuseDirectInjection('rail', 'Rail pressure', given.number('rail')) ??
    refuseDirectInjection('after', 'Rail pressure after standing', given.optionalNumber('after')) ??
    refuseDirectInjection('low', 'Lower limit', given.optionalNumber('low')) ??
    refuseDirectInjection('high', 'Upper limit', given.optionalNumber('high')) ??
    refuseCrossedLimits(endsOf(given), unit) ??
    findManifoldProblem(given) ??
    findHoldProblem(given)
  );
}

interface Part {
  readonly outputs: Record<string, OutputValue>;
  readonly notes: readonly string[];
}

const nothing: Part = { outputs: {}, notes: [] };

function across(given: ParsedInputs): Part {
  const manifold = given.optionalNumber('manifoldPressure');
  if (manifold === undefined) return nothing;
  const barometer = given.number('barometer');
  const boosted = manifold > barometer && given.optionalText('charged') === undefined;
  return {
    outputs: { acrossInjector: { value: given.number('rail') + barometer - manifold, unit } },
    notes: [notes.across, ...(boosted ? [notes.boosted] : [])],
  };
}

function judged(given: ParsedInputs): Part {
  const ends = endsOf(given);
  if (ends.low === undefined && ends.high === undefined) return { outputs: {}, notes: [notes.noLimits] };
  const verdict = verdictByResolution(given.number('rail'), given.resolution('rail'), ends);
  return { outputs: { verdict }, notes: [verdictNotes[verdict]] };
}

function held(given: ParsedInputs): Part {
  const [rail, after, minutes] = [given.number('rail'), given.optionalNumber('after'), given.optionalNumber('minutes')];
  if (after === undefined) return nothing;
  const loss = rail - after;
  const values: Record<string, OutputValue> = { holdLoss: { value: (100 * loss) / rail, unit: '%' } };
  if (minutes === undefined) return { outputs: values, notes: [notes.noTime] };
  const perMinute = loss / minutes;
  values['lossPerMinute'] = { value: perMinute, unit: 'kPa/min' };
  return { outputs: values, notes: [perMinute > usualLossInFiveMinutes / 5 ? notes.leaks : notes.holds] };
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const parts = [across(given), judged(given), held(given)];
  return success({
    outputs: Object.assign({}, ...parts.map((part) => part.outputs)) as Record<string, OutputValue>,
    notes: [...(given.number('rail') === 0 ? [notes.none] : []), ...parts.flatMap((part) => part.notes), notes.safety],
    next: [
      { page: 'cautions/fuel-vapour', label: 'Caution: petrol vapour' },
      { page: 'procedures/fuel-pressure', label: 'Measure the fuel pressure' },
      { page: 'procedures/rail-pressure-by-data', label: 'Direct injection: rail pressure by live data' },
      { page: 'calculators/injector', label: 'Injector flow at this pressure' },
    ],
  });
}

/** Pressure across a port injector, the rail against its limits, and how the rail holds its pressure. */
export const fuelPressure: CalculatorDefinition = {
  id: 'fuel-pressure',
  title: 'Fuel pressure, port injection',
  summary: 'Is the fuel pressure right, what does the injector feel, and does the rail hold it?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['rail pressure', 'fuel pump', 'regulator', 'residual pressure', 'rest pressure', 'leak-down of the rail', 'fuel gauge', 'differential pressure'],
  compute,
};

export const calculator: CalculatorMaker = () => fuelPressure;
