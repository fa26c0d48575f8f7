import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`A = 64\,\ell + 16\,d_1 + d_2 \qquad B = 16\,d_3 + d_4`,
    plain: 'A = 64 × letter + 16 × d1 + d2 and B = 16 × d3 + d4',
    symbols: [
      { tex: 'A', meaning: 'first byte' },
      { tex: 'B', meaning: 'second byte' },
      { tex: String.raw`\ell`, meaning: 'letter: P 0, C 1, B 2, U 3' },
      { tex: 'd_1', meaning: 'first character after the letter, 0 to 3' },
      { tex: 'd_2', meaning: 'second character, hexadecimal' },
      { tex: 'd_3', meaning: 'third character, hexadecimal' },
      { tex: 'd_4', meaning: 'fourth character, hexadecimal' },
    ],
    sources: [
      { id: 'sae-j2012', place: 'structure of codes, recalled' },
      { id: 'sae-j1979', place: 'service $03, recalled' },
    ],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'A hexadecimal tail is not a cylinder',
    inputs: { bytes: '03 0C' },
    says: 'The bytes 03 0C are P030C, a code set by the standard in the area ignition system or misfire; cylinder 12 would be P0312.',
  },
  {
    title: 'A maker’s own code, badly typed',
    inputs: { code: 'p13 5l' },
    says: 'It is P1351, bytes 13 51, and it is the maker’s own: no general meaning can be given.',
  },
];

export const table: TableDefinition = {
  caption: 'Codes, their bytes and who owns the meaning',
  rows: [
    'P0300',
    'P0303',
    'P0312',
    'P0353',
    'P0171',
    'P1351',
    'P2300',
    'P3000',
    'P3400',
    'C0035',
    'B3FFF',
    'U0100',
  ].map((code) => ({ code })),
  columns: ['code', 'bytes', 'area', 'owner'],
};
