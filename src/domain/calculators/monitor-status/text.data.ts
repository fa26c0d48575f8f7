import type { Allowance } from '../../obd/monitor-status.ts';
import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`C = A - 128\,m \qquad m = \left\lfloor\frac{A}{128}\right\rfloor`,
    plain: 'codes = first byte without its highest bit; lamp = that bit',
    symbols: [
      { tex: 'C', meaning: 'confirmed emission codes' },
      { tex: 'A', meaning: 'first byte' },
      { tex: 'm', meaning: 'lamp: 1 commanded on, 0 off' },
    ],
    sources: [{ id: 'sae-j1979', place: 'service $01, PID 01' }],
  },
  {
    tex: String.raw`u \le 2\;(1996 \le y \le 2000) \qquad u \le 1\;(y \ge 2001)`,
    plain: 'at most 2 monitors not complete for model years 1996 to 2000, at most 1 from 2001 on',
    symbols: [
      { tex: 'u', meaning: 'monitors that the car has and that are not complete' },
      { tex: 'y', meaning: 'model year' },
    ],
    sources: [{ id: 'us-40-cfr-85-2222', place: 'paragraph (c), recalled' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'One code and one monitor open',
    inputs: { bytes: '81 07 65 04', modelYear: '2005' },
    says: 'The lamp is commanded on with 1 code; only the evaporative system has not completed, which is within the allowance for 2005.',
  },
  {
    title: 'Cleared a short while ago',
    inputs: { bytes: '00 07 65 21', modelYear: '2001' },
    says: 'Lamp off, 0 codes; catalyst and oxygen sensor are not complete, one too many for 2001.',
  },
];

export const table: TableDefinition = {
  caption: 'Answers taken apart',
  rows: [
    ['00 07 E5 00', '2015'],
    ['81 07 65 04', '2001'],
    ['83 07 E5 E5', '2001'],
    ['00 77 61 61', '2001'],
    ['80 17 E1 80', '2001'],
    ['00 07 65 25', '1999'],
    ['00 07 65 21', '2000'],
    ['00 07 65 21', '2001'],
    ['00 07 65 25', '1995'],
  ].map(([bytes = '', modelYear = '']) => ({ bytes, modelYear })),
  columns: ['bytes', 'modelYear', 'lamp', 'codes', 'notComplete', 'allowance'],
};

export const allowanceNotes: Readonly<Record<Allowance, string>> = {
  'not-subject': 'The federal inspection reads monitors from model year 1996 on.',
  allowed: 'The federal inspection accepts this many monitors not complete. Other places have stricter rules; ask the local one.',
  'too-many': 'Too many for the federal inspection: the car is sent back to be driven until more of them have completed.',
};

export const lampWithoutCode = 'The lamp is commanded on although no confirmed code is counted. Read the pending and permanent codes, and read this again.';
export const notAllRun = 'Not every monitor has run since codes were cleared or the battery was last off. Until they have, no code is no proof of a repair. One alone can stay open for days; many at once mean that it was not long ago.';
export const allComplete = 'Every monitor that the car has is complete, so an absence of codes means something.';
export const continuousNote = 'Misfire, fuel system and components are watched all the time and should soon be complete. Whether an inspection counts them among the others is not settled by the texts seen; they are counted here.';
export const compressionNote = 'This control unit says compression ignition. Its last two bytes have other meanings than those of a petrol engine and are left out here.';
