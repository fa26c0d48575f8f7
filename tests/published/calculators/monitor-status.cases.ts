import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const layout = 'SAE J1979, PID 01, bit layout compared with a public transcription; rows taken apart by hand';
const federal = '40 CFR 85.2222(c): two monitors for 1996 to 2000, one from 2001 on (recalled)';

const continuous = ['misfire', 'fuel system', 'components'];
const evap = 'evaporative system';
const sensor = 'oxygen sensor';
const heater = 'oxygen sensor heater';
const recirculation = 'exhaust gas recirculation or valve timing';
const usual = [...continuous, 'catalyst', evap, sensor, heater];
const without = [...continuous, 'catalyst', sensor, heater];
const every = [...continuous, 'catalyst', 'heated catalyst', evap, 'secondary air', 'air-conditioning refrigerant or particulate filter', sensor, heater, recirculation];

/** Bytes, lamp, codes, supported, not complete. */
const answers: readonly (readonly [bytes: string, lamp: string, codes: number, supported: readonly string[], notComplete: readonly string[]])[] = [
  ['00 07 E5 00', 'off', 0, [...usual, recirculation], []],
  ['81 07 65 04', 'on', 1, usual, [evap]],
  ['83 07 E5 E5', 'on', 3, [...usual, recirculation], ['catalyst', evap, sensor, heater, recirculation]],
  ['00 77 61 61', 'off', 0, without, without],
  ['7F 07 00 FF', 'off', 127, continuous, []],
  ['80 17 E1 80', 'on', 0, [...without, recirculation], ['misfire', recirculation]],
  ['FF 07 FF 00', 'on', 127, every, []],
];

/** Model year, bytes, allowance; the bytes have 5, 2, 3, 1 and 0 monitors open. */
const [five, two, three, one, none] = ['83 07 E5 E5', '00 07 65 21', '00 07 65 25', '81 07 65 04', '00 07 E5 00'];
const years = [
  ['1995', five, 'not-subject'],
  ['1996', two, 'allowed'],
  ['1996', three, 'too-many'],
  ['1999', three, 'too-many'],
  ['2000', two, 'allowed'],
  ['2000', three, 'too-many'],
  ['2001', one, 'allowed'],
  ['2001', two, 'too-many'],
  ['2001', three, 'too-many'],
  ['2015', none, 'allowed'],
  ['2015', one, 'allowed'],
  ['2015', two, 'too-many'],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...answers.map(
    ([bytes, lamp, codes, supported, notComplete]): CalculatorCase => ({
      label: bytes,
      inputs: { bytes },
      expected: { lamp, codes: [codes, 'count', 0], ignition: 'spark', supported, notComplete },
      absent: ['allowance'],
      source: layout,
    }),
  ),
  ...years.map(
    ([modelYear, bytes, allowance]): CalculatorCase => ({
      label: `${modelYear}, ${bytes}`,
      inputs: { bytes, modelYear },
      expected: { allowance },
      source: federal,
    }),
  ),
  { label: 'with the head of the answer', inputs: { bytes: '41 01 81 07 65 04' }, expected: { lamp: 'on', codes: [1, 'count', 0], notComplete: [evap] }, source: layout },
  { label: 'in one run, small letters', inputs: { bytes: '8107e504' }, expected: { lamp: 'on', notComplete: [evap] }, source: contract },
  { label: 'compression ignition', inputs: { bytes: '00 0F FF 00', modelYear: '2010' }, expected: { ignition: 'compression', supported: continuous }, absent: ['allowance'], says: /left out/, source: `${layout}; other meanings of the last bytes are not in this book` },
  { label: 'lamp without a code', inputs: { bytes: '80 07 65 00' }, says: /no confirmed code/, source: contract },
  { label: 'an open continuous monitor', inputs: { bytes: '80 17 E1 80' }, says: /not settled/, source: contract },
  { label: 'three bytes', inputs: { bytes: '81 07 65' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'six bytes that are no answer', inputs: { bytes: '00 00 81 07 65 04' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: contract },
  { label: 'half a byte', inputs: { bytes: '81 7 65 04' }, refusal: { input: 'bytes', code: 'half-byte' }, source: contract },
  { label: 'no hexadecimal', inputs: { bytes: '81 07 6G 04' }, refusal: { input: 'bytes', code: 'not-hexadecimal' }, source: contract },
  { label: 'only marks', inputs: { bytes: '--' }, refusal: { input: 'bytes', code: 'missing' }, source: contract },
  { label: 'nothing', inputs: {}, refusal: { input: 'bytes', code: 'missing' }, source: contract },
  { label: 'a year that is none', inputs: { bytes: '81 07 65 04', modelYear: '99' }, refusal: { input: 'modelYear', code: 'too-low' }, source: contract },
  { label: 'half a year', inputs: { bytes: '81 07 65 04', modelYear: '2000.5' }, refusal: { input: 'modelYear', code: 'not-whole' }, source: contract },
];
