import type { RecordVerdict } from '../../obd/misfire-record.ts';
import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`p_\ell \le v \le p_h`,
    plain: 'pass where low limit ≤ value ≤ high limit',
    symbols: [
      { tex: 'v', meaning: 'value of the record' },
      { tex: String.raw`p_\ell`, meaning: 'low limit' },
      { tex: 'p_h', meaning: 'high limit' },
    ],
    sources: [{ id: 'sae-j1979', place: 'service $06, section 6.6 and appendices D and E' }],
  },
  {
    tex: String.raw`a_{k} = 0.1\,c + 0.9\,a_{k-1}`,
    plain: 'average after a driving cycle = 0.1 × its count + 0.9 × the average before',
    symbols: [
      { tex: 'a_{k-1}', meaning: 'average before the cycle, zero at first' },
      { tex: 'a_{k}', meaning: 'average after it' },
      { tex: 'c', meaning: 'misfires counted in the cycle' },
    ],
    sources: [{ id: 'sae-j1979', place: 'service $06, test 0B' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Over its limit',
    inputs: { bytes: 'A4 0C 24 00 81 00 00 00 80' },
    says: 'Fail: cylinder 3 counted 129 misfires in this or the last cycle, and its limit is 128.',
  },
  {
    title: 'Nothing has run',
    inputs: { bytes: 'A6 0B 24 00 00 00 00 00 00' },
    says: 'Not run: the average of cylinder 5 is all zeros, so nothing has been measured since codes were cleared.',
  },
];

export const table: TableDefinition = {
  caption: 'Records taken apart',
  rows: [
    'A2 0C 24 00 03 00 00 FF FF',
    'A3 0B 24 00 00 00 00 FF FF',
    'A5 0C 24 01 90 00 00 FF FF',
    'A7 0B 24 00 7F 00 00 00 80',
    'A4 0C 24 00 81 00 00 00 80',
    'AD 0C 24 FF FF 00 00 FF FF',
    'A6 0B 24 00 00 00 00 00 00',
    'A1 0C 24 02 58 00 00 FF FF',
  ].map((bytes) => ({ bytes })),
  columns: ['bytes', 'cylinder', 'test', 'value', 'low', 'high', 'verdict'],
};

export const verdictNotes: Readonly<Record<RecordVerdict, string>> = {
  pass: 'The value lies within the limits of the control unit. That clears no cylinder that shakes: the limit is for emissions.',
  fail: 'The value lies outside the limits. Start with this cylinder and hold its record against the others.',
  'not run': 'All zeros: the test has not run since codes were cleared. This is no pass. Drive the car and read it again.',
};

export const withoutLimitNote = 'The high limit is the highest number there is, so no count could fail. Compare the cylinders with each other instead.';
export const makerNote = 'Tests 80 to FE are the maker’s own: the numbers are shown, what they mean is in the maker’s documents.';
export const unknownTestNote = 'The table holds no such test for misfire. The numbers are shown without a meaning.';
export const unscaledNote = 'The scaling id is not in the table, so the numbers are shown as they came.';
