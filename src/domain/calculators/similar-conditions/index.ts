import { compareConditions, sureWindow } from '../../obd/similar-conditions.ts';
import type { ConditionWindow, RunningConditions, Similarity } from '../../obd/similar-conditions.ts';
import { success } from '../../result.ts';
import { formatValue } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, InputDefinition, OutputDefinition, ParsedInputs } from '../definition.ts';
import { quantity } from '../quantity.ts';
import { examples, formulas, table } from './text.data.ts';

const speedRange = { minimum: 0, maximum: 20_000 };
/** Calculated load ends at 100 %; absolute load of a charged engine goes beyond. */
const loadRange = { minimum: 0, maximum: 400 };

function warmInput(name: string, label: string): InputDefinition {
  const choices = [
    { value: 'yes', label: 'Warm' },
    { value: 'no', label: 'Not yet warm' },
  ];
  return { name, label, kind: 'choice', optional: false, choices };
}

const inputs: readonly InputDefinition[] = [
  quantity('speed', 'Speed when it was stored', 'rotation', 'rpm', { ...speedRange, hint: 'From the freeze frame of the misfire code.' }),
  quantity('load', 'Load when it was stored', 'ratio', '%', loadRange),
  warmInput('warm', 'Engine when it was stored'),
  quantity('nowSpeed', 'Speed now', 'rotation', 'rpm', speedRange),
  quantity('nowLoad', 'Load now', 'ratio', '%', loadRange),
  warmInput('nowWarm', 'Engine now'),
];

const outputs: readonly OutputDefinition[] = [
  {
    name: 'similar',
    label: 'Similar conditions',
    kind: 'word',
    main: true,
    words: { true: 'Yes', false: 'No', unsettled: 'Not settled: it depends on how the rule is read' },
  },
  { name: 'misses', label: 'What differs', kind: 'word-list' },
  { name: 'speedFrom', label: 'Drive from', kind: 'quantity', unit: 'rpm', decimals: 0 },
  { name: 'speedTo', label: 'Drive to', kind: 'quantity', unit: 'rpm', decimals: 0 },
  { name: 'loadFrom', label: 'Load from', kind: 'quantity', unit: '%', decimals: 1 },
  { name: 'loadTo', label: 'Load to', kind: 'quantity', unit: '%', decimals: 1 },
];

function conditions(given: ParsedInputs, speed: string, load: string, warm: string): RunningConditions {
  return { speed: given.number(speed), load: given.number(load), warm: given.text(warm) === 'yes' };
}

const sayings = new Map<Similarity['similar'], string>([
  [true, 'A run without misfire here counts: the control unit may take back the pending code, and after three such drives put the lamp out.'],
  [false, 'A run here proves nothing to the control unit, however clean. Bring about what differs and run again.'],
  ['unsettled', 'The texts seen do not settle whether 20 % of load means points or a share of the stored load; by one reading this is similar, by the other it is not. Drive nearer to the stored load.'],
]);

function windowNote({ speedFrom, speedTo, loadFrom, loadTo }: ConditionWindow, warm: boolean): string {
  const speed = (value: number) => formatValue(value, 'rpm', { decimals: 0 });
  const load = (value: number) => formatValue(value, '%', { decimals: 0 });
  return `To be similar by either reading, drive at ${speed(speedFrom)} to ${speed(speedTo)} and ${load(loadFrom)} to ${load(loadTo)} load, engine ${warm ? 'warm' : 'not yet warm'}. Older rules allow only 10 % of load.`;
}

function compute(given: ParsedInputs) {
  const stored = conditions(given, 'speed', 'load', 'warm');
  const { similar, misses } = compareConditions(stored, conditions(given, 'nowSpeed', 'nowLoad', 'nowWarm'));
  const window = sureWindow(stored);
  return success<Calculation>({
    outputs: {
      similar,
      misses,
      speedFrom: { value: window.speedFrom, unit: 'rpm' },
      speedTo: { value: window.speedTo, unit: 'rpm' },
      loadFrom: { value: window.loadFrom, unit: '%' },
      loadTo: { value: window.loadTo, unit: '%' },
    },
    notes: [sayings.get(similar) ?? '', windowNote(window, stored.warm)],
    next: [{ page: 'procedures/proof-drive', label: 'Proof drive' }],
  });
}

/** Whether the engine runs as it did when its misfire was stored, and the window to drive in. */
export const similarConditions: CalculatorDefinition = {
  id: 'similar-conditions',
  title: 'Similar conditions',
  summary: 'Does this run count against the stored misfire, and at what speed and load must I drive?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['freeze frame', 'pending code', 'proof drive', '375 rpm', 'drive cycle', 'misfire code gone', 'lamp out'],
  compute,
};

export const calculator: CalculatorMaker = () => similarConditions;
