import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const layout = 'SAE J1979 section 6.6 and appendices D and E, compared with a public transcription; rows taken apart by hand';
const cycle = 'this or the last driving cycle';
const average = 'average of the last ten driving cycles';

/** Record, cylinder, test, value, low, high, verdict. */
const records: readonly (readonly [bytes: string, cylinder: number, test: string, value: number, low: number, high: number, verdict: string])[] = [
  ['A2 0C 24 00 03 00 00 FF FF', 1, cycle, 3, 0, 65535, 'pass'],
  ['A3 0B 24 00 00 00 00 FF FF', 2, average, 0, 0, 65535, 'pass'],
  ['A5 0C 24 01 90 00 00 FF FF', 4, cycle, 400, 0, 65535, 'pass'],
  ['A7 0B 24 00 7F 00 00 00 80', 6, average, 127, 0, 128, 'pass'],
  ['A4 0C 24 00 81 00 00 00 80', 3, cycle, 129, 0, 128, 'fail'],
  ['AD 0C 24 FF FF 00 00 FF FF', 12, cycle, 65535, 0, 65535, 'pass'],
  ['A6 0B 24 00 00 00 00 00 00', 5, average, 0, 0, 0, 'not run'],
  ['B1 0C 24 00 05 00 00 00 10', 16, cycle, 5, 0, 16, 'pass'],
  ['A2 0C 24 00 80 00 00 00 80', 1, cycle, 128, 0, 128, 'pass'],
  ['A2 0C 24 00 04 00 05 00 80', 1, cycle, 4, 5, 128, 'fail'],
];

export const cases: readonly CalculatorCase[] = [
  ...records.map(
    ([bytes, cylinder, test, value, low, high, verdict]): CalculatorCase => ({
      label: bytes,
      inputs: { bytes },
      expected: { cylinder: [cylinder, 'count', 0], test, value: [value, 'count', 0], low: [low, 'count', 0], high: [high, 'count', 0], verdict },
      source: layout,
    }),
  ),
  { label: 'the engine as a whole', inputs: { bytes: 'A1 0C 24 02 58 00 00 FF FF' }, expected: { cylinder: 'general', value: [600, 'count', 0], verdict: 'pass' }, source: layout },
  { label: 'with the head of the answer', inputs: { bytes: '46 A2 0C 24 00 03 00 00 FF FF' }, expected: { cylinder: [1, 'count', 0], value: [3, 'count', 0] }, source: layout },
  { label: 'a limit that limits nothing', inputs: { bytes: 'A5 0C 24 01 90 00 00 FF FF' }, says: /no count could fail/, source: 'arithmetic: FF FF is the highest number of two bytes' },
  { label: 'not run is no pass', inputs: { bytes: 'A6 0B 24 00 00 00 00 00 00' }, says: /no pass/, source: layout },
  { label: 'the average fades', inputs: { bytes: 'A7 0B 24 00 64 00 00 00 80' }, says: /about 35 is still left of 100/, source: 'computed: 100 × 0.9 to the 10th = 34.87' },
  { label: 'a test of the maker', inputs: { bytes: 'A2 80 24 00 05 00 00 FF FF' }, expected: { test: 'maker’s own test 80', value: [5, 'count', 0] }, says: /maker/, source: layout },
  { label: 'a test that is unknown', inputs: { bytes: 'A2 01 24 00 05 00 00 FF FF' }, expected: { test: 'unknown test 01' }, source: layout },
  { label: 'another scaling', inputs: { bytes: 'A2 80 0B 2E E0 00 00 FF FF' }, expected: { value: [12, 'V', 1e-9] }, source: layout },
  { label: 'a temperature', inputs: { bytes: 'A2 80 16 01 F4 00 00 FF FF' }, expected: { value: [10, 'C', 1e-9], low: [-40, 'C', 1e-9] }, source: layout },
  { label: 'a signed scaling', inputs: { bytes: 'A2 80 81 FF FE FF 00 00 10' }, expected: { value: [-2, 'count', 0], low: [-256, 'count', 0], high: [16, 'count', 0], verdict: 'pass' }, says: /not in the table/, source: `${layout}: 81 to FE are signed` },
  { label: 'eight bytes', inputs: { bytes: 'A2 0C 24 00 03 00 00 FF' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'two records', inputs: { bytes: 'A2 0B 24 00 03 00 00 FF FF A2 0C 24 00 03 00 00 FF FF' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'another monitor', inputs: { bytes: '21 0C 24 00 03 00 00 FF FF' }, refusal: { input: 'bytes', code: 'not-a-misfire-record' }, source: contract },
  { label: 'beyond cylinder 16', inputs: { bytes: 'B2 0C 24 00 03 00 00 FF FF' }, refusal: { input: 'bytes', code: 'not-a-misfire-record' }, source: contract },
  { label: 'limits changed over', inputs: { bytes: 'A2 0C 24 00 03 00 10 00 05' }, refusal: { input: 'bytes', code: 'limits-crossed' }, source: contract },
  { label: 'half a byte', inputs: { bytes: 'A2 0C 24 00 3 00 00 FF FF' }, refusal: { input: 'bytes', code: 'half-byte' }, source: contract },
  { label: 'no hexadecimal', inputs: { bytes: 'A2 0C 24 00 XY 00 00 FF FF' }, refusal: { input: 'bytes', code: 'not-hexadecimal' }, source: contract },
  { label: 'nothing', inputs: {}, refusal: { input: 'bytes', code: 'missing' }, source: contract },
];
