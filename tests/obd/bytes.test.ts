import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasBit, parseBytes, signed, unsigned, withoutHead, writeByte } from '../../src/domain/obd/bytes.ts';

const parse = (text: string) => parseBytes(text, 'bytes', '1A F8');

describe('parseBytes', () => {
  it.each(['1A F8', '1af8', '0x1A 0xF8', '$1A $F8', '1A-F8', '1a:f8', ' 1A, F8 ', '１Ａ Ｆ８'])('reads %s', (text) => {
    expect(parse(text)).toEqual({ ok: true, value: [0x1a, 0xf8] });
  });

  it.each([
    ['', 'missing'],
    ['  ', 'missing'],
    ['0x', 'missing'],
    ['1A F', 'half-byte'],
    ['1 A', 'half-byte'],
    ['1AF', 'half-byte'],
    ['1A G8', 'not-hexadecimal'],
    ['1A.F8', 'not-hexadecimal'],
  ])('refuses "%s"', (text, code) => {
    expect(parse(text)).toMatchObject({ ok: false, error: { input: 'bytes', code } });
  });

  it('gives back what was written', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 255 }), { minLength: 1, maxLength: 9 }), (bytes) => {
        expect(parse(bytes.map(writeByte).join(' '))).toEqual({ ok: true, value: bytes });
        expect(parse(bytes.map(writeByte).join(''))).toEqual({ ok: true, value: bytes });
      }),
    );
  });
});

describe('numbers of bytes', () => {
  it('agree with the language’s own reading of big-endian numbers', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 2, maxLength: 2 }), (pair) => {
        const view = new DataView(pair.buffer, pair.byteOffset);
        expect(unsigned([...pair])).toBe(view.getUint16(0));
        expect(signed([...pair])).toBe(view.getInt16(0));
      }),
    );
  });

  it('single bits', () => expect([0, 1, 2, 3, 4, 5, 6, 7].map((bit) => hasBit(0b10010110, bit))).toEqual([false, true, true, false, true, false, false, true]));

  it('takes off the head of an answer only where exactly it stands there', () => {
    expect(withoutHead([0x41, 0x0c, 1, 2], [0x41, 0x0c], 2)).toEqual([1, 2]);
    expect(withoutHead([0x41, 0x0d, 1, 2], [0x41, 0x0c], 2)).toEqual([0x41, 0x0d, 1, 2]);
    expect(withoutHead([0x41, 0x0c], [0x41, 0x0c], 2)).toEqual([0x41, 0x0c]);
  });
});
