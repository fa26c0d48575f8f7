/** CRC-32/ISO-HDLC: the check value of the published catalogue, the closing chunk of PNG, and zlib as the reference. */
import { crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../src/domain/checksum.ts';

describe('crc32', () => {
  it.each([
    { text: '123456789', expected: 'cbf43926', source: 'check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms' },
    { text: '', expected: '00000000', source: 'initial value and final exclusive-or cancel' },
    { text: 'IEND', expected: 'ae426082', source: 'the closing chunk of every PNG file, ISO/IEC 15948' },
  ])('$text: $source', ({ text, expected }) => {
    expect(crc32(text)).toBe(expected);
  });

  it('is that of zlib over the UTF-8 bytes, for any text', () => {
    const reference = (text: string): string => zlibCrc32(new TextEncoder().encode(text)).toString(16).padStart(8, '0');
    // Half surrogate pairs and characters outside the basic plane are among them.
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.array(fc.nat({ max: 0xffff })).map((units) => String.fromCharCode(...units))), (text) => void expect(crc32(text)).toBe(reference(text))));
  });
});
