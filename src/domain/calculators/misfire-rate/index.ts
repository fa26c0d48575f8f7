import {
  firingEvents,
  misfireCodeRule,
  misfireRate as ratePercent,
  misfireShares,
  misfireWindows,
  total,
  windowOf,
} from '../../obd/misfire.ts';
import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import { inOneRow, parseFiringOrder } from '../cylinders.ts';
import type {
  Calculation,
  CalculatorDefinition, CalculatorMaker,
  Chart,
  InputDefinition,
  OutputDefinition,
  OutputValue,
  ParsedInputs,
} from '../definition.ts';
import { showFigure } from '../show.ts';
import { oddCylinders, oddNotes } from './odd.ts';
import { codeRuleLinks, codeRuleNotes, examples, formulas, linksWithoutCylinders, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'cylinders',
    label: 'Cylinders',
    kind: 'quantity',
    dimension: 'count',
    unit: 'count',
    optional: false,
    minimum: 1,
    maximum: 16,
    wholeNumber: true,
  },
  {
    name: 'revolutions',
    label: 'Crankshaft revolutions counted over',
    kind: 'quantity',
    dimension: 'count',
    unit: 'count',
    optional: false,
    minimum: 1,
    maximum: 10_000_000,
    wholeNumber: true,
    hint: 'Control units count over 200 and 1000 revolutions.',
  },
  {
    name: 'counts',
    label: 'Misfires',
    kind: 'quantity-list',
    dimension: 'count',
    unit: 'count',
    optional: false,
    minimum: 0,
    wholeNumber: true,
    hint: 'One number for the engine, or one for each cylinder in order, parted by blanks.',
  },
  {
    name: 'order',
    label: 'Firing order',
    kind: 'text',
    optional: true,
    hint: 'Such as 1-3-4-2: draws the counts in that order as well, and tells which cylinders are companions.',
  },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'rate', label: 'Share of firings missed', kind: 'quantity', unit: '%', decimals: 2, main: true },
  { name: 'events', label: 'Firings in that window', kind: 'quantity', unit: 'count', decimals: 0 },
  { name: 'shares', label: 'Share of the misfires, by cylinder', kind: 'quantity-list', unit: '%', decimals: 1 },
  {
    name: 'floorReached',
    label: 'At or above the lowest limit of the rule',
    kind: 'word',
    words: { true: 'Yes', false: 'No', 'not applicable': 'Not a window of the rule' },
  },
  {
    name: 'codeRule',
    label: 'Code to expect',
    kind: 'word',
    words: {
      'no misfire counted': 'None: no misfire was counted',
      'single-cylinder code allowed': 'The code of one cylinder may stand alone',
      'multiple-cylinder code compulsory': 'The code for several cylinders is compulsory',
      'multiple-cylinder code by the base rule': 'The code for several cylinders, by the base rule',
    },
  },
];

function refuseCounts(code: string, message: string): Refusal {
  return { input: 'counts', code, message };
}

/** What is wrong with the counts, if anything: their number, or more misfires than firings. */
function findCountProblem(cylinders: number, revolutions: number, counts: readonly number[]): Refusal | undefined {
  if (counts.length !== 1 && counts.length !== cylinders) {
    return refuseCounts(
      'wrong-number-of-counts',
      `${counts.length} counts were given for ${cylinders} cylinders. Give one number for the whole engine, or ${cylinders}, one for each cylinder in order.`,
    );
  }
  const events = firingEvents(cylinders, revolutions);
  if (total(counts) > events) {
    return refuseCounts(
      'more-than-firings',
      `${total(counts)} misfires were given, but ${cylinders} cylinders fire only ${events} times in ${revolutions} revolutions.`,
    );
  }
  const most = firingEvents(1, revolutions);
  const over = counts.length === cylinders ? counts.findIndex((count) => count > most) : -1;
  if (over < 0) return undefined;
  return refuseCounts(
    'more-than-firings',
    `Cylinder ${over + 1} has ${counts[over]} misfires, but one cylinder fires only ${most} times in ${revolutions} revolutions.`,
  );
}

function floorNote(rate: number, revolutions: number): string {
  const window = windowOf(revolutions);
  if (window === undefined) {
    const known = misfireWindows.map((rule) => rule.revolutions).join(' and ');
    return `The rule counts over ${known} revolutions; no limit is held against another window.`;
  }
  const limit = showFigure(window.floorPercent, '%');
  const shown = formatValue(rate, '%', { significant: 3 });
  const above =
    window.kind === 'catalyst'
      ? 'misfire at this rate can overheat the catalyst. Ease off, do not drive on it, and keep running tests short.'
      : 'misfire at this rate can raise emissions enough to set a code.';
  return rate >= window.floorPercent
    ? `${shown} is at or above ${limit}, the lowest limit an engine maker need use: ${above} The limit of this engine may lie higher.`
    : `${shown} is below ${limit}, the lowest limit an engine maker need use: no code need be set, but the misfire is real.`;
}

/** The firing order, where one was typed. Refuses one that does not fit the number of cylinders. */
function readOrder(given: ParsedInputs): Result<readonly number[] | undefined, Refusal> {
  const text = given.optionalText('order');
  return text === undefined ? success(undefined) : parseFiringOrder(text, 'order', given.number('cylinders'));
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const [cylinders, revolutions, counts] = [
    given.number('cylinders'),
    given.number('revolutions'),
    given.numbers('counts'),
  ];
  const problem = findCountProblem(cylinders, revolutions, counts);
  if (problem !== undefined) return failure(problem);
  const order = readOrder(given);
  if (!order.ok) return order;
  const events = firingEvents(cylinders, revolutions);
  const rate = ratePercent(total(counts), events);
  const window = windowOf(revolutions);
  const values: Record<string, OutputValue> = {
    events: { value: events, unit: 'count' },
    rate: { value: rate, unit: '%' },
    floorReached: window === undefined ? 'not applicable' : rate >= window.floorPercent,
  };
  const notes = [floorNote(rate, revolutions)];
  if (counts.length !== cylinders) return success({ outputs: values, notes, next: linksWithoutCylinders });
  const rule = misfireCodeRule(counts);
  values['shares'] = { values: misfireShares(counts), unit: '%' };
  values['codeRule'] = rule;
  notes.push(codeRuleNotes[rule], ...oddNotes(counts, order.value));
  return success({ outputs: values, notes, next: codeRuleLinks[rule] });
}

/** One bar for each cylinder in this sequence; those that stand out are marked. */
function chartInSequence(title: string, label: string, sequence: readonly number[], counts: readonly number[]): Chart {
  const odd = oddCylinders(counts);
  const points = sequence.map((cylinder, index) => ({
    x: index + 1,
    y: counts[cylinder - 1] ?? 0,
    label: String(cylinder),
    ...(odd.includes(cylinder) ? { odd: 'high' } : {}),
  }));
  return {
    title,
    x: { label, unit: 'count' },
    y: { label: 'Misfires', unit: 'count' },
    series: [{ name: 'Misfires', kind: 'bars', points }],
    marks: [],
  };
}

/** The cylinders by number and, where the order is known, as they fire. */
function chart(given: ParsedInputs): readonly Chart[] {
  const [cylinders, counts, order] = [given.number('cylinders'), given.numbers('counts'), readOrder(given)];
  if (counts.length !== cylinders || !order.ok) return [];
  return [
    chartInSequence('Misfires by cylinder', 'Cylinder', inOneRow(cylinders), counts),
    ...(order.value === undefined ? [] : [chartInSequence('Misfires in firing order', 'Cylinder, in firing order', order.value, counts)]),
  ];
}

/** The share of firings that missed, and the kind of code that misfire counters call for. */
export const misfireRate: CalculatorDefinition = {
  id: 'misfire-rate',
  title: 'Misfire rate',
  summary: 'What share of the firings is missed, does it endanger the catalyst, and which code should be set?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: [
    'misfire counter',
    'misfire count',
    'flashing lamp',
    'catalyst damage',
    'P0300',
    'percent misfire',
    'roughness',
  ],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => misfireRate;
