import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, Chart, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { refuseDirectInjection } from '../pressures.ts';
import { examples, formulas, notes, table, verdictNotes } from './text.data.ts';

const fewest = 2;
const most = 16;
/** Differences smaller than this, % points, are noise of the arithmetic. */
const noise = 1e-9;

const inputs: readonly InputDefinition[] = [
  {
    name: 'drops',
    label: 'Pressure drop of each injector',
    kind: 'quantity-list',
    dimension: 'pressure',
    unit: 'kPa',
    optional: false,
    minimum: 0,
    hint: 'Before less after, in the order of the injectors, parted by blanks: 42 44 43 43.',
  },
  {
    name: 'tolerancePercent',
    label: 'Allowed from the mean, either way',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '%',
    optional: true,
    default: '20',
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 100,
    hint: 'Workshops use 10 to 20 %; the engine maker’s figure comes first.',
    advanced: true,
  },
];

const outputs: readonly OutputDefinition[] = [
  {
    name: 'verdict',
    label: 'The injectors together',
    kind: 'word',
    words: { inside: 'Even: all inside the band', below: 'One passes too little', above: 'One passes too much' },
    main: true,
  },
  { name: 'worst', label: 'Furthest from the mean: injector', kind: 'quantity', unit: 'count', decimals: 0 },
  { name: 'deviations', label: 'From the mean, by injector', kind: 'quantity-list', unit: '%', decimals: 2 },
  { name: 'mean', label: 'Mean drop', kind: 'quantity', unit: 'kPa', decimals: 2 },
];

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Each drop against the mean, percent of the mean. */
function deviationsOf(drops: readonly number[]): readonly number[] {
  const mean = meanOf(drops);
  return drops.map((drop) => (100 * (drop - mean)) / mean);
}

/** Place, from 0, of the injector furthest from the mean, the first where several are; nothing when all are alike, or there are only two. */
function worstOf(deviations: readonly number[]): number | undefined {
  const sizes = deviations.map(Math.abs);
  const largest = Math.max(...sizes);
  if (largest <= noise || deviations.length === fewest) return undefined;
  return sizes.findIndex((size) => size >= largest - noise);
}

type Side = 'inside' | 'below' | 'above';

/** On the limit itself counts as inside. */
function sideOf(deviation: number, tolerance: number): Side {
  if (Math.abs(deviation) <= tolerance + noise) return 'inside';
  return deviation < 0 ? 'below' : 'above';
}

function findProblem(drops: readonly number[]): Refusal | undefined {
  const refuse = (code: string, message: string) => ({ input: 'drops', code, message });
  const label = 'Pressure drop of each injector';
  if (drops.length < fewest) return refuse('too-few', `${label}: ${drops.length} was given. Balance is told by comparing: give one drop for each injector.`);
  if (drops.length > most) return refuse('too-many', `${label}: ${drops.length} were given, but an engine has at most ${most} injectors. Give one drop for each.`);
  if (meanOf(drops) === 0) {
    return refuse('no-drop', `${label}: no injector lowered the pressure, so there is nothing to compare. Check that the injectors are pulsed and that the gauge is open to the rail.`);
  }
  return refuseDirectInjection('drops', label, Math.max(...drops));
}

function oddNote(deviations: readonly number[], tolerance: number): string {
  const odd = deviations.flatMap((deviation, index) => (sideOf(deviation, tolerance) === 'inside' ? [] : [`injector ${index + 1} at ${formatValue(deviation, '%', { decimals: 1 })}`]));
  return `Outside the band: ${odd.join(', ')}.`;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const [drops, tolerance] = [given.numbers('drops'), given.number('tolerancePercent')];
  const problem = findProblem(drops);
  if (problem !== undefined) return failure(problem);
  const deviations = deviationsOf(drops);
  const worst = worstOf(deviations);
  const verdict = sideOf(deviations[worst ?? 0] ?? 0, tolerance);
  const values: Record<string, OutputValue> = {
    mean: { value: meanOf(drops), unit: 'kPa' },
    deviations: { values: deviations, unit: '%' },
  };
  // Of two, each is as far from the mean as the other: only that they differ can be said.
  if (worst === undefined && verdict !== 'inside') return success({ outputs: values, notes: [notes.onlyTwo, notes.method, notes.safety] });
  if (worst !== undefined) values['worst'] = { value: worst + 1, unit: 'count' };
  const odd = verdict === 'inside' ? [] : [oddNote(deviations, tolerance)];
  return success({
    outputs: { ...values, verdict },
    notes: [...odd, verdictNotes[verdict], notes.method, notes.safety],
    next: [
      { page: 'procedures/injector-balance', label: 'Injector balance test' },
      { page: 'procedures/injector-resistance', label: 'Injector resistance' },
      { page: 'procedures/swap-injectors', label: 'Swap injectors' },
      { page: 'parts/injector', label: 'Fitting an injector' },
    ],
  });
}

const oddWords: Readonly<Record<Side, string | undefined>> = { inside: undefined, below: 'low', above: 'high' };

function chart(given: ParsedInputs): Chart | undefined {
  const [drops, tolerance] = [given.numbers('drops'), given.number('tolerancePercent')];
  if (findProblem(drops) !== undefined) return undefined;
  const [mean, deviations] = [meanOf(drops), deviationsOf(drops)];
  const points = drops.map((drop, index) => {
    const odd = drops.length === fewest ? undefined : oddWords[sideOf(deviations[index] ?? 0, tolerance)];
    return { x: index + 1, y: drop, label: String(index + 1), ...(odd === undefined ? {} : { odd }) };
  });
  return {
    title: 'Pressure drop by injector',
    x: { label: 'Injector', unit: 'count' },
    y: { label: 'Pressure drop', unit: 'kPa' },
    series: [{ name: 'Drop', kind: 'bars', points }],
    marks: [],
    levels: [
      { y: mean * (1 - tolerance / 100), label: 'Lower end' },
      { y: mean * (1 + tolerance / 100), label: 'Upper end' },
    ],
  };
}

/** Pressure drops of injectors pulsed alike, each held against the mean. Port injection. */
export const injectorBalance: CalculatorDefinition = {
  id: 'injector-balance',
  title: 'Injector balance',
  summary: 'Do all injectors pass the same, and if not, which one is the odd one out?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['injector drop test', 'pressure drop test', 'injector balance test', 'clogged injector', 'leaking injector', 'lazy injector', 'flow test'],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => injectorBalance;
