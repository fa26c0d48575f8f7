import { failure, success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type {
  Calculation,
  CalculatorDefinition, CalculatorMaker,
  Chart,
  InputDefinition,
  OutputDefinition,
  ParsedInputs,
} from '../definition.ts';
import { examples, formulas, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'rateBefore',
    label: 'Misfires before the repair',
    kind: 'quantity',
    dimension: 'misfire-rate',
    unit: 'per 1000 rev',
    optional: false,
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 8000,
    hint: 'Counted over 1000 revolutions, under the conditions that brought the misfire on.',
  },
  {
    name: 'confidence',
    label: 'How sure you want to be',
    kind: 'quantity',
    dimension: 'ratio',
    unit: '1',
    optional: true,
    default: '0.95',
    minimum: 0,
    exclusiveMinimum: true,
    hint: '0.95 or 95 %: one chance in twenty left that a lucky run hides the old fault.',
    advanced: true,
  },
  {
    name: 'speed',
    label: 'Engine speed of the run',
    kind: 'quantity',
    dimension: 'rotation',
    unit: 'rpm',
    optional: true,
    default: '2000',
    minimum: 0,
    exclusiveMinimum: true,
    maximum: 20000,
  },
];

const outputs: readonly OutputDefinition[] = [
  {
    name: 'revolutions',
    label: 'Revolutions to run without a misfire',
    kind: 'quantity',
    unit: 'count',
    decimals: 0,
    rounding: 'up',
    main: true,
  },
  { name: 'minutes', label: 'At that speed', kind: 'quantity', unit: 'min', decimals: 1 },
];

const perThousand = 1000;

/** Revolutions without a misfire after which the old rate can be ruled out with this confidence (Poisson counting). */
function revolutionsNeeded(rateBefore: number, confidence: number): number {
  return (-Math.log1p(-confidence) / rateBefore) * perThousand;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const [rate, confidence] = [given.number('rateBefore'), given.number('confidence')];
  if (confidence >= 1) {
    const message = `A confidence of ${confidence} can never be reached: it must stay below 1. Type 0.95, or 95 % with the sign.`;
    return failure({ input: 'confidence', code: 'too-high', message });
  }
  const revolutions = revolutionsNeeded(rate, confidence);
  const minutes = revolutions / given.number('speed');
  const [run, time] = [formatValue(Math.ceil(revolutions), 'count'), formatValue(minutes, 'min', { significant: 2 })];
  const notes = [
    `Run at least ${run} revolutions without one misfire, about ${time}, in the conditions that brought the misfire on: same warm-up state, speed and load.`,
    'One misfire on the way starts the run again; more than one means that the fault is still there.',
    'A fault that comes and goes with heat, damp or vibration needs those back too: a long run on a dry day proves nothing about a damp one.',
  ];
  return success({
    outputs: { revolutions: { value: revolutions, unit: 'count' }, minutes: { value: minutes, unit: 'min' } },
    notes,
  });
}

const chartPoints = 40;

function chart(given: ParsedInputs): Chart | undefined {
  const [rate, confidence] = [given.number('rateBefore'), given.number('confidence')];
  if (confidence >= 1) return undefined;
  const needed = revolutionsNeeded(rate, confidence);
  const doubt = (revolutions: number) => 100 * Math.exp((-rate * revolutions) / perThousand);
  const points = Array.from({ length: chartPoints + 1 }, (_, step) => (2 * needed * step) / chartPoints).map((x) => ({
    x,
    y: doubt(x),
  }));
  return {
    title: 'Doubt left after a clean run',
    x: { label: 'Revolutions without a misfire', unit: 'count' },
    y: { label: 'Chance that the old fault would have stayed quiet', unit: '%' },
    series: [{ name: 'Doubt left', kind: 'line', points }],
    marks: [{ x: needed, y: doubt(needed), label: 'Long enough' }],
    levels: [{ y: 100 * (1 - confidence), label: 'Doubt accepted' }],
  };
}

/** How long an engine must run clean before the repair counts as proven. */
export const proofRun: CalculatorDefinition = {
  id: 'proof-run',
  title: 'Length of a proof run',
  summary: 'How long must the engine run without a misfire before the repair is proven?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: [
    'road test',
    'proof drive',
    'test drive',
    'prove the repair',
    'how long to drive',
    'is it fixed',
    'confidence',
  ],
  compute,
  chart,
};

export const calculator: CalculatorMaker = () => proofRun;
