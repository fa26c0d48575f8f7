import { decodeLiveData, parsePid } from '../../obd/live-data.ts';
import type { LiveData, LiveQuantity } from '../../obd/live-data.ts';
import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { showFigure } from '../show.ts';
import { examples, formulas, generalNote, invalidNote, itemNotes, lambdaNote, notUsedNote, placesNote, table, trimNote } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  { name: 'pid', label: 'Item number (PID), hexadecimal', kind: 'text', optional: false, hint: 'Such as 0C for engine speed.' },
  { name: 'bytes', label: 'Data bytes, hexadecimal', kind: 'text', optional: false, hint: 'Such as 1A F8. The head of the answer, 41 0C, may stand before them.' },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'name', label: 'Item', kind: 'word', main: true },
  { name: 'value', label: 'Value', kind: 'quantity' },
  { name: 'values', label: 'Values', kind: 'word-list' },
  { name: 'lambda', label: 'Lambda', kind: 'quantity', unit: '1', decimals: 3 },
  { name: 'voltage', label: 'Voltage', kind: 'quantity', unit: 'V', decimals: 3 },
  { name: 'current', label: 'Current', kind: 'quantity', unit: 'mA', decimals: 3 },
  { name: 'trim', label: 'Short trim', kind: 'quantity', unit: '%', decimals: 2 },
];

/** Where each part of a two-value sensor goes. */
const outputOfPart: ReadonlyMap<string, string> = new Map([
  ['Lambda', 'lambda'],
  ['Voltage', 'voltage'],
  ['Current', 'current'],
  ['Short trim', 'trim'],
]);

function inWords({ label, value, unit }: LiveQuantity): string {
  return `${label} ${value === 'not-used' ? 'not used' : showFigure(value, unit)}`;
}

function quantityOutputs(quantities: readonly LiveQuantity[]): Record<string, OutputValue> {
  const [only, second] = quantities;
  if (only !== undefined && second === undefined && only.value !== 'not-used') return { value: { value: only.value, unit: only.unit } };
  const named = quantities.flatMap(({ label, value, unit }): [string, OutputValue][] => {
    const name = outputOfPart.get(label);
    return name === undefined || value === 'not-used' ? [] : [[name, { value, unit }]];
  });
  return { values: quantities.map(inWords), ...Object.fromEntries(named) };
}

function outputsOf(data: LiveData): Record<string, OutputValue> {
  switch (data.kind) {
    case 'quantities':
      return { name: data.name, ...quantityOutputs(data.quantities) };
    case 'states':
      return { name: data.name, values: data.states };
    case 'supported':
      return { name: data.name, values: data.pids };
  }
}

function quantityNotes(quantities: readonly LiveQuantity[]): readonly string[] {
  const has = (wanted: string) => quantities.some(({ label }) => label.toLowerCase().includes(wanted));
  return [
    ...(has('trim') ? [trimNote] : []),
    ...(has('lambda') ? [lambdaNote] : []),
    ...(quantities.some(({ value }) => value === 'not-used') ? [notUsedNote] : []),
    ...(quantities.length > 1 ? [placesNote] : []),
  ];
}

function supportNote(pids: readonly string[]): string {
  const last = pids.at(-1);
  const leadsOn = last !== undefined && last !== '00' && Number.parseInt(last, 16) % 0x20 === 0;
  return leadsOn ? `${last} is offered: ask for it to see the next block of items.` : 'The last bit is not set: no further block is offered.';
}

function notesOf(pid: number, data: LiveData): readonly string[] {
  const own = itemNotes.get(pid);
  const isInvalid = data.kind === 'states' && data.states.some((state) => /invalid|no meaning/u.test(state));
  return [
    ...(own === undefined ? [] : [own]),
    ...(data.kind === 'quantities' ? quantityNotes(data.quantities) : []),
    ...(data.kind === 'supported' ? [supportNote(data.pids)] : []),
    ...(isInvalid ? [invalidNote] : []),
    generalNote,
  ];
}

/** Trims of the banks, PIDs 06 to 09. */
function isBankTrim(pid: number): boolean {
  return pid >= 0x06 && pid <= 0x09;
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const [text, bytes] = [given.text('pid'), given.text('bytes')];
  const data = decodeLiveData(text, bytes);
  if (!data.ok) return data;
  const parsed = parsePid(text);
  const pid = parsed.ok ? parsed.value : 0;
  const next = isBankTrim(pid) ? { next: [{ page: 'calculators/fuel-trim', label: 'Fuel trims: sum and pattern' }] } : {};
  return success({ outputs: outputsOf(data.value), notes: notesOf(pid, data.value), ...next });
}

/** Bytes of a live-data answer, scaled as the standard sets it. */
export const liveData: CalculatorDefinition = {
  id: 'live-data',
  title: 'Live data from bytes',
  summary: 'What do these bytes of a live-data answer stand for?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['PID', 'service 01', 'mode 1', 'hex', 'scaling', 'sensor value', 'supported PIDs', 'oxygen sensor', 'OBD'],
  compute,
};

export const calculator: CalculatorMaker = () => liveData;
