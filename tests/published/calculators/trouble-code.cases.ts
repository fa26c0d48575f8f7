import { contract } from './case.ts';
import type { CalculatorCase } from './case.ts';

const structure = 'SAE J2012 and J1979 service $03: structure of codes and ownership of ranges (recalled)';

/** Bytes, code, owner. */
const codes = [
  ['03 00', 'P0300', 'standard'],
  ['03 0C', 'P030C', 'standard'],
  ['03 12', 'P0312', 'standard'],
  ['10 00', 'P1000', 'maker'],
  ['13 51', 'P1351', 'maker'],
  ['23 00', 'P2300', 'standard'],
  ['33 FF', 'P33FF', 'maker'],
  ['34 00', 'P3400', 'standard'],
  ['40 35', 'C0035', 'standard'],
  ['7F FF', 'C3FFF', 'reserved'],
  ['92 AB', 'B12AB', 'maker'],
  ['C1 00', 'U0100', 'standard'],
  ['FF FF', 'U3FFF', 'standard'],
] as const;

export const cases: readonly CalculatorCase[] = [
  ...codes.flatMap(([bytes, code, owner]): CalculatorCase[] => [
    { label: `${bytes} to ${code}`, inputs: { bytes }, expected: { code, owner }, source: structure },
    { label: `${code} to ${bytes}`, inputs: { code }, expected: { bytes, owner }, source: structure },
  ]),
  {
    label: 'a code of the book',
    inputs: { code: ' po303 ' },
    expected: { code: 'P0303', bytes: '03 03', meaning: 'Misfire, cylinder 3', lookFirst: ['Plug and boot.'], area: 'powertrain: ignition system or misfire' },
    source: `${structure}; meaning from the test’s own book of one code`,
  },
  { label: 'not in the book: no neighbour', inputs: { code: 'P0304' }, expected: { code: 'P0304' }, absent: ['meaning', 'lookFirst'], says: /P0304 is not in this book/, source: contract },
  { label: 'a maker’s code has no meaning here', inputs: { code: 'P1351' }, absent: ['meaning', 'lookFirst'], says: /maker’s own/, source: contract },
  { label: 'reserved', inputs: { code: 'B3FFF' }, absent: ['meaning'], says: /keeps this code free/, source: contract },
  { label: 'empty place', inputs: { bytes: '0000' }, expected: { code: 'P0000', owner: 'none' }, absent: ['meaning'], says: /no code here/, source: structure },
  { label: 'code and bytes that agree', inputs: { code: 'P0301', bytes: '0x03 0x01' }, expected: { code: 'P0301' }, source: contract },
  { label: 'code and bytes that differ', inputs: { code: 'P0301', bytes: '03 02' }, refusal: { input: 'bytes', code: 'code-and-bytes-differ' }, source: contract },
  { label: 'neither', inputs: {}, refusal: { input: 'code', code: 'missing' }, source: contract },
  { label: 'first digit above 3', inputs: { code: 'P4000' }, refusal: { input: 'code', code: 'wrong-first-digit' }, source: structure },
  { label: 'no such letter', inputs: { code: 'X0300' }, refusal: { input: 'code', code: 'wrong-letter' }, source: structure },
  { label: 'too short', inputs: { code: 'P030' }, refusal: { input: 'code', code: 'wrong-length' }, source: structure },
  { label: 'no such digit', inputs: { code: 'P03G0' }, refusal: { input: 'code', code: 'not-hexadecimal' }, source: structure },
  { label: 'three bytes', inputs: { bytes: '03 01 00' }, refusal: { input: 'bytes', code: 'wrong-length' }, source: structure },
  { label: 'bytes that are none', inputs: { bytes: '0G 01' }, refusal: { input: 'bytes', code: 'not-hexadecimal' }, source: structure },
];
