import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeCode, parseCodeList } from '../../src/domain/obd/codes.ts';

/** Ways codes are noted on job cards, read-outs and in messages; expected codes follow from reading the text. */
const lists: readonly (readonly [text: string, codes: readonly string[]])[] = [
  ['P0303, p0353 / PO301', ['P0303', 'P0353', 'P0301']],
  ['P0303 misfire cyl 3; pending P0171', ['P0303', 'P0171']],
  ['P0301\nP0302\r\nP0303', ['P0301', 'P0302', 'P0303']],
  ['P0303 P0303 p0303', ['P0303']],
  ['P 0303 and P-0353', ['P0303', 'P0353']],
  ['0303 misfire, 0171', ['P0303', 'P0171']],
  ['P0303-00 (confirmed)', ['P0303']],
  ['P0303P0171', ['P0303', 'P0171']],
  ['codes:P0300;U0100', ['P0300', 'U0100']],
  ['u 0100', ['U0100']],
  ['P219A', ['P219A']],
  ['POl71 stored', ['P0171']],
  ['Ｐ０３０３', ['P0303']],
];

const noCodes = [
  '2500 rpm',
  'shakes at 2500 under load',
  'idle 0800 rpm',
  '0800 rpm; 0950 rpm',
  'poll1, POLIO1 and pill2',
  'coil1 swapped with COIL2, then coil12',
  'sensor B1S1 and B2S2',
  'engine N52B30, plugs 14x1.25',
  'coil C 2500 ohm, pressure 300 kPa',
  'came in at 09:30 on 0612',
  'boil, pilot, colic, uphill',
  '0.62 ohm at 22 C',
  '12,5 V; 13.8 V',
  '',
];

describe('parseCodeList', () => {
  it.each(lists)('%j', (text, codes) => expect(parseCodeList(text)).toEqual({ codes, refused: [] }));

  it.each(noCodes)('invents none from %j', (text) => expect(parseCodeList(text)).toEqual({ codes: [], refused: [] }));

  it.each([
    ['P4000', 'P4000'],
    ['stored X0300', 'X0300'],
    ['P030 then', 'P030'],
    ['P03000', 'P03000'],
    ['P03G0', 'P03G0'],
  ])('tells %j apart as a code gone wrong', (text, typed) => {
    const { codes, refused } = parseCodeList(`${text}, P0171`);
    expect(codes).toEqual(['P0171']);
    expect(refused.map((entry) => entry.text)).toEqual([typed]);
    expect(refused[0]?.message).toContain(typed);
  });

  it('never throws, and every code it gives has standard form', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        for (const code of parseCodeList(text).codes) expect(() => encodeCode(code)).not.toThrow();
      }),
    );
  });

  it('finds every code again, whatever parts them', () => {
    const hexadecimal = fc.constantFrom(...'0123456789ABCDEF');
    const code = fc.tuple(
      fc.constantFrom(...'PCBU'),
      fc.constantFrom(...'0123'),
      fc.tuple(fc.constantFrom(...'0123456789'), fc.constantFrom(...'0123456789'), hexadecimal),
    );
    const written = code.map(([letter, digit, tail]) => letter + digit + tail.join(''));
    const separator = fc.constantFrom(' ', ', ', '\n', ' / ', '; ', ' and ');
    fc.assert(
      fc.property(fc.uniqueArray(written, { minLength: 1, maxLength: 8 }), separator, (codes, between) => {
        expect(parseCodeList(codes.join(between).toLowerCase())).toEqual({ codes, refused: [] });
      }),
    );
  });
});
