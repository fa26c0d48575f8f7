import type { FormulaDefinition, TableDefinition, WorkedExample } from '../definition.ts';

export const formulas: readonly FormulaDefinition[] = [
  {
    tex: String.raw`v = \frac{a}{b}\,R + c \qquad R = 256\,A + B`,
    plain: 'value = raw × a / b + c; raw is the byte, or 256 × first + second',
    symbols: [
      { tex: 'v', meaning: 'value in the unit of the item' },
      { tex: 'R', meaning: 'raw number' },
      { tex: 'A', meaning: 'first byte' },
      { tex: 'B', meaning: 'second byte, where there are two' },
      { tex: 'a', meaning: 'numerator of the scaling: 100 for a trim or a load' },
      { tex: 'b', meaning: 'denominator: 128 for a trim, 255 for a load' },
      { tex: 'c', meaning: 'offset: −100 for a trim, −40 for a temperature' },
    ],
    sources: [{ id: 'sae-j1979', place: 'service $01, scaling of each item' }],
  },
];

export const examples: readonly WorkedExample[] = [
  {
    title: 'Engine speed',
    inputs: { pid: '0C', bytes: '1A F8' },
    says: 'Engine speed: the two bytes stand for 1726 rpm.',
  },
  {
    title: 'A lambda sensor that is not used for trim',
    inputs: { pid: '14', bytes: '12 FF' },
    says: 'Oxygen sensor, bank 1 sensor 1, narrow-band: 0.09 V, and the second byte says that it is not used for trim.',
  },
];

export const table: TableDefinition = {
  caption: 'One answer of each common item',
  rows: (
    [
      ['04', '26'],
      ['05', '7B'],
      ['06', '70'],
      ['06', '80'],
      ['06', '90'],
      ['0A', '64'],
      ['0B', '1E'],
      ['0C', '0C 80'],
      ['0D', '80'],
      ['0E', '94'],
      ['0F', '3C'],
      ['10', '01 90'],
      ['1F', '02 58'],
      ['23', '0A F0'],
      ['33', '65'],
      ['42', '37 DC'],
      ['43', '00 7F'],
      ['44', '80 00'],
      ['5C', '82'],
    ] as const
  ).map(([pid, bytes]) => ({ pid, bytes })),
  columns: ['pid', 'bytes', 'name', 'value'],
};

export const trimNote = 'Plus adds fuel because the mixture looked lean; minus takes fuel away because it looked rich.';
export const lambdaNote = 'Lambda below 1 is rich, above 1 lean. Some older tables call this item a fuel-air ratio, which would be the other way about.';
export const notUsedNote = 'FF in the second byte is no trim of 99 %: it says that this sensor is not used for trim.';
export const placesNote =
  'The bank and number hold where the car answers PID 13. Where it answers 1D instead, eight sensors in this order are: bank 1 sensors 1 and 2, bank 2 sensors 1 and 2, bank 3, bank 4.';
export const invalidNote = 'A byte without a meaning here was misread, or the control unit uses a later edition of the standard. Read it again.';
export const generalNote = 'The scaling is set by the standard; what is usual for this engine is the maker’s. The standard text was not seen; the table was compared with public transcriptions.';

/** What to bear in mind with single items, by number. */
export const itemNotes: ReadonlyMap<number, string> = new Map([
  [0x0e, 'Minus means after top dead centre.'],
  [0x22, 'This is the difference between rail and intake manifold, as the injector sees it.'],
  [0x23, 'Direct injection: read this pressure here and leave the high-pressure lines closed.'],
  [0x59, 'Absolute pressure: take off the outside pressure to compare it with a gauge.'],
  [0x43, 'Charged engines go above 100 %.'],
  [0x03, 'Trims mean something only in closed loop.'],
]);
