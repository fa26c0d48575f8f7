import { ABSOLUTE_LOAD_AIR_DENSITY, AIR_GAS_CONSTANT, ZERO_CELSIUS } from '../../constants.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, ParsedInputs } from '../definition.ts';
import { refuseNotAbsolute } from '../pressures.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { efficiencyNotes, examples, formulas, notes, table } from './text.data.ts';

/** A four-stroke engine fills its displacement once in two revolutions: revolutions per minute over this are fillings per second. */
const revolutionsPerMinuteForOneFilling = 120;
/** Above this a meter claims more air than cylinders take in without a charger; below the other the meter or the engine is short of air. Common practice. */
const highestLikely = 1.1;
const lowestLikely = 0.2;

/** Mass flow, g/s, of cylinders filled whole with air of this pressure (kPa, absolute) and temperature (°C). kPa times litres are joules. */
function theoreticalFlow(given: ParsedInputs): number {
  const kelvin = given.number('temperature') + ZERO_CELSIUS;
  const gramsPerFilling = (1000 * given.number('pressure') * given.number('displacement')) / (AIR_GAS_CONSTANT * kelvin);
  return (gramsPerFilling * given.number('speed')) / revolutionsPerMinuteForOneFilling;
}

/** Air in each filling over what the displacement holds at 1.184 g/l, percent. */
function absoluteLoad(given: ParsedInputs, massFlow: number): number {
  const gramsPerFilling = (massFlow * revolutionsPerMinuteForOneFilling) / given.number('speed');
  return (100 * gramsPerFilling) / (ABSOLUTE_LOAD_AIR_DENSITY * given.number('displacement'));
}

function findProblem(given: ParsedInputs): Refusal | undefined {
  const notAbsolute = refuseNotAbsolute('pressure', 'Pressure of the air', given.number('pressure'), 'kPa');
  if (notAbsolute !== undefined) return notAbsolute;
  const [flow, efficiency] = [given.optionalNumber('massFlow'), given.optionalNumber('volumetricEfficiency')];
  if (flow === undefined || efficiency === undefined) return undefined;
  const message = `Air flow ${showFigure(flow, 'g/s')} and volumetric efficiency ${showFigure(efficiency, '1')} were both given, but each follows from the other. Clear one of them.`;
  return { input: 'volumetricEfficiency', code: 'both-given', message };
}

function efficiencyNote(efficiency: number): string {
  if (efficiency > highestLikely) return efficiencyNotes.high;
  return efficiency < lowestLikely ? efficiencyNotes.low : efficiencyNotes.likely;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const theoretical = theoreticalFlow(given);
  const measured = given.optionalNumber('massFlow');
  const massFlow = measured ?? (given.optionalNumber('volumetricEfficiency') ?? 1) * theoretical;
  const efficiency = massFlow / theoretical;
  return success({
    outputs: {
      massFlow: { value: massFlow, unit: 'g/s' },
      theoreticalFlow: { value: theoretical, unit: 'g/s' },
      volumetricEfficiency: { value: efficiency, unit: '1' },
      absoluteLoad: { value: absoluteLoad(given, massFlow), unit: '%' },
    },
    notes: [measured === undefined ? notes.expected : efficiencyNote(efficiency), notes.reference, notes.idle],
    next: [
      { page: 'procedures/air-meter-plausibility', label: 'Is the air-flow meter believable' },
      { page: 'procedures/smoke-test', label: 'Smoke test for air leaks' },
      { page: 'calculators/fuel-trim', label: 'Fuel trims' },
    ],
  });
}

/** The air a four-stroke engine should take in, or how well it fills by what the air-flow meter shows. */
export const airFlow: CalculatorDefinition = {
  id: 'air-flow',
  title: 'Air flow',
  summary: 'Is the air-flow meter’s reading believable for this engine, speed, pressure and temperature?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['MAF', 'mass air flow', 'air-flow meter', 'volumetric efficiency', 'VE', 'speed density', 'absolute load', 'grams per second', 'airflow'],
  compute,
};

export const calculator: CalculatorMaker = () => airFlow;
