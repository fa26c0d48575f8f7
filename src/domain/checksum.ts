/** The generator polynomial of CRC-32/ISO-HDLC with its bits reversed. */
const polynomial = 0xedb88320;

const table: readonly number[] = Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = (rest & 1) === 1 ? (rest >>> 1) ^ polynomial : rest >>> 1;
  return rest;
});

/**
 * CRC-32/ISO-HDLC (the checksum of ISO 3309, zip and PNG) over the UTF-8 bytes of a text, as eight hexadecimal digits in lower case.
 * It shows damage by accident; it is no protection against a forger. Half a surrogate pair counts as U+FFFD.
 * Check value of the published catalogue: `123456789` gives `cbf43926`.
 */
export function crc32(text: string): string {
  let rest = 0xffffffff;
  const take = (byte: number): void => {
    rest = (table[(rest ^ byte) & 0xff] ?? 0) ^ (rest >>> 8);
  };
  for (const character of text) takeUtf8(character.codePointAt(0) ?? 0, take);
  return ((rest ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
}

/** The bytes of one character, RFC 3629. */
function takeUtf8(point: number, take: (byte: number) => void): void {
  if (point < 0x80) return take(point);
  if (point >= 0xd800 && point <= 0xdfff) return takeUtf8(0xfffd, take);
  const following = point < 0x800 ? 1 : point < 0x10000 ? 2 : 3;
  const head = [0, 0xc0, 0xe0, 0xf0][following] ?? 0;
  take(head | (point >>> (6 * following)));
  for (let left = following - 1; left >= 0; left -= 1) take(0x80 | ((point >>> (6 * left)) & 0x3f));
}
