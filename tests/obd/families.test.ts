import { describe, expect, it } from 'vitest';
import { expandFamily, runProblem } from '../../src/domain/obd/families.ts';

const family = { title: 'Coil {letter}, place {number}', counts: 'coil', members: [] } as const;
const codesOf = (first: string, last: string, step: number) =>
  expandFamily({ ...family, run: { first, last, step, firstNumber: 1 } }).map(({ code }) => code);

/** Coil or cylinder 1 to 12: circuit, control low, high, secondary, misfire, injector, injector low, high, balance. SAE J2012 (read in a public transcription). */
const rows = [
  ['P0351', 'P2300', 'P2301', 'P2302', 'P0301', 'P0201', 'P0261', 'P0262', 'P0263'],
  ['P0352', 'P2303', 'P2304', 'P2305', 'P0302', 'P0202', 'P0264', 'P0265', 'P0266'],
  ['P0353', 'P2306', 'P2307', 'P2308', 'P0303', 'P0203', 'P0267', 'P0268', 'P0269'],
  ['P0354', 'P2309', 'P2310', 'P2311', 'P0304', 'P0204', 'P0270', 'P0271', 'P0272'],
  ['P0355', 'P2312', 'P2313', 'P2314', 'P0305', 'P0205', 'P0273', 'P0274', 'P0275'],
  ['P0356', 'P2315', 'P2316', 'P2317', 'P0306', 'P0206', 'P0276', 'P0277', 'P0278'],
  ['P0357', 'P2318', 'P2319', 'P2320', 'P0307', 'P0207', 'P0279', 'P0280', 'P0281'],
  ['P0358', 'P2321', 'P2322', 'P2323', 'P0308', 'P0208', 'P0282', 'P0283', 'P0284'],
  ['P0359', 'P2324', 'P2325', 'P2326', 'P0309', 'P0209', 'P0285', 'P0286', 'P0287'],
  ['P0360', 'P2327', 'P2328', 'P2329', 'P0310', 'P0210', 'P0288', 'P0289', 'P0290'],
  ['P0361', 'P2330', 'P2331', 'P2332', 'P0311', 'P0211', 'P0291', 'P0292', 'P0293'],
  ['P0362', 'P2333', 'P2334', 'P2335', 'P0312', 'P0212', 'P0294', 'P0295', 'P0296'],
] as const;

describe('expandFamily', () => {
  it.each([
    [0, 1],
    [1, 3],
    [2, 3],
    [3, 3],
    [4, 1],
    [5, 1],
    [6, 3],
    [7, 3],
    [8, 3],
  ])('column %i counts in decimal, step %i', (column, step) => {
    const expected = rows.map((row) => row[column] ?? '');
    expect(codesOf(expected[0] ?? '', expected[11] ?? '', step)).toEqual(expected);
  });

  it('fills number and letter, and goes from P0309 to P0310', () => {
    const expanded = expandFamily({
      ...family,
      title: 'Misfire, cylinder {number} ({letter})',
      run: { first: 'P0309', last: 'P0312', firstNumber: 9 },
    });
    expect(expanded[0]).toEqual({ code: 'P0309', number: 9, title: 'Misfire, cylinder 9 (I)' });
    expect(expanded[1]).toEqual({ code: 'P0310', number: 10, title: 'Misfire, cylinder 10 (J)' });
  });

  it('takes members one by one, with a title of their own where they have one', () => {
    const members = [
      { code: 'P0171', number: 1 },
      { code: 'P0174', number: 2, title: 'The other bank ({number})' },
    ];
    expect(expandFamily({ title: 'Too lean, bank {number}', counts: 'bank', members })).toEqual([
      { code: 'P0171', number: 1, title: 'Too lean, bank 1' },
      { code: 'P0174', number: 2, title: 'The other bank (2)' },
    ]);
  });

  it('gives no number to codes that count nothing', () => {
    expect(
      expandFamily({ title: 'Misfire in several cylinders', counts: 'none', members: [{ code: 'P0300' }] }),
    ).toEqual([{ code: 'P0300', title: 'Misfire in several cylinders' }]);
  });

  it.each([
    [{ first: 'P0312', last: 'P0301' }, /before/],
    [{ first: 'P0301', last: 'P030C' }, /decimal/],
    [{ first: 'P0301', last: 'P2312' }, /groups/],
    [{ first: 'P2300', last: 'P2334', step: 3 }, /steps of 3/],
  ])('says what is wrong with %j', (run, message) => {
    expect(runProblem(run)).toMatch(message);
    expect(() => expandFamily({ ...family, run })).toThrow(RangeError);
  });

  it('finds nothing wrong with a good run', () =>
    expect(runProblem({ first: 'P2300', last: 'P2333', step: 3 })).toBeUndefined());
});
