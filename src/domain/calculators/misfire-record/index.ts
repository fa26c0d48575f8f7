import { writeByte } from '../../obd/bytes.ts';
import { decodeMisfireRecord, weightedAverage } from '../../obd/misfire-record.ts';
import type { MisfireRecord } from '../../obd/misfire-record.ts';
import { success } from '../../result.ts';
import type { Refusal, Result } from '../../result.ts';
import { formatNumber } from '../../units/format.ts';
import type { Calculation, CalculatorDefinition, CalculatorMaker, InputDefinition, OutputDefinition, OutputValue, ParsedInputs } from '../definition.ts';
import { examples, formulas, makerNote, table, unknownTestNote, unscaledNote, verdictNotes, withoutLimitNote } from './text.data.ts';

const inputs: readonly InputDefinition[] = [
  {
    name: 'bytes',
    label: 'One record, nine bytes, hexadecimal',
    kind: 'text',
    optional: false,
    hint: 'Monitor, test, scaling, value, low and high limit, such as A2 0C 24 00 03 00 00 FF FF. The head of the answer, 46, may stand before it.',
  },
];

const outputs: readonly OutputDefinition[] = [
  { name: 'verdict', label: 'Verdict', kind: 'word', main: true, words: { pass: 'Pass', fail: 'Fail', 'not run': 'Not run' } },
  { name: 'cylinder', label: 'Cylinder', kind: 'quantity', unit: 'count', decimals: 0 },
  { name: 'test', label: 'Test', kind: 'word' },
  { name: 'value', label: 'Value', kind: 'quantity' },
  { name: 'low', label: 'Low limit', kind: 'quantity' },
  { name: 'high', label: 'High limit', kind: 'quantity' },
];

function testWords({ test, testId }: MisfireRecord): string {
  switch (test) {
    case 'average':
      return 'average of the last ten driving cycles';
    case 'cycle':
      return 'this or the last driving cycle';
    case 'maker':
      return `maker’s own test ${writeByte(testId)}`;
    case 'unknown':
      return `unknown test ${writeByte(testId)}`;
  }
}

const cleanCycles = 10;

/** How the average fades once the misfire is cured: a tenth with every clean cycle. */
function fadingNote({ test, value, unit }: MisfireRecord): readonly string[] {
  if (test !== 'average' || unit !== 'count' || value <= 0) return [];
  const after = weightedAverage(Array.from({ length: cleanCycles }, () => 0), value);
  return [`After a repair this average fades slowly: about ${formatNumber(after, { decimals: 0 })} is still left of ${formatNumber(value)} after ${cleanCycles} clean driving cycles. Use the count of this cycle to prove a repair.`];
}

function notesOf(record: MisfireRecord): readonly string[] {
  return [
    verdictNotes[record.verdict],
    ...(record.withoutLimit && record.verdict === 'pass' ? [withoutLimitNote] : []),
    ...(record.test === 'maker' ? [makerNote] : record.test === 'unknown' ? [unknownTestNote] : []),
    ...(record.scaled ? [] : [unscaledNote]),
    ...fadingNote(record),
  ];
}

function compute(given: ParsedInputs): Result<Calculation, Refusal> {
  const decoded = decodeMisfireRecord(given.text('bytes'));
  if (!decoded.ok) return decoded;
  const record = decoded.value;
  const { cylinder, unit } = record;
  const values: Record<string, OutputValue> = {
    cylinder: cylinder === undefined ? 'general' : { value: cylinder, unit: 'count' },
    test: testWords(record),
    value: { value: record.value, unit },
    low: { value: record.low, unit },
    high: { value: record.high, unit },
    verdict: record.verdict,
  };
  const next = record.verdict === 'not run' ? { page: 'procedures/proof-drive', label: 'Proof drive' } : { page: 'procedures/misfire-counters', label: 'Misfire counters by cylinder' };
  return success({ outputs: values, notes: notesOf(record), next: [next] });
}

/** One misfire record of service $06: whose it is, what it counted, and whether it passed. */
export const misfireRecord: CalculatorDefinition = {
  id: 'misfire-record',
  title: 'Misfire record',
  summary: 'Which cylinder does this record speak of, how many misfires does it count, and did the test run at all?',
  inputs,
  outputs,
  formulas,
  examples,
  table,
  searchWords: ['service 06', 'mode 6', 'monitor results', 'misfire counter', 'A2', 'test 0B', 'test 0C', 'cylinder count'],
  compute,
};

export const calculator: CalculatorMaker = () => misfireRecord;
