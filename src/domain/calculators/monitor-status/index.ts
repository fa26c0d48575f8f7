import { decodeMonitorStatus, firstYearOfRule, readinessAllowance } from '../../obd/monitor-status.ts';
import type { MonitorStatus } from '../../obd/monitor-status.ts';
import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { quantity } from '../quantity.ts';
import { allComplete, allowanceNotes, compressionNote, continuousNote, examples, formulas, lampWithoutCode, notAllRun, table } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'bytes',
    label: 'Four bytes of PID 01, hexadecimal',
    kind: 'text',
    optional: false,
    hint: 'Such as 81 07 65 04. The head of the answer, 41 01, may stand before them.',
  },
  quantity('modelYear', 'Model year', 'count', 'count', {
    optional: true,
    minimum: 1900,
    maximum: 2200,
    wholeNumber: true,
    hint: `For the US federal allowance, which starts with ${firstYearOfRule}.`,
  }),
];

const outputs: readonly OutputDefinition[] = [
  { name: 'lamp', label: 'Engine lamp', kind: 'word', main: true, words: { on: 'Commanded on', off: 'Off' } },
  { name: 'codes', label: 'Confirmed emission codes', kind: 'quantity', unit: 'count', decimals: 0 },
  { name: 'notComplete', label: 'Not complete', kind: 'word-list' },
  { name: 'supported', label: 'Monitors the car has', kind: 'word-list' },
  { name: 'ignition', label: 'Ignition', kind: 'word', words: { spark: 'Spark', compression: 'Compression' } },
  {
    name: 'allowance',
    label: 'US federal inspection',
    kind: 'word',
    words: { 'not-subject': 'Not subject to it', allowed: 'Within the allowance', 'too-many': 'Too many not complete' },
  },
];

function notesOf(status: MonitorStatus): readonly string[] {
  return [
    ...(status.lampCommanded && status.codes === 0 ? [lampWithoutCode] : []),
    status.notComplete.length === 0 ? allComplete : notAllRun,
    ...(status.continuousNotComplete > 0 ? [continuousNote] : []),
    ...(status.ignition === 'compression' ? [compressionNote] : []),
  ];
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const decoded = decodeMonitorStatus(given.text('bytes'));
  if (!decoded.ok) return decoded;
  const status = decoded.value;
  const year = given.optionalNumber('modelYear');
  // Without the monitors of the last two bytes there is nothing to hold against the allowance.
  const allowance = year === undefined || status.ignition === 'compression' ? undefined : readinessAllowance(year, status.notComplete.length);
  const values: Record<string, OutputValue> = {
    lamp: status.lampCommanded ? 'on' : 'off',
    codes: { value: status.codes, unit: 'count' },
    ignition: status.ignition,
    supported: status.supported,
    notComplete: status.notComplete,
    ...(allowance === undefined ? {} : { allowance }),
  };
  const next = status.codes > 0 || status.lampCommanded ? [{ page: 'procedures/read-and-note-codes', label: 'Read and note codes' }] : [{ page: 'procedures/proof-drive', label: 'Proof drive' }];
  return success({ outputs: values, notes: [...notesOf(status), ...(allowance === undefined ? [] : [allowanceNotes[allowance]])], next });
}

/** Lamp, number of codes and which monitors have run, from the four bytes of PID 01. */
export const monitorStatus: CalculatorDefinition = {
  id: 'monitor-status',
  title: 'Monitor status',
  summary: 'Is the lamp commanded on, how many codes are there, and which monitors have not run since codes were cleared?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['readiness', 'PID 01', 'MIL', 'engine lamp', 'not ready', 'inspection', 'codes cleared', 'incomplete'],
  compute,
};

export const calculator: CalculatorMaker = () => monitorStatus;
