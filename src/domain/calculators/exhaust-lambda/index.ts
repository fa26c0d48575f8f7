import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, ParsedInputs } from '../definition.ts';
import { samples } from '../samples.ts';
import { showFigure } from '../show.ts';
import { burntGas, lambdaFrom } from './gas.ts';
import type { Fuel, Gas } from './gas.ts';
import { inputs, outputs } from './inputs.data.ts';
import { gasPattern } from './pattern.ts';
import { examples, formulas, notes, patternNotes, table } from './text.data.ts';

/** Carbon atoms in the molecule that the analyser reckons HC as. */
const carbonsIn: Readonly<Record<string, number>> = { hexane: 6, propane: 3, methane: 1 };
const hexane = 6;
const ppmPerPercent = 10_000;
/** Less burnt carbon than this, % by volume, and the sample is air. */
const leastBurntCarbon = 1;
/** Oxygen in CO2, CO and O2 together cannot pass the 20.95 % of air; half a percent is left for the analyser. */
const mostOxygen = 21.5;
/** Many yearly tests ask lambda to lie between these at fast idle; read in two national texts. */
const testLow = 0.97;
const testHigh = 1.03;

function carbons(given: ParsedInputs): number {
  return carbonsIn[given.text('hcAs')] ?? hexane;
}

function gasOf(given: ParsedInputs): Gas {
  return {
    co: given.number('co'),
    co2: given.number('co2'),
    o2: given.number('o2'),
    no: (given.optionalNumber('no') ?? 0) / ppmPerPercent,
    fuelCarbon: (carbons(given) * given.number('hc')) / ppmPerPercent,
  };
}

function fuelOf(given: ParsedInputs): Fuel {
  return { hydrogenCarbon: given.number('hydrogenCarbon'), oxygenCarbon: given.number('oxygenCarbon') };
}

function findProblem({ co, co2, o2 }: Gas): Refusal | undefined {
  const show = (value: number) => showFigure(value, '%');
  if (co + co2 < leastBurntCarbon) {
    const message = `Carbon dioxide: CO and CO2 make only ${show(co + co2)}, so the sample is air and no exhaust. Push the probe well in, check hose and water trap, and read with the engine running.`;
    return { input: 'co2', code: 'no-burnt-gas', message };
  }
  const total = co2 + co / 2 + o2;
  if (total <= mostOxygen) return undefined;
  const message = `Oxygen: CO2, O2 and half the CO make ${show(total)}, more than the 20.9 % that air brings in. One figure is wrong: check the typing, then set the analyser to zero and check it on outside air.`;
  return { input: 'o2', code: 'more-oxygen-than-air', message };
}

function lambdaNote(lambda: number): string {
  if (lambda < testLow) return notes.rich;
  return lambda > testHigh ? notes.lean : notes.inTest;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const [gas, fuel] = [gasOf(given), fuelOf(given)];
  const problem = findProblem(gas);
  if (problem !== undefined) return failure(problem);
  const lambda = lambdaFrom(gas, fuel);
  const pattern = gasPattern(gas, (given.number('hc') * carbons(given)) / hexane, fuel);
  return success({
    outputs: { lambda: { value: lambda, unit: '1' }, pattern },
    notes: [patternNotes[pattern], lambdaNote(lambda), notes.misfire],
    next: [
      { page: 'procedures/exhaust-gas', label: 'Read the exhaust gas' },
      { page: 'procedures/fuel-trims', label: 'Fuel trims, idle and cruise' },
      { page: 'procedures/exhaust-leak', label: 'Find an exhaust leak' },
    ],
  });
}

const chartFrom = 0.8;
const chartTo = 1.3;
const chartPoints = 40;

/** Readings nearer together than this, % by volume, would print over each other: they share their words. */
const roomForWords = 2;

function marksOf({ co, co2, o2 }: Gas, lambda: number, mostCo2: number): Chart['marks'] {
  const [lower, higher] = co < o2 ? [{ name: 'CO', y: co }, { name: 'O2', y: o2 }] : [{ name: 'O2', y: o2 }, { name: 'CO', y: co }];
  const shared = higher.y - lower.y < roomForWords;
  return [
    { x: lambda, y: lower.y, label: shared ? '' : `${lower.name} read` },
    { x: lambda, y: higher.y, label: shared ? 'CO and O2 read' : `${higher.name} read` },
    // Near its peak it lies among the names of the lines, and speaks for itself.
    { x: lambda, y: co2, label: mostCo2 - co2 < roomForWords ? '' : 'CO2 read' },
  ];
}

/** The gas of a whole burn against lambda, with what the analyser read: points off the curves tell of misfire or leaks. */
function chart(given: ParsedInputs): Chart | undefined {
  const [gas, fuel] = [gasOf(given), fuelOf(given)];
  if (findProblem(gas) !== undefined) return undefined;
  const lambda = lambdaFrom(gas, fuel);
  const [from, to] = [Math.min(chartFrom, lambda), Math.max(chartTo, lambda)];
  const line = (name: string, key: 'co' | 'co2' | 'o2') => ({ name, kind: 'line' as const, points: samples(from, to, chartPoints, (at) => burntGas(at, fuel)[key]) });
  return {
    title: 'CO and O2 against lambda when all the fuel burns',
    x: { label: 'Lambda', unit: '1' },
    y: { label: 'Share of the dry gas', unit: '%' },
    series: [line('CO', 'co'), line('O2', 'o2'), line('CO2', 'co2')],
    marks: marksOf(gas, lambda, burntGas(1, fuel).co2),
  };
}

/** Lambda from four or five exhaust gases by the Brettschneider equation, and what the gases point to together. */
export const exhaustLambda: CalculatorDefinition = {
  id: 'exhaust-lambda',
  title: 'Lambda from exhaust gas',
  summary: 'What do the exhaust gases say: rich, lean, a misfire, or a leak?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['four gas', 'five gas', 'gas analyser', 'emissions test', 'Brettschneider', 'lambda', 'CO', 'HC', 'CO2', 'O2', 'hydrocarbons', 'catalyst'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => exhaustLambda;
