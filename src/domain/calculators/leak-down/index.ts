import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, OutputValue, ParsedInputs } from '../definition.ts';
import { showFigure } from '../show.ts';
import { inputs, outputs } from './inputs.data.ts';
import { isFarFromFellows, isOverPublishedLimit, leakagePattern, leakagePercent, leakageVerdict, nearlyAll, pointsApart, publishedLimit } from './leakage.ts';
import type { LeakagePattern } from './leakage.ts';
import { examples, formulas, generalNote, patternLinks, patternNotes, table, verdictNotes } from './text.data.ts';

/** Air cannot gain pressure on its way through the tester. */
function findProblem(given: ParsedInputs): Refusal | undefined {
  const supply = given.number('supply');
  const above = (input: string, value: number) => ({
    input,
    code: 'above-supply',
    message: `The cylinder gauge, ${showFigure(value, 'psi')}, reads more than the supply gauge, ${showFigure(supply, 'psi')}. Check that the two are not changed over and that both read zero without air.`,
  });
  const cylinder = given.number('cylinder');
  if (cylinder > supply) return above('cylinder', cylinder);
  const other = given.optionalNumbers('others')?.find((value) => value > supply);
  return other === undefined ? undefined : above('others', other);
}

/** How many points the leakage lies above the mean of the other cylinders. */
function pointsAbove(given: ParsedInputs, leakage: number): number | undefined {
  const others = given.optionalNumbers('others');
  if (others === undefined) return undefined;
  const losses = others.map((other) => leakagePercent(given.number('supply'), other));
  return leakage - losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}

function apartNote(points: number): string {
  const shown = formatValue(Math.abs(points), '%', { decimals: 1 }).replace(/\s*%/u, '');
  if (isFarFromFellows(points)) return `It loses ${shown} points more than its fellows. A difference of ${pointsApart} points matters more than the figure itself: the fault is in this cylinder.`;
  return `It lies ${shown} points ${points < 0 ? 'better' : 'worse'} than its fellows, less than the ${pointsApart} points that single a cylinder out.`;
}

function notesOf(leakage: number, pattern: LeakagePattern | undefined, points: number | undefined): readonly string[] {
  return [
    verdictNotes[leakageVerdict(leakage)],
    ...(pattern === undefined ? [] : [patternNotes[pattern]]),
    ...(points === undefined ? [] : [apartNote(points)]),
    ...(leakage >= nearlyAll && pattern === undefined ? ['As good as everything is lost: make sure that the piston is at the top of compression and the hose is tight before you believe it.'] : []),
    ...(isOverPublishedLimit(leakage) ? ['Over 25 %, the published method asks for a second test after the engine has run.'] : []),
    generalNote,
  ];
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const problem = findProblem(given);
  if (problem !== undefined) return failure(problem);
  const leakage = leakagePercent(given.number('supply'), given.number('cylinder'));
  const pattern = leakagePattern(given.optionalText('escapes') ?? '', leakage);
  const points = pointsAbove(given, leakage);
  const values: Record<string, OutputValue> = {
    leakage: { value: leakage, unit: '%' },
    verdict: leakageVerdict(leakage),
    within25: !isOverPublishedLimit(leakage),
    ...(pattern === undefined ? {} : { pattern }),
    ...(points === undefined ? {} : { aboveOthers: { value: points, unit: '%' } }),
  };
  const next = pattern === undefined ? [] : patternLinks[pattern];
  return success({ outputs: values, notes: notesOf(leakage, pattern, points), ...(next.length === 0 ? {} : { next }) });
}

/** This cylinder beside its fellows. */
function chart(given: ParsedInputs): Chart | undefined {
  const others = given.optionalNumbers('others');
  if (others === undefined || findProblem(given) !== undefined) return undefined;
  const supply = given.number('supply');
  const leakage = leakagePercent(supply, given.number('cylinder'));
  const isOdd = isFarFromFellows(pointsAbove(given, leakage) ?? 0);
  const points = [
    { x: 1, y: leakage, label: 'This', ...(isOdd ? { odd: 'high' } : {}) },
    ...others.map((other, index) => ({ x: index + 2, y: leakagePercent(supply, other), label: `+${index + 1}` })),
  ];
  return {
    title: 'Leakage beside the other cylinders',
    x: { label: 'This cylinder, then the others as typed', unit: 'count' },
    y: { label: 'Leakage', unit: '%' },
    series: [{ name: 'Leakage', kind: 'bars', points }],
    marks: [],
    levels: [{ y: publishedLimit, label: 'Published method' }],
  };
}

/** What share of the air a cylinder loses, and where the place it comes out points. */
export const leakDown: CalculatorDefinition = {
  id: 'leak-down',
  title: 'Leak-down test',
  summary: 'How much of the air does this cylinder lose, is that too much, and what does the place it comes out point to?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['leakdown', 'cylinder leakage', 'differential compression', 'burnt valve', 'rings', 'head gasket', '60 over 80', 'top dead centre'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => leakDown;
