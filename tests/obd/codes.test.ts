import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  codeArea,
  codeOwner,
  decodeBytes,
  encodeCode,
  isEmptySlot,
  normaliseCode,
  writeBytes,
} from '../../src/domain/obd/codes.ts';
import { areaRows, byteRows, refusedRows, typedRows } from './codes.cases.ts';

describe('codes and their bytes', () => {
  it.each(byteRows)('%s is %s', (bytes, code, owner) => {
    expect(decodeBytes(bytes)).toEqual({ ok: true, value: code });
    expect(writeBytes(encodeCode(code))).toBe(bytes);
    expect(codeOwner(code)).toBe(owner);
  });

  it('reads bytes however they are parted', () => {
    for (const text of ['0301', '03 01', '0x03 0x01', '03-01', '03:01', ' 03,01 '])
      expect(decodeBytes(text)).toEqual({ ok: true, value: 'P0301' });
  });

  it('knows the empty slot', () => {
    expect(decodeBytes('00 00')).toEqual({ ok: true, value: 'P0000' });
    expect(isEmptySlot('P0000')).toBe(true);
    expect(isEmptySlot('P0001')).toBe(false);
  });

  it.each([
    ['', 'missing'],
    ['03', 'wrong-length'],
    ['03 01 00', 'wrong-length'],
    ['zz 01', 'not-hexadecimal'],
  ])('refuses the bytes "%s" as %s', (text, code) => {
    expect(decodeBytes(text)).toMatchObject({ ok: false, error: { input: 'bytes', code } });
  });

  it('has first bytes 00-3F, 40-7F, 80-BF, C0-FF for P, C, B, U', () => {
    for (const [letter, low, high] of [
      ['P', 0x00, 0x3f],
      ['C', 0x40, 0x7f],
      ['B', 0x80, 0xbf],
      ['U', 0xc0, 0xff],
    ] as const) {
      expect(encodeCode(`${letter}0000`)).toEqual([low, 0]);
      expect(encodeCode(`${letter}3FFF`)).toEqual([high, 255]);
    }
  });

  it('gives every pair of bytes back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 255 }), fc.integer({ min: 0, max: 255 }), (first, second) => {
        const code = decodeBytes(writeBytes([first, second]));
        expect(code.ok && encodeCode(code.value)).toEqual([first, second]);
        expect(code.ok && normaliseCode(code.value)).toEqual(code);
      }),
    );
  });

  it('does not guess at a code that is not in standard form', () => {
    for (const wrong of ['p0303', 'P4000', '']) {
      expect(() => encodeCode(wrong)).toThrow(RangeError);
      expect(() => codeOwner(wrong)).toThrow(RangeError);
    }
  });
});

describe('normaliseCode', () => {
  it.each(typedRows)('reads "%s" as %s', (text, code) =>
    expect(normaliseCode(text)).toEqual({ ok: true, value: code }),
  );

  it.each(refusedRows)('refuses "%s" as %s', (text, code) => {
    const result = normaliseCode(text);
    expect(result).toMatchObject({ ok: false, error: { input: 'code', code } });
    expect(!result.ok && result.error.message).toContain('such as P0303');
    if (text.trim() !== '') expect(!result.ok && result.error.message).toContain(text);
  });

  it('never throws, and what it accepts has standard form', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const result = normaliseCode(text);
        if (result.ok) expect(result.value).toMatch(/^[PCBU][0-3][0-9A-F]{3}$/);
      }),
    );
  });
});

describe('codeArea', () => {
  it.each(areaRows)('%s', (code, area) => {
    expect(codeArea(code).system).toBe('powertrain');
    expect(codeArea(code).area).toMatch(area);
  });

  it.each([
    ['C0035', 'chassis'],
    ['B0001', 'body'],
    ['U0100', 'network'],
  ])('%s belongs to the %s', (code, system) => expect(codeArea(code)).toEqual({ system }));
});
